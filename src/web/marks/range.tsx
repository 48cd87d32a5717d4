/**
 * A range: one in ten below, even chance, one in ten above, and what is expected.
 *
 * @module
 */

import { Key } from './key.js'
import { type LabelPlace, labelPlaces, placeOn, type Scale } from './scales.js'

export interface RangeProps {
  readonly scale: Scale
  readonly low: number
  readonly middle: number
  readonly high: number
  readonly expected: number
  /** `best`: the best in money. `barred`: cannot be chosen. */
  readonly look?: 'best' | 'barred' | undefined
  readonly say: (amount: number) => string
  /** The drawing in a sentence. */
  readonly label: string
}

const y = 28
const room = 11

export function Range({ scale, low, middle, high, expected, look, say, label }: RangeProps) {
  const at = { low: placeOn(scale, low), middle: placeOn(scale, middle), high: placeOn(scale, high) }
  const places = labelPlaces(at, room)
  const line = look === 'best' ? 'line-3 voiced' : look === 'barred' ? 'line-2 dotted' : 'line-2'
  const stroke = look === 'best' ? 'line-2 voiced' : 'line-2'
  return (
    <svg className="drawing" height="48" role="img" aria-label={label}>
      <title>{label}</title>
      <line className={line} x1={`${at.low}%`} x2={`${at.high}%`} y1={y} y2={y} />
      <line className={stroke} x1={`${at.low}%`} x2={`${at.low}%`} y1={y - 5} y2={y + 5} />
      <line className={stroke} x1={`${at.high}%`} x2={`${at.high}%`} y1={y - 5} y2={y + 5} />
      <rect
        className={look === 'barred' ? 'hollow' : look === 'best' ? 'filled voiced' : 'filled'}
        x={`${at.middle}%`}
        y={y - 9}
        width={look === 'barred' ? 5 : 4}
        height="18"
        transform="translate(-2 0)"
      />
      <circle className="hollow" cx={`${placeOn(scale, expected)}%`} cy={y} r="4" />
      <RangeLabel place={places.low} text={say(low)} />
      <RangeLabel place={places.middle} text={say(middle)} bold />
      <RangeLabel place={places.high} text={say(high)} />
    </svg>
  )
}

export function RangeLabel(of: {
  readonly place: LabelPlace
  readonly text: string
  readonly bold?: boolean
  readonly y?: number
}) {
  const { at, dx, anchor } = of.place
  return (
    <text className={of.bold ? 'bold' : 'second'} x={`${at}%`} dx={dx} y={of.y ?? 13} textAnchor={anchor}>
      {of.text}
    </text>
  )
}

/** Gridlines through a row, with the first one's expected cost as a dotted upright. */
export function Gridlines({ scale, mark }: { readonly scale: Scale; readonly mark: number }) {
  return (
    <svg className="grid" aria-hidden="true">
      <TickLines scale={scale} />
      <line
        className="line-1 voiced dots"
        x1={`${placeOn(scale, mark)}%`}
        x2={`${placeOn(scale, mark)}%`}
        y1="0"
        y2="100%"
      />
    </svg>
  )
}

/** A hairline down from every number of the axis. */
export function TickLines({ scale }: { readonly scale: Scale }) {
  return scale.ticks.map((tick) => {
    const at = `${placeOn(scale, tick)}%`
    return <line key={tick} className="rule" x1={at} x2={at} y1="0" y2="100%" />
  })
}

/** More numbers than these are too many for a phone: there every second one is left out, and never nought. */
const mostOnPhone = 6

/** The numbers of a scale, above or below its rows. */
export function AxisNumbers({
  scale,
  say,
}: {
  readonly scale: Scale
  readonly say: (value: number) => string
}) {
  const { ticks } = scale
  const kept = Math.max(0, ticks.indexOf(0)) % 2
  return (
    <svg className="drawing" height="18" aria-hidden="true">
      {ticks.map((tick, i) => {
        const place = placeOn(scale, tick)
        const left = ticks.length > mostOnPhone && i % 2 !== kept
        return (
          <text
            key={tick}
            className={left ? 'second roomy' : 'second'}
            x={`${place}%`}
            y="14"
            textAnchor={place < 3 ? 'start' : place > 97 ? 'end' : 'middle'}
          >
            {say(tick)}
          </text>
        )
      })}
    </svg>
  )
}

/** How a range is read, beside its own drawing. */
export function RangeKey({ range, mark }: { readonly range: string; readonly mark: string }) {
  return (
    <Key
      items={[
        {
          says: range,
          width: 74,
          height: 20,
          mark: (
            <>
              <line className="line-2" x1="4" x2="70" y1="10" y2="10" />
              <line className="line-2" x1="4" x2="4" y1="5" y2="15" />
              <line className="line-2" x1="70" x2="70" y1="5" y2="15" />
              <rect className="filled" x="28" y="1" width="4" height="18" />
              <circle className="hollow" cx="40" cy="10" r="4" />
            </>
          ),
        },
        {
          says: mark,
          width: 8,
          height: 20,
          mark: <line className="line-1 voiced dots" x1="4" x2="4" y1="0" y2="20" />,
        },
      ]}
    />
  )
}
