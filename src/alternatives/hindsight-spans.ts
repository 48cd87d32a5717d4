/**
 * The past dates at which a forecast is looked back on, and what was known of the log at each.
 *
 * @module
 */

import { currentEntries } from '../logbook/current.js'
import { dayNumber, firstDay, type LogDate } from '../logbook/dates.js'
import { type Entry, isKind, type Kind } from '../logbook/kinds.js'
import { requireWithin } from '../units/require.js'

/** A past date and how far the forecast made on it reached: from the day after it to `until`, both whole days. */
export interface PastSpan {
  readonly asOf: LogDate
  readonly until: LogDate
}

/** Months that one forecast reaches. */
export type SpanMonths = 3 | 6 | 12 | 24

/** What was known on a past day: what was noted by then, or all that happened by then, whenever it was noted. */
export type KnownBy = 'noted' | 'happened'

/**
 * The last so many spans that are wholly over, oldest first. They begin with the months of the calendar and follow one
 * another, so that no day lies in two of them; the same dates come out on whichever day one asks.
 */
export function pastSpans(asked: {
  readonly asOf: LogDate
  readonly months: SpanMonths
  readonly most: number
}): PastSpan[] {
  const { asOf, months, most } = asked
  requireWithin('most', most, 1, 1000, '')
  const at = (month: number): LogDate =>
    `${Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, '0')}-01`
  const now = Number(asOf.slice(0, 4)) * 12 + Number(asOf.slice(5, 7)) - 1
  const end = now - (now % months)
  return Array.from({ length: most }, (_, i) => {
    const from = end - (most - i) * months
    return { asOf: at(from), until: at(from + months) }
  })
}

/** Particulars that say what a set is and what is reckoned with; they are no record of what happened. */
const particulars: readonly Kind[] = ['boat', 'set', 'terms', 'use', 'overrule']

/**
 * The entries, in their current form, that were known on a day.
 *
 * `noted`: as noted by the end of that day; entries typed in later are not used, even where they tell of earlier days.
 * `happened`: everything that is known now of what happened by then. Particulars count from the first day whenever they
 * were entered, but not that a set is gone.
 */
export function entriesKnown(all: readonly Entry[], on: LogDate, by: KnownBy): readonly Entry[] {
  if (by === 'noted') return currentEntries(all, { notedBy: `${on}T23:59:59.999Z` }).entries
  return currentEntries(all).entries.map((entry): Entry => {
    if (!particulars.includes(entry.kind) || firstDay(entry.from) <= on) return entry
    const known = { ...entry, from: on, until: on }
    if (!isKind(known, 'set')) return known
    const { standing: _, ...body } = known.body
    return { ...known, body }
  })
}

/** An entry that was noted later than this after what it tells was typed in afterwards. Practice. [d] */
const lateDays = 60

/** How much of a log was noted long after it happened. */
export function notedLate(all: readonly Entry[]): { readonly late: number; readonly of: number } {
  const dated = all.filter(({ kind }) => !particulars.includes(kind))
  const late = dated.filter(({ until, noted }) => {
    const happened = until.length === 10 ? until : undefined
    return happened !== undefined && dayNumber(noted.slice(0, 10)) - dayNumber(happened) > lateDays
  })
  return { late: late.length, of: dated.length }
}
