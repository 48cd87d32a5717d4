/**
 * Small facts that a log tells.
 *
 * @module
 */

import { type Entry, isKind } from '../../logbook/kinds.js'
import { meterHoursOf } from '../../logbook/oddities-hours.js'

/** The boat's currency, where she has one; prices of the catalogue are in dollars. */
export function currencyOf(entries: readonly Entry[]): string {
  return (
    entries
      .filter((entry) => isKind(entry, 'boat'))
      .map(({ body }) => body.currency)
      .findLast((currency) => currency !== undefined) ?? 'USD'
  )
}

/** What a set's meter showed last, and when. Entries in the order of their dates. */
export function lastReading(
  entries: readonly Entry[],
  set: string,
): { readonly hours: number; readonly on: string } | undefined {
  const entry = entries.findLast((one) => one.set === set && meterHoursOf(one) !== undefined)
  return entry === undefined ? undefined : { hours: meterHoursOf(entry)!, on: entry.until }
}
