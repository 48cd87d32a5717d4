/**
 * The calendar of a job: when it can be ready, what holds it up, by when each thing must be begun, and what to order today.
 *
 * @module
 */

import type { Problem } from '../catalogue/problem.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import { dateOfDay, dayNumber } from '../logbook/dates.js'
import type { Entry } from '../logbook/kinds.js'
import type { SetRegister } from '../register/register-types.js'
import { type Activity, activitiesOf } from './activities.js'
import { knownProgressOf } from './activities-known.js'
import { proposedActivities } from './activities-proposed.js'
import { daysAssumed, neverFree, nothingToDo, readyByProblems, sideBySide } from './calendar-asked.js'
import { daysKnownOf } from './calendar-days.js'
import { momentsOf, told, usualDays } from './calendar-lasts.js'
import {
  daysAhead,
  type Played,
  type Prepared,
  playCalendar,
  playLatest,
  prepareCalendar,
  timesAt,
} from './calendar-play.js'
import { type CalendarMonth, powerOf } from './calendar-power.js'
import type { Job } from './jobs.js'
import { networkOf } from './network.js'
import { type ByFormula, finishByFormula, type ThreePoints } from './network-pert.js'

export interface CalendarQuestion {
  readonly job: Job
  /** In their current form. */
  readonly entries: readonly Entry[]
  readonly register: SetRegister
  readonly catalogue: SetCatalogue
  /** A day by which it is to be ready. */
  readonly readyBy?: string
  readonly seed: number
  readonly histories?: number
}

/** Days that a time stays before with chances of 1, 5 and 9 in 10; null: not within three years. */
export interface DateSpread {
  readonly low: string | null
  readonly middle: string | null
  readonly high: string | null
}

export interface CalendarRow
  extends Pick<Activity, 'name' | 'what' | 'after' | 'needs' | 'inOneRun' | 'proposed'> {
  /** Entries that say something of it. */
  readonly entries: readonly string[]
  /** The fewest days, the usual number and the most; of deliveries those of 1, 5 and 9 in 10. */
  readonly days: ThreePoints & { readonly as: 'three-point' | 'delivery' }
  readonly state: Activity['progress']['is']
  /** When it was begun or done. */
  readonly since: string | null
  /** With the usual days of everything, and weather that always lets outside work go. */
  readonly plan: {
    readonly start: string
    readonly end: string
    /** Days by which it can be late without making the finish late. */
    readonly slackDays: number
    readonly onLongestWay: boolean
  }
  readonly starts: DateSpread
  readonly ends: DateSpread
  /** Share of the histories in which it was on the longest way. */
  readonly criticality: number
  /** The last days on which it may be begun, and be over, for the chance that is held; null: no day does. */
  readonly beginBy: string | null
  readonly doneBy: string | null
}

/** Something that is waited for, and what it does to begin the wait later. */
export interface CalendarOrder {
  readonly name: string
  readonly what: string
  readonly beginBy: string | null
  readonly isDue: boolean
  /** Of a week's delay with this alone, on the mean: days by which all is later, and what they cost. */
  readonly weekLater: { readonly days: number; readonly price: number }
}

export interface Calendar {
  readonly job: string
  readonly asOf: string
  readonly seed: number
  readonly histories: number
  readonly isDone: boolean
  /** In an order in which all can be done. */
  readonly rows: readonly CalendarRow[]
  readonly longestWay: readonly string[]
  readonly ready: DateSpread & { readonly likely: string | null; readonly plan: string }
  /** The day that is held to: the one asked for, else that by which it is ready 8 times in 10. */
  readonly target: {
    readonly date: string | null
    readonly isAsked: boolean
    readonly chance: number
    readonly error: number
  }
  readonly orders: readonly CalendarOrder[]
  readonly months: readonly CalendarMonth[]
  readonly currency: string
  /** On the mean: of the days without power in all, and of one day more. */
  readonly price: { readonly whole: number; readonly dayMore: number }
  readonly byFormula: ByFormula
  /** What does not go together, and what had to be taken for granted. */
  readonly problems: readonly Problem[]
  readonly assumed: readonly string[]
}

export type CalendarResult =
  | { readonly ok: true; readonly calendar: Calendar }
  | { readonly ok: false; readonly problems: readonly Problem[] }

export const usualHistories = 2000
/** The chance that is held to where another is not asked for: eight times in ten. */
const heldChance = 0.8
/** Of what chance there is where it is less than that, so much is held to. */
const heldShare = 0.95
/** Delays are tried on so many histories. */
const delayHistories = 500
const weekDays = 7

