/**
 * The answer in a sentence, what money and doubt say of it, and the price to walk away from on its scale.
 *
 * @module
 */

import type { ReactNode } from 'react'
import type { Row } from '../../alternatives/answer-view.js'
import { Ruler } from '../marks/ruler.js'
import { scaleAround } from '../marks/scales.js'
import { type FigureSaid, hole, Passage, Said, useFigures } from '../parts/index.js'
import { words } from '../words/alternatives.js'
import { sayNumber, sayRate, upperFirst } from '../words/say.js'
import { figuresOf } from './alternatives-figures.js'
import { moneyOf, nameWithin, ninety, type OfAnswer } from './of-answer.js'
import { Sentence } from './sentence.js'

export interface AnswerProps extends OfAnswer {
  /** The quote that the pointer stands at, before the figures have followed it. */
  readonly quote: number | undefined
  readonly margin: ReactNode
  readonly onQuote: (quote: number) => void
}

export function AnswerPassage(props: AnswerProps) {
  const { quote: _, margin, onQuote: __, ...of } = props
  return (
    <Passage title={words.title} first says={margin}>
      <Sentence of={of} className="say" />
      <Reasons {...of} />
      <WalkAway {...props} />
    </Passage>
  )
}

/** Money, confidence, the next best; danger in the same breath. */
function Reasons(of: OfAnswer) {
  const { view } = of
  const { verdict, walkAway } = view.report
  const money = moneyOf(view)
  const behind = figuresOf(of)
  const figures = useFigures()
  const filled: Record<string, FigureSaid> = {}
  /** Leaves a hole, and remembers what goes into it. */
  const put = (key: string, figure: FigureSaid) => {
    filled[key] = figure
    return hole(key)
  }
  const row = (id: string | null) => view.rows.find((each) => each.id === id)
  const best = row(verdict.best)
  const next = row(verdict.next)
  const years = `${sayNumber(view.horizonYears)}\u00a0years`
  const says: string[] = []
  if (walkAway !== null && walkAway.price >= 0) {
    const apart = Math.abs(walkAway.price - walkAway.quote)
    const stands = walkAway.quote <= walkAway.price ? words.quoteStands.under : words.quoteStands.over
    says.push(stands(put('quote', behind.quote(walkAway.quote)), put('spare', behind.spare(money(apart)))))
  }
  const tie = verdict.clearness === 'too-close'
  let bold = ''
  const after: string[] = []
  if (best && next && tie) {
    const error = money(ninety * verdict.savingError)
    bold = words.apart(put('saving', behind.saving(`${money(Math.abs(verdict.saving))} ± ${error}`)))
    after.push(differences(best, next, { of, put }))
  } else if (best && next) {
    bold = `${words.clearness[verdict.clearness === 'clear' ? 'clear' : 'leaning']}:`
    after.push(
      words.saves({
        saving: put('saving', behind.saving(money(verdict.saving))),
        years,
        next: nameWithin(view)(next.id),
        cases: put('cases', behind.cases(String(Math.round(verdict.chanceBest * 100)))),
      }),
    )
    if (best.dangers > next.dangers * 1.05) {
      after.push(
        words.moreDanger(
          put('danger', behind.dangers(best, sayRate(best.dangers))),
          put('otherDanger', behind.dangers(next, sayRate(next.dangers))),
        ),
      )
    }
  } else after.push(`${upperFirst(words.nothingElse)}.`)
  const later = laterJobs(of, verdict.best, (key, amount) => put(key, behind.limit(amount)))
  if (later !== '') after.push(later)
  return (
    <>
      <p className="lead">
        {figures.fill(says.map((each) => `${each} `).join(''), filled)}
        {bold !== '' && <b>{figures.fill(bold, filled)}</b>} {figures.fill(after.join(' '), filled)}
      </p>
      {figures.opened()}
    </>
  )
}

/** Up to what later jobs are mended: nobody should take the figures for those of mending for ever. */
function laterJobs(
  { basis, view }: OfAnswer,
  best: string,
  put: (key: string, amount: string) => string,
): string {
  const limit = basis.model.alternatives.find(({ id }) => id === best)?.limit
  if (limit === undefined) return ''
  const { knots, above } = limit
  const money = moneyOf(view)
  const candidate = above === 'give-up' ? undefined : above.replaceWith
  const named = basis.model.candidates.find(({ id }) => id === candidate)?.name ?? candidate
  const low = money(Math.min(...knots))
  const high = money(Math.max(...knots))
  return words.laterJobs({
    low: put('low', low),
    ...(low === high ? {} : { high: put('high', high) }),
    instead: named === undefined ? words.doWithout : words.fit(named),
  })
}

/** What besides money tells two alternatives apart: what differs by a fifth or more. */
function differences(
  a: Row,
  b: Row,
  { of, put }: { readonly of: OfAnswer; readonly put: (key: string, figure: FigureSaid) => string },
): string {
  const apart = (one: number, other: number) => Math.abs(one - other) > 0.2 * Math.max(one, other, 1e-9)
  const { differs } = words
  const behind = figuresOf(of)
  const money = moneyOf(of.view)
  const both = (key: string, figure: (row: Row) => FigureSaid): readonly [string, string] => [
    put(`${key}A`, figure(a)),
    put(`${key}B`, figure(b)),
  ]
  const list = [
    apart(a.daysWithoutPerYear.mean, b.daysWithoutPerYear.mean) &&
      differs.days(...both('days', (row) => behind.days(row, sayNumber(row.daysWithoutPerYear.mean, 1)))),
    apart(a.stopsPerYear.mean, b.stopsPerYear.mean) &&
      differs.stops(...both('stops', (row) => behind.stops(row, sayNumber(row.stopsPerYear.mean, 1)))),
    apart(a.largestYear.mean, b.largestYear.mean) &&
      differs.year(...both('year', (row) => behind.largest(row, money(row.largestYear.mean)))),
    apart(a.dangers, b.dangers) &&
      differs.dangers(...both('dangers', (row) => behind.dangers(row, sayRate(row.dangers)))),
  ].filter((each) => each !== false)
  return list.length === 0 ? differs.nothing : `${differs.intro}${list.join('; ')}.`
}

function WalkAway({ quote: pointed, margin: _, onQuote, ...of }: AnswerProps) {
  const { view } = of
  const { walkAway } = view.report
  const money = moneyOf(view)
  const { ruler } = words
  if (walkAway === null || view.quote === undefined) {
    return <p className="small second prose gap">{words.quoteStands.none}</p>
  }
  const { price, simulation, findingOut } = walkAway
  const quote = pointed ?? walkAway.quote
  const scale = scaleAround([view.quote.most, Math.min(0, findingOut.low)], { fromZero: true, ticks: 5 })
  const behind = figuresOf(of)
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
        <div>
          <Said
            text={ruler.finding(hole('finding'))}
            figures={{
              finding: behind.walkAway(`${money(findingOut.low)} and ${money(findingOut.high)}`),
            }}
          />
        </div>
        <div>
          <Said
            text={`${ruler.simulation(hole('simulation'))} ${price < scale.low ? ruler.below : ''}`}
            figures={{
              simulation: behind.walkAway(`${money(simulation.low)} to ${money(simulation.high)}`),
            }}
          />
        </div>
      </div>
    </>
  )
}

function roundStep(most: number): number {
  return Math.max(1, 10 ** Math.floor(Math.log10(most / 100)))
}
