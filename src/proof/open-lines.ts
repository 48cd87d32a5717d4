/**
 * Stop lines that stand open, and why: the one list that the tests, the faults room and the alternatives read.
 *
 * A line is opened by a test that failed, a winding that reads too low, a danger that was found and not made safe, leads that
 * were left otherwise than they were found, or an answer in a case that is not closed.
 *
 * @module
 */

import type { CatalogueLinks } from '../catalogue/links-schema.js'
import type { StageId } from '../catalogue/owed-schema.js'
import type { StopLine } from '../catalogue/stop-line-schema.js'
import { byDate } from '../logbook/current.js'
import { firstDay } from '../logbook/dates.js'
import { type Entry, isKind } from '../logbook/kinds.js'
import type { OpenDanger, SetRegister } from '../register/register-types.js'
import { caseLines } from './case-lines.js'
import { lowInsulationIn } from './insulation-stop.js'
import type { Limits } from './limits.js'
import { openByLinks } from './links-stop.js'
import { latestResults, type ProofResult, resultsOf } from './results.js'
import { sayFigure } from './say-figure.js'

/** Something that was passed over with a reason, which stays in sight. */
export interface PassedOver {
  readonly entry: string
  readonly date: string
  /** Place among the entries as they follow one another. */
  readonly order: number
  readonly about: string
  readonly because: string
}

/** One thing in the log that holds a line open. */
export interface LineCause {
  readonly by: 'test' | 'winding' | 'danger' | 'links' | 'case'
  readonly entry: string
  /** Place among the entries as they follow one another. */
  readonly order: number
  /** What was found. */
  readonly why: string
  readonly part?: string
  /** Of a danger. */
  readonly danger?: string
  readonly mode?: string
  /** The test whose next good reading closes it. */
  readonly test?: string
}

export interface OpenLine {
  readonly line: string
  readonly hazard: string
  /** What was found, of all that holds it open. */
  readonly why: string
  readonly act: string
  readonly clearWhen: readonly string[]
  /** The first step that it bars; left out: it bars hands and looks alone. */
  readonly bars?: StageId
  /** It speaks of a moment, not of the years to come. */
  readonly eachTime: boolean
  readonly causes: readonly LineCause[]
  /** Entries that opened it, each once. */
  readonly entries: readonly string[]
  /** Tests whose next good reading closes it; none: what was found must be made safe. */
  readonly closedBy: readonly string[]
  readonly never: boolean
  /** One careful look that does not settle it hands it to a licensed marine electrician. */
  readonly licensed: boolean
  readonly passedOver?: PassedOver
}

export interface OpenLinesQuestion {
  /** In their current form. */
  readonly entries: readonly Entry[]
  readonly register: SetRegister
  readonly stopLines: readonly StopLine[]
  readonly links: CatalogueLinks
  readonly limits: Limits
}

/** The open ones, in the order of the list, as of the register's date. */
export function openLinesOf(question: OpenLinesQuestion): OpenLine[] {
  const { register, stopLines, limits } = question
  const entries = entriesOfSet(question.entries, register)
  const results = resultsOf(entries, { setFacts: register.setFacts, limits })
  const passed = passedOverIn(entries)
  const causesOf = causesIn({ ...question, entries, results })
  return stopLines.flatMap((rule) => {
    const causes = causesOf(rule)
    return causes.length === 0 ? [] : [openLine(rule, causes, passed)]
  })
}

/** A set's entries up to the register's date, the oldest first. */
export function entriesOfSet(
  entries: readonly Entry[],
  { boat, set, asOf }: Pick<SetRegister, 'boat' | 'set' | 'asOf'>,
): Entry[] {
  return byDate(
    entries.filter((entry) => entry.boat === boat && entry.set === set && firstDay(entry.from) <= asOf),
  )
}

/** All that was passed over, whether it may be or not, in the order of the entries. */
export function passedOverIn(entries: readonly Entry[]): PassedOver[] {
  return entries.flatMap((entry, order) => {
    const at = { entry: entry.id, date: entry.from, order }
    if (isKind(entry, 'passed-over')) return [{ ...at, about: entry.body.about, because: entry.body.because }]
    if (!isKind(entry, 'case')) return []
    return entry.body.lines.flatMap(({ line, is, because }) =>
      is === 'overruled' && because !== undefined ? [{ ...at, about: line, because }] : [],
    )
  })
}

