/**
 * The likelihood of a mode's scale where the fitting date of its part is known, by quadrature over the time of onset.
 *
 * With λ = θ^(−β) and y = (x/ηx)^β the density of the onset is λ e^(−λy) dy, so every weight is made once and each θ
 * costs one exponential per place.
 *
 * @module
 */

import { delayDensity, delaySurvival, type ModeLife } from './mode-life.js'
import { chanceOfLooks, type Look } from './mode-looks.js'
import { gaussLegendre } from './special-quadrature.js'
import { type Ages, ageAt, type PartClock, yearsAgoOfAge } from './track.js'

/** Terms over the time of onset: a mass for "no onset yet" and places with weights for an onset then. */
export interface OnsetTerms {
  /** (age/ηx)^β at the end, and the factor of "no onset by then". */
  readonly endY: number
  readonly sound: number
  readonly y: Float64Array
  /** Onset ages of the places. [mode's clock] */
  readonly x: Float64Array
  /** Weight · chance of all that followed, for modes defective at the end. */
  readonly defective: Float64Array
  /** The same for modes failed unnoticed at the end. */
  readonly failed: Float64Array
  /** Failed: mean time since onset is that of the place too. Time since onset at the end. [delay's clock] */
  readonly since: Float64Array
}

/** Masses of the three states at one θ, not yet divided by their sum. */
export interface StateMasses {
  sound: number
  defective: number
  failed: number
}

/**
 * Terms of the present life of a mode in a part with known ages: sound now, defective now, and for a hidden mode
 * failed unnoticed.
 *
 * @param broken the mode stands failed and known to be: a visible mode failed just now, a hidden one some time ago
 */
export function presentTerms(
  life: ModeLife,
  data: { readonly part: PartClock; readonly looks: readonly Look[]; readonly broken: boolean },
): OnsetTerms {
  const { part, broken } = data
  const age = part.ages[life.clock] * life.pace
  const looks = [...data.looks].sort((a, b) => b.yearsAgo - a.yearsAgo)
  const lookAges = looks.map((look) => ageAt(part, life.clock, look.yearsAgo) * life.pace)
  const lookDelayAges = looks.map((look) => ageAt(part, life.delayClock, look.yearsAgo))
  const delayNow = part.ages[life.delayClock]
  const places = onsetPlaces({ age, life, breaks: lookAges, delayShare: delayShare(life, part.ages) })
  const chances = lookChances(looks, life.hidden)
  const { x, weight } = places
  const defective = new Float64Array(x.length)
  const failed = new Float64Array(x.length)
  const since = new Float64Array(x.length)
  for (let k = 0; k < x.length; k++) {
    const bornAge = onDelayClock(life, part, x[k]!)
    const elapsed = Math.max(0, delayNow - bornAge)
    since[k] = elapsed
    let first = 0
    while (first < looks.length && lookAges[first]! < x[k]!) first++
    if (broken && !life.hidden) {
      defective[k] = weight[k]! * delayDensity(life.delay, elapsed) * chances(first, looks.length)
      continue
    }
    const survives = delaySurvival(life.delay, elapsed)
    if (!broken) defective[k] = weight[k]! * survives * chances(first, looks.length)
    if (!life.hidden) continue
    let sum = 0
    let before = 1
    for (let look = first; look <= looks.length; look++) {
      const after =
        look === looks.length
          ? survives
          : delaySurvival(life.delay, Math.max(0, lookDelayAges[look]! - bornAge))
      if (before > after) sum += (before - after) * chances(first, look)
      before = after
    }
    failed[k] = weight[k]! * sum
  }
  if (life.delay.kind === 'none' && broken && !life.hidden)
    return failingAtOnce(life, age, chances(looks.length, 0))
  return {
    endY: (age / life.onsetScale) ** life.shape,
    sound: broken ? 0 : chances(looks.length, looks.length),
    x,
    y: places.y,
    defective,
    failed,
    since,
  }
}

/** How an earlier life ended, as far as one mode is concerned. */
export type LifeEnd = 'failed' | 'survived' | 'defective'

/** Terms of an earlier life of a mode, of which only its ages are known: its clocks ran evenly. */
export function pastTerms(life: ModeLife, past: { readonly ages: Ages; readonly end: LifeEnd }): OnsetTerms {
  const age = past.ages[life.clock] * life.pace
  const delayAge = past.ages[life.delayClock]
  const ratio = age > 0 ? delayAge / age : 0
  if (past.end === 'failed' && life.delay.kind === 'none') return failingAtOnce(life, age, 1)
  const { x, y, weight } = onsetPlaces({ age, life, breaks: [], delayShare: delayShare(life, past.ages) })
  const since = x.map((onset) => ratio * (age - onset))
  const defective = x.map((_, k) =>
    past.end === 'failed'
      ? weight[k]! * ratio * delayDensity(life.delay, since[k]!)
      : weight[k]! * delaySurvival(life.delay, since[k]!),
  )
  return {
    endY: (age / life.onsetScale) ** life.shape,
    sound: past.end === 'survived' ? 1 : 0,
    x,
    y,
    defective,
    failed: new Float64Array(x.length),
    since,
  }
}

/** Chance (or density) of the terms at θ, by state. `lambda` is θ^(−β). */
export function massesAt(terms: OnsetTerms, lambda: number, out: StateMasses): void {
  const { y, defective, failed } = terms
  let inDefect = 0
  let inFailure = 0
  for (let k = 0; k < y.length; k++) {
    const used = lambda * y[k]!
    // y rises, and from here on nothing is left of the density
    if (used > 745) break
    const density = Math.exp(-used)
    inDefect += density * defective[k]!
    inFailure += density * failed[k]!
  }
  out.sound = terms.sound > 0 ? terms.sound * Math.exp(-lambda * terms.endY) : 0
  out.defective = lambda * inDefect
  out.failed = lambda * inFailure
}

