/**
 * Which alternative is best by two inputs: the borders between them, their names, and where the owner stands.
 *
 * @module
 */

import type { MapRow, TwoWayMap } from '../../alternatives/two-way-map.js'
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
        {stepsOf(map).map(({ from, to, down: row }) => (
          <line
            key={`${row} ${from}`}
            className="line-3"
            x1={`${x(from)}%`}
            y1={y(row)}
            x2={`${x(to)}%`}
            y2={y(row)}
          />
        ))}
        {regionsOf(map).map(({ alternative, at, row }) => (
          <text
            key={alternative}
            className="bold halo"
            x={`${x(at)}%`}
            y={nameY(y(row), y(map.down.now))}
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

/** A name keeps off the rims, and off the place where the owner stands. */
function nameY(wanted: number, here: number): number {
  const clear = Math.abs(wanted - here) < 22 ? here + (wanted < here ? -22 : 26) : wanted
  return Math.min(height - top - 8, Math.max(top + 18, clear))
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

interface Step {
  readonly from: number
  readonly to: number
  /** Half way between two rows. */
  readonly down: number
}

/** Borders that run across: where one row has another alternative than the next, and no border leads from one to the other. */
export function stepsOf({ across, rows }: TwoWayMap): Step[] {
  return rows.slice(1).flatMap((below, r) => {
    const above = rows[r]!
    const edges = [
      across.low,
      ...above.changes.map(({ at }) => at),
      ...below.changes.map(({ at }) => at),
      across.high,
    ]
    edges.sort((a, b) => a - b)
    return edges.slice(1).flatMap((to, e) => {
      const from = edges[e]!
      const middle = (from + to) / 2
      const [one, other] = [bestAt(above, middle), bestAt(below, middle)]
      const slants = bordersIn(above).some(
        (key) => bordersIn(below).includes(key) && isBetween(key, one, other),
      )
      return to > from && one !== other && !slants ? [{ from, to, down: (above.down + below.down) / 2 }] : []
    })
  })
}

function bestAt({ first, changes }: MapRow, at: number): string {
  return changes.filter((change) => change.at <= at).at(-1)?.to ?? first
}

/** Borders of a row by what they part. */
function bordersIn({ first, changes }: MapRow): string[] {
  return changes.map(({ to }, c) => `${changes[c - 1]?.to ?? first} ${to}`)
}

function isBetween(border: string, one: string, other: string): boolean {
  return border === `${one} ${other}` || border === `${other} ${one}`
}

/** Where the name of each alternative stands: in the middle one of its widest rows. */
export function regionsOf({ across, rows }: TwoWayMap): { alternative: string; at: number; row: number }[] {
  const pieces = rows.flatMap(({ down, first, changes }) => {
    const edges = [across.low, ...changes.map(({ at }) => at), across.high]
    return [first, ...changes.map(({ to }) => to)].map((alternative, i) => ({
      alternative,
      row: down,
      width: edges[i + 1]! - edges[i]!,
      at: (edges[i]! + edges[i + 1]!) / 2,
    }))
  })
  return [...new Set(pieces.map(({ alternative }) => alternative))].map((alternative) => {
    const own = pieces.filter((piece) => piece.alternative === alternative)
    const widest = Math.max(...own.map(({ width }) => width))
    const wide = own.filter(({ width }) => width > 0.95 * widest)
    const { at, row } = wide[Math.floor((wide.length - 1) / 2)]!
    return { alternative, at, row }
  })
}
