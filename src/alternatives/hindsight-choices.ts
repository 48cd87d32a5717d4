/**
 * Past moments of choice: what was known at each, what was done, and what came in the time after.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import { currentEntries } from '../logbook/current.js'
import { dateOfDay, dayNumber, daySpan, type LogDate, lastDay } from '../logbook/dates.js'
import { type Entry, isKind } from '../logbook/kinds.js'
import { spentOf } from '../register/money.js'
import { particularsOf } from '../register/particulars.js'
import { failuresEntered } from './hindsight-outcomes.js'
import { entriesKnown, type KnownBy } from './hindsight-spans.js'
import type { KeptAnswer } from './kept-answer.js'

/** A decision that was entered, or a price that was offered and on which nothing was entered as decided. */
export interface PastChoice {
  readonly entry: string
  readonly kind: 'decision' | 'quote'
  readonly asOf: LogDate
  /** What was noted later than this was not known. */
  readonly notedBy: string
  readonly what: string
  readonly job?: string
  /** The alternative that was taken, where that was said. */
  readonly alternative?: string
  /** What was asked for the job, as offered. */
  readonly quoted?: number
  /** Parts that the price covers. */
  readonly covers: readonly string[]
  /** The answer that was kept with the decision. */
  readonly kept?: KeptAnswer
}

/** Days in which a decision on a job belongs to its quote. Practice. */
const decidedWithin = 365

/** The choices of a set that are over by a day, oldest first; of a quote that was decided on, the decision. */
export function pastChoices(
  all: readonly Entry[],
  of: { readonly boat: string; readonly set: string; readonly asOf: LogDate },
): PastChoice[] {
  const entries = currentEntries(all).entries.filter(
    ({ boat, set, from }) =>
      boat === of.boat && (set === of.set || set === null) && daySpan(from).last < dayNumber(of.asOf),
  )
  const decisions = entries.filter((entry) => isKind(entry, 'decision'))
  const quotes = new Map(entries.flatMap((entry) => (isKind(entry, 'quote') ? [[entry.id, entry]] : [])))
  const choices: PastChoice[] = []
  const answered = new Set<string>()
  for (const { id, noted, until, body } of decisions) {
    const { job, alternative, kept } = body
    const day = dayNumber(lastDay(until))
    const quote = [...quotes.values()].findLast(
      (one) =>
        job !== undefined &&
        one.body.job === job &&
        daySpan(one.from).first <= day &&
        day - daySpan(one.from).last <= decidedWithin,
    )
    if (quote !== undefined) answered.add(quote.id)
    choices.push({
      entry: id,
      kind: 'decision',
      asOf: lastDay(until),
      notedBy: noted,
      what: body.choice,
      ...(job === undefined ? {} : { job }),
      ...(alternative === undefined ? {} : { alternative }),
      ...(quote === undefined ? {} : { quoted: quote.body.amount }),
      covers: quote?.body.covers.parts.map(({ part }) => part) ?? [],
      ...(kept === undefined ? {} : { kept }),
    })
  }
  for (const { id, noted, until, body } of quotes.values()) {
    if (answered.has(id)) continue
    choices.push({
      entry: id,
      kind: 'quote',
      asOf: lastDay(until),
      notedBy: noted,
      what: body.what ?? body.job,
      job: body.job,
      quoted: body.amount,
      covers: body.covers.parts.map(({ part }) => part),
    })
  }
  return choices.sort((a, b) => (a.asOf === b.asOf ? (a.entry < b.entry ? -1 : 1) : a.asOf < b.asOf ? -1 : 1))
}

/** The entries that were known when a choice was made. */
export function entriesAtChoice(
  all: readonly Entry[],
  choice: Pick<PastChoice, 'asOf' | 'notedBy'>,
  by: KnownBy,
): readonly Entry[] {
  return by === 'noted'
    ? currentEntries(all, { notedBy: choice.notedBy }).entries
    : entriesKnown(all, choice.asOf, by)
}

export interface Afterwards {
  /** Up to this day. */
  readonly until: LogDate
  /** Work on the job, or on what its price covers, and sets that came or went. */
  readonly done: readonly {
    readonly entry: string
    readonly day: LogDate
    readonly parts: readonly string[]
    readonly set?: string
    readonly by?: 'owner' | 'workshop' | 'both'
  }[]
  readonly failures: readonly string[]
  readonly stops: number
  readonly daysWithoutPower: number
  readonly paid: number
}

/** So long after a choice is looked at. Practice. [d] */
const lookedAtDays = 730

/** What was done and what came after a choice, as far as the log tells by now. */
export function afterChoice(
  all: readonly Entry[],
  choice: PastChoice,
  at: {
    readonly boat: string
    readonly set: string
    readonly asOf: LogDate
    readonly catalogue: Pick<Catalogue, 'parts'>
  },
): Afterwards {
  const from = dayNumber(choice.asOf)
  const last = Math.min(from + lookedAtDays, dayNumber(at.asOf))
  const current = currentEntries(all).entries.filter(({ boat }) => boat === at.boat)
  const ofSet = current.filter(({ set }) => set === at.set)
  const isAfter = ({ from: date }: Pick<Entry, 'from'>) => {
    const { first, last: latest } = daySpan(date)
    return first > from && latest <= last
  }
  const after = ofSet.filter(isAfter)
  const { terms } = particularsOf(current, at.set)
  const bills = current.filter(
    (entry) => isKind(entry, 'bill') && (entry.set === at.set || entry.set === null) && isAfter(entry),
  )
  const money = [...after.filter(({ kind }) => kind !== 'bill'), ...bills]
  return {
    until: dateOfDay(last),
    done: [
      ...after.flatMap((entry) => {
        if (!isKind(entry, 'work')) return []
        const parts = entry.body.parts.map(({ part }) => part)
        const ofJob = choice.job !== undefined && entry.body.job === choice.job
        if (!ofJob && !parts.some((part) => choice.covers.includes(part))) return []
        return [{ entry: entry.id, day: lastDay(entry.until), parts, by: entry.body.by }]
      }),
      ...current.flatMap((entry) => {
        if (!isKind(entry, 'set') || !isAfter(entry)) return []
        const came = !current.some(({ set, from: date }) => set === entry.set && date < entry.from)
        const went = entry.set === at.set && entry.body.standing === 'gone'
        return came || went ? [{ entry: entry.id, day: lastDay(entry.until), parts: [], set: entry.set }] : []
      }),
    ].sort((a, b) => (a.day < b.day ? -1 : 1)),
    failures: failuresEntered(ofSet).flatMap(({ part, firstDay, lastDay }) =>
      firstDay > from && lastDay <= last ? [part] : [],
    ),
    stops: after.filter(({ kind }) => kind === 'stop').length,
    daysWithoutPower: after.reduce(
      (sum, entry) => sum + (isKind(entry, 'stop') ? entry.body.daysWithoutPower : 0),
      0,
    ),
    paid: spentOf(money, { catalogue: at.catalogue, terms, asOfDay: last }).total,
  }
}
