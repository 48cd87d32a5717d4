/**
 * The forecast in a sentence, and the chance of a stop over time.
 *
 * @module
 */

import { monthsAhead as spans } from '../../forecast/odds.js'
import { ChanceOverTime } from '../marks/chance-over-time.js'
import { worthSaying } from '../marks/time-scale.js'
import { Behind, hole, NumbersRow, NumbersTable, Passage, Said, Say } from '../parts/index.js'
import { words } from '../words/forecast.js'
import { lowerFirst, monthName, sayChance, sayMoney, sayNumber } from '../words/say.js'
import { setFiguresOf } from './forecast-figures.js'
import { firstYearOf, likeliestFirst, type OfForecast } from './of-forecast.js'

const year = spans.indexOf(12)

export function ComingPassage({ following, ...of }: OfForecast & { readonly following: boolean }) {
  const { basis, view } = of
  const behind = setFiguresOf(of)
  const { months } = view.months
  const stop = view.forecast.set.stopping[year]!
  const leading = [...likeliestFirst(of)].sort((a, b) => b.odds.stopping[year]! - a.odds.stopping[year]!)[0]!
  const at = months.findLastIndex(({ ends }) => ends <= 1)
  const { low, high } = view.months.stopping
  const name = (k: number) => `${monthName(months[k]!.month)} ${firstYearOf(of) + months[k]!.yearsOn}`
  const part = lowerFirst(leading.name)
  const { say } = words
  const head =
    stop >= 0.9
      ? say.surely
      : stop >= 0.6
        ? say.likely
        : stop >= 0.42
          ? say.even
          : stop >= 0.2
            ? say.maybe
            : say.seldom
  return (
    <Passage
      title={words.title}
      first
      says={
        <>
          <p>{words.span(name(0), name(months.length - 1))}</p>
          {following && <p>{words.following}</p>}
        </>
      }
    >
      <Say>
        {head}, <b>{stop >= 0.2 ? `${say.by(part)}${peakOf(of)}` : say.first(part)}</b>.
      </Say>
      <Said
        className="lead"
        text={words.lead({
          chance: hole('chance'),
          span: hole('span'),
          failures: hole('failures'),
          cost: hole('cost'),
        })}
        figures={{
          chance: behind.stop(sayChance(stop)),
          span: behind.stop(`${sayChance(low[at]!)} to ${sayChance(high[at]!)}`),
          failures: behind.failures(sayNumber(view.forecast.set.failures, 1)),
          cost: behind.cost(sayMoney(basis.model.currency, view.forecast.set.cost)),
        }}
      />
    </Passage>
  )
}

/** The month of the year ahead with the most of it, where one stands out. */
function peakOf({ view }: OfForecast): string {
  const { months, stopping } = view.months
  const risen = stopping.expected.slice(0, 13).map((chance, k) => chance - (stopping.expected[k - 1] ?? 0))
  const most = Math.max(...risen)
  const mean = risen.reduce((a, b) => a + b, 0) / risen.filter((rise) => rise > 0.001).length
  return most > 1.3 * mean ? words.say.in(monthName(months[risen.indexOf(most)]!.month)) : ''
}

export function OverTime(of: OfForecast) {
  const { view } = of
  const { months, stopping } = view.months
  const { over } = words
  const behind = setFiguresOf(of)
  const firstYear = firstYearOf(of)
  const last = months.length - 1
  const said = worthSaying(months).map((month) => ({
    month,
    bold: String(Math.round(stopping.expected[month]! * 100)),
    rest: months[month + 1]?.laidUp ? over.byLayUp : over.byEnd(monthName(months[month]!.month)),
  }))
  return (
    <Passage title={over.title} says={over.says}>
      <ChanceOverTime
        months={months}
        firstYear={firstYear}
        expected={stopping.expected}
        low={stopping.low}
        high={stopping.high}
        said={said}
        words={{
          laidUp: over.laidUp,
          top: over.top,
          drawing: over.drawing({
            chance: sayChance(stopping.expected[last]!),
            month: monthName(months[last]!.month),
          }),
        }}
      />
      <Behind name={over.behind}>
        <NumbersTable name={over.behind} first={over.month} heads={[over.low, over.expected, over.high]}>
          {months.map(({ month, yearsOn }, k) => {
            const name = `${monthName(month)} ${firstYear + yearsOn}`
            return (
              <NumbersRow
                key={`${yearsOn} ${month}`}
                name={name}
                heads={[over.low, over.expected, over.high]}
                figures={[stopping.low, stopping.expected, stopping.high].map((values) =>
                  behind.byMonth(sayNumber(values[k]! * 100, 0), k, name),
                )}
              />
            )
          })}
        </NumbersTable>
      </Behind>
    </Passage>
  )
}
