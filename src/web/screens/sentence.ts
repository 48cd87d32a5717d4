/**
 * The answer for a set in one sentence.
 *
 * @module
 */

import { words } from '../words/alternatives.js'
import type { AnswerView } from '../work/answer-view.js'
import { moneyOf, nameIn, nameWithin } from './of-answer.js'

export interface Sentence {
  readonly says: string
  /** What it hangs on, where it hangs on a quote. */
  readonly clause?: string
}

/** What to do, and the quote above which to walk away. Without the full stop. */
export function sentenceOf(view: AnswerView): Sentence {
  const { verdict, walkAway } = view.report
  const money = moneyOf(view)
  const best = nameIn(view)(verdict.best)
  if (verdict.clearness === 'too-close' && verdict.next !== null) {
    return {
      says: words.tooClose(nameWithin(view)(verdict.best), nameWithin(view)(verdict.next)).replace(/\.$/, ''),
    }
  }
  if (walkAway === null) return { says: best }
  if (walkAway.quote <= walkAway.price)
    return { says: best, clause: words.ifQuoteStays(money(walkAway.price)) }
  if (walkAway.price > 0) return { says: best, clause: words.unlessQuoteFalls(money(walkAway.price)) }
  return { says: best, clause: words.notEvenFree }
}
