/**
 * Times as meters and loggers write them.
 *
 * Every time comes out as seconds since 1970 on the boat's own clock: hours of the day are what counts.
 *
 * @module
 */

import { type DateOrder, inOrder, readDate } from '../logbook/paper-log-dates.js'

/** How a column of times is to be read. */
export type TimeForm =
  /** A date and a time of day. */
  | 'written'
  /** Since 1970, universal time. */
  | 'epoch-seconds'
  | 'epoch-milliseconds'
  /** Days since 30 December 1899, as spreadsheets count. */
  | 'spreadsheet-days'
  /** Since the log began. */
  | 'elapsed-seconds'

export interface TimeRules {
  readonly form: TimeForm
  readonly order: DateOrder
  /** The boat's clock before universal time, for times written in that. [s] */
  readonly offsetS: number
}

const daySeconds = 86_400
/** 30 December 1899 before 1970. [days] */
const spreadsheetZero = 25_569

/** Which form a column has, from some of its texts: the first that all of them fit. */
export function timeFormOf(texts: readonly string[]): TimeForm | undefined {
  const numbers = texts.map((text) =>
    /^\d+(?:[.,]\d+)?$/.test(text.trim()) ? Number(text.trim().replace(',', '.')) : Number.NaN,
  )
  if (texts.length === 0) return undefined
  if (numbers.every((value) => value >= 3e11 && value < 5e12)) return 'epoch-milliseconds'
  if (numbers.every((value) => value >= 3e8 && value < 5e9)) return 'epoch-seconds'
  if (
    numbers.every((value) => value >= 30_000 && value < 80_000) &&
    numbers.some((value) => value % 1 !== 0)
  ) {
    return 'spreadsheet-days'
  }
  if (numbers.every((value) => value >= 0)) return 'elapsed-seconds'
  const reads = (order: DateOrder) => {
    const read = timeReader({ form: 'written', order, offsetS: 0 })
    return texts.some((text) => read(text) !== undefined)
  }
  return reads('day-first') || reads('month-first') ? 'written' : undefined
}

/** Reads one time after another: seconds, or undefined where a text is no time. */
export function timeReader(rules: TimeRules): (text: string) => number | undefined {
  const days = dayReader(rules.order)
  return rules.form === 'written'
    ? (text) => readWritten(text, rules, days)
    : (text) => readNumber(text, rules)
}

function readNumber(text: string, rules: TimeRules): number | undefined {
  const value = Number(text.replace(',', '.'))
  if (text.trim() === '' || !Number.isFinite(value)) return undefined
  switch (rules.form) {
    case 'epoch-seconds':
      return value + rules.offsetS
    case 'epoch-milliseconds':
      return value / 1000 + rules.offsetS
    case 'spreadsheet-days':
      return (value - spreadsheetZero) * daySeconds
    default:
      return value
  }
}

/** Whether day or month comes first, as shown by a number above twelve; undefined: nothing shows it. */
export function orderShownBy(texts: readonly string[]): DateOrder | 'both' | 'does-not-matter' | undefined {
  let dayFirst = false
  let monthFirst = false
  let matters = false
  for (const text of texts) {
    const written = readDate(dateIn(text))
    if (written === undefined || !('first' in written)) continue
    if (written.first !== written.second) matters = true
    if (inOrder(written, 'month-first') === undefined) dayFirst = true
    else if (inOrder(written, 'day-first') === undefined) monthFirst = true
  }
  if (dayFirst && monthFirst) return 'both'
  if (dayFirst) return 'day-first'
  if (monthFirst) return 'month-first'
  return matters ? undefined : 'does-not-matter'
}

/** The commonest form by its fixed places: `2024-05-12 14:03:22`, T or a blank between. */
function readFixed(text: string): number | undefined {
  if (
    text.length < 19 ||
    text.charCodeAt(4) !== 45 ||
    text.charCodeAt(13) !== 58 ||
    text.charCodeAt(16) !== 58
  ) {
    return undefined
  }
  const year = digits(text, 0, 4)
  const month = digits(text, 5, 2)
  const day = digits(text, 8, 2)
  const seconds = digits(text, 11, 2) * 3600 + digits(text, 14, 2) * 60 + digits(text, 17, 2)
  if (!(month >= 1 && month <= 12 && day >= 1 && day <= 31 && seconds < 2 * daySeconds)) return undefined
  return dayOf(year, month, day) * daySeconds + seconds
}

function digits(text: string, from: number, count: number): number {
  let value = 0
  for (let at = from; at < from + count; at++) {
    const digit = text.charCodeAt(at) - 48
    if (digit < 0 || digit > 9) return Number.NaN
    value = 10 * value + digit
  }
  return value
}

const clockForm =
  /(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,](\d{1,9}))?)?\s*([ap])?\.?m?\.?\s*(z|utc|gmt|[+-]\d{2}:?\d{2})?$/i

function readWritten(given: string, rules: TimeRules, days: Days): number | undefined {
  const text = given.trim()
  const fixed = text.length === 19 ? readFixed(text) : undefined
  if (fixed !== undefined) return fixed
  const clock = clockForm.exec(text)
  if (clock === null) return undefined
  const [, hour = '', minute = '', second = '0', fraction = '', half, zone] = clock
  const day = days(text.slice(0, clock.index))
  const hours =
    half === undefined ? Number(hour) : (Number(hour) % 12) + (half.toLowerCase() === 'p' ? 12 : 0)
  if (day === undefined || hours > 24 || Number(minute) > 59 || Number(second) > 60) return undefined
  const universal = zone !== undefined && /^(z|utc|gmt)$/i.test(zone)
  return (
    day * daySeconds +
    hours * 3600 +
    Number(minute) * 60 +
    Number(second) +
    (fraction === '' ? 0 : Number(`0.${fraction}`)) +
    (universal ? rules.offsetS : 0)
  )
}

/** The date before the time of day. */
function dateIn(text: string): string {
  const trimmed = text.trim()
  const clock = clockForm.exec(trimmed)
  return (clock === null ? trimmed : trimmed.slice(0, clock.index)).replace(/[T,\s]+$/, '')
}

type Days = (text: string) => number | undefined

/** Logs hold the same date many times over: the last one read is kept. */
function dayReader(order: DateOrder): Days {
  let lastText: string | undefined
  let lastDay: number | undefined
  return (text) => {
    if (text === lastText) return lastDay
    const bare = dateIn(text)
    const packed = /^(\d{4})(\d{2})(\d{2})$/.exec(bare)
    const written = readDate(packed ? `${packed[1]}-${packed[2]}-${packed[3]}` : bare)
    const date = written === undefined ? undefined : inOrder(written, order)
    lastText = text
    lastDay =
      date?.length === 10
        ? dayOf(Number(date.slice(0, 4)), Number(date.slice(5, 7)), Number(date.slice(8)))
        : undefined
    return lastDay
  }
}

/** Days from 1 January 1970, by the proleptic Gregorian calendar. */
function dayOf(year: number, month: number, day: number): number {
  const shifted = month <= 2 ? year - 1 : year
  const era = Math.floor(shifted / 400)
  const ofEra = shifted - era * 400
  const ofYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1
  return era * 146_097 + ofEra * 365 + Math.floor(ofEra / 4) - Math.floor(ofEra / 100) + ofYear - 719_468
}
