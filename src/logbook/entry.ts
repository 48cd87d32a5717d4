/**
 * Reading one entry of the logbook: from a person, a file or another boat's copy.
 *
 * @module
 */

import { shown } from '../catalogue/problem.js'
import { canonicalText } from './canonical.js'
import { firstDay, isLogDate, lastDay } from './dates.js'
import { activityProblems } from './entry-activity.js'
import { alternativeProblems } from './entry-alternative.js'
import { loadsProblems } from './entry-loads.js'
import { orderProblems } from './entry-order.js'
import { quoteProblems } from './entry-quote.js'
import { formOfUnknownKind, forms } from './kind-forms.js'
import { type Entry, type Kind, kinds } from './kinds.js'
import { type Problem, problemsOf, withoutRepeats } from './problems.js'
import { readOldVersion } from './versions.js'

/** An entry with the text under which it is kept, or everything that is wrong with it. */
export type ParsedEntry =
  | { readonly ok: true; readonly entry: Entry; readonly text: string }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** The longest text of one entry. [UTF-16 code units] */
export const longestEntry = 100_000

/**
 * Reads one entry, given as JSON text or as a value.
 *
 * What comes in is kept as it came, in canonical form; older versions are read into the present form, but their text stays.
 */
export function parseEntry(input: unknown): ParsedEntry {
  const read = typeof input === 'string' ? readJson(input) : { value: input }
  if ('problem' in read) return { ok: false, problems: [read.problem] }
  const present = readOldVersion(read.value)
  if (!present.ok) return present
  const problems = problemsWith(present.value)
  if (problems.length > 0) return { ok: false, problems }
  const text = canonicalText(read.value)
  if (text.length > longestEntry) return { ok: false, problems: [tooLong(text)] }
  return { ok: true, entry: present.value as Entry, text }
}

function readJson(text: string): { readonly value: unknown } | { readonly problem: Problem } {
  if (text.length > longestEntry) return { problem: tooLong(text) }
  try {
    return { value: JSON.parse(text) as unknown }
  } catch {
    return { problem: { code: 'not-json', path: '', found: shown(text), allowed: 'one entry as JSON' } }
  }
}

function tooLong(text: string): Problem {
  const allowed = `at most ${longestEntry} characters`
  return { code: 'too-long', path: '', found: `${text.length} characters`, allowed }
}

function problemsWith(value: unknown): Problem[] {
  const kind = isRecord(value) && kinds.find((known) => known === value.kind)
  const form = kind ? forms[kind as Kind] : formOfUnknownKind
  const result = form.safeParse(value)
  const found = result.success ? [] : problemsOf(result.error, value)
  return withoutRepeats([...found, ...(isRecord(value) ? crossProblems(value) : [])])
}

/** What no single field shows. Asked of fields that may themselves be wrong, so that everything is told at once. */
function crossProblems(entry: Fields): Problem[] {
  const problems: Problem[] = []
  const say = (code: string, path: string, found: unknown, allowed: string) =>
    problems.push({ code, path, found: shown(found), allowed })
  const { from, until, corrects, id } = entry
  const bothDates =
    typeof from === 'string' && typeof until === 'string' && isLogDate(from) && isLogDate(until)
  if (bothDates && firstDay(from) > lastDay(until)) {
    say('ends-before-it-begins', 'until', until, `not before ${from}`)
  }
  if (Array.isArray(corrects)) {
    if (corrects.includes(id)) say('corrects-itself', 'corrects', id, 'the ids of other entries')
    if (new Set(corrects).size < corrects.length) say('named-twice', 'corrects', corrects, 'each entry once')
  }
  if (entry.voids !== undefined) {
    if (entry.kind !== 'note')
      say('void-is-no-note', 'kind', entry.kind, 'note: an entry that voids says why')
    if (Array.isArray(corrects) && corrects.length === 0) {
      say('voids-nothing', 'corrects', corrects, 'at least one entry to be voided')
    }
  }
  if (isRecord(entry.body)) {
    bodyProblems(entry.kind, entry.body, say)
    if (entry.kind === 'alternative') problems.push(...alternativeProblems(entry.body))
    if (entry.kind === 'quote') problems.push(...quoteProblems(entry.body))
    problems.push(...loadsProblems(entry.kind, entry.body))
    problems.push(...activityProblems(entry.kind, entry.body))
    problems.push(...orderProblems(entry.kind, entry.body))
  }
  return problems
}

type Fields = Readonly<Record<string, unknown>>
type Say = (code: string, path: string, found: unknown, allowed: string) => void

function bodyProblems(kind: unknown, body: Fields, say: Say): void {
  if ((kind === 'boat' || kind === 'set' || kind === 'terms') && Object.keys(body).length === 0) {
    say('says-nothing', 'body', body, 'at least one field')
  }
  if (kind === 'reading' && isEmpty(body.values) && isEmpty(body.answers)) {
    say('says-nothing', 'body.values', body.values, 'at least one value, or one answer')
  }
  if (kind === 'boat') eachOnce(body.monthsInUse, 'body.monthsInUse', say)
  if (kind === 'use') eachOnce(pluck(body.months, 'month'), 'body.months', say)
  if (kind === 'complete') eachOnce(body.of, 'body.of', say)
  if (kind === 'case') {
    for (const [list, field] of [
      ['lines', 'line'],
      ['symptoms', 'symptom'],
      ['checks', 'check'],
    ] as const) {
      eachOnce(pluck(body[list], field), `body.${list}`, say)
    }
  }
  if (kind === 'terms' && Array.isArray(body.withoutPower)) {
    eachOnce(pluck(body.withoutPower, 'months')?.flat(), 'body.withoutPower', say)
    body.withoutPower.forEach((season: unknown, index) => {
      const days = isRecord(season) ? pluck(season.curve, 'days') : undefined
      const rising = days?.every((day, at) => at === 0 || Number(day) > Number(days[at - 1])) ?? true
      if (!rising)
        say('not-rising', `body.withoutPower.${index}.curve`, days, 'points in rising order of days')
    })
  }
  if (kind === 'set' && Array.isArray(body.has) && Array.isArray(body.hasNot)) {
    const { has, hasNot } = body as { has: unknown[]; hasNot: unknown[] }
    const both = has.filter((part) => hasNot.includes(part))
    if (both.length > 0) say('has-and-has-not', 'body.hasNot', both, 'parts that are not under has')
  }
}

function isEmpty(list: unknown): boolean {
  return list === undefined || (Array.isArray(list) && list.length === 0)
}

function eachOnce(list: unknown, path: string, say: Say): void {
  if (!Array.isArray(list)) return
  const twice = list.filter((item, index) => list.indexOf(item) < index)
  if (twice.length > 0) say('named-twice', path, twice, 'each once')
}

function pluck(list: unknown, field: string): unknown[] | undefined {
  return Array.isArray(list)
    ? list.map((item: unknown) => (isRecord(item) ? item[field] : undefined))
    : undefined
}

function isRecord(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