export function calendarOf(question: CalendarQuestion): CalendarResult {
  const { job, entries, register, catalogue, readyBy, seed, histories = usualHistories } = question
  const { asOf, set } = register
  const known = knownProgressOf(job, asOf)
  const proposed = proposedActivities({ job, register, catalogue, known })
  const activities = activitiesOf(proposed, entries, { job: job.name, set, asOf })
  const made = networkOf(activities.list)
  const wrong = [
    ...readyByProblems(readyBy, asOf),
    ...(activities.list.length === 0 ? [nothingToDo(job.name)] : []),
    ...(made.ok ? [] : made.problems),
  ]
  if (!made.ok || wrong.length > 0) return { ok: false, problems: [...wrong, ...activities.problems] }
  const days = daysKnownOf(entries)
  const playing = prepareCalendar({
    network: made.network,
    days,
    today: register.asOfDay,
    seed,
    histories,
  })
  const { steps } = playing.network
  const plan = timesAt(
    playing,
    steps.map(({ lasts }) => usualDays(lasts)),
  )
  const never = steps.filter((_, i) => plan.early.ends[i] === Infinity && plan.early.starts[i] !== Infinity)
  if (never.length > 0) return { ok: false, problems: [...never.map(neverFree), ...activities.problems] }
  const played = playCalendar(playing)
  const ready = readyOf(played.finish, plan.finish)
  const target = targetOf(played.finish, { readyBy, ready })
  const latest = latestOf(playing, { played, target })
  const power = powerOf(question, { playing, played })
  return {
    ok: true,
    calendar: {
      job: job.name,
      asOf,
      seed,
      histories,
      isDone: steps.every(({ progress }) => progress.is === 'done'),
      rows: steps.map((step, i) => rowOf(step, { i, plan, played, latest })),
      longestWay: steps.flatMap(({ name, progress }, i) =>
        plan.onWay[i] && progress.is !== 'done' ? [name] : [],
      ),
      ready,
      target,
      orders: ordersOf(playing, { latest, target, price: power.price }),
      months: power.months,
      currency: register.boatFacts.currency ?? 'USD',
      price: power.mean,
      byFormula: finishByFormula(
        playing.network,
        steps.map(({ lasts, progress }) => (progress.is === 'done' ? atOnce : momentsOf(lasts))),
      ),
      problems: activities.problems,
      assumed: [
        ...activities.assumed,
        ...daysAssumed(steps, days),
        ...sideBySide(playing.network),
        ...power.assumed,
      ],
    },
  }
}

const atOnce = { mean: 0, sd: 0 }

/** The day of a time at which something begins. */
function dayBegun(time: number): string | null {
  return Number.isFinite(time) ? dateOfDay(Math.floor(time + 1e-9)) : null
}

/** The day at whose end, at the latest, something is over. */
function dayOver(time: number): string | null {
  return Number.isFinite(time) ? dateOfDay(Math.ceil(time - 1e-9) - 1) : null
}

function rising(times: Float64Array): Float64Array {
  return times.toSorted()
}

/** The time under which so many of all stay, smallest first. */
function pointOf(sorted: Float64Array, chance: number): number {
  return sorted[Math.max(0, Math.ceil(chance * sorted.length - 1e-9) - 1)]!
}

function spreadOf(times: Float64Array, dayOf: (time: number) => string | null): DateSpread {
  const sorted = rising(times)
  const at = (chance: number) => dayOf(pointOf(sorted, chance))
  return { low: at(0.1), middle: at(0.5), high: at(0.9) }
}

function readyOf(finish: Float64Array, planned: number): Calendar['ready'] {
  const likely = dayOver(pointOf(rising(finish), heldChance))
  return { ...spreadOf(finish, dayOver), likely, plan: dayOver(planned)! }
}

/** With the standard error of a share of so many histories, √(p (1 − p)/n). */
function targetOf(
  finish: Float64Array,
  { readyBy, ready }: { readonly readyBy: string | undefined; readonly ready: Calendar['ready'] },
): Calendar['target'] {
  const date = readyBy ?? ready.likely
  if (date === null) return { date, isAsked: false, chance: 0, error: 0 }
  const chance = finish.filter((time) => time <= dayNumber(date) + 1 + 1e-9).length / finish.length
  return {
    date,
    isAsked: readyBy !== undefined,
    chance,
    error: Math.sqrt((chance * (1 - chance)) / finish.length),
  }
}

