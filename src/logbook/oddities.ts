/**
 * What is odd about a logbook though it can be read: written all the same, and asked about.
 *
 * @module
 */

import { canonicalText } from './canonical.js'
import { dayNumber, daySpan, daySpanOf, firstDay, type LogDate, lastDay } from './dates.js'
import { type Entry, isKind } from './kinds.js'
import { hourOddities } from './oddities-hours.js'
import { orderOddities } from './oddities-order.js'
import { partOddities } from './oddities-parts.js'
import { sayDays, sayEntryOf, sayOn, sayTimes } from './oddities-words.js'
import type { KnownThings, Oddity } from './oddity.js'

/** Questions about the entries of one boat in their current form, in the order of `byDate`. */
export function oddities(entries: readonly Entry[], known: KnownThings): Oddity[] {
  return [
    ...entries.flatMap((entry) => aboutOne(entry, known)),
    ...duplicates(entries),
    ...unknownSets(entries),
    ...missingReferences(entries),
    ...unquotedJobs(entries),
    ...expiredQuotes(entries, known.today),
    ...foreignQuotes(entries),
    ...passedOverInVain(entries, known),
    ...hourOddities(entries),
    ...orderOddities(entries),
    ...partOddities(entries, known),
  ]
}

function aboutOne(entry: Entry, { today }: KnownThings): Oddity[] {
  const asked: Oddity[] = []
  const ask = (code: string, question: string) => asked.push({ code, ids: [entry.id], question })
  // when somebody will be free is said beforehand
  if (firstDay(entry.from) > today && entry.kind !== 'free-days') {
    ask('date-ahead', `The ${sayEntryOf(entry)} lies ahead: that day has not come yet. Is the date right?`)
  }
  if (isKind(entry, 'stop')) {
    const { first, last } = daySpanOf(entry)
    const days = last - first + 1
    const { daysWithoutPower, curedSameDay } = entry.body
    if (daysWithoutPower > days) {
      ask(
        'longer-than-it-lasted',
        `The ${sayEntryOf(entry)} lasted ${sayDays(days)} at most, yet ${sayDays(daysWithoutPower)} without power are entered. Which is right?`,
      )
    }
    const surely = dayNumber(firstDay(entry.until)) - dayNumber(lastDay(entry.from))
    if (curedSameDay && (daysWithoutPower > 1 || surely > 0)) {
      ask(
        'same-day-but-longer',
        `The stop that began ${sayOn(entry.from)} is entered as cured the same day, yet ${surely > 0 ? `it ended ${sayOn(entry.until)}` : `it has ${sayDays(daysWithoutPower)} without power`}. Which is right?`,
      )
    }
  }
  if (isKind(entry, 'bill') && entry.body.split !== undefined) {
    const { parts = 0, labour = 0, travel = 0, other = 0 } = entry.body.split
    const sum = parts + labour + travel + other
    if (sum > entry.body.amount * 1.005) {
      ask(
        'split-above-amount',
        `The ${sayEntryOf(entry)} is for ${entry.body.amount}, yet its pieces come to ${Number(sum.toFixed(2))}. Which is right?`,
      )
    }
  }
  if (isKind(entry, 'quote')) {
    const { validUntil, readyBy, stagePayments = [] } = entry.body
    const isBefore = (date: LogDate) => lastDay(date) < firstDay(entry.from)
    if (validUntil !== undefined && isBefore(validUntil)) {
      ask(
        'quote-ends-before-given',
        `The ${sayEntryOf(entry)} held only until ${validUntil}, which is before it was given. Is one of the dates wrong?`,
      )
    }
    if (readyBy !== undefined && isBefore(readyBy)) {
      ask(
        'ready-before-offered',
        `The ${sayEntryOf(entry)} has the set run again by ${readyBy}, which is before it was given. Is one of the dates wrong?`,
      )
    }
    for (const { at } of stagePayments) {
      if (at === undefined || !isBefore(at)) continue
      ask(
        'paid-before-offered',
        `The ${sayEntryOf(entry)} asks for money on ${at}, which is before it was given. Is one of the dates wrong?`,
      )
    }
  }
  return asked
}

/** Quotes in another money than the boat's, in which every amount of the log is. */
function foreignQuotes(entries: readonly Entry[]): Oddity[] {
  const own = entries.findLast((entry) => isKind(entry, 'boat') && entry.body.currency !== undefined)
  const money = own !== undefined && isKind(own, 'boat') ? own.body.currency : undefined
  return entries.flatMap((entry) => {
    if (!isKind(entry, 'quote') || money === undefined) return []
    const { currency = money } = entry.body
    if (currency === money) return []
    return [
      {
        code: 'quote-in-other-money',
        ids: [entry.id],
        question: `The ${sayEntryOf(entry)} is in ${currency}, and the log is kept in ${money}. What does it come to in ${money}? Until you say, it is left out.`,
      },
    ]
  })
}