/** A mode without delay that fails at an age: the density β/x · λy e^(−λy), as one place of the quadrature. */
function failingAtOnce(life: ModeLife, age: number, factor: number): OnsetTerms {
  const endY = (age / life.onsetScale) ** life.shape
  return {
    endY,
    sound: 0,
    x: Float64Array.of(age),
    y: Float64Array.of(endY),
    defective: Float64Array.of(age > 0 ? (factor * life.shape * endY) / age : 0),
    failed: new Float64Array(1),
    since: new Float64Array(1),
  }
}

/**
 * Chance of the looks, of which those before `first` met a sound mode, those before `failing` a defective one and
 * the rest one failed unnoticed. Kept once worked out, for it depends on no θ.
 */
function lookChances(looks: readonly Look[], hidden: boolean): (first: number, failing: number) => number {
  const count = looks.length
  if (count === 0) return () => 1
  const known = new Map<number, number>()
  return (first, failing) => {
    const to = hidden ? Math.max(first, failing) : count
    const key = first * (count + 1) + to
    let chance = known.get(key)
    if (chance === undefined) {
      chance = chanceOfAllLooks(looks, first, to)
      known.set(key, chance)
    }
    return chance
  }
}

function chanceOfAllLooks(looks: readonly Look[], first: number, failing: number): number {
  let chance = 1
  const counts = new Map<string, { check: Extract<Look['seen'], { check: string }>; n: number[] }>()
  looks.forEach(({ seen }, j) => {
    if (!('check' in seen)) {
      chance *= j < first ? seen.sound : j < failing ? seen.defective : seen.failed
    } else if (j < first) {
      chance *= seen.defect ? seen.falseAlarm : 1 - seen.falseAlarm
    } else {
      const entry = counts.get(seen.check) ?? { check: seen, n: [0, 0, 0, 0] }
      entry.n[(j < failing ? 0 : 2) + (seen.defect ? 1 : 0)]!++
      counts.set(seen.check, entry)
    }
  })
  for (const { check, n } of counts.values()) {
    chance *= chanceOfLooks(check, { missed: n[0]!, seen: n[1]!, missedFailed: n[2]!, seenFailed: n[3]! })
  }
  return chance
}

/** Age of the part on the delay's clock when its age on the mode's clock was x. */
function onDelayClock(life: ModeLife, part: PartClock, x: number): number {
  if (life.delayClock === life.clock) return x / life.pace
  return ageAt(part, life.delayClock, yearsAgoOfAge(part, life.clock, x / life.pace))
}

/** Middle of the delay as a share of the life so far, for the placing of panels. */
function delayShare(life: ModeLife, ages: Ages): number {
  const age = ages[life.delayClock]
  if (life.delay.kind === 'none' || !(age > 0)) return 0
  return (life.delay.kind === 'lognormal' ? life.delay.median : life.delay.scale) / age
}

const pointsPerPanel = 8
const foldsTowardsBirth = 6
const foldsTowardsEnd = 4

/**
 * Places and weights of ∫ … dy over onset ages 0 to `age`: panels of 8 Gauss–Legendre points, cut at every look,
 * halving towards birth and towards the end, and by halves and doubles of the delay before the end.
 */
function onsetPlaces(span: {
  readonly age: number
  readonly life: ModeLife
  readonly breaks: readonly number[]
  readonly delayShare: number
}): { readonly x: Float64Array; readonly y: Float64Array; readonly weight: Float64Array } {
  const { age, life } = span
  if (!(age > 0)) return { x: new Float64Array(0), y: new Float64Array(0), weight: new Float64Array(0) }
  const shares = [0, 1, ...span.breaks.map((at) => at / age)]
  for (let k = 1; k <= foldsTowardsBirth; k++) shares.push(2 ** -k)
  for (let k = 2; k <= foldsTowardsEnd; k++) shares.push(1 - 2 ** -k)
  if (span.delayShare > 0) for (let k = -3; k <= 3; k++) shares.push(1 - span.delayShare * 2 ** k)
  const firm = new Set(span.breaks.map((at) => at / age))
  const cuts = shares.filter((share) => share >= 0 && share <= 1).sort((a, b) => a - b)
  const kept: number[] = [0]
  for (const cut of cuts) {
    const gap = cut - kept[kept.length - 1]!
    if (gap > (firm.has(cut) || cut === 1 ? 0 : least)) kept.push(cut)
  }
  const { nodes, weights } = gaussLegendre(pointsPerPanel)
  const x = new Float64Array((kept.length - 1) * pointsPerPanel)
  const y = new Float64Array(x.length)
  const weight = new Float64Array(x.length)
  const { shape, onsetScale } = life
  let at = 0
  for (let panel = 0; panel + 1 < kept.length; panel++) {
    const first = panel === 0
    const from = first ? 0 : kept[panel]! * age
    const to = kept[panel + 1]! * age
    const endY = (to / onsetScale) ** shape
    for (let i = 0; i < pointsPerPanel; i++, at++) {
      const share = (1 + nodes[i]!) / 2
      if (first) {
        y[at] = endY * share
        x[at] = to * share ** (1 / shape)
        weight[at] = (endY * weights[i]!) / 2
      } else {
        x[at] = from + (to - from) * share
        y[at] = (x[at]! / onsetScale) ** shape
        weight[at] = ((shape * y[at]!) / x[at]!) * ((to - from) / 2) * weights[i]!
      }
    }
  }
  return { x, y, weight }
}

const least = 0.004
