/**
 * Twenty boats just like this one: a dot for each that a part fails, in the month it happens.
 *
 * @module
 */

import type { MonthAhead } from '../../alternatives/month-by-month.js'
import { laidUpSpans, yearStarts } from './time-scale.js'
import { boatsByMonth } from './twenty.js'

export interface TwentyBoatsProps {
  readonly months: readonly MonthAhead[]
  readonly firstYear: number
  /** Chance of having failed by the end of each month. */
  readonly failing: readonly number[]
  readonly label: string
}

const dot = 4
const step = 10

export function TwentyBoats({ months, firstYear, failing, label }: TwentyBoatsProps) {
  const counts = boatsByMonth(failing)
  const most = Math.max(...counts)
  const each = 100 / months.length
  return (
    <span className="draws">
      <svg className="grid" aria-hidden="true">
        {laidUpSpans(months).map(({ from, width }) => (
          <rect key={from} className="hold" x={`${from}%`} y="0" width={`${width}%`} height="100%" />
        ))}
        {laidUpSpans(months).flatMap(({ from, width }) =>
          [from, from + width].map((at) => (
            <line key={`${at}`} className="rule" x1={`${at}%`} x2={`${at}%`} y1="0" y2="100%" />
          )),
        )}
        {yearStarts(months, firstYear)
          .slice(1)
          .map(({ at, year }) => (
            <line key={year} className="line-1 edged" x1={`${at}%`} x2={`${at}%`} y1="0" y2="100%" />
          ))}
      </svg>
      <svg className="drawing dots" style={{ '--most': most } as object} role="img" aria-label={label}>
        <title>{label}</title>
        <svg y="100%" overflow="visible" aria-hidden="true">
          {counts.flatMap((count, k) =>
            Array.from({ length: count }, (_, i) => (
              <circle
                // biome-ignore lint/suspicious/noArrayIndexKey: dots of a stack are alike
                key={`${k} ${i}`}
                className="filled"
                cx={`${(k + 0.5) * each}%`}
                cy={-7 - i * step}
                r={dot}
              />
            )),
          )}
        </svg>
      </svg>
    </span>
  )
}
