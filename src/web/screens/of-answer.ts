/**
 * What the parts of the page of alternatives share.
 *
 * @module
 */

import type { AnswerView } from '../../alternatives/answer-view.js'
import { lowerFirst, sayMoney } from '../words/say.js'
import type { OfBasis } from './behind-figures.js'

export interface OfAnswer extends OfBasis {
  readonly view: AnswerView
}

/** One and two thirds standard errors: 90 in 100. */
export const ninety = 1.645

export function moneyOf(view: Pick<AnswerView, 'currency'>): (amount: number) => string {
  return (amount) => sayMoney(view.currency, amount)
}

/** The currency's sign, to stand before a field. */
export function signOf(view: Pick<AnswerView, 'currency'>): string {
  return sayMoney(view.currency, 1).replace('1', '').trim()
}

/** What an alternative is called. */
export function nameIn(view: AnswerView): (id: string) => string {
  return (id) => view.rows.find((row) => row.id === id)?.name ?? id
}

/** The same in the midst of a sentence. */
export function nameWithin(view: AnswerView): (id: string) => string {
  const name = nameIn(view)
  return (id) => lowerFirst(name(id))
}
