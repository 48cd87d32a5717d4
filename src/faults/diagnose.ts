/**
 * A case as it stands: what it may be, what stops the work, and what to look at next.
 *
 * @module
 */

import type { FaultCheck } from '../catalogue/fault-schema.js'
import type { StopLine } from '../catalogue/stop-line-schema.js'
import type { OpenLine } from '../proof/open-lines.js'
import { answersOf, type CaseBody } from './case.js'
import { type FaultPosterior, type FaultTables, posteriorOf } from './infer.js'
import type { FaultMoney } from './mending-costs.js'
import { type LookWorth, looksAhead, questionsAhead } from './next-check.js'
import { type FaultPrior, type PriorGiven, priorsOf, weightsOf } from './priors.js'
import { pairChances, type SecondFault, secondFaultOf } from './second-fault.js'
import { clearanceOf, firstQuestions, type LineState, lineStates } from './stop-lines.js'
import { costWithLook, planOfMending } from './total-cost.js'

export interface RankedFault {
  readonly fault: string
  readonly chance: number
  readonly prior: FaultPrior
}

/** What an outcome of a look would say. */
export interface IfOutcome {
  readonly outcome: string
  readonly chance: number
  /** The fault that would lead then. */
  readonly leads: string
  readonly leadsChance: number
}

export interface Suggestion {
  readonly check: FaultCheck
  /** Expected to be told. [bit] */
  readonly bits: number
  readonly score: number
  /** Expected cost until the set works, with this look first. [money] */
  readonly totalCost: number
  readonly ifs: readonly IfOutcome[]
  /** Confirmed before it is begun. */
  readonly confirm: readonly StopLine[]
}

/** A look that would tell something, and the open stop lines that bar it. */
export interface Barred {
  readonly check: FaultCheck
  readonly open: readonly StopLine[]
}

/** The cheapest way on: one more look, mending what is likeliest for its cost, or somebody else who finds it. */
export type Cheapest =
  | { readonly do: 'look'; readonly check: string; readonly totalCost: number; readonly mendingNow: number }
  | {
      readonly do: 'mend'
      readonly fault: string
      readonly totalCost: number
      /** With the best look first; left out where none is left. */
      readonly lookingFirst?: number
    }
  | { readonly do: 'hand-over'; readonly totalCost: number; readonly lookingFirst?: number }

export interface Diagnosis {
  readonly posterior: FaultPosterior
  /** The likeliest first; they make 1 together. */
  readonly ranked: readonly RankedFault[]
  readonly second?: SecondFault
  /** The best of the list explains the answers no better than if no fault of it had to do with them. */
  readonly unexplained: boolean
  readonly lines: readonly LineState[]
  /** Asked before anything else. */
  readonly first: readonly StopLine[]
  /** At most three, the most told for its cost and risk first. */
  readonly suggestions: readonly Suggestion[]
  readonly barred: readonly Barred[]
  /** Symptoms worth asking for, the most telling first. */
  readonly questions: readonly string[]
  readonly cheapest: Cheapest
  /** Ids of checks that are neither answered nor given up. */
  readonly left: readonly string[]
}

export interface DiagnoseQuestion {
  readonly body: CaseBody
  readonly given: PriorGiven
  readonly money: FaultMoney
  /** Stop lines that the log holds open or had passed over, of this case and of all else. */
  readonly inLog?: readonly OpenLine[]
}

const mostSuggestions = 3
const mostQuestions = 5
/** A look or a question that is expected to tell less is not worth its minutes. Practice. [bit] */
const leastBits = 0.01
const leastQuestionBits = 0.03
const mostIfs = 3

