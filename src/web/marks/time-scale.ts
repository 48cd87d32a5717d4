/**
 * Months along the page: their letters, their years, and where the set is laid up; and days along it.
 *
 * @module
 */

import type { MonthAhead } from '../../alternatives/month-by-month.js'
import { dateOfDay, type LogDate } from '../../logbook/dates.js'

/** A run of months in which the set is laid up, in hundredths of the width. */
export interface LaidUp {
  readonly from: number
  readonly width: number
  /** Months in it. */
  readonly months: number
}

/** Runs of laid-up months; none where the set is laid up all the time or never. */
export function laidUpSpans(months: readonly Pick<MonthAhead, 'laidUp'>[]): LaidUp[] {
  const each = 100 / months.length
  const spans: LaidUp[] = []
  months.forEach(({ laidUp }, k) => {
    const last = spans.at(-1)
    if (!laidUp) return
    if (last !== undefined && k > 0 && months[k - 1]!.laidUp) {
      spans[spans.length - 1] = { ...last, width: last.width + each, months: last.months + 1 }
    } else {
      spans.push({ from: k * each, width: each, months: 1 })
    }
  })
  return spans
}

/** Where each calendar year begins, in hundredths of the width, and which it is. */
export function yearStarts(
  months: readonly MonthAhead[],
  firstYear: number,
): { readonly at: number; readonly year: number }[] {
  return months.flatMap(({ month, yearsOn }, k) =>
    k === 0 || month === 0 ? [{ at: (100 * k) / months.length, year: firstYear + yearsOn }] : [],
  )
}

/** Nearer than this, words at two moments would meet. [months] */
const few = 4

/** A moment that words are put to: the last month before a lay-up, or where there is none half a year, a year, the end. */
export function worthSaying(months: readonly MonthAhead[]): number[] {
  const last = months.length - 1
  const ends = months.flatMap(({ laidUp }, k) => (!laidUp && months[k + 1]?.laidUp && k > 0 ? [k] : []))
  const chosen = ends.length > 0 ? ends : [6, 12].filter((k) => k < last)
  const beforeEnd = last - (chosen.at(-1) ?? 0) < few ? chosen : [...chosen, last]
  return [...new Set(beforeEnd)]
}

/** Days along the page, from the first to the last of them. [d since 1970] */
export interface DayScale {
  readonly low: number
  readonly high: number
  /** Where months begin, or weeks where there are few days, with the date of each. */
  readonly ticks: readonly { readonly day: number; readonly date: LogDate }[]
}

/** A scale of days is at least so long. [d] */
const shortest = 14
/** Longer ones are ticked by months, or by a few of them. [d] */
const ticksByWeek = 50
const mostTicks = 7

/** A scale that holds every day given, with a day's room at its ends. */
export function dayScale(days: readonly number[]): DayScale {
  const low = Math.floor(Math.min(...days))
  const high = Math.max(low + shortest, Math.ceil(Math.max(...days)) + 1)
  const all = Array.from({ length: high - low }, (_, i) => low + i)
  const begins = all.filter((day) =>
    high - low <= ticksByWeek ? (day + 3) % 7 === 0 : dateOfDay(day).endsWith('-01'),
  )
  const each = Math.max(1, Math.ceil(begins.length / mostTicks))
  const ticks = begins.filter((_, i) => i % each === 0).map((day) => ({ day, date: dateOfDay(day) }))
  return { low, high, ticks }
}
