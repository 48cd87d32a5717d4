/**
 * Cases made up from the fault model itself: a fault is drawn, its symptoms are drawn and all told, then checks are chosen by
 * the rule and their outcomes drawn. Shows what the method can do where the model is right, or off by a stated amount.
 *
 * @module
 */

import type { FaultModel } from '../src/catalogue/read-fault-model.js'
import { type Answers, type FaultTables, faultTables, posteriorOf } from '../src/faults/infer.js'
import { looksAhead } from '../src/faults/next-check.js'
import { priorsOf, weightsOf } from '../src/faults/priors.js'
import { threefryUniform } from '../src/forecast/threefry.js'
import { nothingKnown } from './fault-model.js'

export interface TrialHits {
  readonly cases: number
  /** Share of cases in which the true fault stood first, or among the first three. */
  readonly symptomsOnly: { readonly first: number; readonly three: number }
  readonly afterChecks: { readonly first: number; readonly three: number }
  /** The same with as many checks picked at random. */
  readonly afterAnyChecks: { readonly first: number; readonly three: number }
}

export interface TrialHow {
  readonly cases: number
  readonly seed: number
  readonly checks: number
  /** Standard deviation of the log odds by which the truth is off the model. */
  readonly noise: number
}

/** The same seed gives the same draws. */
function drawsOf(seed: number): () => number {
  let n = 0
  return () => threefryUniform(seed, 77, n++, 0)
}

export function tryFaults(model: FaultModel, { cases, seed, checks, noise }: TrialHow): TrialHits {
  const draw = drawsOf(seed)
  const tables = faultTables(model)
  const truth = noise === 0 ? model : shifted(model, { noise, draw })
  const weights = weightsOf(priorsOf(model, nothingKnown))
  const told = { symptoms: [0, 0], chosen: [0, 0], any: [0, 0] }
  for (let i = 0; i < cases; i++) {
    const fault = picked(
      model.faults.map(({ id, weight }) => [id, weight] as const),
      draw,
    )
    const symptoms = drawnSymptoms(truth, fault, draw)
    count(told.symptoms, placeOf(tables, weights, { symptoms, outcomes: {} }, fault))
    const outcomeOf = (id: string) => {
      const check = truth.checks.find((one) => one.id === id)!
      return picked(Object.entries(check.given[fault] ?? check.usual), draw)
    }
    let answers: Answers = { symptoms, outcomes: {} }
    let other: Answers = answers
    for (let k = 0; k < checks; k++) {
      const left = (of: Answers) => model.checks.filter(({ id }) => of.outcomes[id] === undefined)
      const looks = looksAhead(tables, posteriorOf(tables, weights, answers), left(answers))
      const best = looks.reduce((a, b) => (b.score > a.score ? b : a)).check.id
      answers = { ...answers, outcomes: { ...answers.outcomes, [best]: outcomeOf(best) } }
      const rest = left(other)
      const any = rest[Math.floor(draw() * rest.length)]!.id
      other = { ...other, outcomes: { ...other.outcomes, [any]: outcomeOf(any) } }
    }
    count(told.chosen, placeOf(tables, weights, answers, fault))
    count(told.any, placeOf(tables, weights, other, fault))
  }
  const shares = ([first, three]: number[]) => ({ first: first! / cases, three: three! / cases })
  return {
    cases,
    symptomsOnly: shares(told.symptoms),
    afterChecks: shares(told.chosen),
    afterAnyChecks: shares(told.any),
  }
}

function count(counts: number[], place: number): void {
  if (place === 1) counts[0]!++
  if (place <= 3) counts[1]!++
}

function placeOf(
  tables: FaultTables,
  weights: Readonly<Record<string, number>>,
  answers: Answers,
  fault: string,
): number {
  const { chances } = posteriorOf(tables, weights, answers)
  const own = chances[tables.faults.indexOf(fault)]!
  return 1 + chances.filter((chance) => chance > own).length
}

function drawnSymptoms(model: FaultModel, fault: string, draw: () => number): Answers['symptoms'] {
  const { symptoms } = model.faults.find(({ id }) => id === fault)!
  return Object.fromEntries(
    model.symptoms.map(({ id, leak }) => {
      const present = draw() < 1 - (1 - leak) * (1 - (symptoms[id] ?? 0))
      return [id, present ? ('present' as const) : ('absent' as const)]
    }),
  )
}

function picked(weights: readonly (readonly [string, number])[], draw: () => number): string {
  let left = draw() * weights.reduce((sum, [, weight]) => sum + weight, 0)
  for (const [id, weight] of weights) {
    left -= weight
    if (left < 0) return id
  }
  return weights.at(-1)![0]
}

/** A model whose chances are off by a normal amount in log odds. */
function shifted(
  model: FaultModel,
  { noise, draw }: { readonly noise: number; readonly draw: () => number },
): FaultModel {
  const normal = () => Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw())
  const off = (chance: number) => {
    const odds = (chance / (1 - chance)) * Math.exp(noise * normal())
    return odds / (1 + odds)
  }
  const each = (table: Readonly<Record<string, number>>, whole: boolean) => {
    const moved = Object.entries(table).map(([id, chance]) => [id, off(chance)] as const)
    const sum = whole ? moved.reduce((total, [, chance]) => total + chance, 0) : 1
    return Object.fromEntries(moved.map(([id, chance]) => [id, chance / sum]))
  }
  return {
    ...model,
    faults: model.faults.map((fault) => ({ ...fault, symptoms: each(fault.symptoms, false) })),
    checks: model.checks.map((check) => ({
      ...check,
      given: Object.fromEntries(Object.entries(check.given).map(([id, table]) => [id, each(table, true)])),
    })),
  }
}
