/**
 * `gensettle log list`: the entries as they stand, and what is odd about them.
 *
 * @module
 */

import type { Problem } from '../catalogue/problem.js'
import type { CurrentEntries } from '../logbook/current.js'
import { firstDay, isLogDate, lastDay } from '../logbook/dates.js'
import { type Entry, type Kind, kinds } from '../logbook/kinds.js'
import { oddities } from '../logbook/oddities.js'
import type { Oddity } from '../logbook/oddity.js'
import { allBoats, chosenBoat, type DataOption, readCurrent, withReading } from './opened.js'
import { knownThings } from './places.js'
import { type Result, refuse } from './result.js'
import { sayDates, sayEntry } from './say-entry.js'
import { tableText } from './table.js'

export interface ListOptions extends DataOption {
  readonly boat?: string
  readonly set?: string
  readonly kind?: string
  readonly since?: string
  readonly until?: string
}

/** `log list`: the entries in their current form, and what the log leaves open. */
export function listEntries(options: ListOptions): Promise<Result> {
  return withReading(options, (store) => {
    const boats = allBoats(store)
    const chosen = chosenBoat(boats, options.boat)
    if (!chosen.ok) return chosen
    const problems = choiceProblems(options)
    if (problems.length > 0) return refuse(...problems)
    const read = readCurrent(chosen.boat)
    if (!read.ok) return read
    const entries = read.entries.filter((entry) => isWanted(entry, options))
    const asked = oddities(read.entries, knownThings())
    return { ok: true, ...listing(chosen.boat.name, { ...read, entries, asked }) }
  })
}

function isWanted(entry: Entry, { set, kind, since, until }: ListOptions): boolean {
  return (
    (set === undefined || entry.set === set) &&
    (kind === undefined || entry.kind === kind) &&
    (since === undefined || lastDay(entry.until) >= firstDay(since)) &&
    (until === undefined || firstDay(entry.from) <= lastDay(until))
  )
}

/** What is wrong with the choice of entries. */
function choiceProblems({ kind, since, until }: ListOptions): readonly Problem[] {
  const dates = Object.entries({ '--since': since, '--until': until }).flatMap(([path, date]) =>
    date === undefined || isLogDate(date)
      ? []
      : [{ code: 'wrong-form', path, found: date, allowed: 'a date such as 2019, 2019-05 or 2019-05-12' }],
  )
  if (kind === undefined || kinds.includes(kind as Kind)) return dates
  return [...dates, { code: 'unknown-kind', path: '--kind', found: kind, allowed: kinds.join(', ') }]
}

function listing(boat: string, log: CurrentEntries & { readonly asked: readonly Oddity[] }) {
  const { entries, disputes, troubles, asked } = log
  const rows = entries.map((entry) => [
    sayDates(entry),
    entry.set ?? '',
    entry.kind,
    sayEntry(entry),
    entry.id,
  ])
  const columns = ['date', 'set', 'kind', 'what', 'id'].map((head) => ({ head }))
  const text = [
    entries.length === 0 ? `No such entries in the log of ${boat}.` : tableText(columns, rows),
    ...disputes.map(
      ({ tips }) =>
        `\nTwo corrections of one entry stand side by side until one entry corrects both: ${tips.map(({ id }) => id).join(', ')}`,
    ),
    ...troubles.map(({ path, found, allowed }) => `\n${path}: found ${found}; allowed is ${allowed}`),
    ...askedText(asked),
  ].join('\n')
  return {
    json: { type: 'gensettle/log-list', version: 1, boat, entries, disputes, troubles, asked } as const,
    text,
  }
}

/** What was odd, as questions. */
export function askedText(asked: readonly Oddity[]): string[] {
  if (asked.length === 0) return []
  return ['', 'Asked (what was typed is kept either way):', ...asked.map(({ question }) => `  ${question}`)]
}
