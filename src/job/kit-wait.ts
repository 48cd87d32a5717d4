/**
 * What a part that proves wrong costs: the wait for another.
 *
 * @module
 */

import { costAt } from '../forecast/build-money.js'
import type { Terms } from '../register/register-types.js'

/**
 * The price of days without power in one month, by the owner's terms: straight lines through (0, 0) and the points, the last
 * one going on at its slope. A month that is named nowhere costs nothing; undefined where nothing was said at all.
 */
export function priceOfWait(
  { withoutPower }: Pick<Terms, 'withoutPower'>,
  { days, month }: { readonly days: number; readonly month: number },
): number | undefined {
  if (withoutPower === undefined) return undefined
  const curve = withoutPower.find(({ months }) => months.includes(month))?.curve
  if (curve === undefined) return 0
  const points = curve
    .filter((point) => point.days > 0)
    .map((point) => ({ days: point.days, cost: point.price }))
  return costAt([{ days: 0, cost: 0 }, ...points], days)
}

/** Chance that at least one of several parts is wrong, each by itself: 1 − Π (1 − p). */
export function chanceOfAny(chances: readonly number[]): number {
  return 1 - chances.reduce((none, chance) => none * (1 - chance), 1)
}
