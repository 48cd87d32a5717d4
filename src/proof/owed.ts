/**
 * Which tests are owed before the set is turned, energised, loaded and left alone, and what bars each step.
 *
 * @module
 */

import type { CatalogueLinks } from '../catalogue/links-schema.js'
import type { CatalogueOwed, StageId } from '../catalogue/owed-schema.js'
import { neverPassedOver } from '../catalogue/passable.js'
import type { StopLine } from '../catalogue/stop-line-schema.js'
import { dayNumber, firstDay } from '../logbook/dates.js'
import { type Entry, isKind } from '../logbook/kinds.js'
import { hoursAt } from '../register/hours.js'
import type { SetRegister } from '../register/register-types.js'
import type { Limits } from './limits.js'
import {
  entriesOfSet,
  lowerFirst,
  type OpenLine,
  openLinesOf,
  type PassedOver,
  passedOverIn,
} from './open-lines.js'
import { latestResults, type ProofResult, resultsOf } from './results.js'
import type { Verdict } from './test-type.js'
import { proofTestOf } from './tests.js'

export interface OwedQuestion {
  /** In their current form. */
  readonly entries: readonly Entry[]
  readonly register: SetRegister
  readonly owed: CatalogueOwed
  readonly stopLines: readonly StopLine[]
  readonly links: CatalogueLinks
  readonly limits: Limits
}

/** Work after which a test is owed. */
export interface Reason {
  readonly rule: string
  readonly why: string
  readonly entry: string
  readonly date: string
  readonly part?: string
}

/** One test that is owed, or that was and is done. */
export interface OwedTest {
  readonly test: string
  readonly name: string
  readonly part?: string
  readonly stage: StageId
  readonly because: readonly Reason[]
  readonly is: 'owed' | 'passed' | 'failed' | 'cannot tell' | 'passed over'
  /** The readings since the work, the latest of each. */
  readonly results: readonly ProofResult[]
  readonly passedOver?: PassedOver
  /** No reason passes it over. */
  readonly never: boolean
  /** What comes first, in words; none: it may be made now. */
  readonly waitsFor: readonly string[]
}

/** One of the steps from standing still to running by itself. */
export interface Gate {
  readonly stage: StageId
  readonly name: string
  /** What it lets through: "turning it". */
  readonly opens: string
  readonly open: boolean
  readonly says: string
}

export interface Owed {
  /** In the order in which they are made. */
  readonly tests: readonly OwedTest[]
  readonly lines: readonly OpenLine[]
  readonly gates: readonly Gate[]
  /** The latest of every test in the log, whether owed or not. */
  readonly results: readonly ProofResult[]
}

/** What is owed, as of the register's date. */
export function owedOf(question: OwedQuestion): Owed {
  const { register, owed, limits } = question
  const entries = entriesOfSet(question.entries, register)
  const all = resultsOf(entries, { setFacts: register.setFacts, limits })
  const passed = passedOverIn(entries)
  const lines = openLinesOf(question)
  const never = neverPassedOver(question.stopLines)
  const reasons = reasonsOf(entries, question)
  for (const line of lines) if (line.passedOver === undefined) addLine(reasons, line, { all, entries })
  const bare = [...reasons].map(([key, because]) =>
    owedTest(key, because, { all, passed, never, entries, owed, lines }),
  )
  const inOrder = bare.sort((a, b) => placeOf(a.test, owed) - placeOf(b.test, owed))
  const tests = inOrder.map((one) => ({ ...one, waitsFor: waitsFor(one, { tests: inOrder, lines, owed }) }))
  return { tests, lines, gates: gatesOf({ tests, lines, owed }), results: latestResults(all) }
}

/** Each test that some work asks for, by test and part, with the work. */
function reasonsOf(entries: readonly Entry[], question: OwedQuestion): Map<string, Reason[]> {
  const { register, owed, limits } = question
  const reasons = new Map<string, Reason[]>()
  const now = hoursAt(register.hours, register.asOfDay)
  const oldestDay = register.asOfDay - limits('owed-years').value * 365.25
  for (const entry of entries) {
    if (!isKind(entry, 'work')) continue
    const day = dayNumber(firstDay(entry.until))
    if (day < oldestDay) continue
    const then = hoursAt(register.hours, day)
    const ranIn = now !== undefined && then !== undefined && now - then >= limits('owed-run-in').value
    for (const { part, did } of entry.body.parts) {
      for (const rule of owed.rules) {
        if (!rule.parts.includes(part) || !rule.did.includes(did) || (rule.runsIn && ranIn)) continue
        for (const test of rule.tests) {
          const of = partOf(test, part)
          const key = of === undefined ? test : `${test} ${of}`
          const reason = { rule: rule.id, why: rule.why, entry: entry.id, date: entry.from, part }
          const known = reasons.get(key)
          if (known === undefined) reasons.set(key, [reason])
          else if (!known.some((one) => one.rule === rule.id && one.entry === entry.id)) known.push(reason)
        }
      }
    }
  }
  return reasons
}

