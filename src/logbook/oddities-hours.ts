/**
 * Questions about hour meters.
 *
 * @module
 */

import { daySpanOf, type LogDate } from './dates.js'
import { type Entry, isKind } from './kinds.js'
import { sayDays, sayOn } from './oddities-words.js'
import type { Oddity } from './oddity.js'

/** A meter reading, wherever it was entered. */
interface MeterReading {
  readonly id: string
  readonly hours: number
  /** First and last day on which it can have been taken. */
  readonly first: number
  readonly last: number
  /** As it was written, exact to the day or not. */
  readonly date: LogDate
}

/** Hours that fall without a change of meter, and hours that no clock allows. Entries in the order of `byDate`. */
export function hourOddities(entries: readonly Entry[]): Oddity[] {
  const asked: Oddity[] = []
  const latest = new Map<string, MeterReading>()
  for (const entry of entries) {
    if (entry.set === null) continue
    if (isKind(entry, 'meter-changed')) {
      latest.set(entry.set, readingOf(entry, entry.body.newMeterHours))
      continue
    }
    const hours = meterHoursOf(entry)
    if (hours === undefined) continue
    const now = readingOf(entry, hours)
    const before = latest.get(entry.set)
    if (before !== undefined) asked.push(...compare(before, now))
    if (before === undefined || isLater(before, now)) latest.set(entry.set, now)
  }
  return asked
}

/** What the meter showed, of any entry that tells it. */
export function meterHoursOf(entry: Entry): number | undefined {
  return 'meterHours' in entry.body ? entry.body.meterHours : undefined
}

function readingOf(entry: Entry, hours: number): MeterReading {
  return { id: entry.id, hours, date: entry.until, ...daySpanOf(entry) }
}

/** Where the days overlap, the order of the two is not known and the higher reading counts as the later. */
function isLater(before: MeterReading, now: MeterReading): boolean {
  return now.first > before.last || now.hours >= before.hours
}

function compare(before: MeterReading, now: MeterReading): Oddity[] {
  const ids = [before.id, now.id]
  const moved = Number(Math.abs(now.hours - before.hours).toFixed(1))
  if (now.hours < before.hours) {
    if (now.first <= before.last) return []
    return [
      {
        code: 'hours-fell',
        ids,
        question: `The meter showed ${now.hours} h ${sayOn(now.date)}, which is ${moved} h less than ${sayOn(before.date)} (${before.hours} h). Is one of them wrong, or was the meter changed?`,
      },
    ]
  }
  const days = Math.max(now.last, before.last) - before.first + 1
  if (now.hours - before.hours <= 24 * days) return []
  return [
    {
      code: 'hours-too-fast',
      ids,
      question:
        days === 1
          ? `The meter went from ${before.hours} h to ${now.hours} h on one day, ${now.date}: ${moved} h, and a day has 24. Is one of them wrong?`
          : `The meter went from ${before.hours} h ${sayOn(before.date)} to ${now.hours} h ${sayOn(now.date)}: ${moved} h in ${sayDays(days)}, more than 24 a day. Is one of them wrong?`,
    },
  ]
}
