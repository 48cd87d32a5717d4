/**
 * The forecast in a sentence, and the chance of a stop over time.
 *
 * @module
 */

import { monthsAhead as spans } from '../../forecast/odds.js'
import { ChanceOverTime } from '../marks/chance-over-time.js'
import { worthSaying } from '../marks/time-scale.js'
import { Behind, Lead, Passage, Say, WideTable } from '../parts/index.js'
import { words } from '../words/forecast.js'
import { lowerFirst, monthName, sayChance, sayMoney, sayNumber } from '../words/say.js'
import { firstYearOf, likeliestFirst, type OfForecast } from './of-forecast.js'

const year = spans.indexOf(12)

export function ComingPassage(of: OfForecast & { readonly following: boolean }) {
  const { basis, view, following } = of
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
      <Lead>
        {words.lead({
          chance: sayChance(stop),
          low: sayChance(low[at]!),
          high: sayChance(high[at]!),
          failures: sayNumber(view.forecast.set.failures, 1),
          cost: sayMoney(basis.model.currency, view.forecast.set.cost),
        })}
      </Lead>
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
        <WideTable name={over.behind}>
          <table className="table" style={{ maxWidth: 520 }}>
            <thead>
              <tr>
                <th scope="col">{over.month}</th>
                <th scope="col" className="number">
                  {over.low}
                </th>
                <th scope="col" className="number">
                  {over.expected}
                </th>
                <th scope="col" className="number">
                  {over.high}
                </th>
              </tr>
            </thead>
            <tbody>
              {months.map(({ month, yearsOn }, k) => (
                <tr key={`${yearsOn} ${month}`}>
                  <th scope="row">
                    {monthName(month)} {firstYear + yearsOn}
                  </th>
                  {[stopping.low, stopping.expected, stopping.high].map((values, i) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: always the same three
                    <td key={i} className="number">
                      {sayNumber(values[k]! * 100, 0)}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </WideTable>
      </Behind>
    </Passage>
  )
}
