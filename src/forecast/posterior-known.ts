/**
 * Posterior of modes in parts whose fitting date is known: exact, on even points of ln θ.
 *
 * @module
 */

import type { LifeModel, LifePart } from './life-model.js'
import { type ModeLife, modeLifeOf } from './mode-life.js'
import {
  type LifeEnd,
  massesAt,
  type OnsetTerms,
  pastTerms,
  presentTerms,
  type StateMasses,
} from './mode-likelihood.js'
import { type Look, looksOf } from './mode-looks.js'
import { POSTERIOR_STEPS } from './posterior-type.js'
import {
  type Ages,
  ageAt,
  completeAges,
  completeAgesEvenly,
  type PartClock,
  type UseTrack,
  yearlyRates,
} from './track.js'

/** One mode of a part with known ages, with all that is entered of it. */
export interface KnownMode {
  readonly life: ModeLife
  readonly ownLogSd: number
  /** Spread of ln θ with that of κ. */
  readonly totalLogSd: number
  readonly terms: OnsetTerms
  readonly past: readonly PastFactor[]
  readonly partClock: PartClock
  /** Masses on the even points; absent where the own spread is too narrow for them. */
  readonly grid: ThetaColumns | null
}

/** A factor of the likelihood from one earlier life: Σ coefficient · terms. */
type PastFactor = readonly { readonly terms: OnsetTerms; readonly coefficient: number }[]

/** Masses of the three states at points of ln θ, all divided by exp(lnScale). */
export interface ThetaColumns {
  readonly lnTheta: Float64Array
  readonly theta: Float64Array
  readonly sound: Float64Array
  readonly defective: Float64Array
  readonly failed: Float64Array
  /** Sum of the three. */
  readonly whole: Float64Array
  readonly lnScale: number
}

const thetaPoints = 201
const reach = 5
const narrowPoints = 21

/** Makes the modes of a part ready. `extra` are further looks for each mode (what symptoms come to). */
export function knownModes(
  model: LifeModel,
  part: LifePart,
  how: {
    readonly past: UseTrack
    readonly kappaLogSd: number
    readonly extra: (mode: number) => readonly Look[]
  },
): KnownMode[] {
  const ages = completeAges(how.past, part.age === 'unknown' ? {} : part.age)
  const partClock = { past: how.past, ages }
  const rates = yearlyRates(model)
  const lives = part.modes.map((mode) => modeLifeOf(mode, { rates, lowLoadShare: how.past.lowLoadShare }))
  return part.modes.map((mode, m) => {
    const life = lives[m]!
    const looks = [...looksOf(mode), ...how.extra(m)]
    const bare = {
      life,
      ownLogSd: mode.logSd,
      totalLogSd: Math.hypot(mode.logSd, how.kappaLogSd),
      terms: presentTerms(life, { part: partClock, looks, broken: part.broken === mode.id }),
      past: pastFactors(part, m, { lives, past: how.past, kappaLogSd: how.kappaLogSd }),
      partClock,
    }
    const step = (2 * reach * bare.totalLogSd) / (thetaPoints - 1)
    if (mode.logSd < step || mode.logSd === 0) return { ...bare, grid: null }
    const lnTheta = Float64Array.from(
      { length: thetaPoints },
      (_, k) => reach * bare.totalLogSd * ((2 * k) / (thetaPoints - 1) - 1),
    )
    return { ...bare, grid: columnsAt(bare, lnTheta) }
  })
}

/** Points of ln θ at one ln κ, and their prior weights, summing to 1; 0 outside `from` to `to` (not included). */
interface AtKappa {
  readonly columns: ThetaColumns
  /** Overwritten when the next ln κ is asked for. */
  readonly weight: Float64Array
  readonly from: number
  readonly to: number
}

/** One array serves all: thousands of short ones would keep the collector busy. */
const weights = new Float64Array(thetaPoints)

function atKappa(mode: KnownMode, lnKappa: number): AtKappa {
  const { grid, ownLogSd } = mode
  if (grid !== null) {
    const span = normalWeights(grid.lnTheta, { mean: lnKappa, sd: ownLogSd })
    if (span !== null) return { columns: grid, weight: weights, ...span }
  }
  const points = ownLogSd > 0 ? narrowPoints : 1
  const lnTheta = Float64Array.from(
    { length: points },
    (_, k) => lnKappa + (points === 1 ? 0 : reach * ownLogSd * ((2 * k) / (points - 1) - 1)),
  )
  const columns = columnsAt(mode, lnTheta)
  if (points === 1) weights[0] = 1
  else normalWeights(lnTheta, { mean: lnKappa, sd: ownLogSd })
  return { columns, weight: weights, from: 0, to: points }
}

