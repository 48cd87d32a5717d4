/**
 * What is to be done in a job: what the job proposes, as the log has changed it, and how far each thing has come.
 *
 * @module
 */

import type { Problem } from '../catalogue/problem.js'
import { byDate } from '../logbook/current.js'
import { dateOfDay, dayNumber, firstDay, lastDay } from '../logbook/dates.js'
import { type Body, type Entry, type EntryOf, isKind } from '../logbook/kinds.js'
import type { Needed } from './calendar-days.js'
import type { Lasts } from './calendar-lasts.js'
import type { Step } from './network.js'

/** How far something has come: on which day it was begun, or done. [d since 1970] */
export type Progress =
  | { readonly is: 'to-do' }
  | { readonly is: 'begun'; readonly day: number }
  | { readonly is: 'done'; readonly day: number }

export interface Activity extends Step {
  readonly what: string
  readonly lasts: Lasts
  readonly needs: readonly Needed[]
  readonly inOneRun: boolean
  readonly progress: Progress
  /** Whether the job proposes it; else the log alone has it. */
  readonly proposed: boolean
  /** Entries that say something of it. */
  readonly entries: readonly string[]
  /** From when it begins the set gives no power. */
  readonly opensSet: boolean
}

export interface Activities {
  readonly list: readonly Activity[]
  /** Days that do not go together: nothing is lost by them, and the later one holds. */
  readonly problems: readonly Problem[]
  readonly assumed: readonly string[]
}

export interface OfJob {
  readonly job: string
  readonly set: string
  /** Exact to the day; what is dated later has not happened yet. */
  readonly asOf: string
}

/** What the job proposes as its entries have changed it; entries in their current form. */
export function activitiesOf(
  proposed: readonly Activity[],
  entries: readonly Entry[],
  { job, set, asOf }: OfJob,
): Activities {
  const { told, problems } = toldBy(entries, { job, set, asOf })
  const list = new Map(proposed.map((one) => [one.name, one]))
  const out = new Set<string>()
  for (const { entry, day } of told) {
    const { body } = entry
    const before = list.get(body.name) ?? ownActivity(body.name)
    list.set(body.name, changedBy(before, body, { id: entry.id, day }))
    if (body.state === 'left-out') out.add(body.name)
    else if (body.state !== undefined) out.delete(body.name)
  }
  const assumed = [...list.values()]
    .filter(({ name, lasts }) => lasts === ownDays && !out.has(name))
    .map(({ name }) => `how long ${name} takes is not said: ${ownDaysWords}`)
  const kept = withoutThose(list, out)
  const { done, problems: turned } = doneInTurn(kept)
  return { list: done, problems: [...problems, ...turned], assumed }
}

/** Of what the owner adds without saying how long it takes. Practice. */
const ownDays = { is: 'three-point', low: 0.5, usual: 1, high: 3 } as const
const ownDaysWords = 'taken as 1 day, half a day at least and 3 at most'
/** Where only the usual days are said: the fewest and the most as multiples of them. Practice. */
export const spreadOfDays = { low: 0.7, high: 2.5 } as const

function ownActivity(name: string): Activity {
  return {
    name,
    what: name.replaceAll('-', ' ').replace(/^./, (first) => first.toUpperCase()),
    after: [],
    lasts: ownDays,
    needs: ['owner'],
    inOneRun: false,
    progress: { is: 'to-do' },
    proposed: false,
    entries: [],
    opensSet: false,
  }
}

type Telling = EntryOf<'activity'>

/** Entries of the activities of a job that hold by a day, by date; and those that say of a day ahead that it is over. */
function toldBy(
  entries: readonly Entry[],
  { job, set, asOf }: OfJob,
): {
  readonly told: readonly { readonly entry: Telling; readonly day: number | undefined }[]
  readonly problems: readonly Problem[]
} {
  const all = byDate(entries).flatMap((entry) =>
    isKind(entry, 'activity') && entry.set === set && entry.body.job === job
      ? [{ entry, day: dayOf(entry) }]
      : [],
  )
  const isAhead = (day: number | undefined) => day !== undefined && day > dayNumber(asOf)
  return {
    told: all.filter(({ entry, day }) => firstDay(entry.from) <= asOf && !isAhead(day)),
    problems: all
      // what was only written down later is no mistake of that day
      .filter(({ entry, day }) => isAhead(day) && entry.noted.slice(0, 10) <= asOf)
      .map(({ entry, day }) => aheadProblem(entry.body, day!, asOf)),
  }
}

