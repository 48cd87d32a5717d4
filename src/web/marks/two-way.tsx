/**
 * Which alternative is best by two inputs: the borders between them, their names, and where the owner stands.
 *
 * @module
 */

import type { TwoWayMap } from '../../alternatives/two-way-map.js'
import { placeOn } from './scales.js'

export interface TwoWayProps {
  readonly map: TwoWayMap
  readonly name: (alternative: string) => string
  readonly across: (value: number) => string
  readonly down: (value: number) => string
  readonly here: string
  readonly label: string
}

const height = 240
const top = 8
/** Left of the drawing stand the values that go down. [px] */
const labelRoom = 12

export function TwoWay({ map, name, across, down, here, label }: TwoWayProps) {
  const { rows } = map
  const y = (value: number) =>
    top + ((height - 2 * top) * (value - map.down.low)) / (map.down.high - map.down.low)
  const x = (value: number) => placeOn(map.across, value)
  return (
    <div className="two-way">
      <svg className="drawing" height={height + 44} role="img" aria-label={label}>
        <title>{label}</title>
        <rect className="framed" x="0" y={top} width="100%" height={height - 2 * top} />
        {bordersOf(map).map((border) =>
          border
            .slice(1)
            .map((point, i) => (
              <line
                key={`${point.down} ${point.at}`}
                className="line-3"
                x1={`${x(border[i]!.at)}%`}
                y1={y(border[i]!.down)}
                x2={`${x(point.at)}%`}
                y2={y(point.down)}
              />
            )),
        )}
        {regionsOf(map).map(({ alternative, at, row }) => (
          <text
            key={alternative}
            className="bold halo"
            x={`${x(at)}%`}
            y={Math.min(height - top - 8, Math.max(top + 18, y(row)))}
            textAnchor={x(at) < 25 ? 'start' : x(at) > 75 ? 'end' : 'middle'}
          >
            {name(alternative)}
          </text>
        ))}
        <circle className="hollow" cx={`${x(map.across.now)}%`} cy={y(map.down.now)} r="6" />
        <circle className="filled" cx={`${x(map.across.now)}%`} cy={y(map.down.now)} r="2" />
        <text
          className="second halo"
          x={`${x(map.across.now)}%`}
          dx={x(map.across.now) > 70 ? -labelRoom : labelRoom}
          y={y(map.down.now) + 5}
          textAnchor={x(map.across.now) > 70 ? 'end' : 'start'}
        >
          {here}
        </text>
        <text className="second" x="0" y={height + 16}>
          {across(map.across.low)}
        </text>
        <text className="second" x="100%" y={height + 16} textAnchor="end">
          {across(map.across.high)}
        </text>
        <text className="second halo" x="6" y={top + 18}>
          {down(map.down.low)}
        </text>
        <text className="second halo" x="6" y={height - top - 8}>
          {down(rows.at(-1)!.down)}
        </text>
      </svg>
    </div>
  )
}

interface Point {
  readonly at: number
  readonly down: number
}

/** Borders that go on from row to row, each between the same two alternatives. */
export function bordersOf({ rows }: TwoWayMap): (readonly Point[])[] {
  const lines = new Map<string, Point[][]>()
  rows.forEach(({ down, first, changes }, r) => {
    changes.forEach(({ at, to }, c) => {
      const from = changes[c - 1]?.to ?? first
      const key = `${from} ${to}`
      const known = lines.get(key) ?? []
      const last = known.at(-1)
      if (last !== undefined && last.at(-1)!.down === rows[r - 1]?.down) last.push({ at, down })
      else known.push([{ at, down }])
      lines.set(key, known)
    })
  })
  return [...lines.values()].flat().filter((line) => line.length > 1)
}

/** Where the name of each alternative stands: in the middle of its widest row. */
export function regionsOf(map: TwoWayMap): { alternative: string; at: number; row: number }[] {
  const { across, rows } = map
  const widest = new Map<string, { width: number; at: number; row: number }>()
  const middle = (rows.length - 1) / 2
  rows.forEach(({ down, first, changes }, r) => {
    const edges = [across.low, ...changes.map(({ at }) => at), across.high]
    for (const [i, alternative] of [first, ...changes.map(({ to }) => to)].entries()) {
      const width = edges[i + 1]! - edges[i]!
      const known = widest.get(alternative)
      // Of rows that are equally wide the one in the middle of the map is taken.
      const nearer =
        known === undefined ||
        Math.abs(r - middle) < Math.abs(rows.findIndex((one) => one.down === known.row) - middle)
      if (known === undefined || width > known.width * 1.001 || (width > known.width * 0.999 && nearer)) {
        widest.set(alternative, { width, at: (edges[i]! + edges[i + 1]!) / 2, row: down })
      }
    }
  })
  return [...widest].map(([alternative, { at, row }]) => ({ alternative, at, row }))
}
