/**
 * How long which load lasts: the heaviest hours first, and what sets have left to carry it.
 *
 * @module
 */

import type { DurationPoint } from '../../sizing/demand-points.js'

/** A set as a mark on the drawing. */
export interface RatingMark {
  readonly name: string
  readonly kW: number
  /** Drawn heavy: the one that is fitted. */
  readonly present: boolean
}

export interface DurationProps {
  readonly curve: readonly DurationPoint[]
  /** Another one over it, dashed; both are named below. */
  readonly beside?: {
    readonly curve: readonly DurationPoint[]
    readonly names: { readonly curve: string; readonly beside: string }
  }
  readonly ratings: readonly RatingMark[]
  readonly words: { readonly drawing: string; readonly axis: string }
}

const height = 300
const foot = 40
/** Names of the marks need so much from one to the next. [px] */
const apart = 16

export function Duration({ curve, beside, ratings, words }: DurationProps) {
  const loads = [...curve, ...(beside?.curve ?? []), ...ratings]
  const top = Math.max(1, ...loads.map(({ kW }) => kW)) * 1.04
  const y = (kW: number) => height * (1 - kW / top)
  const step = top > 16 ? 5 : top > 6 ? 2 : 1
  const lines = Array.from({ length: Math.floor(top / step) }, (_, i) => (i + 1) * step)
  const path = pathOf(curve, y)
  const names = spread(ratings.map(({ kW }) => y(kW)))
  return (
    <div className="duration">
      <svg className="drawing" height={height + foot} role="img" aria-label={words.drawing}>
        <title>{words.drawing}</title>
        {lines.map((kW) => (
          <line key={kW} className="rule" x1="0" x2="100%" y1={y(kW)} y2={y(kW)} />
        ))}
        <svg
          viewBox={`0 0 100 ${height}`}
          preserveAspectRatio="none"
          width="72%"
          height={height}
          overflow="visible"
          aria-hidden="true"
        >
          <path className="wash" d={`${path}L100 ${height}L0 ${height}Z`} />
          <path className="line-3 voiced" vectorEffect="non-scaling-stroke" d={path} />
          {beside && (
            <path className="line-2 dashed" vectorEffect="non-scaling-stroke" d={pathOf(beside.curve, y)} />
          )}
        </svg>
        {ratings.map(({ name, kW, present }, i) => (
          <g key={name}>
            <line className={present ? 'line-3' : 'line-1 dotted'} x1="0" x2="74%" y1={y(kW)} y2={y(kW)} />
            <line className="line-1" x1="74%" x2="77%" y1={y(kW)} y2={names[i]} />
            <text className={present ? 'bold' : ''} x="78%" y={names[i]! + 4}>
              {name}
            </text>
          </g>
        ))}
        {lines.map((kW) => (
          <text key={kW} className="second cut" x="72%" dx="-4" y={y(kW) - 4} textAnchor="end">
            {kW} kW
          </text>
        ))}
        <line className="line-2" x1="0" x2="72%" y1={height} y2={height} />
        {[0, 25, 50, 75, 100].map((hundredths) => (
          <text
            key={hundredths}
            className="second"
            x={`${0.72 * hundredths}%`}
            y={height + 16}
            textAnchor={hundredths === 0 ? 'start' : hundredths === 100 ? 'end' : 'middle'}
          >
            {hundredths}
          </text>
        ))}
        <text className="second" x="0" y={height + 34}>
          {words.axis}
        </text>
      </svg>
      {beside && (
        <p className="key">
          <KeyLine look="line-3 voiced" name={beside.names.curve} />
          <KeyLine look="line-2 dashed" name={beside.names.beside} />
        </p>
      )}
    </div>
  )
}

function KeyLine({ look, name }: { readonly look: string; readonly name: string }) {
  return (
    <span>
      <svg width="28" height="8" aria-hidden="true">
        <line className={look} x1="0" x2="28" y1="4" y2="4" />
      </svg>{' '}
      {name}
    </span>
  )
}

/** Steps from the left: each load for as long as at least that much is drawn. */
function pathOf(curve: readonly DurationPoint[], y: (kW: number) => number): string {
  let path = ''
  let from = 0
  for (const { kW, share } of curve) {
    path += `${path === '' ? 'M' : 'L'}${100 * from} ${y(kW)}L${100 * share} ${y(kW)}`
    from = share
  }
  return path
}

/** Places of names beside marks, moved apart where they would lie on one another; the order stays. */
function spread(places: readonly number[]): number[] {
  const order = places.map((place, i) => ({ place, i })).sort((a, b) => b.place - a.place)
  const made: number[] = []
  let below = Number.POSITIVE_INFINITY
  for (const { place, i } of order) {
    const at = Math.min(place, below - apart)
    made[i] = at
    below = at
  }
  return made
}
