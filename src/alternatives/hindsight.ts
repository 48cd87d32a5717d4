/**
 * Whether past forecasts came true: what the log as it was known on past days made likely, against what came after.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import { type Band, type Brier, bandOf, bandsOf, brierOf, type ToldAndSeen } from '../forecast/calibration.js'
import type { LifeModel } from '../forecast/life-model.js'
import { chancesWithin } from '../forecast/odds.js'
import { posteriorOf } from '../forecast/posterior.js'
import { currentEntries } from '../logbook/current.js'
import type { LogDate } from '../logbook/dates.js'
import type { Entry } from '../logbook/kinds.js'
import { registerOf, setsOf } from '../register/register.js'
import {
  type Became,
  becameOf,
  type EnteredFailure,
  failuresEntered,
  failuresIn,
  isComplete,
  type LeftOut,
  leftOutBecause,
  showingParts,
  stoppedIn,
} from './hindsight-outcomes.js'
import { entriesKnown, type KnownBy, type PastSpan, pastSpans, type SpanMonths } from './hindsight-spans.js'
import { type Memory, noMemory } from './memory.js'
import { readSet } from './settle.js'

export interface HindsightQuestion {
  /** All entries of the boat, as they were written: corrections are unfolded as of each date. */
  readonly entries: readonly Entry[]
  readonly boat: string
  readonly set: string
  readonly asOf: LogDate
  readonly months: SpanMonths
  /** At most so many past dates, the latest. */
  readonly most: number
  readonly by: KnownBy
  readonly catalogue: Catalogue
  readonly seed: number
  readonly memory?: Memory
}

/** One past date: what was told on it, and what came. */
export interface LookedBack extends PastSpan {
  /** The log is declared complete for stops and work all through the span. */
  readonly complete: boolean
  readonly parts: readonly { readonly part: string; readonly chance: number; readonly became: Became }[]
  /** Of the set: the chance that it stops at least once, and whether it did. */
  readonly stopping: number
  readonly stopped: boolean
  /** Failures of parts that had been given a chance, each part once, with that chance. */
  readonly failed: readonly (EnteredFailure & { readonly chance: number })[]
  /** Parts that failed and had been given no chance: the model of the time did not have them. */
  readonly failedUntold: readonly string[]
}

export interface Hindsight {
  readonly months: SpanMonths
  readonly by: KnownBy
  readonly dates: readonly LookedBack[]
  /** Dates at which nothing could have been said, because no such set was known. */
  readonly unknownThen: number
  /** Null where no span can be scored. */
  readonly brier: Brier | null
  readonly bands: readonly Band[]
  /** All bands together. */
  readonly allBands: Band | null
  /** Spans of the set declared complete: how many, stops told and stops that came. */
  readonly wholeSet: { readonly spans: number; readonly expected: number; readonly came: number }
  readonly leftOut: Readonly<Record<LeftOut, number>>
  /** Failures in spans that are scored, of parts that no chance was given for. */
  readonly untold: number
  /** In spans not declared complete: failures that were told, and those that were entered all the same. */
  readonly notComplete: { readonly spans: number; readonly expected: number; readonly entered: number }
}

