/**
 * What was told against what came: the likely count as a line, the expected one as a ring, what came as a bar.
 *
 * @module
 */

import { placeOn, type Scale } from './scales.js'

export interface ToldAgainstCameProps {
  readonly scale: Scale
  readonly expected: number
  readonly likely: { readonly low: number; readonly high: number }
  readonly came: number
  /** The drawing in a sentence. */
  readonly label: string
}

const y = 14

export function ToldAgainstCame({ scale, expected, likely, came, label }: ToldAgainstCameProps) {
  const at = (value: number) => `${placeOn(scale, value)}%`
  return (
    <svg className="drawing" height="28" role="img" aria-label={label}>
      <title>{label}</title>
      {scale.ticks.map((tick) => (
        <line key={tick} className="rule" x1={at(tick)} x2={at(tick)} y1="0" y2="28" />
      ))}
      <line className="line-2" x1={at(likely.low)} x2={at(likely.high)} y1={y} y2={y} />
      <line className="line-2" x1={at(likely.low)} x2={at(likely.low)} y1={y - 5} y2={y + 5} />
      <line className="line-2" x1={at(likely.high)} x2={at(likely.high)} y1={y - 5} y2={y + 5} />
      <circle className="hollow" cx={at(expected)} cy={y} r="4" />
      <rect
        className="filled voiced"
        x={at(came)}
        y={y - 10}
        width="5"
        height="20"
        transform="translate(-2.5 0)"
      />
    </svg>
  )
}
