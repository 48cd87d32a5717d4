/**
 * The jobs that the logbook speaks of: what each is to do, and how far it has come.
 *
 * @module
 */

import { byDate } from '../logbook/current.js'
import type { Body, Entry } from '../logbook/kinds.js'
import { isKind } from '../logbook/kinds.js'
import type { OwedTest } from '../proof/owed.js'
import { withTax } from '../register/money.js'
import type { Deed } from '../register/register-types.js'

/** How far a job can have come, in this order; `declined`: something else was settled on, and nothing was done of it. */
export const jobStates = ['declined', 'offered', 'decided', 'ordered', 'apart', 'done', 'proved'] as const
export type JobState = (typeof jobStates)[number]

/** A part of a job, and what is done to it. */
export interface JobPart {
  readonly part: string
  readonly did: Deed
  /** Work of this job has done it. */
  readonly isDone: boolean
}

/** A job, known by its name. */
export interface Job {
  readonly name: string
  readonly state: JobState
  /** What it is, in the words of the latest decision, else of the latest quote, else of its work. */
  readonly what?: string
  /** What it is to do, else what its work did. */
  readonly parts: readonly JobPart[]
  /** The alternative that the latest decision took. */
  readonly alternative?: string
  /** First day that its entries can mean, and last. */
  readonly from: string
  readonly until: string
  /** Every entry that names it, by date. */
  readonly entries: readonly Entry[]
}

/** What each kind of entry that names a job says at least of how far it has come. */
const saidByKind: Readonly<Record<string, JobState>> = {
  quote: 'offered',
  decision: 'decided',
  order: 'ordered',
  bill: 'ordered',
  'apart-step': 'apart',
  'refit-step': 'apart',
  work: 'apart',
}

/** Deeds that leave a part as it was, unless they are all that was asked for. */
const looksOnly: readonly Deed[] = ['opened', 'tested', 'removed']

/**
 * The jobs of a set, the one last spoken of at the end. Entries of the whole boat that name a job count for each of her sets.
 *
 * A job is done when work has done something to each of its parts, or when it was billed in full though nobody wrote down the
 * work; and proved when, beyond that, nothing that its work asks for is left of `tests`. Without them no job is called proved.
 */
export function jobsOf(entries: readonly Entry[], set: string, tests?: readonly OwedTest[]): Job[] {
  const byName = new Map<string, Entry[]>()
  for (const entry of byDate(entries)) {
    const name = jobNamed(entry)
    if (name === undefined || (entry.set !== set && entry.set !== null)) continue
    const known = byName.get(name) ?? []
    // set anew, so that the last one spoken of comes last
    byName.delete(name)
    byName.set(name, [...known, entry])
  }
  return [...byName].map(([name, list]) => jobOf(name, list, tests))
}

/** The job of a name; without one, that last spoken of which is not proved yet, else the last. */
export function jobNamedOrLast(jobs: readonly Job[], name?: string): Job | undefined {
  if (name !== undefined) return jobs.find((job) => job.name === name)
  return jobs.findLast(isOpen) ?? jobs.at(-1)
}

/** Whether something is left to do of a job. */
export function isOpen({ state }: Pick<Job, 'state'>): boolean {
  return state !== 'declined' && state !== 'done' && state !== 'proved'
}

/** The job that an entry names: a decision, quote, bill, work or order, or a step of taking apart. */
function jobNamed({ kind, body }: Entry): string | undefined {
  return kind in saidByKind && 'job' in body ? (body.job as string | undefined) : undefined
}

function jobOf(name: string, entries: readonly Entry[], tests: readonly OwedTest[] | undefined): Job {
  const quote = entries.findLast((entry) => isKind(entry, 'quote'))
  const decision = entries.findLast((entry) => isKind(entry, 'decision'))
  const works = entries.filter((entry) => isKind(entry, 'work'))
  const worked = works.flatMap(({ body }) => body.parts)
  const parts = scopeOf(entries, worked).map((one) => ({ ...one, isDone: isDoneBy(one, worked) }))
  const what = decision?.body.choice ?? quote?.body.what ?? works.at(-1)?.body.what
  const alternative = decision?.body.alternative
  return {
    name,
    state: stateOf(entries, { parts, tests }),
    ...(what === undefined ? {} : { what }),
    parts,
    ...(alternative === undefined ? {} : { alternative }),
    from: entries[0]!.from,
    until: entries.at(-1)!.until,
    entries,
  }
}

type Asked = Pick<JobPart, 'part' | 'did'>

/** What the latest decision says that is to be done; else what the latest quote covers; else what work did. */
function scopeOf(entries: readonly Entry[], worked: Body<'work'>['parts']): readonly Asked[] {
  const decided = entries.findLast((entry) => isKind(entry, 'decision') && entry.body.parts !== undefined)
  if (decided !== undefined && isKind(decided, 'decision')) return decided.body.parts ?? []
  const quoted = entries.findLast((entry) => isKind(entry, 'quote'))?.body.covers.parts ?? []
  return quoted.length > 0 ? quoted : worked.map(({ part, did }) => ({ part, did }))
}

function isDoneBy(asked: Asked, worked: readonly Asked[]): boolean {
  return worked.some(
    ({ part, did }) => part === asked.part && (did === asked.did || !looksOnly.includes(did)),
  )
}

function stateOf(
  entries: readonly Entry[],
  { parts, tests }: { readonly parts: readonly JobPart[]; readonly tests: readonly OwedTest[] | undefined },
): JobState {
  const works = entries.filter((entry) => isKind(entry, 'work')).map(({ id }) => id)
  const worked = works.length > 0 && parts.every(({ isDone }) => isDone)
  if (worked) return tests === undefined || isOwedAfter(works, tests) ? 'done' : 'proved'
  if (works.length === 0 && isBilledInFull(entries)) return 'done'
  const said = entries.map(({ kind }) => jobStates.indexOf(saidByKind[kind]!))
  const furthest = jobStates[Math.max(...said)]!
  return furthest === 'decided' && isDeclined(entries) ? 'declined' : furthest
}

/** The last word on it, later than any quote, is a decision for leaving the set as it is or doing without one. */
function isDeclined(entries: readonly Entry[]): boolean {
  const last = entries.findLast((entry) => isKind(entry, 'decision') || isKind(entry, 'quote'))
  if (last === undefined || !isKind(last, 'decision') || last.body.parts !== undefined) return false
  return last.body.alternative === 'leave' || last.body.alternative === 'give-up'
}

function isOwedAfter(works: readonly string[], tests: readonly OwedTest[]): boolean {
  return tests.some(
    ({ is, because }) =>
      is !== 'passed' && is !== 'passed over' && because.some(({ entry }) => works.includes(entry)),
  )
}

/** Bills have reached the latest quote; where there was none, a bill is for something done. */
function isBilledInFull(entries: readonly Entry[]): boolean {
  const bills = entries.filter((entry) => isKind(entry, 'bill'))
  const quote = entries.findLast((entry) => isKind(entry, 'quote'))
  const billed = bills.reduce((sum, bill) => sum + withTax(bill, {}), 0)
  return bills.length > 0 && (quote === undefined || billed >= withTax(quote, {}))
}