/** The tests that close an open stop line are owed, whatever the work was. */
function addLine(
  reasons: Map<string, Reason[]>,
  line: OpenLine,
  { all, entries }: { readonly all: readonly ProofResult[]; readonly entries: readonly Entry[] },
): void {
  const ofLinks = line.causes.flatMap(({ by, entry, order, test }) =>
    by === 'links' && test !== undefined ? [{ entry, test, date: entries[order]?.from ?? '' }] : [],
  )
  const ofTests = all.filter(({ entry }) => line.entries.includes(entry))
  for (const one of [...ofTests, ...ofLinks]) {
    const { entry, date, test } = one
    const part = ('part' in one ? one.part : undefined) ?? proofTestOf(test)?.parts?.[0]
    const why = `It closes the stop line: ${lowerFirst(line.hazard)}.`
    const reason = { rule: stopLineRule, why, entry, date, ...(part === undefined ? {} : { part }) }
    const key = part === undefined ? test : `${test} ${part}`
    reasons.set(key, [...(reasons.get(key) ?? []), reason])
  }
}

/** The rule of a test that is owed because it opened a stop line: its own reading counts. */
const stopLineRule = 'stop-line'

/** The part that a test is made of after work on another: its own where it can be, else the first that it is made of. */
function partOf(test: string, worked: string): string | undefined {
  const parts = proofTestOf(test)?.parts
  if (parts === undefined) return undefined
  return parts.includes(worked) ? worked : parts[0]
}

function owedTest(
  key: string,
  because: readonly Reason[],
  of: {
    readonly all: readonly ProofResult[]
    readonly passed: readonly PassedOver[]
    readonly never: ReadonlySet<string>
    readonly entries: readonly Entry[]
    readonly owed: CatalogueOwed
    readonly lines: readonly OpenLine[]
  },
): Omit<OwedTest, 'waitsFor'> {
  const [test = '', part] = key.split(' ')
  const lastWork = Math.max(
    ...because.map(({ entry, rule }) => {
      const at = of.entries.findIndex(({ id }) => id === entry)
      return rule === stopLineRule ? at - 1 : at
    }),
  )
  const results = latestResults(
    of.all.filter(
      (result) =>
        result.test === test &&
        result.order > lastWork &&
        (part === undefined || result.part === undefined || result.part === part),
    ),
  )
  const never = of.never.has(test)
  const passedOver = never
    ? undefined
    : (of.passed.findLast(({ about, order }) => about === test && order > lastWork) ??
      withItsLine(results, of.lines))
  const verdict = worstOf(results)
  const is =
    verdict === undefined
      ? 'owed'
      : ({ pass: 'passed', fail: 'failed', 'cannot tell': 'cannot tell' } as const)[verdict]
  const stage = of.owed.stages.find(({ tests }) => tests.includes(test))?.id ?? 'alone'
  return {
    test,
    name: proofTestOf(test)?.name ?? test,
    ...(part === undefined ? {} : { part }),
    stage,
    because,
    is: passedOver !== undefined && is !== 'passed' ? 'passed over' : is,
    results,
    ...(passedOver === undefined || is === 'passed' ? {} : { passedOver }),
    never,
  }
}

/** Where all that is not passed opened stop lines that were passed over, the test goes with them. */
function withItsLine(results: readonly ProofResult[], lines: readonly OpenLine[]): PassedOver | undefined {
  const bad = results.filter(({ judgement }) => judgement.verdict !== 'pass')
  const over = bad.map(({ entry }) => lines.find(({ entries }) => entries.includes(entry))?.passedOver)
  return over.every((one) => one !== undefined) ? over[0] : undefined
}

function worstOf(results: readonly ProofResult[]): Verdict | undefined {
  const verdicts = results.map(({ judgement }) => judgement.verdict)
  return (['fail', 'cannot tell', 'pass'] as const).find((verdict) => verdicts.includes(verdict))
}

