/**
 * How the set stands at t = 0: from the tables of a posterior, or from what is believed beforehand and the fact
 * that no visible mode has failed by the age of its part (12).
 *
 * @module
 */

import type { LifeModel, LifePart } from '../../src/forecast/life-model.js'
import { POSTERIOR_STEPS, type Posterior } from '../../src/forecast/posterior-type.js'
import {
  drawDelay,
  drawDelayBeyond,
  drawOnset,
  hoursAYear,
  type ModeNow,
  newParts,
  type PartNow,
  pastRates,
  sootFactor,
  startsAYear,
} from './life.js'
import { type Chance, normal } from './random.js'

export interface Start {
  readonly boatLog: number
  readonly parts: PartNow[]
}

const mostTries = 1_000_000

/** What the clocks did in a past of even use. */
export interface PastUse {
  readonly years: number
  readonly hours: number
  readonly starts: number
  readonly lowLoadShare: number
}

/** Chance, and how a part is played from its fitting to now (42). */
interface Means {
  readonly chance: Chance
  readonly playPart: (model: LifeModel, chance: Chance, part: PartNow, on: PastUse) => void
}

/** (9, 12) */
export function startFrom(model: LifeModel, posterior: Posterior | null, means: Means): Start {
  const { chance } = means
  if (posterior !== null) return fromPosterior(model, posterior, chance)
  refuseEvidence(model)
  const { boatLogSd, setLogSd } = model.setFactor
  const shared = boatLogSd > 0 || setLogSd > 0
  for (let attempt = 0; attempt < mostTries; attempt++) {
    const boatLog = boatLogSd * normal(chance)
    const kappaLog = boatLog + setLogSd * normal(chance)
    const parts = newParts(model, chance, { kappaLog, hourLifeFactor: 1 })
    // Given κ the modes are independent, so with a known κ each may be drawn again by itself.
    const tries = shared ? 1 : mostTries
    const stands = parts.every((part) => {
      const past = pastOf(model, part.model)
      for (const mode of part.modes) mode.quality = part.model.quality
      if (mayHaveBeenCleared(part.model, past)) {
        return playedTo(model, means, { part, past, kappaLog, tries })
      }
      startService(chance, part, past)
      return part.modes.every((mode) => {
        const since = sinceCleared(mode, past)
        return liveTo(model, chance, { part, mode, past: since, kappaLog, tries })
      })
    })
    if (stands) return { boatLog, parts }
  }
  throw new Error('cannot tell: no life drawn beforehand agrees with the ages of the parts')
}

function refuseEvidence(model: LifeModel): void {
  const evidence =
    model.symptoms.length > 0 ||
    model.setFactor.letDowns.length > 0 ||
    model.parts.some(
      (part) =>
        part.age === 'unknown' ||
        part.pastLives.length > 0 ||
        part.complete.length > 0 ||
        part.modes.some((mode) => mode.observations.length > 0),
    )
  if (evidence) throw new Error('model must be without evidence and unknown ages when no posterior is given')
}

/** What the three clocks of a part have done since some years ago, within its life. */
interface Past {
  readonly years: number
  readonly hours: number
  readonly starts: number
  since(yearsAgo: number): Record<'hours' | 'years' | 'starts', number>
}

/** (5) The ages of a part, and how they came about: the track, stretched to meet them. */
function pastOf(model: LifeModel, part: LifePart): Past {
  const ages = part.age === 'unknown' ? {} : part.age
  const hoursBack = (yearsAgo: number) => grownSince(model, 'hours', yearsAgo)
  const startsBack = (yearsAgo: number) => grownSince(model, 'starts', yearsAgo)
  let years = ages.years
  if (years === undefined && ages.hours !== undefined) years = yearsBackTo(hoursBack, ages.hours)
  if (years === undefined && ages.starts !== undefined) years = yearsBackTo(startsBack, ages.starts)
  const life = years ?? model.past?.track[0]?.yearsAgo ?? 0
  const hours = ages.hours ?? hoursBack(life)
  const starts = ages.starts ?? startsBack(life)
  const share = (back: (yearsAgo: number) => number, yearsAgo: number) => {
    const whole = back(life)
    if (whole > 0) return back(yearsAgo) / whole
    return life > 0 ? yearsAgo / life : 0
  }
  return {
    years: life,
    hours,
    starts,
    since: (yearsAgo) => ({
      years: yearsAgo,
      hours: hours * share(hoursBack, yearsAgo),
      starts: starts * share(startsBack, yearsAgo),
    }),
  }
}

