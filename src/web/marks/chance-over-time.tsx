/**
 * A chance over time: the line expected, the band of what nobody knows of this set, leaders down to words.
 *
 * @module
 */

import type { MonthAhead } from '../../alternatives/month-by-month.js'
import { monthLetter } from '../words/say.js'
import { laidUpSpans, yearStarts } from './time-scale.js'

export interface ChanceOverTimeProps {
  readonly months: readonly MonthAhead[]
  readonly firstYear: number
  readonly expected: readonly number[]
  readonly low: readonly number[]
  readonly high: readonly number[]
  /** Months that words are put to. */
  readonly said: readonly { readonly month: number; readonly bold: string; readonly rest: string }[]
  readonly words: { readonly laidUp: string; readonly top: string; readonly drawing: string }
}

const height = 190
const y = (chance: number) => height * (1 - chance)

export function ChanceOverTime({ months, firstYear, expected, low, high, said, words }: ChanceOverTimeProps) {
  const { length } = months
  const x = (k: number) => (100 * (k + 1)) / length
  const line = (values: readonly number[]) =>
    `M0 ${y(0)}${values.map((value, k) => `L${x(k)} ${y(value)}`).join('')}`
  const feet = feetOf(said, low)
  const back = low
    .map((value, k) => `L${x(k)} ${y(value)}`)
    .toReversed()
    .join('')
  return (
    <div className="chance">
      <svg className="drawing" height={height + 8} role="img" aria-label={words.drawing}>
        <title>{words.drawing}</title>
        {laidUpSpans(months).map(({ from, width, months: count }) => (
          <g key={from}>
            <rect className="hold" x={`${from}%`} y="0" width={`${width}%`} height={height} />
            <line className="rule" x1={`${from}%`} x2={`${from}%`} y1="0" y2={height} />
            <line className="rule" x1={`${from + width}%`} x2={`${from + width}%`} y1="0" y2={height} />
            {count > 2 && (
              <text
                className={from === 0 ? 'second roomy' : 'second'}
                x={`${from + width / 2}%`}
                y={16}
                textAnchor="middle"
              >
                {words.laidUp}
              </text>
            )}
          </g>
        ))}
        {[0.25, 0.5, 0.75, 1].map((chance) => (
          <line key={chance} className="rule" x1="0" x2="100%" y1={y(chance)} y2={y(chance)} />
        ))}
        <svg
          viewBox={`0 0 100 ${height}`}
          preserveAspectRatio="none"
          width="100%"
          height={height}
          overflow="visible"
          aria-hidden="true"
        >
          <path className="wash" d={`${line(high)}${back}L0 ${y(0)}Z`} />
          <path className="line-1 voiced dots" vectorEffect="non-scaling-stroke" d={line(high)} />
          <path className="line-1 voiced dots" vectorEffect="non-scaling-stroke" d={line(low)} />
          <path className="line-2" vectorEffect="non-scaling-stroke" d={line(expected)} />
        </svg>
        {[25, 50, 75, 100].map((hundredths) => (
          <text
            key={hundredths}
            className="second cut"
            x="4"
            y={y(hundredths / 100) - 4 + (hundredths === 100 ? 17 : 0)}
          >
            {hundredths === 100 ? words.top : hundredths}
          </text>
        ))}
        <line className="line-2" x1="0" x2="100%" y1={height} y2={height} />
        {said.map(({ month, bold, rest }, i) => {
          const place = x(month)
          const late = place > latest
          const foot = feet[i]!
          return (
            <g key={month}>
              <line className="line-1" x1={`${place}%`} x2={`${place}%`} y1={y(expected[month]!)} y2={foot} />
              <circle className="hollow" cx={`${place}%`} cy={y(expected[month]!)} r="4" />
              <text
                className="cut"
                x={`${place}%`}
                dx={late ? -6 : 6}
                y={foot - 2}
                textAnchor={late ? 'end' : 'start'}
              >
                <tspan className="bold">{bold}</tspan> {rest}
              </text>
            </g>
          )
        })}
      </svg>
      <MonthLetters months={months} firstYear={firstYear} />
    </div>
  )
}

/** Past so much of the width, words stand to the left of their moment. [hundredths] */
const latest = 70
/** Months that the words of a moment reach over, on a phone. */
const reach = 10
/** Height of a line of words. [px] */
const lineHeight = 18

/** How far down the words of each moment stand: under the band all along them, and under those before that they would meet. */
function feetOf(said: ChanceOverTimeProps['said'], low: readonly number[]): readonly number[] {
  const spans = said.map(({ month }) => {
    const late = (100 * (month + 1)) / low.length > latest
    return late ? { from: month - reach, until: month } : { from: month, until: month + reach }
  })
  const feet: number[] = []
  spans.forEach(({ from, until }, i) => {
    const band = low.slice(Math.max(0, from), until + 1).map((chance) => y(chance) + 24)
    const before = i > 0 && spans[i - 1]!.until >= from ? [feet[i - 1]! + lineHeight] : []
    feet.push(Math.min(height - 8, Math.max(...band, ...before)))
  })
  return feet
}

/** The letters of the months with the years beneath. */
export function MonthLetters({ months, firstYear }: Pick<ChanceOverTimeProps, 'months' | 'firstYear'>) {
  const each = 100 / months.length
  return (
    <svg className="drawing letters" height="36" aria-hidden="true">
      {months.map(({ month, yearsOn, laidUp }, k) => (
        <text
          key={`${yearsOn} ${month}`}
          className={laidUp ? 'second' : 'bold'}
          x={`${(k + 0.5) * each}%`}
          y="14"
          textAnchor="middle"
        >
          {monthLetter(month)}
        </text>
      ))}
      {yearStarts(months, firstYear).map(({ at, year }, i, all) => (
        <g key={year}>
          {i > 0 && <line className="line-1 edged" x1={`${at}%`} x2={`${at}%`} y1="0" y2="36" />}
          {(all[i + 1]?.at ?? 100) - at > 8 && (
            <text className="second" x={`${at}%`} dx={i > 0 ? 5 : 0} y="32">
              {year}
            </text>
          )}
        </g>
      ))}
    </svg>
  )
}
