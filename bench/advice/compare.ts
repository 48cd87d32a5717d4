/**
 * What the trial comes to: means on common lives, the share of the gap that is closed, and where each is best.
 *
 * @module
 */

import { uniform } from './chance.js'
import type { RuleId } from './rules.js'
import type { BoatResult, Outcome, PolicyId } from './trial.js'

export interface Measured {
  readonly mean: number
  /** Over boats. */
  readonly error: number
}

/** Mean over boats of each boat's mean over her lives, the first `lives` of them, and its standard error. */
export function over(
  boats: readonly BoatResult[],
  policy: PolicyId,
  of: { readonly lives: number; readonly read: (outcome: Outcome) => number },
): Measured {
  return measured(boats.map((boat) => meanOfBoat(boat, policy, of)))
}

function meanOfBoat(
  { outcomes }: BoatResult,
  policy: PolicyId,
  of: { readonly lives: number; readonly read: (outcome: Outcome) => number },
): number {
  const lives = outcomes[policy].slice(0, of.lives)
  return lives.reduce((sum, outcome) => sum + of.read(outcome), 0) / lives.length
}

export function measured(values: readonly number[]): Measured {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  return { mean, error: Math.sqrt(squares / (values.length - 1) / values.length) }
}

/** One policy's cost less another's, boat by boat on the same lives. */
export function difference(
  boats: readonly BoatResult[],
  lives: number,
  [one, other]: readonly [PolicyId, PolicyId],
): Measured {
  const cost = { lives, read: (outcome: Outcome) => outcome.cost }
  return measured(boats.map((boat) => meanOfBoat(boat, one, cost) - meanOfBoat(boat, other, cost)))
}

export interface Closed {
  /** The rule with the least mean cost. */
  readonly rule: RuleId
  /** What the one who knows saves against it. */
  readonly gap: number
  /** (rule − Gensettle) / (rule − knowing); above 1 where Gensettle is cheaper than the one who knows. */
  readonly share: number
  /** 90 % by drawing boats with replacement, the best rule chosen anew in each draw. */
  readonly low: number
  readonly high: number
  /** Share of the draws in which the one who knows is no cheaper than the best rule: there the share means nothing. */
  readonly withoutGap: number
}

const draws = 4000

/** The share of the gap from the best rule to the one who knows that Gensettle closes. */
export function closedOf(
  boats: readonly BoatResult[],
  how: { readonly lives: number; readonly rules: readonly RuleId[]; readonly seed: number },
): Closed {
  const cost = { lives: how.lives, read: (outcome: Outcome) => outcome.cost }
  const rows = boats.map((boat) => ({
    gensettle: meanOfBoat(boat, 'gensettle', cost),
    knowing: meanOfBoat(boat, 'knowing', cost),
    rules: how.rules.map((rule) => meanOfBoat(boat, rule, cost)),
  }))
  const statistic = (pick: (i: number) => number) => {
    const sums = { gensettle: 0, knowing: 0, rules: how.rules.map(() => 0) }
    for (let i = 0; i < rows.length; i++) {
      const row = rows[pick(i)]!
      sums.gensettle += row.gensettle
      sums.knowing += row.knowing
      row.rules.forEach((value, r) => {
        sums.rules[r]! += value
      })
    }
    const least = Math.min(...sums.rules)
    const gap = (least - sums.knowing) / rows.length
    return { gap, share: (least - sums.gensettle) / rows.length / gap, rule: sums.rules.indexOf(least) }
  }
  const whole = statistic((i) => i)
  const drawn = Array.from({ length: draws }, (_, d) =>
    statistic((i) => Math.floor(uniform([how.seed, 99, d, i]) * rows.length)),
  )
  const shares = drawn
    .filter(({ gap }) => gap > 0)
    .map(({ share }) => share)
    .sort((a, b) => a - b)
  return {
    rule: how.rules[whole.rule]!,
    gap: whole.gap,
    share: whole.share,
    low: shares[Math.floor(0.05 * shares.length)] ?? Number.NaN,
    high: shares[Math.floor(0.95 * shares.length)] ?? Number.NaN,
    withoutGap: 1 - shares.length / draws,
  }
}

/** Boats by how much dearer Gensettle was for them than a rule, the dearest first. */
export function dearerThan(boats: readonly BoatResult[], lives: number, rule: RuleId): readonly BoatResult[] {
  const cost = { lives, read: (outcome: Outcome) => outcome.cost }
  const lost = (boat: BoatResult) => meanOfBoat(boat, 'gensettle', cost) - meanOfBoat(boat, rule, cost)
  return [...boats].sort((a, b) => lost(b) - lost(a))
}

const kindsOfParting = [
  'neither fits a new set',
  'only Gensettle does',
  'only the other does',
  'both do',
] as const

export interface Parting {
  readonly kind: (typeof kindsOfParting)[number]
  readonly lives: number
  /** Lives in which the costs differ at all. */
  readonly apart: number
  /** Mean of the other's cost less Gensettle's, over the lives of this kind. */
  readonly saved: number
  /** What this kind adds to the mean saving over all lives. */
  readonly share: number
}

/** How Gensettle and another part: by who of the two fits a new set. */
export function partings(boats: readonly BoatResult[], lives: number, other: PolicyId): readonly Parting[] {
  const pairs = boats.flatMap(({ outcomes }) =>
    Array.from({ length: lives }, (_, life) => ({
      own: outcomes.gensettle[life]!,
      other: outcomes[other][life]!,
    })),
  )
  return kindsOfParting.map((kind, k) => {
    const ofKind = pairs.filter(
      (pair) => (pair.own.replaced > 0 ? 1 : 0) + (pair.other.replaced > 0 ? 2 : 0) === k,
    )
    const saved = ofKind.reduce((sum, pair) => sum + pair.other.cost - pair.own.cost, 0)
    return {
      kind,
      lives: ofKind.length,
      apart: ofKind.filter((pair) => pair.own.cost !== pair.other.cost).length,
      saved: saved / ofKind.length,
      share: saved / pairs.length,
    }
  })
}