/** (5) A mode that was cleared counts its ages from then. */
function sinceCleared(mode: ModeNow, past: Past): Past {
  const cleared = mode.model.clearedYearsAgo
  return cleared === undefined || cleared >= past.years ? past : { ...past.since(cleared), since: past.since }
}

/** (42) */
function mayHaveBeenCleared({ service }: LifePart, past: Past): boolean {
  if (service === undefined || service.renews || service.clears.length === 0) return false
  const { everyHours = Infinity, everyYears = Infinity } = service
  return past.years > 0 && (past.years > everyYears || past.hours > everyHours)
}

/** (42) Plays a part from its fitting until it was never renewed on the way; false when the tries are used up. */
function playedTo(
  model: LifeModel,
  { chance, playPart }: Means,
  of: { readonly part: PartNow; readonly past: Past; readonly kappaLog: number; readonly tries: number },
): boolean {
  const { part, past } = of
  if (model.past !== undefined || part.modes.some((mode) => mode.model.clearedYearsAgo !== undefined)) {
    throw new Error('a part that is played from its fitting must have an even past and no known clearing')
  }
  for (let attempt = 0; attempt < of.tries; attempt++) {
    for (const mode of part.modes) {
      mode.theta = Math.exp(of.kappaLog + mode.model.logSd * normal(chance))
      mode.age = 0
      mode.hours = 0
      mode.years = 0
      mode.looked = 0
      mode.state = 'sound'
      mode.since = 0
      mode.looks = new Map()
      mode.left = false
      drawOnset(chance, mode)
    }
    part.serviceHours = 0
    part.serviceYears = 0
    part.renewals = 0
    playPart(model, chance, part, { ...past, lowLoadShare: model.use.lowLoadShare })
    if (part.renewals === 0) return true
  }
  return false
}

/** How much the running total has grown since then: straight between points, the average rate before the first. */
function grownSince(model: LifeModel, clock: 'hours' | 'starts', yearsAgo: number): number {
  const track = model.past?.track
  if (track === undefined) return yearsAgo * (clock === 'hours' ? hoursAYear(model) : startsAYear(model))
  const now = track[track.length - 1]![clock]
  const first = track[0]!
  if (yearsAgo >= first.yearsAgo) {
    return now - first[clock] + (yearsAgo - first.yearsAgo) * pastRates(model)[clock]
  }
  for (let k = 1; k < track.length; k++) {
    const older = track[k - 1]!
    const newer = track[k]!
    if (yearsAgo <= older.yearsAgo && yearsAgo >= newer.yearsAgo && older.yearsAgo > newer.yearsAgo) {
      const way = (older.yearsAgo - yearsAgo) / (older.yearsAgo - newer.yearsAgo)
      return now - (older[clock] + way * (newer[clock] - older[clock]))
    }
  }
  return 0
}

/** The years ago since which a rising amount has come to `amount`; 0 if it never does. */
function yearsBackTo(grown: (yearsAgo: number) => number, amount: number): number {
  let low = 0
  let high = 1000
  if (grown(high) < amount) return 0
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2
    if (grown(middle) < amount) low = middle
    else high = middle
  }
  return high
}

/** (15) */
function startService(chance: Chance, part: PartNow, past: Past): void {
  const { everyHours = Infinity, everyYears = Infinity } = part.model.service ?? {}
  part.serviceHours = past.hours
  part.serviceYears = past.years
  if (past.hours < everyHours && past.years < everyYears) return
  const share = chance.uniform()
  part.serviceHours = everyHours === Infinity ? 0 : share * everyHours
  part.serviceYears = everyYears === Infinity ? 0 : share * everyYears
}

