/**
 * How far the activities of a job have come by what orders and work tell, without a word about the activities themselves.
 *
 * @module
 */

import { dayNumber, daySpan, firstDay, lastDay } from '../logbook/dates.js'
import { type Entry, isKind } from '../logbook/kinds.js'
import type { Lasts } from './calendar-lasts.js'
import type { Job } from './jobs.js'

/** By the name of the activity. */
export type KnownProgress = ReadonlyMap<string, Known>

interface Known {
  readonly is: 'begun' | 'done'
  /** [d since 1970] */
  readonly day: number
  readonly entry: string
  /** The wait, where the supplier has named a day. */
  readonly lasts?: Lasts
}

/** Log standard deviation of a delivery for which the supplier has named a day, which is as likely kept as not. Practice. */
const namedDayLogSd = 0.25

/** What the entries of a job tell by a day. */
export function knownProgressOf(job: Job, asOf: string): KnownProgress {
  const known = new Map<string, Known>()
  const checked = new Set<string>()
  for (const entry of job.entries) {
    if (firstDay(entry.from) > asOf) continue
    const first = dayNumber(firstDay(entry.from))
    const last = Math.min(dayNumber(lastDay(entry.until)), dayNumber(asOf))
    if (isKind(entry, 'work')) {
      for (const { part, did } of entry.body.parts) {
        if (isItsDeed(job, { part, did }))
          known.set(`fit-${part}`, { is: 'done', day: last, entry: entry.id })
      }
    }
    const way = wayOf(entry, job)
    if (way !== undefined && !known.has(way)) known.set(way, { is: 'begun', day: first, entry: entry.id })
    if (!isKind(entry, 'order')) continue
    const { state, lines, expected } = entry.body
    for (const { part, piece, fits } of lines) {
      // a small piece is one of several: the part itself tells
      if (piece !== undefined) continue
      const name = `get-${part}`
      if (state === 'ordered') {
        const named = expected === undefined ? undefined : namedDay(expected, first)
        known.set(name, { is: 'begun', day: first, entry: entry.id, ...named })
      } else if (state === 'received' || fits) known.set(name, { is: 'done', day: last, entry: entry.id })
      // what does not fit has to be ordered again
      else known.delete(name)
      if (state === 'checked' && fits) checked.add(part)
      else checked.delete(part)
    }
    const bought = job.parts.filter(({ part }) => known.has(`get-${part}`))
    if (state === 'checked' && bought.length > 0 && bought.every(({ part }) => checked.has(part))) {
      known.set('check-kit', { is: 'done', day: last, entry: entry.id })
    } else known.delete('check-kit')
  }
  return known
}

/** The way that a step of taking apart or putting back begins to open, or to close. */
function wayOf(entry: Entry, job: Job): string | undefined {
  if (isKind(entry, 'apart-step')) {
    const { access, notNeeded } = entry.body
    return access === undefined || notNeeded ? undefined : `open-${access}`
  }
  if (!isKind(entry, 'refit-step')) return undefined
  const undone = job.entries.find(({ id }) => id === entry.body.step)
  return undone !== undefined && isKind(undone, 'apart-step') && undone.body.access !== undefined
    ? `close-${undone.body.access}`
    : undefined
}

/** Whether work does what the job is for: having looked into a part, or taken it out, is not that. */
function isItsDeed(job: Job, { part, did }: Pick<Job['parts'][number], 'part' | 'did'>): boolean {
  const isLook = did === 'opened' || did === 'tested' || did === 'removed'
  return !isLook || job.parts.some((asked) => asked.part === part && asked.did === did)
}

function namedDay(expected: string, ordered: number): { readonly lasts: Lasts } {
  const { first, last } = daySpan(expected)
  const median = Math.max(0.5, (first + last) / 2 - ordered + 1)
  const ways = [{ chance: 1, median, logSd: namedDayLogSd }]
  return { lasts: { is: 'delivery', ways, wrongChance: 0 } }
}