/** By the place of each activity the last days on which it may be begun, and be over. */
interface Latest {
  readonly begin: readonly (string | null)[]
  readonly done: readonly (string | null)[]
}

/**
 * The last day D on which, with everything else as soon as can be, P(all is ready in time and this one may wait until D)
 * is still what is held to: among the histories that are ready in time those with the latest start, down to that share.
 */
function latestOf(
  playing: Prepared,
  { played, target }: { readonly played: Played; readonly target: Calendar['target'] },
): Latest {
  const none = playing.network.steps.map(() => null)
  if (target.date === null) return { begin: none, done: none }
  // no day past those that are looked at
  const until = Math.min(dayNumber(target.date), playing.today + daysAhead) + 1
  const latest = playLatest(playing, until)
  const inTime = (_: number, h: number) => played.finish[h]! <= until + 1e-9
  const held = Math.ceil(Math.min(heldChance, heldShare * target.chance) * playing.histories - 1e-9)
  if (held <= 0) return { begin: none, done: none }
  const lastOf = (times: Float64Array) => rising(times.filter(inTime)).at(-held)!
  return {
    begin: latest.starts.map((times) => dayBegun(lastOf(times))),
    done: latest.ends.map((times) => dayOver(lastOf(times))),
  }
}

function rowOf(
  step: Activity,
  of: {
    readonly i: number
    readonly plan: ReturnType<typeof timesAt>
    readonly played: Played
    readonly latest: Latest
  },
): CalendarRow {
  const { i, plan, played, latest } = of
  const { name, what, after, needs, inOneRun, proposed, entries, progress, lasts } = step
  const slack = plan.late.ends[i]! - plan.early.ends[i]!
  const isDone = progress.is === 'done'
  const isToDo = progress.is === 'to-do'
  const begun = progress.is === 'to-do' ? undefined : dateOfDay(progress.day)
  const asSaid = (date: string) => ({ low: date, middle: date, high: date })
  return {
    name,
    what,
    after,
    needs,
    inOneRun,
    proposed,
    entries,
    days: { ...told(lasts), as: lasts.is },
    state: progress.is,
    since: begun ?? null,
    plan: {
      start: begun ?? dayBegun(plan.early.starts[i]!)!,
      end: isDone ? begun! : dayOver(plan.early.ends[i]!)!,
      slackDays: isDone ? 0 : Math.max(0, Math.floor(slack + 1e-9)),
      onLongestWay: !isDone && plan.onWay[i]!,
    },
    starts: begun === undefined ? spreadOf(played.starts[i]!, dayBegun) : asSaid(begun),
    ends: isDone ? asSaid(begun!) : spreadOf(played.ends[i]!, dayOver),
    criticality: Math.min(1, played.critical[i]!),
    beginBy: isToDo ? latest.begin[i]! : null,
    doneBy: isDone ? null : latest.done[i]!,
  }
}

/** Where there is less chance than is wished for, what makes all later by so much is ordered at once. [d] */
const feltLater = 0.5

/** What a supplier is waited for and is not ordered yet. */
function ordersOf(
  playing: Prepared,
  of: {
    readonly latest: Latest
    readonly target: Calendar['target']
    readonly price: (played: Played) => number
  },
): CalendarOrder[] {
  const { today } = playing
  const few = { ...playing, histories: Math.min(playing.histories, delayHistories) }
  const waits = playing.network.steps.flatMap((step, place) =>
    step.progress.is === 'to-do' && step.needs.includes('supplier') ? [{ step, place }] : [],
  )
  if (waits.length === 0) return []
  const meanFinish = (played: Played) =>
    meanOf(played.finish.map((time) => Math.min(time, today + daysAhead)))
  const asSoon = playCalendar(few)
  return waits.map(({ step: { name, what }, place }) => {
    const held = playCalendar(few, { place, until: today + weekDays })
    const weekLater = {
      days: meanFinish(held) - meanFinish(asSoon),
      price: of.price(held) - of.price(asSoon),
    }
    const beginBy = of.latest.begin[place]!
    const isLast = beginBy === null || dayNumber(beginBy) <= today
    const isFelt = of.target.chance < heldChance && weekLater.days >= feltLater
    return { name, what, beginBy, isDue: isLast || isFelt, weekLater }
  })
}

function meanOf(list: Float64Array): number {
  return list.reduce((sum, each) => sum + each, 0) / list.length
}
