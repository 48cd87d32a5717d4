/**
 * Days that let work be done: by the people it needs, and by the weather.
 *
 * Time runs in days since 1970, its fraction the part of a working day that is gone: 20.5 is the middle of day 20.
 *
 * @module
 */

import { weekdays, type workers } from '../logbook/bodies-activity.js'
import { byDate } from '../logbook/current.js'
import { dateOfDay, daySpan, daySpanOf } from '../logbook/dates.js'
import { type Entry, isKind } from '../logbook/kinds.js'

export type Worker = (typeof workers)[number]
export type Needed = Worker | 'weather'

/** When somebody is free, as the log has it. */
interface Free {
  /** Usual weekdays, the one that holds from the latest day last. Monday is 0. */
  readonly usual: readonly { readonly first: number; readonly weekdays: ReadonlySet<number> }[]
  /** Weekdays of spans that stand in the place of the usual. */
  readonly spans: readonly {
    readonly first: number
    readonly last: number
    readonly weekdays: ReadonlySet<number>
  }[]
  readonly besides: ReadonlySet<number>
  readonly never: ReadonlySet<number>
}

/** Days of everybody of whom the log says something, and the weather of the months. */
export interface DaysKnown {
  readonly free: ReadonlyMap<Needed, Free>
  /** Share of the days of each month, January first, on which outside work goes; left out: all. */
  readonly weather?: readonly number[]
}

const allWeek: ReadonlySet<number> = new Set([0, 1, 2, 3, 4, 5, 6])

/** What the log says of free days, its entries in their current form. */
export function daysKnownOf(entries: readonly Entry[]): DaysKnown {
  const free = new Map<Needed, Free>()
  let weather: number[] | undefined
  for (const entry of byDate(entries)) {
    if (!isKind(entry, 'free-days')) continue
    const { who, weekdays: named, days = [], notDays = [], months } = entry.body
    const before = free.get(who) ?? { usual: [], spans: [], besides: new Set(), never: new Set() }
    const { first, last } = daySpanOf(entry)
    const chosen = named && { first, last, weekdays: new Set(named.map((day) => weekdays.indexOf(day))) }
    const forSpan = entry.from !== entry.until
    const besides = new Set([...before.besides, ...everyDay(days)])
    const never = new Set([...before.never, ...everyDay(notDays)])
    // the later entry has the last word on a day
    for (const day of everyDay(days)) never.delete(day)
    for (const day of everyDay(notDays)) besides.delete(day)
    free.set(who, {
      usual: chosen && !forSpan ? [...before.usual, chosen] : before.usual,
      spans: chosen && forSpan ? [...before.spans, chosen] : before.spans,
      besides,
      never,
    })
    if (months !== undefined) {
      weather ??= new Array<number>(12).fill(1)
      for (const { month, share } of months) weather[month - 1] = share
    }
  }
  return { free, ...(weather === undefined ? {} : { weather }) }
}

function everyDay(dates: readonly string[]): number[] {
  return dates.flatMap((date) => {
    const { first, last } = daySpan(date)
    return Array.from({ length: last - first + 1 }, (_, i) => first + i)
  })
}

/** Whether somebody is free on a day; one of whom nothing is said is free on every day. */
export function isFree({ free }: DaysKnown, who: Needed, day: number): boolean {
  const known = free.get(who)
  if (known === undefined) return true
  if (known.never.has(day)) return false
  if (known.besides.has(day)) return true
  const span = known.spans.findLast(({ first, last }) => first <= day && day <= last)
  const usual = known.usual.findLast(({ first }) => first <= day)
  return (span?.weekdays ?? usual?.weekdays ?? allWeek).has(weekdayOf(day))
}

/** Monday is 0; 1 January 1970 was a Thursday. */
function weekdayOf(day: number): number {
  return (((day + 3) % 7) + 7) % 7
}

/** Share of the days of a day's month on which outside work goes. */
export function weatherOn({ weather }: DaysKnown, day: number): number {
  return weather === undefined ? 1 : weather[Number(dateOfDay(day).slice(5, 7)) - 1]!
}

/** Days from the first to the last, and which of them let work be done. */
export interface OpenDays {
  readonly first: number
  readonly last: number
  readonly isOpen: (day: number) => boolean
}

/** The days on which everybody who is needed is free, whatever the weather. */
export function openDaysOf(
  known: DaysKnown,
  needs: readonly Needed[],
  { first, last }: Pick<OpenDays, 'first' | 'last'>,
): OpenDays {
  const people = needs.filter((one) => known.free.has(one))
  if (people.length === 0) return { first, last, isOpen: () => true }
  const open = Uint8Array.from({ length: last - first + 1 }, (_, i) =>
    people.every((one) => isFree(known, one, first + i)) ? 1 : 0,
  )
  return { first, last, isOpen: (day) => open[day - first] === 1 }
}

/** How long something takes, and whether in one run. */
export interface Span {
  /** [d] */
  readonly days: number
  readonly inOneRun: boolean
}

/** Less than this is nothing. [d] */
const tiny = 1e-9

/**
 * When work is over that may begin at `start`: days that are not open are passed over. Infinity where the days end first.
 * In one run its days follow one another, all of them open.
 */
export function endOn({ last, isOpen }: OpenDays, start: number, { days, inOneRun }: Span): number {
  if (days <= tiny || !Number.isFinite(start)) return start
  let left = days
  let begun = start
  for (let day = Math.floor(start); day <= last; day++) {
    if (!isOpen(day)) {
      if (inOneRun) left = days
      continue
    }
    const from = Math.max(day, start)
    if (left === days) begun = from
    const room = day + 1 - from
    if (left <= room + tiny) return inOneRun ? begun + days : from + left
    left -= room
  }
  return Number.POSITIVE_INFINITY
}

/** The latest start from which work is over by `end`; −Infinity where the days begin later. */
export function latestStartOn({ first, isOpen }: OpenDays, end: number, { days, inOneRun }: Span): number {
  if (days <= tiny || !Number.isFinite(end)) return end
  let left = days
  let over = end
  for (let day = Math.ceil(end) - 1; day >= first; day--) {
    if (!isOpen(day)) {
      if (inOneRun) left = days
      continue
    }
    const until = Math.min(day + 1, end)
    if (left === days) over = until
    const room = until - day
    if (left <= room + tiny) return inOneRun ? over - days : until - left
    left -= room
  }
  return Number.NEGATIVE_INFINITY
}