/** Beyond this many standard deviations a weight is 0. */
const widest = Math.sqrt(80)

/**
 * Normal weights of even points into {@link weights}, summing to 1, and where they are; null if no point is near. From
 * the point next to the mean outwards, e^(−(z + d)²/2) = e^(−z²/2) · f with f = e^(−zd − d²/2), and f falls by
 * e^(−d²) from step to step.
 */
function normalWeights(
  at: Float64Array,
  normal: { readonly mean: number; readonly sd: number },
): { readonly from: number; readonly to: number } | null {
  const { mean, sd } = normal
  const step = (at[1]! - at[0]!) / sd
  const middle = Math.round((mean - at[0]!) / (step * sd))
  const nearest = Math.min(at.length - 1, Math.max(0, middle))
  const offset = (at[nearest]! - mean) / sd
  if (Math.abs(offset) > widest) return null
  const from = Math.max(0, nearest - Math.floor((widest + offset) / step))
  const to = Math.min(at.length, nearest + Math.floor((widest - offset) / step) + 1)
  const fall = Math.exp(-step * step)
  const peak = Math.exp(-0.5 * offset * offset)
  let sum = peak
  weights.fill(0, 0, at.length)
  weights[nearest] = peak
  let value = peak
  let factor = Math.exp(-offset * step - 0.5 * step * step)
  for (let k = nearest + 1; k < to; k++, factor *= fall) sum += weights[k] = value *= factor
  value = peak
  factor = Math.exp(offset * step - 0.5 * step * step)
  for (let k = nearest - 1; k >= from; k--, factor *= fall) sum += weights[k] = value *= factor
  for (let k = from; k < to; k++) weights[k]! /= sum
  return { from, to }
}

/** ln L(κ) of one mode: the prior mean of the likelihood over its own spread. −∞ for what cannot have been. */
export function lnLikelihoodAtKappa(mode: KnownMode, lnKappa: number): number {
  const { columns, weight, from, to } = atKappa(mode, lnKappa)
  const { whole } = columns
  let sum = 0
  for (let k = from; k < to; k++) sum += weight[k]! * whole[k]!
  return Math.log(sum) + columns.lnScale
}

/** Chance, under the whole prior spread and all that is entered, that the mode was no longer sound at a time. */
export function chanceOfOnsetBefore(mode: KnownMode, yearsAgo: number): number {
  const { life, terms, partClock } = mode
  const at = ageAt(partClock, life.clock, yearsAgo) * life.pace
  const early: OnsetTerms = {
    ...terms,
    sound: 0,
    defective: terms.defective.map((weight, k) => (terms.x[k]! < at ? weight : 0)),
    failed: terms.failed.map((weight, k) => (terms.x[k]! < at ? weight : 0)),
  }
  const whole = overPrior(mode, terms)
  return whole > 0 ? overPrior(mode, early) / whole : 0
}

function overPrior(mode: Pick<KnownMode, 'life' | 'totalLogSd' | 'past'>, terms: OnsetTerms): number {
  const masses: StateMasses = { sound: 0, defective: 0, failed: 0 }
  let sum = 0
  for (let k = 0; k < narrowPoints; k++) {
    const z = reach * ((2 * k) / (narrowPoints - 1) - 1)
    const lambda = Math.exp(-mode.life.shape * z * mode.totalLogSd)
    massesAt(terms, lambda, masses)
    const past = Math.exp(lnPastAt(mode.past, lambda))
    sum += Math.exp(-0.5 * z * z) * past * (masses.sound + masses.defective + masses.failed)
  }
  return sum
}

function columnsAt(mode: Pick<KnownMode, 'life' | 'terms' | 'past'>, lnTheta: Float64Array): ThetaColumns {
  const sound = new Float64Array(lnTheta.length)
  const defective = new Float64Array(lnTheta.length)
  const failed = new Float64Array(lnTheta.length)
  const whole = new Float64Array(lnTheta.length)
  const lnPast = new Float64Array(lnTheta.length)
  const masses: StateMasses = { sound: 0, defective: 0, failed: 0 }
  let top = -Infinity
  for (let k = 0; k < lnTheta.length; k++) {
    const lambda = Math.exp(-mode.life.shape * lnTheta[k]!)
    massesAt(mode.terms, lambda, masses)
    sound[k] = masses.sound
    defective[k] = masses.defective
    failed[k] = masses.failed
    lnPast[k] = lnPastAt(mode.past, lambda)
    whole[k] = masses.sound + masses.defective + masses.failed
    top = Math.max(top, lnPast[k]! + Math.log(whole[k]!))
  }
  const columns = { lnTheta, theta: lnTheta.map(Math.exp), sound, defective, failed, whole }
  if (!Number.isFinite(top)) return { ...columns, lnScale: 0 }
  for (let k = 0; k < lnTheta.length; k++) {
    const shift = lnPast[k]! - top
    sound[k] = shifted(sound[k]!, shift)
    defective[k] = shifted(defective[k]!, shift)
    failed[k] = shifted(failed[k]!, shift)
    whole[k] = sound[k]! + defective[k]! + failed[k]!
  }
  return { ...columns, lnScale: top }
}

