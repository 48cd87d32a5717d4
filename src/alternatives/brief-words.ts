/**
 * How a brief says dates, rates and entries.
 *
 * @module
 */

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const

/** "14 Nov 2026" of a day written 2026-11-14. */
export function sayBriefDate(date: string): string {
  const [year, month, day] = date.split('-').map(Number)
  return `${day}\u00a0${months[month! - 1]}\u00a0${year}`
}

/** Events of so many a year: "1 in 271 years", "0.6 a year", "none". */
export function sayEvents(perYear: number): string {
  if (!(perYear > 0)) return 'none'
  if (perYear >= 0.2) return `${Number(perYear.toPrecision(2))} a year`
  return `1 in ${Number((1 / perYear).toPrecision(2)).toLocaleString('en-GB')} years`
}

/** The same in a column: "271 years", "none". */
export function sayOnceIn(perYear: number): string {
  return sayEvents(perYear).replace(/^1 in /, '')
}

/** A number of days or stops a year. */
export function sayAYear(value: number): string {
  return value === 0 ? '0' : String(Number(value.toPrecision(value < 1 ? 1 : 2)))
}

export function sayCount(count: number, one: string, more = `${one}s`): string {
  return `${count.toLocaleString('en-GB')}\u00a0${count === 1 ? one : more}`
}

/** "a, b and c" */
export function sayAll(items: readonly string[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`
}

export function lower(text: string): string {
  return /^[A-Z][A-Z]/.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1)
}

export function upper(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** Entries by their numbers in the log, the latest of many. */
export type SayEntries = (ids: readonly string[], most?: number) => string

export function entriesIn(numbers: ReadonlyMap<string, number>): SayEntries {
  return (ids, most = 6) => {
    const all = [...new Set(ids)].flatMap((id) => numbers.get(id) ?? []).sort((a, b) => b - a)
    if (all.length === 0) return 'an entry on its way'
    const told = all.slice(0, most).reverse()
    const more = all.length - told.length
    const said = told.map((number) => number.toLocaleString('en-GB'))
    return `${all.length === 1 ? 'entry' : 'entries'} ${more > 0 ? `${said.join(', ')} and ${more} more` : sayAll(said)}`
  }
}
