/**
 * How many of several chances come true: what they lead one to expect, and what a count says of the share behind it.
 *
 * @module
 */

import { requireWithin } from '../units/require.js'
import { betaQuantile } from './special-beta.js'

/** Two bounds, both within what is meant. */
export interface Bounds {
  readonly low: number
  readonly high: number
}

/**
 * Chance of each number 0 … n of events out of n independent ones that have chances of their own (Poisson-binomial).
 *
 * Exact: one event after another, P′(k) = P(k)·(1 − p) + P(k − 1)·p.
 *
 * @throws RangeError if a chance is outside 0 to 1.
 */
export function countChances(chances: readonly number[]): Float64Array {
  const all = new Float64Array(chances.length + 1)
  all[0] = 1
  chances.forEach((chance, done) => {
    requireWithin('chance', chance, 0, 1, '')
    for (let k = done + 1; k > 0; k--) all[k] = all[k]! * (1 - chance) + all[k - 1]! * chance
    all[0]! *= 1 - chance
  })
  return all
}

/**
 * The least and the most events that such chances lead one to expect: each tail beyond has a chance of at most
 * (1 − confidence)/2.
 */
export function expectedCounts(chances: readonly number[], confidence: number): Bounds {
  requireWithin('confidence', confidence, 0, 1, '')
  const tail = (1 - confidence) / 2
  const each = countChances(chances)
  let low = 0
  for (let below = each[0]!; below <= tail && low < chances.length; below += each[low]!) low++
  let high = chances.length
  for (let above = each[high]!; above <= tail && high > 0; above += each[high]!) high--
  return { low, high }
}

/**
 * Exact interval of a share from k events in n trials, all with that share (Clopper and Pearson 1934): its lower bound is
 * the share at which k or more have the chance (1 − confidence)/2, its upper one that at which k or fewer have it.
 *
 * @throws RangeError if there are more events than trials, or no trial.
 */
export function shareInterval(seen: {
  readonly events: number
  readonly trials: number
  readonly confidence: number
}): Bounds {
  const { events, trials, confidence } = seen
  requireWithin('trials', trials, 1, Number.MAX_SAFE_INTEGER, '')
  requireWithin('events', events, 0, trials, '')
  requireWithin('confidence', confidence, 0, 1, '')
  const tail = (1 - confidence) / 2
  return {
    low:
      events === 0 ? 0 : betaQuantile({ towardsOne: events, towardsZero: trials - events + 1, chance: tail }),
    high:
      events === trials
        ? 1
        : betaQuantile({ towardsOne: events + 1, towardsZero: trials - events, chance: 1 - tail }),
  }
}