export function diagnose(tables: FaultTables, { body, given, money, inLog }: DiagnoseQuestion): Diagnosis {
  const { model } = tables
  const answers = answersOf(model, body)
  const priors = priorsOf(model, given)
  const weights = weightsOf(priors)
  const posterior = posteriorOf(tables, weights, answers)
  const ranked = tables.faults
    .map((fault, f) => ({ fault, chance: posterior.chances[f]!, prior: priors[fault]! }))
    .sort((a, b) => b.chance - a.chance)
  const lines = lineStates(model, body, inLog)
  const done = new Set(body.checks.map(({ check }) => check))
  const left = model.checks.filter(({ id }) => !done.has(id))
  const telling = looksAhead(tables, posterior, left)
    .filter(({ bits }) => bits >= leastBits)
    .sort((a, b) => b.score - a.score)
  const cleared = telling.map((look) => ({ look, clearance: clearanceOf(look.check, lines) }))
  const open = cleared.filter(({ clearance }) => clearance.open.length === 0)
  const costOf = (look: LookWorth) => costWithLook(look, lookCost(look.check, money), money)
  const asked = new Set(body.symptoms.map(({ symptom }) => symptom))
  const anyAnswer = Object.keys(answers.symptoms).length + Object.keys(answers.outcomes).length > 0
  const unasked = model.symptoms.flatMap(({ id }) => (asked.has(id) ? [] : [id]))
  const second = anyAnswer
    ? secondFaultOf(tables, pairChances(tables, weights, answers), ranked[0]!.fault)
    : undefined
  return {
    posterior,
    ranked,
    ...(second === undefined ? {} : { second }),
    unexplained: anyAnswer && isUnexplained(tables, posterior, ranked[0]!.fault),
    lines,
    first: firstQuestions(lines),
    suggestions: open.slice(0, mostSuggestions).map(({ look, clearance }) => ({
      check: look.check,
      bits: look.bits,
      score: look.score,
      totalCost: costOf(look),
      ifs: ifsOf(tables, look),
      confirm: clearance.confirm,
    })),
    barred: cleared
      .filter(({ clearance }) => clearance.open.length > 0)
      .slice(0, mostSuggestions)
      .map(({ look, clearance }) => ({ check: look.check, open: clearance.open })),
    questions: questionsAhead(tables, posterior, unasked)
      .filter(({ bits }) => bits >= leastQuestionBits)
      .slice(0, mostQuestions)
      .map(({ symptom }) => symptom),
    cheapest: cheapestOf(tables, posterior, { open: open.map(({ look }) => look), costOf, money }),
    left: left.map(({ id }) => id),
  }
}

/** What a look costs in time and money. [money] */
function lookCost({ minutes, usd }: FaultCheck, { ownPerHour, perUsd }: FaultMoney): number {
  return (minutes / 60) * ownPerHour + usd * perUsd
}

function isUnexplained(tables: FaultTables, { pulls }: FaultPosterior, first: string): boolean {
  const f = tables.faults.indexOf(first)
  return pulls.reduce((sum, { byFault, otherwise }) => sum + byFault[f]! - otherwise, 0) <= 0
}

function ifsOf(tables: FaultTables, { branches }: LookWorth): IfOutcome[] {
  return [...branches]
    .sort((a, b) => b.chance - a.chance)
    .slice(0, mostIfs)
    .map(({ outcome, chance, after }) => {
      const lead = after.reduce((best, one, f) => (one > after[best]! ? f : best), 0)
      return { outcome, chance, leads: tables.faults[lead]!, leadsChance: after[lead]! }
    })
}

function cheapestOf(
  tables: FaultTables,
  { chances }: FaultPosterior,
  of: {
    readonly open: readonly LookWorth[]
    readonly costOf: (look: LookWorth) => number
    readonly money: FaultMoney
  },
): Cheapest {
  const plan = planOfMending(chances, of.money)
  let best: { readonly check: string; readonly totalCost: number } | undefined
  for (const look of of.open) {
    const totalCost = of.costOf(look)
    if (totalCost < (best?.totalCost ?? Number.POSITIVE_INFINITY)) best = { check: look.check.id, totalCost }
  }
  if (best !== undefined && best.totalCost < plan.cost) return { do: 'look', ...best, mendingNow: plan.cost }
  const lookingFirst = best === undefined ? {} : { lookingFirst: best.totalCost }
  const [first] = plan.mendFirst
  return first === undefined
    ? { do: 'hand-over', totalCost: plan.cost, ...lookingFirst }
    : { do: 'mend', fault: tables.faults[first]!, totalCost: plan.cost, ...lookingFirst }
}
