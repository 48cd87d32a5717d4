/**
 * The calendar of a job played: each history draws its days and its weather, and is worked through forward and back.
 *
 * @module
 */

import { threefryUniform } from '../forecast/threefry.js'
import type { Activity } from './activities.js'
import {
  type DaysKnown,
  endOn,
  isFree,
  latestStartOn,
  type OpenDays,
  openDaysOf,
  weatherOn,
} from './calendar-days.js'
import { type BetaTables, type DrawDays, drawOf } from './calendar-lasts.js'
import { earliestTimes, emptyTimes, latestTimes, longestWay, type Network, type Times } from './network.js'

export interface Playing {
  readonly network: Network<Activity>
  readonly days: DaysKnown
  /** [d since 1970] */
  readonly today: number
  readonly seed: number
  readonly histories: number
}

/** Ready to be played: what every history has in common is made once. */
export interface Prepared extends Playing {
  readonly draws: (history: number) => History
}

/** One that is not begun before a day, though it could be: what a delay does on the same draws. */
export interface Held {
  readonly place: number
  readonly until: number
}

/** What was played; times by the place of the activity, then by history. [d since 1970] */
export interface Played {
  readonly starts: readonly Float64Array[]
  readonly ends: readonly Float64Array[]
  readonly finish: Float64Array
  /** Share of the histories in which an activity was on the longest way: its criticality index. */
  readonly critical: readonly number[]
}

/** Days ahead that are looked at; what is not over by then is not told. */
export const daysAhead = 1096

export function prepareCalendar(playing: Playing): Prepared {
  return { ...playing, draws: drawsOf(playing) }
}

export function playCalendar({ network, today, histories, draws }: Prepared, held?: Held): Played {
  const { steps } = network
  const starts = steps.map(() => new Float64Array(histories))
  const ends = steps.map(() => new Float64Array(histories))
  const finish = new Float64Array(histories)
  const critical = steps.map(() => 0)
  const times = emptyTimes(steps.length)
  for (let h = 0; h < histories; h++) {
    const { endOf } = draws(h)
    const late = (i: number, start: number) =>
      endOf(i, i === held?.place ? Math.max(start, held.until) : start)
    finish[h] = earliestTimes(network, { from: today, endOf: late, into: times })
    const way = longestWay(network, times)
    steps.forEach(({ progress }, i) => {
      starts[i]![h] = times.starts[i]!
      ends[i]![h] = times.ends[i]!
      if (way[i] && progress.is !== 'done') critical[i]! += 1 / histories
    })
  }
  return { starts, ends, finish, critical }
}

/** Of each activity when it must begin and be over in each history, for all to be done by a time. */
export function playLatest(
  { network, histories, draws }: Prepared,
  until: number,
): Pick<Played, 'starts' | 'ends'> {
  const { steps } = network
  const starts = steps.map(() => new Float64Array(histories))
  const ends = steps.map(() => new Float64Array(histories))
  const times = emptyTimes(steps.length)
  for (let h = 0; h < histories; h++) {
    latestTimes(network, { until, startOf: draws(h).startOf, into: times })
    copyInto(starts, times.starts, h)
    copyInto(ends, times.ends, h)
  }
  return { starts, ends }
}

function copyInto(rows: readonly Float64Array[], from: Float64Array, h: number): void {
  rows.forEach((row, i) => {
    row[h] = from[i]!
  })
}

/** Times without chance: each takes its usual days, and outside work goes on any day. */
export function timesAt(
  { network, days, today }: Pick<Playing, 'network' | 'days' | 'today'>,
  lasts: readonly number[],
): {
  readonly early: Times
  readonly late: Times
  readonly finish: number
  readonly onWay: readonly boolean[]
} {
  const { steps } = network
  const worked = steps.map((step) => workedOf(step, { days, today }))
  const early = emptyTimes(steps.length)
  const endOf = (i: number, start: number) =>
    worked[i]!.endOf(start, Math.max(lasts[i]!, worked[i]!.gone), anyDay)
  const finish = earliestTimes(network, { from: today, endOf, into: early })
  const late = emptyTimes(steps.length)
  const startOf = (i: number, end: number) =>
    worked[i]!.startOf(end, Math.max(lasts[i]!, worked[i]!.gone), anyDay)
  latestTimes(network, { until: finish, startOf, into: late })
  return { early, late, finish, onWay: longestWay(network, early) }
}

