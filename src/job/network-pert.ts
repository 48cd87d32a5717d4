/**
 * The three-point estimate and the closed forms that the played calendar is held against.
 *
 * @module
 */

import { normalCdf, normalDensity } from '../forecast/special-normal.js'
import { earliestTimes, emptyTimes, type Network, type Step } from './network.js'

/** The fewest days that something takes, the usual number, and the most. [d] */
export interface ThreePoints {
  readonly low: number
  readonly usual: number
  readonly high: number
}

/** A mean and a standard deviation. [d] */
export interface Moments {
  readonly mean: number
  readonly sd: number
}

/**
 * Mean (a + 4 m + b) / 6 and standard deviation (b − a) / 6 of a three-point estimate a, m, b.
 *
 * Malcolm, Roseboom, Clark and Fazar, "Application of a technique for research and development program evaluation",
 * Operations Research 7 (1959), p. 646; recalled. The mean is exactly that of {@link betaShapeOf}; its spread is not: see there.
 */
export function threePointMoments({ low, usual, high }: ThreePoints): Moments {
  return { mean: (low + 4 * usual + high) / 6, sd: (high - low) / 6 }
}

/**
 * The beta distribution between a and b that has the published mean: weights 1 + 4 (m − a)/(b − a) and 1 + 4 (b − m)/(b − a).
 *
 * Its variance is (μ − a)(b − μ)/7, which is ((b − a)/6)² only for m near the middle. Taken before the triangle because
 * the triangle's mean (a + m + b)/3 lets the most that anybody could think of, which is never well known, weigh as much as
 * what is usual. Derived from the beta's mean a + (b − a) α/(α + β).
 */
export function betaShapeOf({ low, usual, high }: ThreePoints): {
  readonly towardsOne: number
  readonly towardsZero: number
} {
  return {
    towardsOne: 1 + (4 * (usual - low)) / (high - low),
    towardsZero: 1 + (4 * (high - usual)) / (high - low),
  }
}

/** The larger of two normal variables, and the chance that the first one is it. */
export interface Larger extends Moments {
  readonly firstIsLarger: number
}

/**
 * Mean and standard deviation of the larger of two normal variables with correlation ρ.
 *
 * With a² = σ₁² + σ₂² − 2ρσ₁σ₂ and α = (μ₁ − μ₂)/a: mean μ₁Φ(α) + μ₂Φ(−α) + aφ(α), second moment
 * (μ₁² + σ₁²)Φ(α) + (μ₂² + σ₂²)Φ(−α) + (μ₁ + μ₂)aφ(α). Where a is 0 the two differ by a constant.
 * Clark, "The greatest of a finite set of random variables", Operations Research 9 (1961), equations 2 to 4; recalled.
 */
export function largerOf(first: Moments, second: Moments, { correlation = 0 } = {}): Larger {
  const a = Math.sqrt(Math.max(0, first.sd ** 2 + second.sd ** 2 - 2 * correlation * first.sd * second.sd))
  const gap = first.mean - second.mean
  if (a === 0) return { ...(gap >= 0 ? first : second), firstIsLarger: gap > 0 ? 1 : gap < 0 ? 0 : 0.5 }
  const alpha = gap / a
  const firstIsLarger = normalCdf(alpha)
  const other = normalCdf(-alpha)
  const density = a * normalDensity(alpha)
  // both moved so that the smaller mean is 0: large means would cost digits in the variance
  const base = Math.min(first.mean, second.mean)
  const m1 = first.mean - base
  const m2 = second.mean - base
  const mean = m1 * firstIsLarger + m2 * other + density
  const square =
    (m1 ** 2 + first.sd ** 2) * firstIsLarger + (m2 ** 2 + second.sd ** 2) * other + (m1 + m2) * density
  return { mean: base + mean, sd: Math.sqrt(Math.max(0, square - mean ** 2)), firstIsLarger }
}

/** What the published formulas say of the whole: every day a working day, nothing begun. */
export interface ByFormula {
  /** Along the longest chain alone, as the method of 1959 has it. */
  readonly chain: Moments
  /** With what meetings of chains add, ends of different chains taken as independent. */
  readonly met: Moments
}

/**
 * The finish of a network by formula: the longest chain of mean times with its variances added, and each meeting of chains
 * by {@link largerOf}, one after the other.
 */
export function finishByFormula(network: Network<Step>, moments: readonly Moments[]): ByFormula {
  const times = emptyTimes(moments.length)
  const mean = earliestTimes(network, { from: 0, endOf: (i, start) => start + moments[i]!.mean, into: times })
  return {
    chain: { mean, sd: Math.sqrt(chainVariance(network, moments, times.ends)) },
    met: metFinish(network, moments),
  }
}

/** The largest variance among the chains that are longest. */
function chainVariance(network: Network<Step>, moments: readonly Moments[], ends: Float64Array): number {
  const within: number[] = []
  network.steps.forEach((_, i) => {
    const start = Math.max(0, ...network.after[i]!.map((one) => ends[one]!))
    const driving = network.after[i]!.filter((one) => ends[one]! >= start - 1e-9)
    within[i] = Math.max(0, ...driving.map((one) => within[one]!)) + moments[i]!.sd ** 2
  })
  const finish = Math.max(0, ...ends)
  return Math.max(0, ...within.filter((_, i) => ends[i]! >= finish - 1e-9))
}

const atOnce: Moments = { mean: 0, sd: 0 }

function metFinish(network: Network<Step>, moments: readonly Moments[]): Moments {
  const ends: Moments[] = []
  const latest = (list: readonly Moments[]) =>
    list.length === 0 ? atOnce : list.slice(1).reduce<Moments>((a, b) => largerOf(a, b), list[0]!)
  network.steps.forEach((_, i) => {
    const start = latest(network.after[i]!.map((one) => ends[one]!))
    const { mean, sd } = moments[i]!
    ends[i] = { mean: start.mean + mean, sd: Math.hypot(start.sd, sd) }
  })
  const { mean, sd } = latest(ends.filter((_, i) => network.before[i]!.length === 0))
  return { mean, sd }
}
