/**
 * Rules of thumb, and how a life is led by a rule.
 *
 * @module
 */

import type { LifeModel } from '../../src/forecast/life-model.js'
import type { Life } from './ledger.js'
import type { Nature } from './nature.js'
import type { Answer, HowLived, Question } from './state.js'
import { meanOf } from './work.js'
import { live } from './world.js'

export type RuleId = 'half-price' | 'always-mend' | 'twenty-years' | 'first-large'

export interface Rule {
  readonly id: RuleId
  readonly answer: (question: Question, model: LifeModel) => Answer
  readonly replaceAt?: NonNullable<HowLived['replaceAt']>
}

/** An unplanned failure that stops the set and comes to at least this share of a new one is large; practice. */
const large = 0.2

export const rules: readonly Rule[] = [
  {
    id: 'half-price',
    answer: ({ estimate }, model) => (estimate > 0.5 * priceOfNew(model) ? 'replace' : 'mend'),
  },
  { id: 'always-mend', answer: () => 'mend' },
  { id: 'twenty-years', answer: () => 'mend', replaceAt: { ageYears: 20, hours: 6000 } },
  {
    id: 'first-large',
    answer: ({ planned, isDown, estimate }, model) =>
      !planned && isDown && estimate >= large * priceOfNew(model) ? 'replace' : 'mend',
  },
]

/** The usual price of a new set, fitting left out: what owners compare with. */
export function priceOfNew({ candidates }: LifeModel): number {
  const { price } = candidates[0]!
  return typeof price === 'object' && 'median' in price ? price.median : meanOf(price)
}

/** One life of a boat under a rule. */
export function ledBy(rule: Pick<Rule, 'answer' | 'replaceAt'>, nature: Nature, life: number): Life {
  const { replaceAt } = rule
  const steps = live(nature, { life, ...(replaceAt === undefined ? {} : { replaceAt }) })
  let step = steps.next()
  while (!step.done) step = steps.next(rule.answer(step.value, nature.model))
  return step.value
}