type IsDay = (day: number) => boolean
const anyDay: IsDay = () => true

interface Worked {
  /** Days of it that are gone. */
  readonly gone: number
  readonly endOf: (start: number, lasts: number, goes: IsDay) => number
  readonly startOf: (end: number, lasts: number, goes: IsDay) => number
}

/** How an activity goes over the days that let it be worked at. */
function workedOf(
  { needs, inOneRun, progress }: Activity,
  { days, today }: { readonly days: DaysKnown; readonly today: number },
): Worked {
  if (progress.is === 'done') {
    // what was done today is behind us too
    const end = Math.min(progress.day + 1, today)
    return { gone: 0, endOf: () => end, startOf: (until) => until }
  }
  const open = openDaysOf(days, needs, { first: today, last: today + daysAhead })
  const isOutside = needs.includes('weather') && days.weather !== undefined
  const within = (goes: IsDay): OpenDays =>
    isOutside ? { ...open, isOpen: (day) => open.isOpen(day) && goes(day) } : open
  const gone = progress.is === 'begun' ? daysGone(days, needs, { from: progress.day, until: today }) : 0
  return {
    gone,
    endOf: (start, lasts, goes) => endOn(within(goes), start, { days: lasts - gone, inOneRun }),
    startOf: (end, lasts, goes) => latestStartOn(within(goes), end, { days: lasts - gone, inOneRun }),
  }
}

/** Days since it was begun on which it could be worked at, today not among them. */
function daysGone(
  days: DaysKnown,
  needs: Activity['needs'],
  { from, until }: { readonly from: number; readonly until: number },
): number {
  let gone = 0
  for (let day = from; day < until; day++) if (needs.every((one) => isFree(days, one, day))) gone++
  return gone
}

/** One history: when each activity is over from a start, and from which start it is over in time. */
export interface History {
  readonly endOf: (place: number, start: number) => number
  readonly startOf: (place: number, end: number) => number
}

/** Streams of the cipher: the draws of an activity from `stream` on, the weather of a day on one of its own. */
const stream = 0x63616c00
const weatherStream = stream + 0x80

/**
 * A draw is a function of seed, history, the name of the activity and which draw of it it is: the same activity lasts equally
 * long in the same history whatever stands beside it. All outside work of a day has the same weather.
 */
function drawsOf({ network, days, today, seed }: Playing): (history: number) => History {
  const { steps } = network
  const ids = idsOf(steps.map(({ name }) => name))
  const tables: BetaTables = new Map()
  const draw: readonly DrawDays[] = steps.map(({ lasts }) => drawOf(lasts, tables))
  const worked = steps.map((step) => workedOf(step, { days, today }))
  const chances = Float64Array.from({ length: daysAhead + 1 }, (_, i) => weatherOn(days, today + i))
  return (history) => {
    const lasts = steps.map((_, i) =>
      draw[i]!((n) => threefryUniform(seed, stream + n, history, ids[i]!), worked[i]!.gone),
    )
    const goes: IsDay = (day) => {
      const chance = chances[day - today]!
      return chance >= 1 || threefryUniform(seed, weatherStream, history, day) < chance
    }
    return {
      endOf: (i, start) => worked[i]!.endOf(start, lasts[i]!, goes),
      startOf: (i, end) => worked[i]!.startOf(end, lasts[i]!, goes),
    }
  }
}

/** A number for each name that hangs on the name alone (FNV-1a), the next free one where two would share it. */
function idsOf(names: readonly string[]): number[] {
  const taken = new Map<number, string>()
  for (const name of names.toSorted()) {
    let id = 0x811c9dc5
    for (const letter of name) id = Math.imul(id ^ letter.charCodeAt(0), 0x01000193) >>> 0
    while (taken.has(id)) id = (id + 1) >>> 0
    taken.set(id, name)
  }
  const byName = new Map([...taken].map(([id, name]) => [name, id]))
  return names.map((name) => byName.get(name)!)
}
