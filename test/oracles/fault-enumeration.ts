/**
 * The chances of faults by plain enumeration: every hypothesis, one fault or two, with the chance of the answers under it
 * multiplied out as the rule in docs/faults.md says it. Slow, in plain numbers, with nothing of the program's but the files.
 *
 * @module
 */

import type { FaultModel } from '../../src/catalogue/read-fault-model.js'

export interface Told {
  readonly symptoms: Readonly<Record<string, 'present' | 'absent'>>
  readonly outcomes: Readonly<Record<string, string>>
}

/** Chance of each fault where exactly one is there. */
export function enumerateSingles(
  model: FaultModel,
  prior: Readonly<Record<string, number>>,
  told: Told,
): Record<string, number> {
  const weights = Object.fromEntries(
    model.faults.map(({ id }) => [id, (prior[id] ?? 0) * tempered(model, [id], told)]),
  )
  return shares(weights)
}

/** Chance of each fault to be one of two, beside all single faults. */
export function enumeratePairs(
  model: FaultModel,
  prior: Readonly<Record<string, number>>,
  told: Told,
): Record<string, number> {
  const own = shares(Object.fromEntries(model.faults.map(({ id }) => [id, prior[id] ?? 0])))
  const among = Object.fromEntries(model.faults.map(({ id }) => [id, 0]))
  let total = 0
  for (const { id } of model.faults) total += own[id]! * tempered(model, [id], told)
  for (const one of model.faults) {
    for (const other of model.faults) {
      if (one.id === other.id) continue
      const drags = one.dragsDown.includes(other.id) || other.dragsDown.includes(one.id)
      // each ordered pair carries half of 2 · pair · lift · prior · prior
      const half = model.rule.pair * (drags ? model.rule.dragLift : 1) * own[one.id]! * own[other.id]!
      const weight = half * tempered(model, [one.id, other.id], told)
      total += weight
      among[one.id]! += weight
      among[other.id]! += weight
    }
  }
  return Object.fromEntries(Object.entries(among).map(([id, weight]) => [id, weight / total]))
}

function tempered(model: FaultModel, there: readonly string[], told: Told): number {
  let likelihood = 1
  for (const [symptom, is] of Object.entries(told.symptoms)) {
    let absent = 1 - model.symptoms.find(({ id }) => id === symptom)!.leak
    for (const id of there)
      absent *= 1 - (model.faults.find((fault) => fault.id === id)!.symptoms[symptom] ?? 0)
    const measured = model.checks.some(
      ({ id, remeasures }) => id in told.outcomes && remeasures.includes(symptom),
    )
    likelihood *= (is === 'absent' ? absent : 1 - absent) ** (measured ? model.rule.remeasured : 1)
  }
  for (const [id, outcome] of Object.entries(told.outcomes)) {
    const check = model.checks.find((one) => one.id === id)!
    const tables = there.map((fault) => check.given[fault] ?? check.usual)
    likelihood *= tables.length === 1 ? tables[0]![outcome]! : ofTwo(check, tables as [Table, Table], outcome)
  }
  return likelihood ** model.rule.temper
}

type Table = Readonly<Record<string, number>>

function ofTwo(
  check: FaultModel['checks'][number],
  [one, other]: readonly [Table, Table],
  outcome: string,
): number {
  const normal = check.outcomes[0]!.id
  const both = Math.min(1, (one[normal]! * other[normal]!) / check.usual[normal]!)
  if (outcome === normal) return both
  const weigh = (id: string) => one[id]! / one[normal]! + other[id]! / other[normal]!
  let all = 0
  for (const { id } of check.outcomes) if (id !== normal) all += weigh(id)
  return ((1 - both) * weigh(outcome)) / all
}

function shares(weights: Readonly<Record<string, number>>): Record<string, number> {
  const total = Object.values(weights).reduce((sum, weight) => sum + weight, 0)
  return Object.fromEntries(Object.entries(weights).map(([id, weight]) => [id, weight / total]))
}
