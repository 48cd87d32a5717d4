/**
 * A small programme settled by branching on relaxations that are kept warm: what takes the solver long to prepare is often
 * settled by a few of them.
 *
 * @module
 */

import type { Highs, Model } from 'highs'
import { isOptimal, type Optimum, type Programme, toArrays } from './plan-milp.js'

/** Rounding of the solver's values. */
const tiny = 1e-6

interface Point {
  readonly cost: number
  readonly values: Float64Array
}

/**
 * The least cost below a bound, by branch and bound, depth first; undefined where it takes more relaxations than so many.
 * A yes-or-no that costs nothing is taken as yes wherever the rows bear it, so that only the others are branched on.
 */
export function branched(
  highs: Highs,
  programme: Programme,
  { below, most }: { readonly below: number; readonly most: number },
): Optimum | undefined {
  const { columns, rows } = programme
  let best: Point | undefined
  let left = most
  highs.withModel(
    toArrays(highs, { rows, columns: columns.map(({ whole: _, ...column }) => column) }),
    (model) => {
      model.options.set({ output_flag: false, presolve: 'off' })
      const visit = (): void => {
        if (left-- <= 0) return
        const point = relaxationOf(model)
        if (point === undefined || point.cost >= Math.min(below, best?.cost ?? below) - 1e-7) return
        const column = branchOn(programme, point.values)
        if (column === undefined) {
          best = { cost: point.cost, values: roundedUp(programme, point.values) }
          return
        }
        const { from = 0, to = 1 } = columns[column]!
        for (const value of point.values[column]! > 0.5 ? [1, 0] : [0, 1]) {
          model.changeColBounds(column, value, value)
          visit()
        }
        model.changeColBounds(column, from, to)
      }
      visit()
    },
  )
  if (left < 0) return undefined
  return best === undefined
    ? { ok: false, why: 'infeasible', words: 'nothing costs less' }
    : { ok: true, ...(best as Point) }
}

function relaxationOf(model: Model): Point | undefined {
  const { modelStatus } = model.run()
  if (!isOptimal(modelStatus)) return undefined
  return { cost: model.getObjectiveValue(), values: model.getSolution().colValue }
}

function isBetween(value: number): boolean {
  return value > tiny && value < 1 - tiny
}

function roundedUp({ columns }: Programme, values: Float64Array): Float64Array {
  return Float64Array.from(values, (value, at) => (columns[at]!.whole ? (value > tiny ? 1 : 0) : value))
}

/** One that costs something first; else the one nearest to a half in a row that breaks when all are taken as yes. */
function branchOn(programme: Programme, values: Float64Array): number | undefined {
  const { columns, rows } = programme
  const costly = columns.findIndex(({ whole, cost = 0 }, at) => whole && cost !== 0 && isBetween(values[at]!))
  if (costly >= 0) return costly
  const up = roundedUp(programme, values)
  let found: number | undefined
  let nearest = 0
  for (const { terms, least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY } of rows) {
    const sum = terms.reduce((total, [column, factor]) => total + factor * up[column]!, 0)
    if (sum >= least - tiny && sum <= most + tiny) continue
    for (const [column] of terms) {
      if (!columns[column]!.whole || !isBetween(values[column]!)) continue
      const near = Math.min(values[column]!, 1 - values[column]!)
      if (near > nearest) [found, nearest] = [column, near]
    }
  }
  return found
}