/** Everything at once. */
export function hindsightOf(question: HindsightQuestion): Hindsight {
  const steps = lookingBack(question)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/** The same a date at a time, so that a program that runs it can tell how far it has come. */
export function* lookingBack(
  question: HindsightQuestion,
): Generator<{ readonly done: number; readonly total: number }, Hindsight> {
  const { asOf, months, most, by, set } = question
  const spans = pastSpans({ asOf, months, most })
  const now = truthOf(question)
  const dates: LookedBack[] = []
  let unknownThen = 0
  for (const [done, span] of spans.entries()) {
    yield { done, total: spans.length }
    const known = entriesKnown(question.entries, span.asOf, by)
    if (setsOf(known, span.asOf).includes(set)) dates.push(lookBack(question, { span, known, ...now }))
    else unknownThen++
  }
  return { months, by, dates, unknownThen, ...scoreOf(dates) }
}

type Truth = ReturnType<typeof truthOf>

/** What is known by now of the set. */
function truthOf({ entries, boat, set, asOf, catalogue }: HindsightQuestion) {
  const current = currentEntries(entries).entries
  const ofSet = current.filter((entry) => entry.boat === boat && entry.set === set)
  const { complete } = registerOf({ entries: current, boat, set, asOf, catalogue })
  return { current, ofSet, complete, failures: failuresEntered(ofSet) }
}

function lookBack(
  question: HindsightQuestion,
  { span, known: entries, ...now }: Truth & { readonly span: PastSpan; readonly known: readonly Entry[] },
): LookedBack {
  const { boat, set, catalogue } = question
  const { model, told } = toldOn(question, { asOf: span.asOf, known: entries })
  const before = registerOf({ entries: now.current, boat, set, asOf: span.asOf, catalogue })
  const brokenBefore = new Set(before.broken.map(({ part }) => part))
  const truth = { entries: now.ofSet, failures: now.failures, complete: now.complete, brokenBefore }
  const parts = showingParts(model).map((part) => ({
    part: part.id,
    chance: told.parts[part.id]!,
    became: part.broken === undefined ? becameOf(part, span, truth) : ('stood-broken' as const),
  }))
  const chances = new Map(
    parts.filter(({ became }) => became !== 'stood-broken').map(({ part, chance }) => [part, chance]),
  )
  const firsts = new Map<string, EnteredFailure>()
  const inSpan = failuresIn(now.failures, span)
  const known = new Set(model.parts.map(({ id }) => id))
  for (const one of inSpan) {
    if (chances.has(one.part) && !firsts.has(one.part)) firsts.set(one.part, one)
  }
  return {
    ...span,
    complete: isComplete(span, now.complete),
    parts,
    stopping: told.stopping,
    stopped: stoppedIn(now.ofSet, span),
    failed: [...firsts.values()].map((one) => ({ ...one, chance: chances.get(one.part)! })),
    failedUntold: [...new Set(inSpan.map(({ part }) => part))].filter((part) => !known.has(part)),
  }
}

/** Chances as they were told: of failing in service by part, and of a stop of the set. */
interface Told {
  readonly parts: Readonly<Record<string, number>>
  readonly stopping: number
}

function toldOn(
  { boat, set, catalogue, seed, months, memory = noMemory }: HindsightQuestion,
  on: { readonly asOf: LogDate; readonly known: readonly Entry[] },
): { readonly model: LifeModel; readonly told: Told } {
  const model = readSet({ entries: on.known, boat, set, asOf: on.asOf, catalogue, seed }).bare
  const key = { what: 'told', months, model, seed }
  const found = memory.find(key) as { readonly value: Told } | undefined
  if (found !== undefined) return { model, told: found.value }
  const { failing, setStopping } = chancesWithin(model, posteriorOf(model, { seed }), { seed, months })
  const told = { parts: failing, stopping: setStopping }
  memory.keep(key, told)
  return { model, told }
}

/** What the looks back come to. Only spans that are declared complete are scored, and in them only what can be told. */
export function scoreOf(
  dates: readonly LookedBack[],
): Pick<Hindsight, 'brier' | 'bands' | 'allBands' | 'wholeSet' | 'leftOut' | 'untold' | 'notComplete'> {
  const all = dates.flatMap(({ parts }) => parts)
  const scored = all.flatMap(({ chance, became }): ToldAndSeen[] =>
    became === 'failed' || became === 'held' ? [{ chance, came: became === 'failed' }] : [],
  )
  const whole = dates.filter(({ complete }) => complete)
  const open = dates.filter(({ complete }) => !complete)
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)
  return {
    brier: scored.length === 0 ? null : brierOf(scored),
    bands: bandsOf(scored),
    allBands: scored.length === 0 ? null : bandOf(scored, { from: 0, to: 1 }),
    wholeSet: {
      spans: whole.length,
      expected: sum(whole.map(({ stopping }) => stopping)),
      came: whole.filter(({ stopped }) => stopped).length,
    },
    leftOut: Object.fromEntries(
      leftOutBecause.map((why) => [why, all.filter(({ became }) => became === why).length]),
    ) as Record<LeftOut, number>,
    untold: sum(whole.map(({ failedUntold }) => failedUntold.length)),
    notComplete: {
      spans: open.length,
      expected: sum(open.flatMap(({ parts }) => parts.map(({ chance }) => chance))),
      entered: sum(open.map(({ failed }) => failed.length)),
    },
  }
}
