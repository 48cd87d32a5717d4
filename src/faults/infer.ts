/**
 * What is wrong, given what was seen: one cause, exactly, by enumeration.
 *
 * - P(symptom s present | f) = 1 − (1 − leak_s)·(1 − p_fs)
 * - P(outcome o of check c | f) = given_c[f][o], or usual_c[o] where the fault has nothing to do with it
 * - ln posterior = ln prior + temper · Σ power · ln likelihood, normalised; power is 1, or `remeasured` for a symptom that a
 *   check among the answers has measured again
 *
 * A symptom that nobody knows of adds nothing. Valid for any prior that is not nought everywhere: chances in the tables lie
 * strictly between 0 and 1, so no answer can rule everything out. Practice; the rule is told in docs/faults.md.
 *
 * @module
 */

import type { FaultModel } from '../catalogue/read-fault-model.js'

/** What was answered: symptoms seen or looked for and not seen, and the outcome of each check. */
export interface Answers {
  readonly symptoms: Readonly<Record<string, 'present' | 'absent'>>
  readonly outcomes: Readonly<Record<string, string>>
}

/** One answer among others. */
export type AnswerKey =
  | { readonly symptom: string; readonly is: 'present' | 'absent' }
  | { readonly check: string; readonly outcome: string }

/** An answer's pull: temper · power · ln of its chance, by fault, and where no fault has to do with it. */
export interface Pull {
  readonly answer: AnswerKey
  readonly power: number
  readonly byFault: Float64Array
  readonly otherwise: number
}

/** The logarithms that inference adds up, laid down once for a model. */
export interface FaultTables {
  readonly model: FaultModel
  readonly faults: readonly string[]
  readonly symptoms: ReadonlyMap<string, { readonly present: Float64Array; readonly absent: Float64Array }>
  readonly checks: ReadonlyMap<string, ReadonlyMap<string, Float64Array>>
  /** Of the same outcomes the chances, and the chances to the power of the tempering, for looking ahead. */
  readonly ahead: ReadonlyMap<string, readonly OutcomeAhead[]>
  /** Symptom to the checks that measure it again. */
  readonly remeasuredBy: ReadonlyMap<string, readonly string[]>
}

export interface OutcomeAhead {
  readonly outcome: string
  readonly chances: Float64Array
  readonly tempered: Float64Array
}

export interface FaultPosterior {
  /** ln of prior × tempered likelihood, not normalised. */
  readonly logWeights: Float64Array
  /** In the order of the tables' faults; they make 1. */
  readonly chances: Float64Array
  readonly pulls: readonly Pull[]
}

export function faultTables(model: FaultModel): FaultTables {
  const faults = model.faults.map(({ id }) => id)
  const symptoms = new Map(
    model.symptoms.map(({ id, leak }) => {
      const present = model.faults.map((fault) => 1 - (1 - leak) * (1 - (fault.symptoms[id] ?? 0)))
      return [
        id,
        {
          present: Float64Array.from(present, Math.log),
          absent: Float64Array.from(present, (chance) => Math.log1p(-chance)),
        },
      ]
    }),
  )
  const checks = new Map(
    model.checks.map((check) => [
      check.id,
      new Map(
        check.outcomes.map(({ id }) => [
          id,
          Float64Array.from(faults, (fault) => Math.log((check.given[fault] ?? check.usual)[id]!)),
        ]),
      ),
    ]),
  )
  const ahead = new Map(
    [...checks].map(([id, outcomes]) => [
      id,
      [...outcomes].map(([outcome, logs]) => ({
        outcome,
        chances: logs.map(Math.exp),
        tempered: logs.map((log) => Math.exp(model.rule.temper * log)),
      })),
    ]),
  )
  const remeasuredBy = new Map<string, string[]>()
  for (const { id, remeasures } of model.checks) {
    for (const symptom of remeasures) {
      remeasuredBy.set(symptom, [...(remeasuredBy.get(symptom) ?? []), id])
    }
  }
  return { model, faults, symptoms, checks, ahead, remeasuredBy }
}

/**
 * The chance of each fault.
 *
 * @param prior Weight of each fault, in any unit; what is left out weighs nothing.
 * @throws RangeError if no fault has a prior, or an answer names what the model has not.
 */
export function posteriorOf(
  tables: FaultTables,
  prior: Readonly<Record<string, number>>,
  answers: Answers,
): FaultPosterior {
  const pulls = pullsOf(tables, answers)
  const logWeights = Float64Array.from(tables.faults, (fault) => Math.log(prior[fault] ?? 0))
  for (const { byFault } of pulls) for (const [f, pull] of byFault.entries()) logWeights[f]! += pull
  return { logWeights, chances: normalised(logWeights), pulls }
}

/** What each answer pulls. */
function pullsOf(tables: FaultTables, { symptoms, outcomes }: Answers): Pull[] {
  const { rule } = tables.model
  const ofSymptoms = Object.entries(symptoms).map(([symptom, is]): Pull => {
    const logs = known(tables.symptoms.get(symptom), 'symptom', symptom)[is]
    const again = tables.remeasuredBy.get(symptom)?.some((check) => outcomes[check] !== undefined) ?? false
    const power = again ? rule.remeasured : 1
    const { leak } = tables.model.symptoms.find(({ id }) => id === symptom)!
    const otherwise = Math.log(is === 'present' ? leak : 1 - leak)
    return pullOf({ symptom, is }, { logs, otherwise, power, temper: rule.temper })
  })
  const ofChecks = Object.entries(outcomes).map(([check, outcome]): Pull => {
    const logs = known(known(tables.checks.get(check), 'check', check).get(outcome), 'outcome', outcome)
    const { usual } = tables.model.checks.find(({ id }) => id === check)!
    return pullOf(
      { check, outcome },
      { logs, otherwise: Math.log(usual[outcome]!), power: 1, temper: rule.temper },
    )
  })
  return [...ofSymptoms, ...ofChecks]
}

function pullOf(
  answer: AnswerKey,
  of: {
    readonly logs: Float64Array
    readonly otherwise: number
    readonly power: number
    readonly temper: number
  },
): Pull {
  const by = of.temper * of.power
  return { answer, power: of.power, byFault: of.logs.map((log) => by * log), otherwise: by * of.otherwise }
}

/**
 * Chances from their logarithms, the largest taken out first so that nothing overflows.
 *
 * @throws RangeError if none is above nought.
 */
export function normalised(logWeights: Float64Array): Float64Array {
  const largest = logWeights.reduce((most, log) => Math.max(most, log), Number.NEGATIVE_INFINITY)
  if (!Number.isFinite(largest)) {
    throw new RangeError('prior must be above nought for some fault; found none')
  }
  const chances = logWeights.map((log) => Math.exp(log - largest))
  const sum = chances.reduce((total, chance) => total + chance, 0)
  return chances.map((chance) => chance / sum)
}

function known<T>(value: T | undefined, what: string, name: string): T {
  if (value === undefined) throw new RangeError(`${what} must be of the fault model; found ${name}`)
  return value
}
