/**
 * How long something takes: from three points, or as deliveries go.
 *
 * @module
 */

import { betaQuantileSteps } from '../forecast/beta-steps.js'
import { betaCdf } from '../forecast/special-beta.js'
import { normalCdf, normalQuantile } from '../forecast/special-normal.js'
import { betaShapeOf, type Moments, type ThreePoints, threePointMoments } from './network-pert.js'

/** One way in which a piece can come. */
export interface Delivery {
  readonly chance: number
  /** [d] */
  readonly median: number
  readonly logSd: number
}

/**
 * Work by three points, its least and most as far as they go; or a delivery, log-normal by the way in which it comes, that has
 * to be waited for once more where the wrong piece came.
 */
export type Lasts =
  | ({ readonly is: 'three-point' } & ThreePoints)
  | { readonly is: 'delivery'; readonly ways: readonly Delivery[]; readonly wrongChance: number }

/** A draw between 0 and 1, the n-th of what it is asked for. */
export type Uniform = (n: number) => number

/** Days drawn, given that so many are gone already and it is not over. */
export type DrawDays = (uniform: Uniform, gone: number) => number

/** Steps of the table that work is drawn from: its error is under a thousandth of the span. */
const tableSteps = 256

/** Tables that were made, by the form of their law: work of one form is drawn from one table. */
export type BetaTables = Map<string, Float64Array>

/** Draws of a law; its table is one of those that were made, or is made and put there. */
export function drawOf(lasts: Lasts, tables: BetaTables = new Map()): DrawDays {
  return lasts.is === 'delivery' ? deliveryDraw(lasts) : threePointDraw(lasts, tables)
}

function threePointDraw(points: ThreePoints, tables: BetaTables): DrawDays {
  const { low, high } = points
  if (high <= low) return (_, gone) => Math.max(low, gone)
  const shape = betaShapeOf(points)
  const form = shape.towardsOne.toFixed(9)
  const table = tables.get(form) ?? betaQuantileSteps(shape, tableSteps)
  tables.set(form, table)
  return (uniform, gone) => {
    if (gone >= high) return gone
    const before = gone <= low ? 0 : betaCdf({ ...shape, share: (gone - low) / (high - low) })
    const days = low + (high - low) * between(table, before + uniform(0) * (1 - before))
    return Math.max(gone, days)
  }
}

/** The table holds quantiles at the middles of its steps; straight between them, and to 0 and 1 at the ends. */
function between(table: Float64Array, chance: number): number {
  const place = chance * table.length - 0.5
  const below = Math.floor(place)
  const from = below < 0 ? 0 : table[below]!
  const to = below + 1 >= table.length ? 1 : table[below + 1]!
  const width = below < 0 || below + 1 >= table.length ? 0.5 : 1
  const share = (below < 0 ? place + 0.5 : place - below) / width
  return from + (to - from) * share
}

/**
 * The way first, by its chance of lasting longer than what is gone; then, of that way, z = Φ⁻¹(1 − u Φ(−z₀)) with
 * z₀ = ln(gone/median)/σ. A wrong piece shows when it comes: then the wait begins anew.
 */
function deliveryDraw({ ways, wrongChance }: Extract<Lasts, { is: 'delivery' }>): DrawDays {
  const whole = ways.reduce((sum, { chance }) => sum + chance, 0)
  const arrival = (uniform: Uniform, from: number, gone: number) => {
    const still = ways.map((way) => (way.chance / whole) * lastsLonger(way, gone))
    const left = still.reduce((sum, chance) => sum + chance, 0)
    if (left < 1e-12) return gone
    const way = ways[whichOf(still, uniform(from) * left)]!
    if (!(way.median > 0)) return gone
    const tail = uniform(from + 1) * lastsLonger(way, gone)
    return Math.max(gone, way.median * Math.exp(way.logSd * -normalQuantile(tail)))
  }
  return (uniform, gone) => {
    const first = arrival(uniform, 0, gone)
    return uniform(2) < wrongChance ? first + arrival(uniform, 3, 0) : first
  }
}

/** The place up to which the weights have come to so much. */
function whichOf(weights: readonly number[], sum: number): number {
  let reached = 0
  for (let i = 0; i < weights.length - 1; i++) {
    reached += weights[i]!
    if (reached >= sum) return i
  }
  return weights.length - 1
}

/** Chance that a delivery takes longer than so many days. */
function lastsLonger({ median, logSd }: Delivery, days: number): number {
  if (days <= 0) return 1
  if (!(median > 0)) return 0
  const z = Math.log(days / median) / logSd
  return logSd > 0 ? normalCdf(-z) : median > days ? 1 : 0
}

/**
 * Mean and standard deviation. Of a delivery L that comes again with chance w: E = (1 + w) E[L] and
 * Var = Var[L] + w E[L²] − w² E[L]², a log-normal having the mean m e^(σ²/2) and the second moment m² e^(2σ²). Derived.
 */
export function momentsOf(lasts: Lasts): Moments {
  if (lasts.is === 'three-point') return threePointMoments(lasts)
  const { ways, wrongChance: w } = lasts
  const whole = ways.reduce((sum, { chance }) => sum + chance, 0)
  const over = (of: (way: Delivery) => number) =>
    ways.reduce((sum, way) => sum + (way.chance / whole) * of(way), 0)
  const mean = over(({ median, logSd }) => median * Math.exp(logSd ** 2 / 2))
  const square = over(({ median, logSd }) => median ** 2 * Math.exp(2 * logSd ** 2))
  const variance = square - mean ** 2 + w * square - (w * mean) ** 2
  return { mean: (1 + w) * mean, sd: Math.sqrt(Math.max(0, variance)) }
}

/** What it takes as a rule: the usual number of days, or the delivery that is as likely sooner as later. [d] */
export function usualDays(lasts: Lasts): number {
  return lasts.is === 'three-point' ? lasts.usual : deliveryAt(lasts, 0.5)
}

/** The three figures that tell it: the three points, or of a delivery those that it stays under 1, 5 and 9 times in 10. [d] */
export function told(lasts: Lasts): ThreePoints {
  if (lasts.is === 'three-point') return { low: lasts.low, usual: lasts.usual, high: lasts.high }
  return { low: deliveryAt(lasts, 0.1), usual: deliveryAt(lasts, 0.5), high: deliveryAt(lasts, 0.9) }
}

/** The days that a delivery stays under with a chance, a wrong piece apart; by halving. */
function deliveryAt({ ways }: Extract<Lasts, { is: 'delivery' }>, chance: number): number {
  const whole = ways.reduce((sum, way) => sum + way.chance, 0)
  const longer = (days: number) =>
    ways.reduce((sum, way) => sum + (way.chance / whole) * lastsLonger(way, days), 0)
  let low = 0
  let high = Math.max(...ways.map(({ median, logSd }) => median * Math.exp(4 * logSd)))
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2
    if (longer(middle) > 1 - chance) low = middle
    else high = middle
  }
  return high
}
