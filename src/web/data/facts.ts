/**
 * Small facts that a log tells.
 *
 * @module
 */

import type { Entry } from '../../logbook/kinds.js'
import { meterHoursOf } from '../../logbook/oddities-hours.js'
import { particularsOf } from '../../register/particulars.js'
import type { BoatFacts, Terms } from '../../register/register-types.js'

/** The boat's particulars, each as the latest entry gives it. Entries in the order of their dates. */
export function boatFactsOf(entries: readonly Entry[]): BoatFacts {
  return particularsOf(entries, '').boatFacts
}

/** What the owner reckons with, each as the latest entry gives it. */
export function termsOf(entries: readonly Entry[]): Terms {
  return particularsOf(entries, '').terms
}

/** What a set's meter showed last, and when. */
export function lastReading(
  entries: readonly Entry[],
  set: string,
): { readonly hours: number; readonly on: string } | undefined {
  const entry = entries.findLast((one) => one.set === set && meterHoursOf(one) !== undefined)
  return entry === undefined ? undefined : { hours: meterHoursOf(entry)!, on: entry.until }
}
