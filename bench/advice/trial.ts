/**
 * One boat's lives under every rule, under Gensettle, and under the one who knows.
 *
 * @module
 */

import { type Advice, adviseFromLog, adviseKnowing } from './adviser.js'
import { type Boat, boatOf } from './boat.js'
import { costOf, type Life } from './ledger.js'
import { ledBy, priceOfNew, rules } from './rules.js'
import type { Question } from './state.js'
import { live } from './world.js'

/** In the order in which they are told. */
export const policies = ['gensettle', ...rules.map(({ id }) => id), 'knowing'] as const
export type PolicyId = (typeof policies)[number]

/** What a life came to. */
export interface Outcome {
  readonly cost: number
  readonly daysWithout: number
  readonly replaced: number
}

/** What the first piece of advice in a life expected the rest to cost, and what it did; at that time's money. */
export interface Foretold {
  readonly expected: number
  readonly came: number
}

export interface BoatResult {
  readonly boat: number
  readonly isModelled: boolean
  readonly isLogWhole: boolean
  readonly level: number
  readonly ageYears: number
  readonly horizonYears: number
  readonly hoursPerYear: number
  readonly priceOfNew: number
  readonly dayWithout: number
  /** By policy, life by life; of the two that are asked, the first lives only. */
  readonly outcomes: Readonly<Record<PolicyId, readonly Outcome[]>>
  readonly foretold: Readonly<Record<'gensettle' | 'knowing', readonly Foretold[]>>
  /** How often advice was asked for, and what it took. */
  readonly asked: number
  readonly askedMs: number
}

export interface Trial {
  readonly seed: number
  readonly lives: number
  /** Lives that Gensettle and the one who knows lead. */
  readonly advised: number
  readonly histories: number
}

/** A job above this share of a new set's price is asked about; others are mended. */
const asksAbove = 0.05

export async function tryBoat(boatNumber: number, trial: Trial): Promise<BoatResult> {
  const boat = boatOf(trial.seed, boatNumber)
  const { nature, believed } = boat
  const outcomes = Object.fromEntries(policies.map((id) => [id, []])) as unknown as Record<
    PolicyId,
    Outcome[]
  >
  for (const rule of rules)
    for (let life = 0; life < trial.lives; life++)
      outcomes[rule.id].push(outcomeOf(ledBy(rule, nature, life)))
  const foretold: Record<'gensettle' | 'knowing', Foretold[]> = { gensettle: [], knowing: [] }
  let asked = 0
  const began = performance.now()
  for (let life = 0; life < trial.advised; life++) {
    for (const who of ['gensettle', 'knowing'] as const) {
      const led = await ledByAdvice(boat, life, (question, seed) =>
        who === 'gensettle'
          ? adviseFromLog(boat, question, { seed, histories: trial.histories })
          : adviseKnowing(boat, question, { seed, histories: trial.histories, life }),
      )
      outcomes[who].push(outcomeOf(led.life))
      if (led.foretold !== null) foretold[who].push(led.foretold)
      asked += led.asked
    }
  }
  return {
    boat: boatNumber,
    isModelled: boat.isModelled,
    isLogWhole: boat.isLogWhole,
    level: nature.level,
    ageYears: nature.ageYears,
    horizonYears: believed.horizonYears,
    hoursPerYear: nature.pastHoursPerYear,
    priceOfNew: priceOfNew(believed),
    dayWithout: believed.powerLoss.curve.at(-1)!.cost / 14,
    outcomes,
    foretold,
    asked,
    askedMs: performance.now() - began,
  }
}

function outcomeOf(life: Life): Outcome {
  return { cost: costOf(life), daysWithout: life.daysWithout, replaced: life.replaced.length }
}

async function ledByAdvice(
  boat: Boat,
  life: number,
  ask: (question: Question, seed: number) => Promise<Advice>,
): Promise<{ readonly life: Life; readonly foretold: Foretold | null; readonly asked: number }> {
  const { nature } = boat
  const least = asksAbove * priceOfNew(nature.model)
  const steps = live(nature, { life })
  let first: { readonly advice: Advice; readonly at: number; readonly spent: number } | null = null
  let asked = 0
  let step = steps.next()
  while (!step.done) {
    const question = step.value
    if (question.estimate <= least) {
      step = steps.next('mend')
      continue
    }
    const advice = await ask(question, ((nature.seed ^ (life << 8)) + asked) & 0x7fffffff)
    asked++
    first ??= { advice, at: question.at, spent: question.spent }
    step = steps.next(advice.answer)
  }
  const led = step.value
  const foretold = first && {
    expected: first.advice.expected[first.advice.answer],
    came: (costOf(led) - first.spent) * Math.exp(nature.model.realInterestPerYear * first.at),
  }
  return { life: led, foretold, asked }
}
