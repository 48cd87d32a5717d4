/**
 * One number with its two widths on a scale that is itself the control: the pointer is the quote.
 *
 * @module
 */

import { RangeLabel } from './range.js'
import { type Anchor, anchorInside, endPlaces, placeOn, type Scale } from './scales.js'

export interface RulerProps {
  readonly scale: Scale
  /** The number, and how far finding out and the simulation could move it. */
  readonly price: number
  readonly finding: { readonly low: number; readonly high: number }
  readonly simulation: { readonly low: number; readonly high: number }
  readonly quote: number
  readonly step: number
  readonly onQuote: (value: number) => void
  readonly say: (amount: number) => string
  readonly words: {
    readonly sign: string
    readonly walkAway: string
    readonly quote: (amount: string) => string
    readonly control: string
    readonly drawing: string
  }
}

const axisY = 94
const widthY = 50
/** Hundredths of the width that a label takes on a narrow page. */
const room = 18

export function Ruler(props: RulerProps) {
  const { scale, price, finding, simulation, quote, step, onQuote, say, words } = props
  const at = (value: number) => placeOn(scale, value)
  const beyond = price < scale.low || price > scale.high
  const places = endPlaces({ low: at(finding.low), high: at(finding.high) }, room)
  const shown = (value: number) => value >= scale.low && value <= scale.high
  const quoteAt = at(quote)
  return (
    <div className="ruler">
      <svg className="drawing" height="128" role="img" aria-label={words.drawing}>
        <title>{words.drawing}</title>
        <rect className="wash" x="0" y={axisY - 26} width={`${Math.max(0, at(price))}%`} height="26" />
        <line className="line-2" x1="0" x2="100%" y1={axisY} y2={axisY} />
        {scale.ticks.map((tick, i) => (
          <Tick
            key={tick}
            place={at(tick)}
            fromEnd={scale.ticks.length - 1 - i}
            crowded={scale.ticks.length > 4}
            text={say(tick)}
          />
        ))}
        {shown(finding.low) && <EndStroke place={at(finding.low)} />}
        {shown(finding.high) && <EndStroke place={at(finding.high)} />}
        <line
          className="line-2"
          x1={`${at(finding.low)}%`}
          x2={`${at(finding.high)}%`}
          y1={widthY}
          y2={widthY}
        />
        <line
          className="line-8"
          x1={`${at(simulation.low)}%`}
          x2={`${at(simulation.high)}%`}
          y1={widthY}
          y2={widthY}
        />
        {!beyond && (
          <>
            <line className="line-3" x1={`${at(price)}%`} x2={`${at(price)}%`} y1={widthY - 8} y2={axisY} />
            <text className="big" x={`${at(price)}%`} y="16" textAnchor={anchorInside(at(price), room)}>
              {say(price)}
            </text>
          </>
        )}
        {shown(finding.low) && <RangeLabel place={places.low} y={widthY - 11} text={say(finding.low)} />}
        {shown(finding.high) && <RangeLabel place={places.high} y={widthY - 11} text={say(finding.high)} />}
        <text className="second" x="6" y={axisY - 9}>
          {at(price) > 24 && quoteAt > 24 ? words.sign : ''}
        </text>
        <text className="second" x="100%" y={axisY - 9} textAnchor="end">
          {at(price) < 80 && quoteAt < 76 ? words.walkAway : ''}
        </text>
      </svg>
      <div className="pointer">
        <span
          className="pointer-name"
          style={{
            left: `${quoteAt}%`,
            transform: `translateX(${quoteAt < 16 ? '-12px' : quoteAt > 84 ? '-100%' : '-50%'})`,
          }}
        >
          {words.quote(say(quote))}
        </span>
        <input
          type="range"
          aria-label={words.control}
          aria-valuetext={say(quote)}
          min={scale.low}
          max={scale.high}
          step={step}
          value={Math.min(scale.high, Math.max(scale.low, quote))}
          onChange={(event) => onQuote(Math.max(0, Number(event.target.value)))}
        />
      </div>
    </div>
  )
}

function Tick({
  place,
  text,
  fromEnd,
  crowded,
}: {
  readonly place: number
  readonly text: string
  readonly fromEnd: number
  /** On a phone only every second one has room for its number. */
  readonly crowded: boolean
}) {
  const anchor: Anchor = place < 2 ? 'start' : fromEnd === 0 && place > 94 ? 'end' : 'middle'
  const look = crowded && fromEnd % 2 === 1 ? 'second roomy' : 'second'
  return (
    <>
      <line className="line-2" x1={`${place}%`} x2={`${place}%`} y1={axisY - 5} y2={axisY + 5} />
      <text className={look} x={`${place}%`} y={axisY + 30} textAnchor={anchor}>
        {text}
      </text>
    </>
  )
}

function EndStroke({ place }: { readonly place: number }) {
  return <line className="line-2" x1={`${place}%`} x2={`${place}%`} y1={widthY - 5} y2={widthY + 5} />
}
