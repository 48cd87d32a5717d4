/**
 * The life of one failure mode as numbers: onset, delay to failure, and how likely its checks are to miss.
 *
 * @module
 */

import { betaQuantileSteps } from './beta-steps.js'
import type { Clock, LifeMode } from './life-model.js'
import { type Delay, logDensity, meanLife, survival } from './lives.js'

/** A mode's onset X ~ Weibull(shape, θ · onsetScale) on its clock, then its delay on a clock of its own. */
export interface ModeLife {
  readonly clock: Clock
  readonly shape: number
  /** ηx at θ = 1. [mode's clock] */
  readonly onsetScale: number
  readonly delay: Delay
  readonly delayClock: Clock
  readonly hidden: boolean
  /** Running of the hour clock against running hours: 1 + s (soot − 1); 1 on other clocks. */
  readonly pace: number
}

/**
 * A mode's life from the model.
 *
 * The stated life is to failure: mean onset = max(mean life − mean delay, mean life / 2), the delay brought to the
 * mode's clock by the yearly rates (counted as 0 where a rate it needs is 0). ηx = scale·(mean onset/mean life)·life factor.
 */
export function modeLifeOf(
  mode: LifeMode,
  use: { readonly rates: Readonly<Record<Clock, number>>; readonly lowLoadShare: number },
): ModeLife {
  const delay = delayOf(mode)
  const delayClock = mode.delay?.clock ?? mode.clock
  const life = meanLife({ kind: 'weibull', shape: mode.shape, scale: mode.scale })
  const wait = delay.kind === 'none' ? 0 : meanLife(delay)
  const from = use.rates[delayClock]
  const to = use.rates[mode.clock]
  const onModeClock = delayClock === mode.clock ? wait : from > 0 && to > 0 ? (wait / from) * to : 0
  return {
    clock: mode.clock,
    shape: mode.shape,
    onsetScale: ((mode.scale * Math.max(life - onModeClock, life / 2)) / life) * (mode.lifeFactor ?? 1),
    delay,
    delayClock,
    hidden: mode.hidden,
    pace: mode.clock === 'hours' ? 1 + use.lowLoadShare * (mode.soot - 1) : 1,
  }
}

/** The delay of a mode as a life; a lognormal without spread is held to a log-sd of 1e-6. */
export function delayOf(mode: LifeMode): Delay {
  const { delay } = mode
  if (delay === undefined) return { kind: 'none' }
  return 'median' in delay
    ? { kind: 'lognormal', median: delay.median, logSd: Math.max(delay.logSd, leastLogSd) }
    : { kind: 'weibull', shape: delay.shape, scale: delay.scale }
}

const leastLogSd = 1e-6

/** Chance that a defect has not failed `since` its onset; a mode without a delay has failed at once. */
export function delaySurvival(delay: Delay, since: number): number {
  if (since <= 0) return delay.kind === 'none' && since === 0 ? 0 : 1
  return delay.kind === 'none' ? 0 : survival(delay, since)
}

/** Density of the delay. [1/clock] */
export function delayDensity(delay: Delay, since: number): number {
  return delay.kind === 'none' || since <= 0 ? 0 : Math.exp(logDensity(delay, since))
}

/** Steps of {@link detectionQuantiles}. */
export const detectionSteps = 256

const quantilesByDetection = new Map<number, Float64Array>()

/**
 * Beta(2d, 2(1 − d)) at the middles of 256 equally likely slices; d of 0 and 1 stay as they are.
 * The mean of a table is d within 1e-4 (furthest off at 0.02 and 0.98), which the test holds it to.
 */
export function detectionQuantiles(detection: number): Float64Array {
  const known = quantilesByDetection.get(detection)
  if (known !== undefined) return known
  const table =
    detection > 0 && detection < 1
      ? betaQuantileSteps({ towardsOne: 2 * detection, towardsZero: 2 * (1 - detection) }, detectionSteps)
      : new Float64Array(detectionSteps).fill(detection)
  quantilesByDetection.set(detection, table)
  return table
}
