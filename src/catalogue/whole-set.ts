/**
 * What a whole set costs, fetches, weighs and burns.
 *
 * Each takes the figures of a catalogue (`wholeSet`), so that money is whatever that catalogue's money is.
 *
 * @module
 */

import { requireWithin } from '../units/require.js'
import type { WholeSet } from './file-schema.js'
import type { Spread } from './part-schema.js'
import { isTwoPole } from './set-kind.js'

/** A log-normal price: its median and log standard deviation. */
export interface LogPrice {
  readonly median: number
  readonly logSd: number
}

/** A set on the second-hand market. */
export interface UsedSet {
  /** [kW] */
  readonly ratingKW: number
  /** [years] */
  readonly age: number
  /** Running hours; left out: what a set of this age usually has. [h] */
  readonly hours?: number
  readonly running: boolean
}

/**
 * Price of a new set, not fitted. `5200 · P^0.44`, P the rating [kW], 0.5 kW to 100 kW, meant for 4 kW to 30 kW; log standard deviation 0.18.
 *
 * Source: practice, compiler's judgement.
 *
 * @throws RangeError if the rating is out of its span.
 */
export function newSetPrice(whole: WholeSet, ratingKW: number): LogPrice {
  requireWithin('ratingKW', ratingKW, 0.5, 100, 'kW')
  const { priceAt1KW, exponent, logSd } = whole.newSet
  return { median: priceAt1KW * ratingKW ** exponent, logSd }
}

/**
 * What a used set fetches. Running: `0.55 · N · exp(−0.085 a) · exp(−0.00005 (h − 150 a))`, at least 600; not running: 0.3 of
 * that, at least 150; N the price new, a the age [years], h its hours. Log standard deviation 0.35.
 *
 * Source: practice, compiler's judgement.
 *
 * @throws RangeError if rating, age or hours are out of their span.
 */
export function resaleValue(whole: WholeSet, set: UsedSet): LogPrice {
  requireWithin('age', set.age, 0, 100, 'years')
  const { resale } = whole
  const usualHours = resale.usualHoursPerYear * set.age
  const hours = set.hours ?? usualHours
  requireWithin('hours', hours, 0, 1e6, 'h')
  const asNew = resale.shareOfNew * newSetPrice(whole, set.ratingKW).median
  const worn = Math.exp(-resale.lossPerYear * set.age - resale.lossPerExtraHour * (hours - usualHours))
  const running = Math.max(resale.floor, asNew * worn)
  const median = set.running ? running : Math.max(resale.notRunningFloor, resale.notRunningShare * running)
  return { median, logSd: resale.logSd }
}

/**
 * Fuel burnt. [l/h] `a · P + b · L`, P the rating and L the load [kW]: a = 0.085, b = 0.29 for a set with years behind it
 * and no log of its fuel; 0.06 and 0.27 for a new or healthy one. Load 0 to 1.1 P.
 *
 * Source: practice, compiler's judgement.
 *
 * @throws RangeError if rating or load is out of its span.
 */
export function fuelLitresPerHour(
  whole: WholeSet,
  use: { readonly ratingKW: number; readonly loadKW: number; readonly condition: 'aged' | 'healthy' },
): number {
  requireWithin('ratingKW', use.ratingKW, 0.5, 100, 'kW')
  requireWithin('loadKW', use.loadKW, 0, 1.1 * use.ratingKW, 'kW')
  const { litresPerHourPerRatedKW, litresPerHourPerLoadKW } = whole.fuel[use.condition]
  return litresPerHourPerRatedKW * use.ratingKW + litresPerHourPerLoadKW * use.loadKW
}

/**
 * Weight of a set in its sound case, dry. [kg] `(85 + 19 P) · t`, P the rating [kW], t = 0.7 at 3,000 or 3,600 rpm, else 1;
 * give or take 15 %. 0.5 kW to 100 kW.
 *
 * Source: practice, compiler's judgement.
 *
 * @throws RangeError if rating or speed is out of its span.
 */
export function weightKg(whole: WholeSet, set: { readonly ratingKW: number; readonly rpm: number }): Spread {
  requireWithin('ratingKW', set.ratingKW, 0.5, 100, 'kW')
  const { fixedKg, kgPerKW, relativeSpread, twoPoleFactor } = whole.weight
  const typical = (fixedKg + kgPerKW * set.ratingKW) * (isTwoPole(set) ? twoPoleFactor : 1)
  return { low: typical * (1 - relativeSpread), typical, high: typical * (1 + relativeSpread) }
}

/**
 * Chance that a new set will not pass the hatch whole, by the age of the one it replaces: the catalogue's figures at 10 and
 * 20 years, straight between them.
 *
 * Source: practice, compiler's judgement.
 */
export function hatchTooSmallChance(whole: WholeSet, ageYears: number): number {
  requireWithin('ageYears', ageYears, 0, 100, 'years')
  const { under10Years, at20Years } = whole.installation.hatchTooSmallChance
  const share = Math.min(1, Math.max(0, (ageYears - 10) / 10))
  return under10Years + share * (at20Years - under10Years)
}
