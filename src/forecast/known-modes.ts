/**
 * Posterior of modes in parts whose fitting date is known: exact, on even points of ln θ.
 *
 * @module
 */

import type { LifeModel, LifePart } from './life-model.js'
import { type ModeLife, modeLifeOf } from './mode-life.js'
import { massesAt, type OnsetTerms, presentTerms, type StateMasses } from './mode-likelihood.js'
import { type Look, looksOf } from './mode-looks.js'
import { lnPastAt, overPrior, type PastFactor, pastOfMode } from './past-lives.js'
import type { SetAside } from './posterior-type.js'
import { ageAt, clockSince, completeAges, type PartClock, type UseTrack, yearlyRates } from './track.js'

/** One mode of a part with known ages, with all that is entered of it. */
export interface KnownMode {
  readonly life: ModeLife
  /** Factor on the scale of the present life alone. */
  readonly quality: number
  readonly ownLogSd: number
  /** Spread of ln θ with that of κ. */
  readonly totalLogSd: number
  readonly terms: OnsetTerms
  readonly past: readonly PastFactor[]
  /** Clocks of the present life: since the part was fitted, or the mode was last cleared. */
  readonly partClock: PartClock
  /** What is entered and cannot be. */
  readonly setAside: readonly SetAside['what'][]
  /** Masses on the even points; absent where the own spread is too narrow for them. */
  readonly grid: ThetaColumns | null
}

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

const mostThetaPoints = 201
const reach = 5
const narrowPoints = 21

/** Makes the modes of a part ready. `extra` are further looks for each mode (what symptoms come to). */
export function knownModes(
  model: LifeModel,
  part: LifePart,
  how: {
    readonly past: UseTrack
    readonly kappaLogSd: number
    readonly thetaPoints?: number
    readonly extra: (mode: number) => readonly Look[]
  },
): KnownMode[] {
  const { thetaPoints = mostThetaPoints } = how
  const ages = completeAges(how.past, part.age === 'unknown' ? {} : part.age)
  const fitted = { past: how.past, ages }
  const rates = yearlyRates(model)
  const lives = part.modes.map((mode) => modeLifeOf(mode, { rates, lowLoadShare: how.past.lowLoadShare }))
  return part.modes.map((mode, m) => {
    const life = lives[m]!
    const totalLogSd = Math.hypot(mode.logSd, how.kappaLogSd)
    const isPossible = (terms: OnsetTerms) => overPrior({ life, totalLogSd, past: [] }, terms) > 0
    const { clearedYearsAgo: cleared } = mode
    const partClock = cleared === undefined ? fitted : clockSince(fitted, cleared)
    // before that it was another piece, or another life
    const looks = [...looksOf(mode), ...how.extra(m)]
    const present = possiblePresent(
      { ...life, onsetScale: life.onsetScale * part.quality },
      {
        part: partClock,
        looks: looks.filter(({ yearsAgo }) => yearsAgo < partClock.ages.years),
        broken: part.broken === mode.id,
      },
      isPossible,
    )
    const { past, leftOut } = pastOfMode(part, m, { lives, past: how.past, kappaLogSd: how.kappaLogSd })
    const bare = {
      life,
      quality: part.quality,
      ownLogSd: mode.logSd,
      totalLogSd,
      terms: present.terms,
      past,
      partClock,
      setAside: [...present.setAside, ...(leftOut > 0 ? (['past-life'] as const) : [])],
    }
    const step = (2 * reach * totalLogSd) / (thetaPoints - 1)
    if (mode.logSd < step || mode.logSd === 0) return { ...bare, grid: null }
    const lnTheta = Float64Array.from(
      { length: thetaPoints },
      (_, k) => reach * totalLogSd * ((2 * k) / (thetaPoints - 1) - 1),
    )
    return { ...bare, grid: columnsAt(bare, lnTheta) }
  })
}

/** The terms of the present life; where it cannot be, without its looks, or even without standing broken. */
function possiblePresent(
  life: ModeLife,
  data: { readonly part: PartClock; readonly looks: readonly Look[]; readonly broken: boolean },
  isPossible: (terms: OnsetTerms) => boolean,
): { readonly terms: OnsetTerms; readonly setAside: readonly SetAside['what'][] } {
  const terms = presentTerms(life, data)
  if (isPossible(terms)) return { terms, setAside: [] }
  if (data.looks.length > 0) {
    const unseen = presentTerms(life, { ...data, looks: [] })
    if (isPossible(unseen)) return { terms: unseen, setAside: ['looks'] }
  }
  const whole = presentTerms(life, { ...data, looks: [], broken: false })
  if (isPossible(whole)) {
    return { terms: whole, setAside: data.looks.length > 0 ? ['looks', 'broken'] : ['broken'] }
  }
  return { terms: whole, setAside: ['age'] }
}

/** Points of ln θ at one ln κ, and their prior weights, summing to 1; 0 outside `from` to `to` (not included). */
export interface AtKappa {
  readonly columns: ThetaColumns
  /** Overwritten when the next ln κ is asked for. */
  readonly weight: Float64Array
  readonly from: number
  readonly to: number
}

/** One array serves all: thousands of short ones would keep the collector busy. */
const weights = new Float64Array(mostThetaPoints)

export function atKappa(mode: KnownMode, lnKappa: number): AtKappa {
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
