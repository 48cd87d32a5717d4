/**
 * The answer in a sentence, what money and doubt say of it, and the price to walk away from on its scale.
 *
 * @module
 */

import type { ReactNode } from 'react'
import { Ruler } from '../marks/ruler.js'
import { scaleAround } from '../marks/scales.js'
import { Figure, Lead, Passage, Say } from '../parts/index.js'
import { words } from '../words/alternatives.js'
import { sayNumber, sayRate, upperFirst } from '../words/say.js'
import type { Row } from '../work/answer-view.js'
import { moneyOf, nameIn, nameWithin, ninety, type OfAnswer } from './of-answer.js'

export interface AnswerProps extends OfAnswer {
  /** The quote that the pointer stands at, before the figures have followed it. */
  readonly quote: number | undefined
  readonly margin: ReactNode
  readonly onQuote: (quote: number) => void
}

export function AnswerPassage(props: AnswerProps) {
  return (
    <Passage title={words.title} first says={props.margin}>
      <Sentence {...props} />
      <Reasons {...props} />
      <WalkAway {...props} />
    </Passage>
  )
}

/** The one sentence. */
function Sentence({ view }: OfAnswer) {
  const { verdict, walkAway } = view.report
  const money = moneyOf(view)
  const best = nameIn(view)(verdict.best)
  if (verdict.clearness === 'too-close' && verdict.next !== null) {
    return <Say>{words.tooClose(nameWithin(view)(verdict.best), nameWithin(view)(verdict.next))}</Say>
  }
  const row = view.rows.find(({ id }) => id === verdict.best)
  if (walkAway === null || view.quote === undefined || row === undefined) {
    return (
      <Say>
        <b>{best}.</b>
      </Say>
    )
  }
  const under = walkAway.quote <= walkAway.price
  const clause = under
    ? words.ifQuoteStays(money(walkAway.price))
    : walkAway.price > 0
      ? words.unlessQuoteFalls(money(walkAway.price))
      : undefined
  return clause ? (
    <Say>
      {best}, <b>{clause}</b>.
    </Say>
  ) : (
    <Say>
      {best}: <b>{words.notEvenFree}</b>.
    </Say>
  )
}

/** Money, confidence, the next best; danger in the same breath. */
function Reasons(props: OfAnswer) {
  const { view } = props
  const { verdict, walkAway } = view.report
  const money = moneyOf(view)
  const row = (id: string | null) => view.rows.find((each) => each.id === id)
  const best = row(verdict.best)
  const next = row(verdict.next)
  const quote =
    walkAway === null || walkAway.price < 0
      ? ''
      : walkAway.quote <= walkAway.price
        ? words.quoteStands.under(money(walkAway.quote), money(walkAway.price - walkAway.quote))
        : words.quoteStands.over(money(walkAway.quote), money(walkAway.quote - walkAway.price))
  const years = `${sayNumber(view.horizonYears)}\u00a0years`
  return (
    <Lead>
      {quote}{' '}
      {best && next && verdict.clearness === 'too-close' ? (
        <>
          <b>{words.apart(money(Math.abs(verdict.saving)), money(ninety * verdict.savingError))}</b>{' '}
          {differences(best, next, money)}
        </>
      ) : best && next ? (
        <>
          <b>{words.clearness[verdict.clearness === 'clear' ? 'clear' : 'leaning']}:</b>{' '}
          {words.saves({
            how: '',
            saving: money(verdict.saving),
            years,
            next: nameWithin(view)(next.id),
            cases: Math.round(verdict.chanceBest * 100),
          })}
        </>
      ) : (
        `${upperFirst(words.nothingElse)}.`
      )}{' '}
      {best && next && best.dangers > next.dangers * 1.05 && verdict.clearness !== 'too-close'
        ? words.moreDanger(sayRate(best.dangers), sayRate(next.dangers))
        : ''}{' '}
      {laterJobs(props, verdict.best)}
    </Lead>
  )
}

/** Up to what later jobs are mended: nobody should take the figures for those of mending for ever. */
function laterJobs({ basis, view }: OfAnswer, best: string): string {
  const limit = basis.model.alternatives.find(({ id }) => id === best)?.limit
  if (limit === undefined) return ''
  const { knots, above } = limit
  const money = moneyOf(view)
  const candidate = above === 'give-up' ? undefined : above.replaceWith
  const named = basis.model.candidates.find(({ id }) => id === candidate)?.name ?? candidate
  return words.laterJobs({
    low: money(Math.min(...knots)),
    high: money(Math.max(...knots)),
    instead: named === undefined ? words.doWithout : words.fit(named),
  })
}

/** What besides money tells two alternatives apart: what differs by a fifth or more. */
function differences(a: Row, b: Row, money: (amount: number) => string): string {
  const apart = (one: number, other: number) => Math.abs(one - other) > 0.2 * Math.max(one, other, 1e-9)
  const { differs } = words
  const list = [
    apart(a.daysWithoutPerYear.mean, b.daysWithoutPerYear.mean) &&
      differs.days(sayNumber(a.daysWithoutPerYear.mean, 1), sayNumber(b.daysWithoutPerYear.mean, 1)),
    apart(a.stopsPerYear.mean, b.stopsPerYear.mean) &&
      differs.stops(sayNumber(a.stopsPerYear.mean, 1), sayNumber(b.stopsPerYear.mean, 1)),
    apart(a.largestYear.mean, b.largestYear.mean) &&
      differs.year(money(a.largestYear.mean), money(b.largestYear.mean)),
    apart(a.dangers, b.dangers) && differs.dangers(sayRate(a.dangers), sayRate(b.dangers)),
  ].filter((each) => each !== false)
  return list.length === 0 ? differs.nothing : `${differs.intro}${list.join('; ')}.`
}

function WalkAway({ view, quote: pointed, onQuote }: AnswerProps) {
  const { walkAway } = view.report
  const money = moneyOf(view)
  const { ruler } = words
  if (walkAway === null || view.quote === undefined) {
    return <p className="small second prose gap">{words.quoteStands.none}</p>
  }
  const { price, simulation, findingOut } = walkAway
  const quote = pointed ?? walkAway.quote
  const scale = scaleAround([view.quote.most, Math.min(0, findingOut.low)], { fromZero: true, ticks: 5 })
  const finding = ruler.finding(money(findingOut.low), money(findingOut.high))
  const simulated = ruler.simulation(money(simulation.low), money(simulation.high))
  return (
    <>
      <Ruler
        scale={scale}
        price={price}
        finding={findingOut}
        simulation={simulation}
        quote={quote}
        step={roundStep(scale.high)}
        onQuote={onQuote}
        say={money}
        words={{
          ...ruler,
          drawing: ruler.drawing({
            price: money(price),
            low: money(findingOut.low),
            high: money(findingOut.high),
            quote: money(quote),
          }),
        }}
      />
      <div className="two ruler-notes">
        <p>
          {finding.before}
          <Figure
            behind={{
              name: ruler.priceName,
              value: `${money(price)}; ${money(findingOut.low)} to ${money(findingOut.high)}`,
              comesFrom: ruler.priceFrom,
              moves: ruler.priceMoves(nameWithin(view)(walkAway.otherwise)),
            }}
          >
            <b>{finding.bold}</b>
          </Figure>
          {finding.after}
        </p>
        <p>
          {simulated.before}
          <b>{simulated.bold}</b>
          {simulated.after} {price < scale.low ? ruler.below : ''}
        </p>
      </div>
    </>
  )
}

function roundStep(most: number): number {
  return Math.max(1, 10 ** Math.floor(Math.log10(most / 100)))
}