/** What is passed over though no reason lifts it, or though there is no such thing: the entry changes nothing. */
function passedOverInVain(entries: readonly Entry[], { passable }: KnownThings): Oddity[] {
  return entries.flatMap((entry) => {
    if (!isKind(entry, 'passed-over') || passable === undefined) return []
    const { about } = entry.body
    const may = passable.get(about)
    if (may === true) return []
    return [
      {
        code: may === undefined ? 'passed-over-unknown' : 'never-passed-over',
        ids: [entry.id],
        question:
          may === undefined
            ? `There is neither a stop line nor a test called "${about}". Which one is meant?`
            : `No reason passes over "${about}": the entry lifts nothing, and only what clears it does. Is another one meant?`,
      },
    ]
  })
}

function duplicates(entries: readonly Entry[]): Oddity[] {
  const same = new Map<string, Entry[]>()
  for (const entry of entries) {
    const { set, kind, from, until, body } = entry
    const key = canonicalText([set, kind, from, until, body])
    const group = same.get(key)
    if (group === undefined) same.set(key, [entry])
    else group.push(entry)
  }
  return [...same.values()]
    .filter((group) => group.length > 1)
    .map((group) => ({
      code: 'entered-twice',
      ids: group.map(({ id }) => id),
      question: `The ${sayEntryOf(group[0]!)} is entered ${sayTimes(group.length)}, alike in everything. Did it happen ${sayTimes(group.length)}?`,
    }))
}

function unknownSets(entries: readonly Entry[]): Oddity[] {
  const described = new Set(entries.filter((entry) => entry.kind === 'set').map(({ set }) => set))
  const unknown = new Map<string, string[]>()
  for (const { set, id } of entries) {
    if (set === null || described.has(set)) continue
    const ids = unknown.get(set)
    if (ids === undefined) unknown.set(set, [id])
    else ids.push(id)
  }
  return [...unknown].map(([set, ids]) => ({
    code: 'unknown-set',
    ids,
    question: `Nothing says what the set "${set}" is. Is the name right, or are its particulars still to be entered?`,
  }))
}

function missingReferences(entries: readonly Entry[]): Oddity[] {
  const kindById = new Map(entries.map(({ id, kind }) => [id, kind]))
  return entries.flatMap((entry) => {
    const named: readonly (readonly [string, string | undefined])[] = isKind(entry, 'bill')
      ? [
          ['quote', entry.body.quote],
          ['work', entry.body.work],
        ]
      : isKind(entry, 'danger-safe')
        ? [['finding', entry.body.found]]
        : []
    return named.flatMap(([kind, id]) =>
      id === undefined || kindById.get(id) === kind || (kind === 'finding' && kindById.has(id))
        ? []
        : [
            {
              code: 'names-what-is-missing',
              ids: [entry.id],
              question: `The ${sayEntryOf(entry)} names a ${kind} that is not in the log. Which ${kind} is it?`,
            },
          ],
    )
  })
}

/** Alternatives that are to be done at a quote which is nowhere in the log. */
function unquotedJobs(entries: readonly Entry[]): Oddity[] {
  const quoted = new Set(entries.flatMap((entry) => (isKind(entry, 'quote') ? [entry.body.job] : [])))
  return entries.flatMap((entry) => {
    if (!isKind(entry, 'alternative') || entry.body.job === undefined || quoted.has(entry.body.job)) return []
    return [
      {
        code: 'no-such-quote',
        ids: [entry.id],
        question: `The alternative "${entry.body.name ?? entry.body.id}" is to be done at the quote for "${entry.body.job}", and no such quote is in the log. Which quote is meant?`,
      },
    ]
  })
}

/** The latest quote of each job that nothing has followed: is it still open to be taken? */
function expiredQuotes(entries: readonly Entry[], today: LogDate): Oddity[] {
  const open = new Map<string, Entry>()
  for (const entry of entries) {
    if (isKind(entry, 'quote')) open.set(entry.body.job, entry)
    else if (isKind(entry, 'bill') || isKind(entry, 'work') || isKind(entry, 'decision')) {
      if (entry.body.job !== undefined) open.delete(entry.body.job)
    }
  }
  return [...open.values()].flatMap((entry) => {
    if (!isKind(entry, 'quote') || entry.body.validUntil === undefined) return []
    if (daySpan(entry.body.validUntil).last >= dayNumber(today)) return []
    return [
      {
        code: 'quote-expired',
        ids: [entry.id],
        question: `The quote for "${entry.body.job}" held until ${entry.body.validUntil}. Is it still open?`,
      },
    ]
  })
}