/** mass · exp(shift), in logarithms: where nearly nothing is possible, exp(shift) alone is beyond any number. */
function shifted(mass: number, shift: number): number {
  return mass > 0 ? Math.exp(Math.log(mass) + shift) : 0
}

function lnPastAt(past: readonly PastFactor[], lambda: number): number {
  const masses: StateMasses = { sound: 0, defective: 0, failed: 0 }
  let sum = 0
  for (const factor of past) {
    let value = 0
    for (const { terms, coefficient } of factor) {
      massesAt(terms, lambda, masses)
      value += coefficient * (masses.sound + masses.defective)
    }
    sum += Math.log(value)
  }
  return sum
}

/**
 * Factors from earlier lives, equal ones gathered by no means: each is one sum of terms. Where the cause of a failure
 * is unknown: this mode's density with the others surviving, plus its survival with one of the others failing, the
 * others at their prior chance, divided by the whole so that the part's evidence is counted once over its modes.
 */
function pastFactors(
  part: LifePart,
  m: number,
  how: { readonly lives: readonly ModeLife[]; readonly past: UseTrack; readonly kappaLogSd: number },
): PastFactor[] {
  const life = how.lives[m]!
  return part.pastLives.map(({ age, ended }) => {
    const ages = completeAgesEvenly(how.past, age)
    const one = (end: LifeEnd): PastFactor => [{ terms: pastTerms(life, { ages, end }), coefficient: 1 }]
    const id = part.modes[m]!.id
    if (ended === 'sound') return one('survived')
    if (ended === 'failed-cause-unknown') return causeUnknown(part, m, { ...how, ages })
    if ('failed' in ended) return one(ended.failed === id ? 'failed' : 'survived')
    return one(ended.defective === id ? 'defective' : 'survived')
  })
}

function causeUnknown(
  part: LifePart,
  m: number,
  how: { readonly lives: readonly ModeLife[]; readonly ages: Ages; readonly kappaLogSd: number },
): PastFactor {
  const { ages, lives } = how
  const prior = lives.map((life, k) => {
    const totalLogSd = Math.hypot(part.modes[k]!.logSd, how.kappaLogSd)
    // densities of modes on different clocks are brought to one, the calendar
    const perYear = ages.years > 0 ? (ages[life.clock] * life.pace) / ages.years : 1
    const failed = pastTerms(life, { ages, end: 'failed' })
    const survived = pastTerms(life, { ages, end: 'survived' })
    const bare = { life, totalLogSd, past: [] }
    return {
      perYear,
      failedTerms: failed,
      survivedTerms: survived,
      density: (overPrior(bare, failed) / normOfPrior) * perYear,
      survival: overPrior(bare, survived) / normOfPrior,
    }
  })
  const others = prior.filter((_, k) => k !== m)
  const allSurvive = others.reduce((product, other) => product * other.survival, 1)
  let oneFails = 0
  others.forEach((other, k) => {
    oneFails += others.reduce((product, each, j) => product * (j === k ? other.density : each.survival), 1)
  })
  const own = prior[m]!
  const whole = own.density * allSurvive + own.survival * oneFails
  if (!(whole > 0)) return [{ terms: own.survivedTerms, coefficient: 1 }]
  return [
    { terms: own.failedTerms, coefficient: (own.perYear * allSurvive) / whole },
    { terms: own.survivedTerms, coefficient: oneFails / whole },
  ]
}

const normOfPrior = Array.from({ length: narrowPoints }, (_, k) => {
  const z = reach * ((2 * k) / (narrowPoints - 1) - 1)
  return Math.exp(-0.5 * z * z)
}).reduce((a, b) => a + b, 0)

