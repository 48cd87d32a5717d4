/**
 * When something may be over: its days of 1, 5 and 9 in 10, from when it may begin, and the last day that it may be.
 *
 * @module
 */

import { placeOn } from './scales.js'
import type { DayScale } from './time-scale.js'

/** Days since 1970; left out: not within the years that are looked at. */
export interface DayRangeProps {
  readonly scale: DayScale
  readonly today: number
  /** Even chance of being begun. */
  readonly begins: number | undefined
  readonly low: number | undefined
  readonly middle: number | undefined
  readonly high: number | undefined
  /** The last day on which it may be over. */
  readonly by: number | undefined
  /** On the longest way, with the usual days of everything. */
  readonly holdsUp: boolean
  /** The drawing in a sentence. */
  readonly label: string
}

const height = 34
const y = 19

export function DayRange({ scale, today, begins, low, middle, high, by, holdsUp, label }: DayRangeProps) {
  const at = (day: number) => `${placeOn(scale, day)}%`
  const end = high ?? scale.high
  const line = holdsUp ? 'line-3' : 'line-2'
  return (
    <svg className="drawing" height={height} role="img" aria-label={label}>
      <title>{label}</title>
      {scale.ticks.map(({ day }) => (
        <line key={day} className="rule" x1={at(day)} x2={at(day)} y1="0" y2={height} />
      ))}
      <line className="line-1 edged" x1={at(today)} x2={at(today)} y1="0" y2={height} />
      {begins !== undefined && low !== undefined && (
        <line className="line-1 dots" x1={at(begins)} x2={at(low)} y1={y} y2={y} />
      )}
      {low !== undefined && (
        <>
          <line className={line} x1={at(low)} x2={at(end)} y1={y} y2={y} />
          <line className="line-2" x1={at(low)} x2={at(low)} y1={y - 5} y2={y + 5} />
        </>
      )}
      {high !== undefined && <line className="line-2" x1={at(high)} x2={at(high)} y1={y - 5} y2={y + 5} />}
      {middle !== undefined && (
        <rect className="filled" x={at(middle)} y={y - 9} width="4" height="18" transform="translate(-2 0)" />
      )}
      {by !== undefined && (
        <svg x={at(by)} y="0" overflow="visible" aria-hidden="true">
          <path className="filled voiced" d="M-5 0H5L0 7Z" />
        </svg>
      )}
    </svg>
  )
}

/** A date of a scale of a phone's width takes so much of it. [hundredths] */
const lastNumber = 86

/** The dates of a scale, above its rows. */
export function DayNumbers({
  scale,
  say,
}: {
  readonly scale: DayScale
  readonly say: (date: string) => string
}) {
  return (
    <svg className="drawing" height="18" aria-hidden="true">
      {scale.ticks.map(({ day, date }) => {
        const place = placeOn(scale, day)
        // one that would stand past the end of the page goes without
        if (place > lastNumber) return null
        return (
          <text key={day} className="second" x={`${place}%`} y="14" textAnchor="start">
            {say(date)}
          </text>
        )
      })}
    </svg>
  )
}
