/**
 * Dates as people write them in a log.
 *
 * @module
 */

import { isLogDate, type LogDate } from './dates.js'

/** Which comes first in 3/4/2019. */
export type DateOrder = 'day-first' | 'month-first'

/** A date that can be read, exact to day, month or year; or numbers of which the order must be known. */
export type WrittenDate =
  | { readonly date: LogDate }
  | { readonly first: number; readonly second: number; readonly year: number }

const monthNames = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']

/**
 * Reads `2019-05-12`, `2019/05`, `2019`, `12.5.2019`, `5/12/19`, `05/2019`, `12 May 2019`, `May 12, 2019`, `May 2019`, `12-May-19`.
 * Years of two digits: 70 to 99 are of the last century, 00 to 69 of this one.
 */
export function readDate(text: string): WrittenDate | undefined {
  const words = text
    .trim()
    .toLowerCase()
    .replace(/(\d)(st|nd|rd|th)\b/g, '$1')
  const pieces = words.split(/[\s,./-]+/).filter((piece) => piece !== '')
  const numbers = pieces.map((piece) => (/^\d+$/.test(piece) ? Number(piece) : Number.NaN))
  const named = pieces.findIndex((piece) => /^[a-z]{3,9}$/.test(piece))
  if (named >= 0) return readNamed(pieces, named)
  const [a = Number.NaN, b = Number.NaN, c = Number.NaN] = numbers
  if (numbers.some(Number.isNaN)) return undefined
  switch (pieces.length) {
    case 1:
      return pieces[0]?.length === 4 ? checked(a) : undefined
    case 2:
      return pieces[0]?.length === 4 ? checked(a, b) : pieces[1]?.length === 4 ? checked(b, a) : undefined
    case 3:
      if (pieces[0]?.length === 4) return checked(a, b, c)
      return [2, 4].includes(pieces[2]?.length ?? 0) ? { first: a, second: b, year: century(c) } : undefined
    default:
      return undefined
  }
}

/** The date that numbers mean in one order; undefined where the calendar has none. */
export function inOrder(written: WrittenDate, order: DateOrder): LogDate | undefined {
  if ('date' in written) return written.date
  const { first, second, year } = written
  const read = order === 'day-first' ? checked(year, second, first) : checked(year, first, second)
  return read?.date
}

/** A month in letters, with a day, a year or both around it. */
function readNamed(pieces: readonly string[], at: number): { date: LogDate } | undefined {
  const name = pieces[at] ?? ''
  const month = monthNames.findIndex((known) => name.startsWith(known)) + 1
  const others = pieces.filter((_, index) => index !== at)
  if (month === 0 || others.some((piece) => !/^\d+$/.test(piece))) return undefined
  const [first = '', second] = others
  if (others.length === 1) return first.length === 4 ? checked(Number(first), month) : undefined
  if (others.length !== 2 || second === undefined) return undefined
  return checked(century(Number(second)), month, Number(first))
}

function century(year: number): number {
  if (year >= 100) return year
  return year >= 70 ? 1900 + year : 2000 + year
}

function checked(year: number, month?: number, day?: number): { date: LogDate } | undefined {
  const two = (number: number) => String(number).padStart(2, '0')
  const date = [
    String(year),
    ...[month, day].flatMap((part) => (part === undefined ? [] : [two(part)])),
  ].join('-')
  return isLogDate(date) ? { date } : undefined
}