/** Where one mode's table of starting states is written. */
export interface TableRow {
  readonly theta: Float32Array
  readonly state: Uint8Array
  readonly age: Float32Array
  readonly since: Float32Array
  readonly ageHours: Float32Array
  /** Index of the first of `POSTERIOR_STEPS` entries. */
  readonly at: number
}

/**
 * Fills one table of equally likely starting states by systematic steps over state, θ and the time of onset, with
 * one uniform start. Within a cell of ln θ a sound mode lies even; a defect takes the place of its onset.
 */
export function fillKnown(
  mode: KnownMode,
  node: { readonly lnKappa: number; readonly start: number },
  row: TableRow,
): void {
  const { columns, weight, from, to } = atKappa(mode, node.lnKappa)
  const { lnTheta, theta } = columns
  const { age, ageHours, state, since } = row
  const cells = lnTheta.length
  const cell = cells > 1 ? lnTheta[1]! - lnTheta[0]! : 0
  const masses = [columns.sound, columns.defective, columns.failed]
  let total = 0
  for (let k = from; k < to; k++) total += weight[k]! * columns.whole[k]!
  const possible = total > 0
  if (!possible) total = 1
  const end = row.at + POSTERIOR_STEPS
  age.fill(mode.partClock.ages[mode.life.clock] * mode.life.pace, row.at, end)
  ageHours.fill(mode.partClock.ages.hours, row.at, end)
  since.fill(0, row.at, end)
  let entry = 0
  let below = 0
  const last = possible ? masses.length : 1
  for (let s = 0; s < last; s++) {
    const ofState = masses[s]!
    const firstOfState = entry
    for (let k = from; k < to; k++) {
      const mass = possible ? weight[k]! * ofState[k]! : weight[k]!
      if (!(mass > 0)) continue
      const above = below + mass / total
      const isLast = s === last - 1 && k === to - 1
      const upTo = isLast ? POSTERIOR_STEPS : entriesBelow(above, node.start)
      if (upTo > entry && s === 0) {
        const perStep = (cell * total) / (mass * POSTERIOR_STEPS)
        let x = perStep * (entry + node.start - below * POSTERIOR_STEPS) - 0.5 * cell
        const most = 0.5 * cell
        for (; entry < upTo; entry++, x += perStep) {
          row.theta[row.at + entry] = theta[k]! * expNearZero(Math.min(most, Math.max(-most, x)))
        }
      } else if (upTo > entry) {
        sumOnsets(mode.terms, s, Math.exp(-mode.life.shape * lnTheta[k]!))
        for (; entry < upTo; entry++) {
          const target = (entry + node.start) / POSTERIOR_STEPS
          const share = Math.min(1, Math.max(0, ((target - below) * total) / mass))
          row.theta[row.at + entry] = theta[k]!
          since[row.at + entry] = mode.terms.since[placeOf(share, mode.terms.y.length)]!
        }
      }
      below = above
    }
    state.fill(s, row.at + firstOfState, row.at + entry)
  }
  // rounding may leave the last step unfilled
  for (; entry < POSTERIOR_STEPS; entry++) {
    const at = row.at + entry
    const before = Math.max(row.at, at - 1)
    for (const column of [row.theta, state, since]) column[at] = column[before]!
  }
}

/** e^x by five terms of its series; half a cell of ln θ is 0.1 at most, where the next is under 2e-9. */
function expNearZero(x: number): number {
  return 1 + x * (1 + x * (1 / 2 + x * (1 / 6 + x * (1 / 24 + x / 120))))
}

/** How many of the steps (entry + start)/steps lie below a share. */
function entriesBelow(share: number, start: number): number {
  return Math.min(POSTERIOR_STEPS, Math.max(0, Math.ceil(share * POSTERIOR_STEPS - start)))
}

/** Running sums of the onsets of a state by their places; overwritten by the next. */
let onsetSums = new Float64Array(512)

function sumOnsets(terms: OnsetTerms, state: number, lambda: number): void {
  const masses = state === 1 ? terms.defective : terms.failed
  const { y } = terms
  if (onsetSums.length < y.length) onsetSums = new Float64Array(2 * y.length)
  let sum = 0
  for (let k = 0; k < y.length; k++) {
    sum += Math.exp(-lambda * y[k]!) * masses[k]!
    onsetSums[k] = sum
  }
}

/** The first of so many places below which more than this share lies. */
function placeOf(share: number, places: number): number {
  let low = 0
  let high = places - 1
  const wanted = share * onsetSums[high]!
  while (low < high) {
    const middle = (low + high) >> 1
    if (onsetSums[middle]! > wanted) high = middle
    else low = middle + 1
  }
  return low
}