function openLine(
  { id, hazard, act, clearWhen, bars, ...rule }: StopLine,
  causes: readonly LineCause[],
  passed: readonly PassedOver[],
): OpenLine {
  const never = rule.neverPassedOver === true
  const lastCause = Math.max(...causes.map(({ order }) => order))
  const passedOver = never
    ? undefined
    : passed.findLast(({ about, order }) => about === id && order > lastCause)
  return {
    line: id,
    hazard,
    why: [...new Set(causes.map(({ why }) => why))].join(' '),
    act,
    clearWhen: [
      ...(causes.every(({ by }) => by === 'danger') ? [] : clearWhen.map(lowerFirst)),
      ...new Set(causes.flatMap(clearedWhen)),
    ],
    ...(bars === undefined ? {} : { bars }),
    eachTime: rule.eachTime === true,
    causes,
    entries: [...new Set(causes.map(({ entry }) => entry))],
    closedBy: rule.opensByTests.map(({ test }) => test),
    never,
    licensed: rule.handOver === 'electrician',
    ...(passedOver === undefined ? {} : { passedOver }),
  }
}

/** A danger is made safe where it was found, whatever the line says in general. */
function clearedWhen({ by, part = '' }: LineCause): string[] {
  return by === 'danger' ? [`what was found at the ${plain(part)} is mended or made safe, and entered`] : []
}

/** What in the log holds a line open. */
function causesIn({
  entries,
  results,
  register,
  links,
  limits,
  stopLines,
}: OpenLinesQuestion & { readonly results: readonly ProofResult[] }): (rule: StopLine) => LineCause[] {
  const orderOf = (entry: string) => entries.findIndex(({ id }) => id === entry)
  const latest = latestResults(results)
  const low = lowInsulationIn(register.readings, limits).map(
    ({ part, entry, at40Mohm, corrected, leastMohm }): LineCause => ({
      by: 'winding',
      entry,
      order: orderOf(entry),
      why: `Do not energise the set: the ${part === undefined ? 'winding' : plain(part)} reads ${sayFigure(at40Mohm, 'Mohm', leastMohm)}${corrected ? ' at 40\u00a0°C' : ''} and must read ${sayFigure(leastMohm, 'Mohm')} or more.`,
      test: 'insulation-test',
      ...(part === undefined ? {} : { part }),
    }),
  )
  const dangers = register.openDangers.filter(({ madeSafeBy }) => madeSafeBy === undefined)
  const inCases = entries.flatMap((entry, order) =>
    !isKind(entry, 'case') || entry.body.closed !== undefined
      ? []
      : caseLines(stopLines, entry.body).flatMap(({ line, is }) =>
          is === 'open'
            ? [
                {
                  line: line.id,
                  entry: entry.id,
                  order,
                  why: `It stands open in the case “${entry.body.name}”.`,
                },
              ]
            : [],
        ),
  )
  const byLinks = openByLinks(entries, { register, links, limits, results })
  return (rule) => [
    ...inCases
      .filter(({ line }) => line === rule.id)
      .map(({ line: _, ...at }) => ({ by: 'case' as const, ...at })),
    ...byLinks
      .filter(({ line }) => line === rule.id)
      .map(({ line: _, ...at }) => ({ by: 'links' as const, test: 'winding-links', ...at })),
    ...(rule.id === 'insulation' ? low : latest.filter((result) => opensBy(rule, result)).map(ofResult)),
    ...dangers.filter((danger) => opensByDanger(rule, danger)).map((danger) => ofDanger(danger, orderOf)),
  ]
}

function opensBy({ opensByTests }: StopLine, { test, judgement: { band } }: ProofResult): boolean {
  return opensByTests.some((one) => one.test === test && band !== undefined && one.bands.includes(band))
}

function opensByDanger({ opensByDangers }: StopLine, { danger, part }: OpenDanger): boolean {
  return opensByDangers.some((one) => one.danger === danger && (one.parts?.includes(part) ?? true))
}

function ofResult({ entry, order, judgement, test, part }: ProofResult): LineCause {
  return { by: 'test', entry, order, why: judgement.says, test, ...(part === undefined ? {} : { part }) }
}

function ofDanger({ entry, danger, part, mode }: OpenDanger, orderOf: (entry: string) => number): LineCause {
  const why = `A danger was found at the ${plain(part)} and is not made safe: ${plain(danger)}.`
  return { by: 'danger', entry, order: orderOf(entry), why, danger, part, mode }
}

/** A sentence within another; one that begins with a number or an abbreviation stays. */
export function lowerFirst(text: string): string {
  return /^[A-Z][a-z]/.test(text) ? text[0]!.toLowerCase() + text.slice(1) : text
}

function plain(id: string): string {
  return id.replaceAll('-', ' ')
}
