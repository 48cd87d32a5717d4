/**
 * Running hours since the first day, from what the meters showed.
 *
 * @module
 */

import { dayNumber, daySpan, daySpanOf, firstDay, midOf } from '../logbook/dates.js'
import { type Entry, isKind } from '../logbook/kinds.js'
import type { HoursPoint, HoursTrack, MonthOfUse, SetFacts } from './register-types.js'

/** Years over which the present rate of use is taken. Practice. */
const yearsOfRate = 5
const daysPerYear = 365.25

export interface Meters {
  readonly track: HoursTrack
  readonly builtDay?: number
  /** Running hours of each entry that tells what the meter showed. */
  readonly hoursOfEntry: ReadonlyMap<string, number>
}

/**
 * The track of one set's running hours. A reading lower than the one before, without a change of meter, is left out.
 * From the last reading to the day asked for it goes on at the rate of the usual year, or of the last years.
 */
export function metersOf(
  entries: readonly Entry[],
  known: {
    readonly setFacts: SetFacts
    readonly use?: readonly MonthOfUse[] | undefined
    readonly asOfDay: number
  },
): Meters {
  const { setFacts, asOfDay } = known
  const builtDay = firstDayOf(setFacts)
  const start: HoursPoint[] = builtDay === undefined ? [] : [{ day: Math.min(builtDay, asOfDay), hours: 0 }]
  const { points, hoursOfEntry } = readingsOf(entries, { start, asOfDay, setFacts })
  const readings = points.filter(({ entry }) => entry !== undefined)
  const perYear = rateOf(points)
  const useHours = known.use?.reduce((sum, { hours }) => sum + hours, 0)
  const last = points.at(-1)
  const ahead = useHours ?? perYear
  const lastReadingDay = readings.at(-1)?.day
  if (last !== undefined && last.day < asOfDay && ahead !== undefined) {
    points.push({ day: asOfDay, hours: last.hours + (ahead * (asOfDay - last.day)) / daysPerYear })
  }
  const track = {
    points,
    ...(lastReadingDay === undefined ? {} : { lastReadingDay }),
    ...(perYear === undefined ? {} : { perYear }),
  }
  return { track, hoursOfEntry, ...(builtDay === undefined ? {} : { builtDay }) }
}

/** Running hours at a day, straight between the points; undefined where the track does not reach. */
export function hoursAt(track: HoursTrack, day: number): number | undefined {
  const { points } = track
  const after = firstFrom(points, day)
  if (after === points.length) return undefined
  const next = points[after]!
  const before = points[after - 1]
  if (before === undefined) return next.day === day ? next.hours : undefined
  if (next.day === before.day) return next.hours
  return before.hours + ((next.hours - before.hours) * (day - before.day)) / (next.day - before.day)
}

/** Place of the first point at a day or after it; past the end where there is none. */
function firstFrom(points: readonly HoursPoint[], day: number): number {
  let [low, high] = [0, points.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if (points[middle]!.day >= day) high = middle
    else low = middle + 1
  }
  return low
}

/** The middle of what an entry's dates can mean, the day asked for at the latest. */
export function dayOf(entry: Pick<Entry, 'from' | 'until'>, asOfDay: number): number {
  return Math.min(midOf(daySpanOf(entry)), asOfDay)
}

/** Entries in the order of the middles of their dates. */
export function byDay(
  entries: readonly Entry[],
  asOfDay: number,
): { readonly entry: Entry; readonly day: number }[] {
  return entries.map((entry) => ({ entry, day: dayOf(entry, asOfDay) })).sort((a, b) => a.day - b.day)
}

function firstDayOf({ built, aboardSince, hoursWhenAboard }: SetFacts): number | undefined {
  if (built !== undefined) return midOf(daySpan(built))
  return aboardSince !== undefined && !hoursWhenAboard ? midOf(daySpan(aboardSince)) : undefined
}

function readingsOf(
  entries: readonly Entry[],
  known: { readonly start: HoursPoint[]; readonly asOfDay: number; readonly setFacts: SetFacts },
): { readonly points: HoursPoint[]; readonly hoursOfEntry: ReadonlyMap<string, number> } {
  const { asOfDay, setFacts } = known
  const points = [...known.start]
  const hoursOfEntry = new Map<string, number>()
  let offset = 0
  let highest = 0
  const add = (point: HoursPoint) => {
    const before = points.at(-1)
    if (point.hours < highest || (before !== undefined && point.day < before.day)) return
    highest = point.hours
    if (before?.day === point.day) points.pop()
    points.push(point)
  }
  if (setFacts.aboardSince !== undefined && setFacts.hoursWhenAboard !== undefined) {
    add({ day: dayNumber(firstDay(setFacts.aboardSince)), hours: setFacts.hoursWhenAboard, entry: 'aboard' })
  }
  for (const { entry, day } of byDay(entries, asOfDay)) {
    if (isKind(entry, 'meter-changed')) {
      const { oldMeterHours, newMeterHours } = entry.body
      const before = Math.max(highest, oldMeterHours === undefined ? highest : oldMeterHours + offset)
      offset = before - newMeterHours
      add({ day, hours: before, entry: entry.id })
      continue
    }
    const meter = 'meterHours' in entry.body ? entry.body.meterHours : undefined
    if (meter === undefined) continue
    hoursOfEntry.set(entry.id, meter + offset)
    const starts = isKind(entry, 'hours') ? entry.body.starts : undefined
    add({ day, hours: meter + offset, entry: entry.id, ...(starts === undefined ? {} : { starts }) })
  }
  return { points, hoursOfEntry }
}

function rateOf(points: readonly HoursPoint[]): number | undefined {
  const last = points.at(-1)
  if (last === undefined) return undefined
  const recent = points.filter(({ day }) => last.day - day <= yearsOfRate * daysPerYear + 31)
  const early = [recent[0], points.at(-2), points[0]].find(
    (point) => point !== undefined && last.day - point.day >= 0.9 * daysPerYear,
  )
  const from = early ?? points[0]!
  const years = (last.day - from.day) / daysPerYear
  return years > 0.1 ? (last.hours - from.hours) / years : undefined
}
