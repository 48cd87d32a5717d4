/**
 * How far jobs go past what was expected of them, by kind of job: each kind held closer to all the others the fewer jobs it has.
 *
 * @module
 */

import { overrunPrior } from '../forecast/build-money.js'
import type { LearnedOverrun, Overrun } from '../forecast/learned-overrun.js'

/** What a job came to over what such jobs usually come to. */
export interface Excess {
  readonly kind: string
  /** ln(came to / usual). */
  readonly log: number
}

/** Log standard deviations. */
export interface OverrunSpread {
  /** Of the level of one boat and its workshops. */
  readonly ofBoat: number
  /** Between kinds of job on one boat. */
  readonly betweenKinds: number
  /** Between jobs of one kind. */
  readonly withinKind: number
}

/** Of the spread between jobs of one boat, what lies between their kinds. Practice. */
const betweenKinds = 0.1

/** As the life model has it, its spread between jobs parted into kinds and the rest. */
export const usualSpread: OverrunSpread = {
  ofBoat: overrunPrior.betweenBoats,
  betweenKinds,
  withinKind: Math.sqrt(overrunPrior.betweenJobs ** 2 - betweenKinds ** 2),
}

/** A normal belief about a logarithm. */
export interface Level {
  readonly mean: number
  readonly variance: number
}

export interface PooledKind extends Level {
  readonly kind: string
  readonly jobs: number
  /** Mean of its own jobs alone. */
  readonly own: number
}

export interface PooledOverrun {
  readonly jobs: number
  /** Of a kind of which nothing is known yet, before the spread of a single job. */
  readonly other: Level
  readonly kinds: readonly PooledKind[]
}

/** Fewer jobs of a kind say little by themselves. */
export const fewJobs = 3

/**
 * Partial pooling in closed form. With μ ~ N(0, s²) the boat's level, θ_k ~ N(μ, τ²) that of a kind and y ~ N(θ_k, σ²) a job,
 * and v_k = τ² + σ²/n_k, the level has the precision P = 1/s² + Σ 1/v_k and the mean m = Σ (ȳ_k/v_k)/P; a kind has, with
 * w = τ²/v_k, the mean w ȳ_k + (1 − w) m and the variance (1 − w)²/P + τ² (1 − w). Source: conjugate normal updating
 * (derived); spreads practice.
 */
export function poolOverruns(
  excesses: readonly Excess[],
  spread: OverrunSpread = usualSpread,
): PooledOverrun {
  const [s2, t2, j2] = [spread.ofBoat ** 2, spread.betweenKinds ** 2, spread.withinKind ** 2]
  const kinds = [...new Set(excesses.map(({ kind }) => kind))].map((kind) => {
    const logs = excesses.filter((one) => one.kind === kind).map(({ log }) => log)
    const own = logs.reduce((sum, log) => sum + log, 0) / logs.length
    return { kind, jobs: logs.length, own, v: t2 + j2 / logs.length }
  })
  const precision = 1 / s2 + kinds.reduce((sum, { v }) => sum + 1 / v, 0)
  const level = kinds.reduce((sum, { own, v }) => sum + own / v, 0) / precision
  return {
    jobs: excesses.length,
    other: { mean: level, variance: 1 / precision + t2 },
    kinds: kinds.map(({ kind, jobs, own, v }) => {
      const w = t2 / v
      return {
        kind,
        jobs,
        own,
        mean: w * own + (1 - w) * level,
        variance: (1 - w) ** 2 / precision + t2 * (1 - w),
      }
    }),
  }
}

/** A further job, of a kind or of any other: its level with the spread of a single job. */
export function furtherJob({ mean, variance }: Level, { withinKind }: OverrunSpread = usualSpread): Overrun {
  return { median: Math.exp(mean), logSd: Math.sqrt(variance + withinKind ** 2) }
}

/** In the words of the life model. */
export function learnedFrom(pooled: PooledOverrun): LearnedOverrun {
  const { median, logSd } = furtherJob(pooled.other)
  return {
    jobs: pooled.jobs,
    further: { median: overrunPrior.median * median, logSd },
    quoteFactor: {
      bySystem: Object.fromEntries(pooled.kinds.map(({ kind, mean }) => [kind, Math.exp(mean)])),
      other: Math.exp(pooled.other.mean),
    },
  }
}
