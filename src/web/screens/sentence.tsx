/**
 * The answer for a set in one sentence: what to do, and the quote above which to walk away.
 *
 * @module
 */

import { hole, useFigures } from '../parts/index.js'
import { words } from '../words/alternatives.js'
import { figuresOf } from './alternatives-figures.js'
import { moneyOf, nameIn, nameWithin, type OfAnswer } from './of-answer.js'

export interface SentenceProps {
  readonly of: OfAnswer
  readonly className: string
}

export function Sentence({ of, className }: SentenceProps) {
  const { view } = of
  const { verdict, walkAway } = view.report
  const figures = useFigures()
  const best = nameIn(view)(verdict.best)
  const within = nameWithin(view)
  if (verdict.clearness === 'too-close' && verdict.next !== null) {
    return <p className={className}>{words.tooClose(within(verdict.best), within(verdict.next))}</p>
  }
  if (walkAway === null || view.quote === undefined) {
    return (
      <p className={className}>
        <b>{best}.</b>
      </p>
    )
  }
  if (walkAway.price <= 0 && walkAway.quote > walkAway.price) {
    return (
      <p className={className}>
        {best}: <b>{words.notEvenFree}</b>.
      </p>
    )
  }
  const clause = walkAway.quote <= walkAway.price ? words.ifQuoteStays : words.unlessQuoteFalls
  const price = figuresOf(of).walkAway(moneyOf(view)(walkAway.price))
  return (
    <>
      <p className={className}>
        {best}, <b>{figures.fill(clause(hole('price')), { price })}</b>.
      </p>
      {figures.opened()}
    </>
  )
}