/** The day of what an entry says was begun or done. */
function dayOf({ body, from, until }: Telling): number | undefined {
  if (body.state === 'begun') return dayNumber(firstDay(from))
  return body.state === 'done' ? dayNumber(lastDay(until)) : undefined
}

function changedBy(
  before: Activity,
  body: Body<'activity'>,
  { id, day }: { readonly id: string; readonly day: number | undefined },
): Activity {
  const { what, after, days, needs, inOneRun, state } = body
  const progress: Progress | undefined =
    day !== undefined && (state === 'begun' || state === 'done')
      ? { is: state, day }
      : state === 'to-do'
        ? { is: 'to-do' }
        : undefined
  return {
    ...before,
    ...(what === undefined ? {} : { what }),
    ...(after === undefined ? {} : { after }),
    ...(days === undefined ? {} : { lasts: lastsOf(days, before.lasts) }),
    ...(needs === undefined ? {} : { needs }),
    ...(inOneRun === undefined ? {} : { inOneRun }),
    ...(progress === undefined ? {} : { progress }),
    entries: [...before.entries, id],
  }
}

/** Three points: those that are said, those said before, and what follows from the usual one. */
function lastsOf(days: NonNullable<Body<'activity'>['days']>, before: Lasts): Lasts {
  const known = before.is === 'three-point' && before !== ownDays ? before : undefined
  const usual = days.usual ?? known?.usual ?? days.low ?? days.high ?? ownDays.usual
  // what was said before is stretched where the new usual lies past it
  const low = days.low ?? (days.usual === undefined ? known?.low : undefined) ?? spreadOfDays.low * usual
  const high = days.high ?? (days.usual === undefined ? known?.high : undefined) ?? spreadOfDays.high * usual
  return { is: 'three-point', low: Math.min(low, usual), usual, high: Math.max(high, usual) }
}

/** What is left out hands on what it follows to what follows it. */
function withoutThose(list: ReadonlyMap<string, Activity>, out: ReadonlySet<string>): Activity[] {
  const handed = (name: string, seen: ReadonlySet<string>): readonly string[] => {
    if (!out.has(name)) return [name]
    if (seen.has(name)) return []
    const further = new Set([...seen, name])
    return (list.get(name)?.after ?? []).flatMap((one) => handed(one, further))
  }
  return [...list.values()]
    .filter(({ name }) => !out.has(name))
    .map((one) => ({ ...one, after: [...new Set(one.after.flatMap((name) => handed(name, new Set())))] }))
}

/** What something begun or done follows is done too; where the log dates it later, that is told. */
function doneInTurn(list: readonly Activity[]): {
  readonly done: readonly Activity[]
  readonly problems: readonly Problem[]
} {
  const byName = new Map(list.map((one) => [one.name, one]))
  const problems: Problem[] = []
  const takeAsDone = (after: readonly string[], day: number, follower: string, seen: Set<string>) => {
    for (const name of after) {
      const one = byName.get(name)
      if (one === undefined || seen.has(name)) continue
      seen.add(name)
      const { progress } = one
      if (progress.is === 'to-do' || (progress.is === 'begun' && progress.day <= day)) {
        byName.set(name, { ...one, progress: { is: 'done', day } })
      } else if (progress.day > day) {
        problems.push(turnProblem({ name, day: progress.day, is: progress.is }, { name: follower, day }))
      }
      takeAsDone(one.after, Math.min(day, progress.is === 'to-do' ? day : progress.day), name, seen)
    }
  }
  for (const { name, after, progress } of list) {
    if (progress.is !== 'to-do') takeAsDone(after, progress.day, name, new Set([name]))
  }
  return { done: [...byName.values()], problems }
}

interface Dated {
  readonly name: string
  readonly day: number
}

function turnProblem(earlier: Dated & { readonly is: string }, later: Dated): Problem {
  return {
    code: 'before-what-it-follows',
    path: later.name,
    found: `${later.name} on ${dateOfDay(later.day)}, ${earlier.name} ${earlier.is} on ${dateOfDay(earlier.day)}`,
    allowed: `${later.name} not before ${earlier.name}, which it follows`,
  }
}

function aheadProblem({ name, state }: Body<'activity'>, day: number, asOf: string): Problem {
  return {
    code: 'date-ahead',
    path: name,
    found: `${name} ${state} on ${dateOfDay(day)}`,
    allowed: `a day up to ${asOf}: it is taken as not ${state} yet`,
  }
}
