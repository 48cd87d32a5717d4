/**
 * What many histories of one alternative come to, in numbers for a person.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import { requireWithin } from '../units/require.js'
import { K } from './kept.js'
import { column, type Sample } from './sample.js'

/** A mean over histories, with how far the sample alone may put it out (one standard error). */
export interface Estimate {
  readonly mean: number
  readonly standardError: number
}

/** Headings under which money is paid; together they are the cost. */
const headings = [
  'now',
  'failures',
  'planned',
  'upkeep',
  'fuel',
  'power',
  'intrusion',
  'replacement',
  'giveUp',
  'resale',
] as const
export type Heading = (typeof headings)[number]

/** A mode with a number of it. */
export interface OfMode {
  readonly part: string
  readonly mode: string
}

export interface Summary {
  readonly alternative: string
  readonly histories: number
  /** All money to the horizon, discounted to now. */
  readonly cost: Estimate
  /** One history in ten costs less than `low`, half less than `middle`, one in ten more than `high`. */
  readonly costSpread: { readonly low: number; readonly middle: number; readonly high: number }
  /** Mean cost of the dearest tenth of the histories. */
  readonly worstTenth: number
  /** The even payment a year that is worth the mean cost. */
  readonly costPerYear: number
  readonly headings: Readonly<Record<Heading, Estimate>>
  readonly daysWithoutPerYear: Estimate
  /** Stops that last a day or longer. */
  readonly stopsPerYear: Estimate
  readonly sameDayStopsPerYear: Estimate
  /** Failures that leave the set running short of what it should give. */
  readonly deratesPerYear: Estimate
  /** Events of each danger expected in a year. */
  readonly dangersPerYear: Readonly<Record<string, number>>
  /** The dearest single year, not discounted: its mean, and what one history in ten exceeds. */
  readonly largestYear: { readonly mean: number; readonly high: number }
  /** Share of the histories in which the set is replaced before the horizon. */
  readonly replacedShare: number
  /** Which mode is the first to fail visibly, most often first; the rest of 1 has no failure at all. */
  readonly firstFailure: readonly (OfMode & { readonly share: number })[]
  readonly failures: readonly (OfMode & { readonly perYear: number })[]
}

/** Sums up a sample of a model's alternative. */
export function summarise(model: LifeModel, sample: Sample): Summary {
  const years = model.horizonYears
  const cost = column(sample, 'cost')
  const sorted = cost.slice().sort()
  const largestYear = column(sample, 'largestYear')
  const mean = estimateOf(cost)
  return {
    alternative: sample.alternative,
    histories: cost.length,
    cost: mean,
    costSpread: {
      low: quantileOf(sorted, 0.1),
      middle: quantileOf(sorted, 0.5),
      high: quantileOf(sorted, 0.9),
    },
    worstTenth: meanOfWorst(sorted, 0.9),
    costPerYear: equivalentPerYear({ presentValue: mean.mean, perYear: model.realInterestPerYear, years }),
    headings: Object.fromEntries(
      headings.map((heading) => [heading, estimateOf(column(sample, heading))]),
    ) as Record<Heading, Estimate>,
    daysWithoutPerYear: perYear(estimateOf(column(sample, 'daysWithout')), years),
    stopsPerYear: perYear(estimateOf(column(sample, 'stops')), years),
    sameDayStopsPerYear: perYear(estimateOf(column(sample, 'sameDayStops')), years),
    deratesPerYear: perYear(estimateOf(column(sample, 'derates')), years),
    dangersPerYear: dangersOf(model, sample),
    largestYear: { mean: meanOf(largestYear), high: quantileOf(largestYear.slice().sort(), 0.9) },
    replacedShare: shareOf(sample.columns[K.replacedAt]!, (at) => at >= 0),
    firstFailure: firstFailures(model, sample),
    failures: modesOf(model).map((mode, m) => ({
      ...mode,
      perYear: sample.failuresOfMode[m]! / cost.length / years,
    })),
  }
}

