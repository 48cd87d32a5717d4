/**
 * What is read off a demand: percentage points, the load-duration curve, and how much of the time is light load.
 *
 * @module
 */

import type { Demand } from './demand.js'
import { activeOf, apparentOf, type DemandGrid, pointOf, stepW } from './demand-grid.js'

/** Even chance, one in twenty, one in a hundred above, and all that can be on together. */
export interface Points {
  readonly p50: number
  readonly p95: number
  readonly p99: number
  readonly most: number
}

/** Points of a distribution over the steps of the grid, by what a step comes to; what is never reached is no part of it. */
export function pointsOf(chances: Float64Array, toUnit: (steps: number) => number): Points {
  let most = chances.length - 1
  while (most > 0 && chances[most]! <= 0) most -= 1
  const at = (share: number) => toUnit(pointOf(chances, share))
  return { p50: at(0.5), p95: at(0.95), p99: at(0.99), most: toUnit(most) }
}

/** Points of active [kW] and apparent power [kVA]. */
export function powerPoints(grid: DemandGrid): { readonly kW: Points; readonly kVA: Points } {
  const kilo = (steps: number) => (steps * stepW) / 1000
  return { kW: pointsOf(activeOf(grid), kilo), kVA: pointsOf(apparentOf(grid), kilo) }
}

/** Share of the time at which a load of so much or more is drawn, in falling order of the load. */
export interface DurationPoint {
  readonly kW: number
  readonly share: number
}

/** The load-duration curve: for each step of power the share of the time at which at least that much is drawn. */
export function durationCurve(active: Float64Array): DurationPoint[] {
  const curve: DurationPoint[] = []
  let share = 0
  for (let i = active.length - 1; i >= 0; i -= 1) {
    if (active[i]! <= 0) continue
    share += active[i]!
    curve.push({ kW: (i * stepW) / 1000, share: Math.min(1, share) })
  }
  return curve
}

/** Share of the time below a load. [kW] Time without any load counts. */
export function shareBelow(active: Float64Array, kW: number): number {
  const end = Math.ceil((kW * 1000) / stepW - 1e-9)
  let sum = 0
  for (let i = 0; i < Math.min(end, active.length); i += 1) sum += active[i]!
  return Math.min(1, sum)
}

/** Share of the time above a load. [kW] */
export function shareAbove(active: Float64Array, kW: number): number {
  let sum = 0
  for (let i = active.length - 1; i >= 0 && i * stepW > kW * 1000 + 1e-6; i -= 1) sum += active[i]!
  return sum
}

/** Active power of several demands together, each weighed by its hours. */
export function activeOfAll(
  parts: readonly { readonly demand: Demand; readonly hours: number }[],
): Float64Array {
  const total = parts.reduce((sum, { hours }) => sum + hours, 0)
  const sums = new Float64Array(Math.max(1, ...parts.map(({ demand }) => demand.whole.rows)))
  if (total <= 0) return sums
  for (const { demand, hours } of parts) {
    if (hours <= 0) continue
    activeOf(demand.whole).forEach((chance, i) => {
      sums[i]! += (chance * hours) / total
    })
  }
  return sums
}

/**
 * Of all that is connected, what is drawn together at the most. [1] `P / C`; the diversity is one over it, where the connected
 * is the sum of each load's own maximum.
 *
 * Source: definition in handbooks of the trade, recalled.
 */
export function demandFactor(of: { readonly drawnKW: number; readonly connectedKW: number }): number {
  return of.connectedKW > 0 ? of.drawnKW / of.connectedKW : 0
}

/** How unevenly the legs are loaded: means of the two. [W] */
export function legMeans(demand: Demand): readonly number[] {
  return demand.legs.map((grid) => activeOf(grid).reduce((sum, chance, i) => sum + chance * i * stepW, 0))
}
