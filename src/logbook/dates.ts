/**
 * Local dates that are exact to a day, a month or a year: `2019-05-12`, `2019-05`, `2019`.
 *
 * A paper log often says no more than "spring 2011". Such a date is a span of days; what is asked of it says which end
 * of the span it means. Days are counted from 1 January 1970, so that two of them can be subtracted.
 *
 * @module
 */

/** `2019`, `2019-05` or `2019-05-12`. */
export type LogDate = string

/** Number of days since 1 January 1970. [d] */
export type DayNumber = number

/** First and last day on which something can have happened, both included. */
export interface DaySpan {
  readonly first: DayNumber
  readonly last: DayNumber
}

/** How exactly a date is known. */
export type Exactness = 'day' | 'month' | 'year'

export const logDatePattern = /^(?:19|20|21)\d\d(?:-(?:0[1-9]|1[0-2])(?:-(?:0[1-9]|[12]\d|3[01]))?)?$/

const msPerDay = 86_400_000
const daysPerYear = 365.2425

/** Whether a text is such a date and, where it names a day, a day that the calendar has. */
export function isLogDate(text: string): boolean {
  if (!logDatePattern.test(text)) return false
  return text.length < 10 || Number(text.slice(8)) <= daysInMonth(text.slice(0, 7))
}

export function exactnessOf(date: LogDate): Exactness {
  if (date.length === 4) return 'year'
  return date.length === 7 ? 'month' : 'day'
}

/** The first day that the date can mean, written out: `2019` gives `2019-01-01`. */
export function firstDay(date: LogDate): LogDate {
  if (date.length === 10) return date
  return date.length === 7 ? `${date}-01` : `${date}-01-01`
}

/** The last day that the date can mean, written out: `2019-02` gives `2019-02-28`. */
export function lastDay(date: LogDate): LogDate {
  if (date.length === 10) return date
  return date.length === 7 ? `${date}-${daysInMonth(date)}` : `${date}-12-31`
}

/** Days since 1 January 1970 of a date exact to the day. [d] */
export function dayNumber(day: LogDate): DayNumber {
  if (day.length !== 10 || !isLogDate(day)) {
    throw new RangeError(`day must be a date exact to the day; found ${day}`)
  }
  return Date.parse(day) / msPerDay
}

/** The date of a day number, exact to the day. */
export function dateOfDay(day: DayNumber): LogDate {
  return new Date(day * msPerDay).toISOString().slice(0, 10)
}

/** The days that a date can mean. */
export function daySpan(date: LogDate): DaySpan {
  return { first: dayNumber(firstDay(date)), last: dayNumber(lastDay(date)) }
}

/** The days from the first that `from` can mean to the last that `until` can mean. */
export function daySpanOf(span: { readonly from: LogDate; readonly until: LogDate }): DaySpan {
  return { first: dayNumber(firstDay(span.from)), last: dayNumber(lastDay(span.until)) }
}

/** The middle of a span; may fall on half a day. [d since 1970] */
export function midOf(span: DaySpan): DayNumber {
  return (span.first + span.last) / 2
}

/** Below zero where `a` comes first: by the first day each can mean, then by the last. */
export function compareDates(a: LogDate, b: LogDate): number {
  return compareTexts(firstDay(a), firstDay(b)) || compareTexts(lastDay(a), lastDay(b))
}

/** Whether every day that `a` can mean lies before every day that `b` can mean. */
export function isSurelyBefore(a: LogDate, b: LogDate): boolean {
  return lastDay(a) < firstDay(b)
}

/** Mean Gregorian years between two day numbers. [a] */
export function yearsBetween(span: DaySpan): number {
  return (span.last - span.first) / daysPerYear
}

/** Compares two instants as entries write them, with or without thousandths: below zero where `a` is the earlier. */
export function compareInstants(a: string, b: string): number {
  return a.length === b.length ? compareTexts(a, b) : compareTexts(a.slice(0, -1), b.slice(0, -1))
}

function compareTexts(a: string, b: string): number {
  if (a === b) return 0
  return a < b ? -1 : 1
}

/** Days of a month such as `2024-02`, by the Gregorian rule. */
function daysInMonth(text: string): number {
  const year = Number(text.slice(0, 4))
  const month = Number(text.slice(5, 7))
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31
}