/**
 * Mean x̄ = Σx/n and its standard error s/√n, s² = Σ(x − x̄)²/(n − 1); of a single value the error is not known (NaN).
 */
export function estimateOf(values: Float64Array): Estimate {
  const mean = meanOf(values)
  let squares = 0
  for (const value of values) squares += (value - mean) ** 2
  const { length } = values
  return { mean, standardError: length > 1 ? Math.sqrt(squares / (length - 1) / length) : Number.NaN }
}

function meanOf(values: Float64Array): number {
  requireWithin('histories', values.length, 1, Number.MAX_SAFE_INTEGER, '')
  let sum = 0
  for (const value of values) sum += value
  return sum / values.length
}

/** Quantile of a sorted sample, straight between its values: the value at place share·(n − 1). */
export function quantileOf(sorted: Float64Array, share: number): number {
  requireWithin('share', share, 0, 1, '')
  const place = share * (sorted.length - 1)
  const low = Math.floor(place)
  const below = sorted[low]!
  return below + (place - low) * (sorted[Math.min(low + 1, sorted.length - 1)]! - below)
}

/**
 * Conditional value at risk: the mean of the dearest share 1 − α of a sorted sample. Of n values (1 − α)·n are taken
 * from the top; where that is no whole number the last one counts in part.
 *
 * Source: Rockafellar and Uryasev, "Conditional value-at-risk for general loss distributions", Journal of Banking and
 * Finance 26 (2002), 1443-1471, Proposition 8. Held: recalled.
 */
export function meanOfWorst(sorted: Float64Array, alpha: number): number {
  requireWithin('alpha', alpha, 0, 1 - 1e-12, '')
  const wanted = (1 - alpha) * sorted.length
  let left = wanted
  let sum = 0
  for (let i = sorted.length - 1; i >= 0 && left > 0; i--) {
    const weight = Math.min(1, left)
    sum += weight * sorted[i]!
    left -= weight
  }
  return sum / (wanted - Math.max(0, left))
}

/**
 * The even payment a year, going on all the time, that is worth a present value: A = PV·r/(1 − e^(−rT)), and PV/T
 * where r is 0. `perYear` r is continuous [1/year], `years` T.
 */
export function equivalentPerYear(of: {
  readonly presentValue: number
  readonly perYear: number
  readonly years: number
}): number {
  const { presentValue, perYear: rate, years } = of
  return rate === 0 ? presentValue / years : (presentValue * rate) / -Math.expm1(-rate * years)
}

function perYear({ mean, standardError }: Estimate, years: number): Estimate {
  return { mean: mean / years, standardError: standardError / years }
}

function shareOf(values: Float64Array, holds: (value: number) => boolean): number {
  let count = 0
  for (const value of values) if (holds(value)) count++
  return count / values.length
}

/** Modes in the order in which a sample counts them. */
function modesOf(model: LifeModel): OfMode[] {
  return model.parts.flatMap((part) => part.modes.map((mode) => ({ part: part.id, mode: mode.id })))
}

/** Failures that carry a danger, times the chance that such a failure becomes the event itself. */
function dangersOf(model: LifeModel, sample: Sample): Record<string, number> {
  const kinds = [...new Set(model.parts.flatMap((part) => part.modes.flatMap((mode) => mode.dangers)))]
  const years = column(sample, 'cost').length * model.horizonYears
  return Object.fromEntries(
    kinds.map((kind, i) => [kind, (sample.failuresOfDanger[i]! * (model.dangers[kind] ?? 0)) / years]),
  )
}

function firstFailures(model: LifeModel, sample: Sample): (OfMode & { share: number })[] {
  const modes = modesOf(model)
  const counts = new Float64Array(modes.length)
  const first = column(sample, 'firstMode')
  for (const mode of first) if (mode >= 0) counts[mode]!++
  return modes
    .map((mode, m) => ({ ...mode, share: counts[m]! / first.length }))
    .filter(({ share }) => share > 0)
    .sort((a, b) => b.share - a.share)
}
