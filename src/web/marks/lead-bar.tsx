/**
 * How far the first choice is ahead at the low and at the high value of an input: a ring and a bar on one line.
 *
 * @module
 */

import { Key } from './key.js'
import { TickLines } from './range.js'
import { placeOn, type Scale } from './scales.js'

export interface LeadBarProps {
  readonly scale: Scale
  readonly low: number
  readonly high: number
  /** Another alternative comes first somewhere along it. */
  readonly turns: boolean
  readonly label: string
}

const y = 16

export function LeadBar({ scale, low, high, turns, label }: LeadBarProps) {
  const [from, to] = [placeOn(scale, low), placeOn(scale, high)]
  const look = turns ? 'line-3 voiced' : 'line-2'
  return (
    <svg className="drawing" height="32" role="img" aria-label={label}>
      <title>{label}</title>
      <line className={look} x1={`${from}%`} x2={`${to}%`} y1={y} y2={y} />
      <rect
        className={turns ? 'filled voiced' : 'filled'}
        x={`${to}%`}
        y={y - 9}
        width="4"
        height="18"
        transform="translate(-2 0)"
      />
      <circle className="hollow" cx={`${from}%`} cy={y} r="5" />
    </svg>
  )
}

/** Where the first choice and the next best tie, through all rows. */
export function TieLine({ scale }: { readonly scale: Scale }) {
  const at = `${placeOn(scale, 0)}%`
  return (
    <svg className="grid" aria-hidden="true">
      <TickLines scale={scale} />
      <line className="line-2" x1={at} x2={at} y1="0" y2="100%" />
    </svg>
  )
}

export function LeadKey(words: { readonly low: string; readonly high: string; readonly nought: string }) {
  return (
    <Key
      items={[
        { says: words.low, width: 14, height: 20, mark: <circle className="hollow" cx="7" cy="10" r="5" /> },
        {
          says: words.high,
          width: 8,
          height: 20,
          mark: <rect className="filled" x="2" y="1" width="4" height="18" />,
        },
        {
          says: words.nought,
          width: 8,
          height: 20,
          mark: <line className="line-2" x1="4" x2="4" y1="0" y2="20" />,
        },
      ]}
    />
  )
}
