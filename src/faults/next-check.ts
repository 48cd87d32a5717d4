/**
 * What each look is expected to tell, and what it costs and risks.
 *
 * Score of a check = expected fall of entropy [bit] / √cost / risk factor, with
 * cost = (minutes + lookMinutes)/60 · usdPerHour + usd. A look that measures a symptom again takes half of that symptom's
 * pull away, and that is reckoned with. Practice; the rule is told in docs/faults.md.
 *
 * @module
 */

import type { FaultCheck } from '../catalogue/fault-schema.js'
import { type FaultPosterior, type FaultTables, normalised } from './infer.js'

/** One outcome of a look not yet taken: its chance, and the chances of the faults after it. */
export interface Branch {
  readonly outcome: string
  readonly chance: number
  readonly after: Float64Array
}

export interface LookWorth {
  readonly check: FaultCheck
  readonly branches: readonly Branch[]
  /** Expected fall of entropy; never under nought. [bit] */
  readonly bits: number
  /** bits / √cost / risk factor */
  readonly score: number
}

/** H = −Σ p·log2 p. [bit] */
export function entropyBits(chances: Float64Array): number {
  let sum = 0
  for (const chance of chances) if (chance > 0) sum -= chance * Math.log2(chance)
  return sum
}

/** What the rule takes a look to cost. [USD] */
export function costOfLook(
  { minutes, usd }: Pick<FaultCheck, 'minutes' | 'usd'>,
  rule: { readonly lookMinutes: number; readonly usdPerHour: number },
): number {
  return ((minutes + rule.lookMinutes) / 60) * rule.usdPerHour + usd
}

/** The worth of every check that has no answer yet. */
export function looksAhead(
  tables: FaultTables,
  posterior: FaultPosterior,
  left: readonly FaultCheck[],
): LookWorth[] {
  const { rule } = tables.model
  const now = entropyBits(posterior.chances)
  return left.map((check) => {
    const branches = branchesOf(tables, posterior, check)
    const after = branches.reduce((sum, branch) => sum + branch.chance * entropyBits(branch.after), 0)
    const bits = Math.max(0, now - after)
    const score = bits / Math.sqrt(costOfLook(check, rule)) / rule.riskFactor[check.risk]
    return { check, branches, bits, score }
  })
}

function branchesOf(tables: FaultTables, posterior: FaultPosterior, check: FaultCheck): Branch[] {
  const { rule } = tables.model
  const without = Float64Array.from(posterior.logWeights)
  for (const { answer, power, byFault } of posterior.pulls) {
    const again = 'symptom' in answer && power === 1 && check.remeasures.includes(answer.symptom)
    if (again) for (const [f, pull] of byFault.entries()) without[f]! -= (1 - rule.remeasured) * pull
  }
  const before = normalised(without)
  return tables.ahead.get(check.id)!.map(({ outcome, chances, tempered }) => {
    const after = new Float64Array(before.length)
    let chance = 0
    let sum = 0
    for (let f = 0; f < before.length; f++) {
      chance += posterior.chances[f]! * chances[f]!
      sum += after[f] = before[f]! * tempered[f]!
    }
    for (let f = 0; f < after.length; f++) after[f]! /= sum
    return { outcome, chance, after }
  })
}

export interface QuestionWorth {
  readonly symptom: string
  readonly bits: number
}

/** What asking for each symptom that nobody was asked for is expected to tell; the most first. */
export function questionsAhead(
  tables: FaultTables,
  posterior: FaultPosterior,
  left: readonly string[],
): QuestionWorth[] {
  const { temper } = tables.model.rule
  const now = entropyBits(posterior.chances)
  return left
    .map((symptom) => {
      const { present, absent } = tables.symptoms.get(symptom)!
      const after = [present, absent].reduce((sum, logs) => {
        const chance = posterior.chances.reduce((total, own, f) => total + own * Math.exp(logs[f]!), 0)
        const chances = normalised(posterior.logWeights.map((log, f) => log + temper * logs[f]!))
        return sum + chance * entropyBits(chances)
      }, 0)
      return { symptom, bits: Math.max(0, now - after) }
    })
    .sort((a, b) => b.bits - a.bits)
}
