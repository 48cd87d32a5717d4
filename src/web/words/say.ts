/**
 * Numbers, dates and lists as they are said.
 *
 * @module
 */

import { dateOfDay } from '../../logbook/dates.js'

/** The same words as at the prompt. */
export { moneyIn as sayMoney } from '../../units/money.js'

const monthNames = [
  'Jan',
  'Feb',
  'Mar',
  'Apr',
  'May',
  'Jun',
  'Jul',
  'Aug',
  'Sep',
  'Oct',
  'Nov',
  'Dec',
] as const
const wholeMonths = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const

export function monthName(month: number): string {
  return wholeMonths[month]!
}

export function monthLetter(month: number): string {
  return monthNames[month]!.charAt(0)
}

/** "14 Nov 2026", "Nov 2026" or "2026", as exact as it was written. */
export function sayDate(date: string): string {
  const [year, month, day] = date.split('-')
  const named = month === undefined ? '' : `${monthNames[Number(month) - 1]}\u00a0`
  return `${day === undefined ? '' : `${Number(day)}\u00a0`}${named}${year}`
}

export function sayDay(day: number): string {
  return sayDate(dateOfDay(day))
}

/** "1,200" or "0.4": as many figures as say something. */
export function sayNumber(value: number, digits?: number): string {
  const size = Math.abs(value)
  const most = digits ?? (size >= 100 ? 0 : size >= 10 ? 0 : size >= 1 ? 1 : size >= 0.095 ? 1 : 2)
  return formatOf(digits ?? 0, most)
    .format(value)
    .replace('-', '−')
}

const formats = new Map<number, Intl.NumberFormat>()

/** Making a format takes as long as a hundred numbers written with it. */
function formatOf(least: number, most: number): Intl.NumberFormat {
  const key = least * 32 + most
  const found = formats.get(key)
  if (found !== undefined) return found
  const made = new Intl.NumberFormat('en-GB', { minimumFractionDigits: least, maximumFractionDigits: most })
  formats.set(key, made)
  return made
}

/** A chance: "61 in 100" when it is likely, "1 in 12" when it is seldom, "under 1 in 1,000" below. */
export function sayChance(chance: number): string {
  if (chance >= 0.995) return '99 in 100 or more'
  if (chance >= 0.1) return `${Math.round(chance * 100)}\u00a0in\u00a0100`
  if (chance >= 0.001) return `1\u00a0in\u00a0${inOf(chance)}`
  return chance > 0 ? 'under 1\u00a0in\u00a01,000' : 'none seen'
}

/** How many there are to one, as round as it can be said. */
function inOf(chance: number): string {
  const many = 1 / chance
  const step = many < 30 ? 1 : many < 100 ? 5 : many < 300 ? 10 : 50
  return (Math.round(many / step) * step).toLocaleString('en-GB')
}

/** Events of so many a year: "1 in 40 years", "0.6 a year". */
export function sayRate(perYear: number): string {
  if (perYear >= 0.2) return `${sayNumber(perYear, 1)} a year`
  if (perYear < 0.0002) return 'under 1 in 5,000 years'
  return `1\u00a0in\u00a0${inOf(perYear)} years`
}

/** "4 years", "8 months". */
export function sayYears(years: number): string {
  if (years >= 100) return 'over 100 years'
  if (years >= 9.5) return `${Math.round(years)}\u00a0years`
  if (years >= 1.95) return `${sayNumber(Math.round(years * 2) / 2, undefined)}\u00a0years`
  const months = Math.max(1, Math.round(years * 12))
  return months === 12 ? '1\u00a0year' : `${months}\u00a0month${months === 1 ? '' : 's'}`
}

/** Hours and minutes of work: "20 minutes", "3 h 10 min", "1½ days". */
export function sayHours(hours: number): string {
  const minutes = Math.round(hours * 12) * 5
  if (minutes === 0) return 'nothing'
  if (minutes < 60) return `${minutes}\u00a0minutes`
  const whole = Math.floor(minutes / 60)
  const rest = minutes % 60
  return rest === 0 ? `${whole}\u00a0h` : `${whole}\u00a0h ${rest}\u00a0min`
}

/** "a, b and c" */
export function sayList(items: readonly string[], word = 'and'): string {
  if (items.length < 2) return items.join('')
  return `${items.slice(0, -1).join(', ')} ${word} ${items.at(-1)}`
}

export function lowerFirst(text: string): string {
  return /^[A-Z][A-Z]/.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1)
}

export function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** The first name of a part: what follows a comma explains it. */
export function shortName(name: string): string {
  return name.split(',')[0]!
}

export function plural(count: number, one: string, more = `${one}s`): string {
  return `${count.toLocaleString('en-GB')}\u00a0${count === 1 ? one : more}`
}

/** A sentence in which no number is parted from its unit at the end of a line. */
export function withUnits(sentence: string): string {
  return sentence.replace(/(\d) (kW|V|Hz|h|rpm|MΩ|°C|°F|days?|years?|months?)\b/g, '$1\u00a0$2')
}
