/**
 * The drawings of a brief as plain shapes: across in hundredths of the width, down in pixels, so that text keeps its size.
 *
 * @module
 */

import type { BriefRange, BriefWidths } from './brief-blocks.js'

export type Stroke = 'fine' | 'line' | 'heavy' | 'bar' | 'dotted'

export type Shape =
  | { readonly is: 'stroke'; readonly look: Stroke; readonly x: Ends; readonly y: Ends }
  | { readonly is: 'ring'; readonly x: number; readonly y: number; readonly r: number }
  | {
      readonly is: 'word'
      readonly x: number
      readonly y: number
      readonly aside: number
      readonly anchor: 'start' | 'middle' | 'end'
      readonly text: string
      readonly bold: boolean
    }

export interface Drawing {
  readonly height: number
  readonly says: string
  readonly shapes: readonly Shape[]
}

type Ends = readonly [number, number]
/** Where a value stands. */
type Place = (value: number) => number

/** Room for words beside the outermost values, as a share of the span of all. */
const beside = { range: 0.16, widths: 0.22 }

/** The ranges of all alternatives on one scale; the dotted upright is what the best is expected to cost. */
export function rangeDrawings(rows: readonly BriefRange[]): Drawing[] {
  const place = placing(
    rows.flatMap(({ low, high }) => [low, high]),
    beside.range,
  )
  const mark = rows.find(({ tag }) => tag === 'Best in money')?.expected
  return rows.map((row) => rangeOf(row, place, mark))
}

function rangeOf(row: BriefRange, place: Place, mark: number | undefined): Drawing {
  const [low, middle, high] = [row.low, row.middle, row.high].map(place) as [number, number, number]
  const y = 18
  const look = row.tag === 'Barred' ? 'dotted' : row.tag === 'Best in money' ? 'heavy' : 'line'
  return {
    height: 26,
    says: row.drawn,
    shapes: [
      ...(mark === undefined ? [] : [upright('dotted', place(mark), [12, 26])]),
      { is: 'stroke', look, x: [low, high], y: [y, y] },
      upright('line', low, [y - 4, y + 4]),
      upright('line', high, [y - 4, y + 4]),
      upright('bar', middle, [y - 7, y + 7]),
      { is: 'ring', x: place(row.expected), y, r: 3.5 },
      word(low, y + 4, { text: thousands(row.low), anchor: 'end', aside: -5 }),
      word(middle, 9, { text: thousands(row.middle), anchor: 'middle', bold: true }),
      word(high, y + 4, { text: thousands(row.high), anchor: 'start', aside: 5 }),
    ],
  }
}

/** The price to walk away from: what finding out could make of it thin, what the simulation leaves thick, the quote a ring. */
export function widthsDrawing({ price, findingOut, simulation, quote, said, drawn }: BriefWidths): Drawing {
  const place = placing([price, findingOut.low, findingOut.high, quote], beside.widths)
  const [low, high] = [place(findingOut.low), place(findingOut.high)]
  return {
    height: 66,
    says: drawn,
    shapes: [
      { is: 'stroke', look: 'line', x: [low, high], y: [26, 26] },
      upright('line', low, [22, 30]),
      upright('line', high, [22, 30]),
      { is: 'stroke', look: 'bar', x: [place(simulation.low), place(simulation.high)], y: [26, 26] },
      upright('heavy', place(price), [17, 46]),
      { is: 'stroke', look: 'line', x: [0, 100], y: [46, 46] },
      { is: 'ring', x: place(quote), y: 46, r: 4.5 },
      word(place(price), 13, { text: said.price, anchor: 'middle', bold: true }),
      word(low, 30, { text: said.low, anchor: 'end', aside: -5 }),
      word(high, 30, { text: said.high, anchor: 'start', aside: 5 }),
      word(place(quote), 63, { text: said.quote, anchor: 'middle', bold: true }),
      ...(low > 24 ? [word(0, 42, { text: 'Sign', anchor: 'start' })] : []),
      word(100, 42, { text: 'Walk away', anchor: 'end' }),
    ],
  }
}

function placing(values: readonly number[], room: number): Place {
  const least = Math.min(...values)
  const most = Math.max(...values)
  const span = most - least || 1
  const from = least - room * span
  return (value) => Math.round((10_000 * (value - from)) / (span * (1 + 2 * room))) / 100
}

function upright(look: Stroke, x: number, y: Ends): Shape {
  return { is: 'stroke', look, x: [x, x], y }
}

function word(
  x: number,
  y: number,
  of: {
    readonly text: string
    readonly anchor: 'start' | 'middle' | 'end'
    readonly aside?: number
    readonly bold?: boolean
  },
): Shape {
  return { is: 'word', x, y, aside: 0, bold: false, ...of }
}

function thousands(amount: number): string {
  return (amount / 1000).toLocaleString('en-GB', { minimumFractionDigits: 1, maximumFractionDigits: 1 })
}