interface Life {
  readonly part: PartNow
  readonly mode: ModeNow
  readonly past: Past
  readonly kappaLog: number
  readonly tries: number
}

/** Draws lives of one mode until one has lasted to the part’s age; false when the tries are used up. */
function liveTo(model: LifeModel, chance: Chance, life: Life): boolean {
  const { part, mode, past } = life
  const lowLoadShare = model.past?.lowLoadShare ?? model.use.lowLoadShare
  const own = (yearsAgo: number) =>
    past.since(yearsAgo)[mode.model.clock] * sootFactor(mode.model, lowLoadShare)
  const age = past[mode.model.clock] * sootFactor(mode.model, lowLoadShare)
  for (let attempt = 0; attempt < life.tries; attempt++) {
    if (attempt > 0) mode.theta = Math.exp(life.kappaLog + mode.model.logSd * normal(chance))
    mode.age = 0
    drawOnset(chance, mode)
    const onset = mode.onset
    mode.age = age
    mode.hours = past.hours
    mode.years = past.years
    mode.looked = hoursAYear(model) > 0 ? mode.hours : mode.years
    // It is known to stand failed; what else its life was does not matter before it is put right.
    if (part.model.broken === mode.model.id) return true
    if (onset > age) return true
    if (mode.model.delay !== undefined) {
      const yearsAgo = Math.min(past.years, yearsBackTo(own, age - onset))
      mode.since = past.since(yearsAgo)[mode.model.delay.clock]
      mode.delay = drawDelay(chance, mode.model)
      if (mode.delay > mode.since) {
        mode.state = 'defective'
        return true
      }
    }
    if (mode.model.hidden) {
      mode.state = 'asleep'
      return true
    }
  }
  return false
}

/** One κ by weight, then one entry of the tables for each part, or for each mode where the modes are apart. */
function fromPosterior(model: LifeModel, posterior: Posterior, chance: Chance): Start {
  let node = 0
  for (
    let u = chance.uniform() - posterior.kappaWeight[0]!;
    u > 0 && node < posterior.kappaLog.length - 1;
  ) {
    node += 1
    u -= posterior.kappaWeight[node]!
  }
  // b given b + g: normal about its share of the variance (9).
  const kappaLog = posterior.kappaLog[node]!
  const boat = model.setFactor.boatLogSd ** 2
  const set = model.setFactor.setLogSd ** 2
  const boatLog =
    boat + set === 0
      ? 0
      : (kappaLog * boat) / (boat + set) + Math.sqrt((boat * set) / (boat + set)) * normal(chance)

  const parts = newParts(model, chance, { kappaLog, hourLifeFactor: 1 })
  const modes = sumOf(parts, (part) => part.modes.length)
  let first = 0
  parts.forEach((part, number) => {
    const entry = Math.floor(chance.uniform() * POSTERIOR_STEPS)
    const ofPart = (node * parts.length + number) * POSTERIOR_STEPS + entry
    part.serviceYears = posterior.serviceYears[ofPart]!
    part.serviceHours = posterior.serviceHours[ofPart]!
    part.modes.forEach((mode, k) => {
      const own = posterior.joint[number] === 1 ? entry : Math.floor(chance.uniform() * POSTERIOR_STEPS)
      const at = (node * modes + first + k) * POSTERIOR_STEPS + own
      mode.quality = part.model.quality
      mode.theta = posterior.theta[at]! / mode.quality
      mode.age = posterior.age[at]!
      mode.hours = posterior.ageHours[at]!
      mode.looked = hoursAYear(model) > 0 ? mode.hours : mode.years
      const state = posterior.state[at]!
      if (state === 0) drawOnset(chance, mode)
      if (state === 1) {
        mode.state = 'defective'
        mode.since = posterior.since[at]!
        mode.delay = drawDelayBeyond(chance, mode.model, mode.since)
      }
      if (state === 2) mode.state = 'asleep'
    })
    first += part.modes.length
  })
  return { boatLog, parts }
}

function sumOf<T>(things: readonly T[], of: (thing: T) => number): number {
  return things.reduce((total, thing) => total + of(thing), 0)
}
