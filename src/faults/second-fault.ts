/**
 * Whether a second fault stands beside the first. It flags only; the list is ranked by the single causes.
 *
 * @module
 */

import type { FaultCheck } from '../catalogue/fault-schema.js'
import type { Answers, FaultTables } from './infer.js'

export interface SecondFault {
  readonly fault: string
  /** Chance that it is there beside another, of all that is reckoned with. */
  readonly chance: number
}

/** A second fault less likely than this is not spoken of. Practice. */
export const leastSecondChance = 0.15

/**
 * Chance of each fault to be one of two.
 *
 * Pair prior = 2 · pair · lift · prior_f · prior_g, lift where one drags the other down. Symptoms by the noisy-or; a check's
 * usual outcome has P(n|f)·P(n|g)/usual(n), at most 1, and the rest is shared by the sum of the two faults' odds of each
 * other outcome against the usual one. Tempered and remeasured as with single causes, against which it is normalised.
 */
export function pairChances(
  tables: FaultTables,
  prior: Readonly<Record<string, number>>,
  answers: Answers,
): Float64Array {
  const { model, faults } = tables
  const { rule } = model
  const total = faults.reduce((sum, id) => sum + (prior[id] ?? 0), 0)
  const share = faults.map((id) => (prior[id] ?? 0) / total)
  const drags = model.faults.map(({ dragsDown }) => new Set(dragsDown))
  const seen = evidenceOf(tables, answers)
  const weightOf = (f: number, g: number): number => {
    let log = 0
    for (const { chance, power } of seen) log += power * Math.log(chance(f, g))
    return Math.exp(rule.temper * log)
  }
  const paired = new Float64Array(faults.length)
  let all = 0
  for (const [f, own] of share.entries()) {
    if (own === 0) continue
    all += own * weightOf(f, f)
    for (let g = f + 1; g < faults.length; g++) {
      const other = share[g]!
      if (other === 0) continue
      const lift = drags[f]!.has(faults[g]!) || drags[g]!.has(faults[f]!) ? rule.dragLift : 1
      const weight = 2 * rule.pair * lift * own * other * weightOf(f, g)
      all += weight
      paired[f]! += weight
      paired[g]! += weight
    }
  }
  return paired.map((weight) => weight / all)
}

/** The likeliest fault beside the first, where it is likely enough to be spoken of. */
export function secondFaultOf(
  tables: FaultTables,
  paired: Float64Array,
  first: string,
): SecondFault | undefined {
  let best: SecondFault | undefined
  for (const [f, fault] of tables.faults.entries()) {
    const chance = paired[f]!
    if (fault !== first && chance >= leastSecondChance && chance > (best?.chance ?? 0))
      best = { fault, chance }
  }
  return best
}

interface Evidence {
  readonly power: number
  /** Chance of the answer with two faults there; with the same twice, of the one. */
  readonly chance: (f: number, g: number) => number
}

function evidenceOf(
  { model, faults, remeasuredBy }: FaultTables,
  { symptoms, outcomes }: Answers,
): Evidence[] {
  const ofSymptoms = model.symptoms.flatMap(({ id, leak }): Evidence[] => {
    const is = symptoms[id]
    if (is === undefined) return []
    const again = remeasuredBy.get(id)?.some((check) => outcomes[check] !== undefined) ?? false
    const misses = model.faults.map((fault) => 1 - (fault.symptoms[id] ?? 0))
    const chance = (f: number, g: number) => {
      const absent = (1 - leak) * misses[f]! * (f === g ? 1 : misses[g]!)
      return is === 'absent' ? absent : 1 - absent
    }
    return [{ power: again ? model.rule.remeasured : 1, chance }]
  })
  const ofChecks = model.checks.flatMap((check): Evidence[] => {
    const outcome = outcomes[check.id]
    if (outcome === undefined) return []
    const tables = faults.map((fault) => check.given[fault] ?? check.usual)
    const chance = (f: number, g: number) =>
      f === g ? tables[f]![outcome]! : ofTwo(check, { outcome, one: tables[f]!, other: tables[g]! })
    return [{ power: 1, chance }]
  })
  return [...ofSymptoms, ...ofChecks]
}

type Table = Readonly<Record<string, number>>

function ofTwo(
  { outcomes, usual }: FaultCheck,
  { outcome, one, other }: { readonly outcome: string; readonly one: Table; readonly other: Table },
): number {
  const normal = outcomes[0]!.id
  const sound = Math.min(1, (one[normal]! * other[normal]!) / usual[normal]!)
  if (outcome === normal) return sound
  const odds = (id: string) => one[id]! / one[normal]! + other[id]! / other[normal]!
  const sum = outcomes.slice(1).reduce((total, { id }) => total + odds(id), 0)
  return ((1 - sound) * odds(outcome)) / sum
}