function placeOf(test: string, { stages }: CatalogueOwed): number {
  const at = stages.flatMap(({ tests }) => tests).indexOf(test)
  return at < 0 ? Infinity : at
}

const isDone = ({ is }: Pick<OwedTest, 'is'>) => is === 'passed' || is === 'passed over'

interface Standing {
  readonly tests: readonly Omit<OwedTest, 'waitsFor'>[]
  readonly lines: readonly OpenLine[]
  readonly owed: CatalogueOwed
}

/** Stop lines that bar a test, whether it is owed or not: those of earlier steps that it does not close itself. None bars a dead one. */
export function linesBarring(
  test: string,
  { lines, owed }: { readonly lines: readonly OpenLine[]; readonly owed: CatalogueOwed },
): OpenLine[] {
  if (proofTestOf(test)?.danger === 'locked out') return []
  const stages = owed.stages.map(({ id }) => id)
  const at = owed.stages.findIndex(({ tests }) => tests.includes(test))
  return lines.filter((line) => barsStage(line, stages, at - 1) && !line.closedBy.includes(test))
}

/** What a test waits for, of a line that bars it. */
export function sayBarring({ hazard }: Pick<OpenLine, 'hazard'>): string {
  return `stop line: ${lowerFirst(hazard)}`
}

/** What must be done before a test, in words: earlier steps, and stop lines but for those that it closes itself. */
function waitsFor(one: Omit<OwedTest, 'waitsFor'>, { tests, lines, owed }: Standing): string[] {
  const stages = owed.stages.map(({ id }) => id)
  const at = stages.indexOf(one.stage)
  const dead = proofTestOf(one.test)?.danger === 'locked out'
  const barring = linesBarring(one.test, { lines, owed })
  const inOrder = owed.stages[at]?.inOrder === true
  const before = tests.filter((other) => {
    if (isDone(other) || other === one) return false
    const stage = stages.indexOf(other.stage)
    // Dead tests before any power may be made in any order.
    if (dead && at <= stages.indexOf('energising')) return false
    return stage < at || (stage === at && inOrder && placeOf(other.test, owed) < placeOf(one.test, owed))
  })
  return [...barring.map(sayBarring), ...before.map(nameOf)]
}

function gatesOf({ tests, lines, owed }: Standing): Gate[] {
  const stages = owed.stages.map(({ id }) => id)
  const said = new Set<string>()
  return owed.stages.map(({ id, name, opens }, at) => {
    const barring = lines.filter((line) => barsStage(line, stages, at))
    const before = tests.filter((one) => stages.indexOf(one.stage) <= at && !isDone(one))
    const open = barring.length === 0 && before.length === 0
    const [line] = barring
    const says =
      line !== undefined
        ? sayBarred(line, opens, said.has(line.line))
        : open
          ? free(opens)
          : sayOwed(before, opens)
    for (const one of barring) said.add(one.line)
    return { stage: id, name, opens, open, says }
  })
}

/** Whether a line that nobody passed over bars a step, or one before it. */
function barsStage({ bars, passedOver }: OpenLine, stages: readonly StageId[], at: number): boolean {
  return bars !== undefined && stages.indexOf(bars) <= at && passedOver === undefined
}

const free = (opens: string) => `Nothing that the log tells of stands against ${opens}.`

/** Once in full; at the steps after it by its name. */
function sayBarred({ hazard, why, act }: OpenLine, opens: string, again: boolean): string {
  return again ? `Stop before ${opens}: ${lowerFirst(hazard)}.` : `Stop before ${opens}. ${why} ${act}`
}

/** The first few of what is left, what failed before what was not made yet. */
function sayOwed(before: readonly Omit<OwedTest, 'waitsFor'>[], opens: string): string {
  const failed = before.filter(({ is }) => is === 'failed')
  const listed = failed.length > 0 ? failed : before
  const names = listed.slice(0, mostNamed).map(nameOf).join('; ')
  const more = listed.length > mostNamed ? `; and ${listed.length - mostNamed} more` : ''
  if (failed.length > 0) return `Stop before ${opens}. Failed: ${names}${more}.`
  return `Not yet: before ${opens}, ${before.length === 1 ? 'this is' : 'these are'} owed: ${names}${more}.`
}

const mostNamed = 4

function nameOf({ test, name, part }: Pick<OwedTest, 'test' | 'name' | 'part'>): string {
  const said = proofTestOf(test) === undefined ? test : lowerFirst(name)
  return part === undefined ? said : `${said} (${part.replaceAll('-', ' ')})`
}
