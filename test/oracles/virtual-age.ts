/**
 * Repairs that leave a part neither new nor as it was (Kijima's virtual age), to judge the simulator by; no part of
 * the product.
 *
 * Source: Kijima, "Some results for repairable systems with general repair", Journal of Applied Probability 26 (1989),
 * and Kijima and Sumita (1986) for the expected number; recalled.
 *
 * @module
 */

import { chanceOfEnding, meanLife, residualQuantile, type WeibullLife } from '../../src/forecast/lives.js'
import { extrapolated } from './renewal.js'

/** `each`: a repair undoes wear since the last one only (type I). `all`: it works on all wear (type II). */
export type RepairReach = 'each' | 'all'

/** Virtual age after each of several lives, q = 0 as new, q = 1 as old: V + qX, or q (V + X). */
export function virtualAges(
  repair: { readonly reach: RepairReach; readonly keeps: number },
  lives: readonly number[],
): number[] {
  const ages: number[] = []
  let age = 0
  for (const life of lives) {
    age = repair.reach === 'each' ? age + repair.keeps * life : repair.keeps * (age + life)
    ages.push(age)
  }
  return ages
}

/** Next life from a virtual age, by a uniform of survival u: η ((V/η)^β − ln u)^(1/β) − V. */
export function nextLife(
  life: WeibullLife,
  draw: { readonly virtualAge: number; readonly uniform: number },
): number {
  return residualQuantile(life, { age: draw.virtualAge, chance: 1 - draw.uniform })
}

/**
 * Expected failures by `until` with repairs of type I, whose virtual age is q times the time of the last failure:
 * N = F + ∫ dN(x) F(t − x | qx), on mid-points.
 */
export function failuresEach(
  life: WeibullLife,
  plan: { readonly keeps: number; readonly until: number; readonly steps: number },
): number {
  const { keeps, until } = plan
  return extrapolated(plan.steps, (steps) => {
    const step = until / steps
    const ends = (age: number, ahead: number): number => chanceOfEnding(life, { age, ahead })
    const expected = new Float64Array(steps + 1)
    for (let i = 1; i <= steps; i++) {
      let sum = ends(0, i * step)
      for (let j = 1; j < i; j++) {
        const middle = (j - 0.5) * step
        sum += ends(keeps * middle, i * step - middle) * (expected[j]! - expected[j - 1]!)
      }
      const own = ends(keeps * (i - 0.5) * step, step / 2)
      expected[i] = (sum - own * expected[i - 1]!) / (1 - own)
    }
    return expected[steps]!
  })
}

/**
 * Expected failures by `until` with repairs of type II, backwards over time left s and virtual age v:
 * n(s, v) = ∫₀ˢ dF(x | v) (1 + n(s − x, q (v + x))), on mid-points, straight between virtual ages.
 */
export function failuresAll(
  life: WeibullLife,
  plan: { readonly keeps: number; readonly until: number; readonly steps: number },
): number {
  const { keeps, until } = plan
  return extrapolated(plan.steps, (steps) => {
    const step = until / steps
    // Virtual ages never exceed q times the whole time; one more column closes the last gap.
    const columns = Math.ceil(keeps * steps) + 2
    const rows: Float64Array[] = [new Float64Array(columns)]
    const read = (row: number, virtualAge: number): number => {
      const place = Math.min(virtualAge / step, columns - 1.000001)
      const left = Math.floor(place)
      const values = rows[row]!
      return values[left]! + (place - left) * (values[left + 1]! - values[left]!)
    }
    for (let i = 1; i <= steps; i++) {
      const row = new Float64Array(columns)
      for (let column = 0; column < columns; column++) {
        const virtualAge = column * step
        let sum = 0
        let before = 0
        for (let j = 1; j <= i; j++) {
          const ended = chanceOfEnding(life, { age: virtualAge, ahead: j * step })
          const after = keeps * (virtualAge + (j - 0.5) * step)
          // The time left at the middle of a step lies between two rows; the nearer one, this row, is not yet known.
          const later = j === 1 ? read(i - 1, after) : (read(i - j, after) + read(i - j + 1, after)) / 2
          sum += (ended - before) * (1 + later)
          before = ended
        }
        row[column] = sum
      }
      rows.push(row)
    }
    return rows[steps]![0]!
  })
}

/**
 * Repairs that are perfect with chance p and minimal else: time between perfect ones is Weibull with scale η p^(−1/β),
 * with 1/p failures each. Source: Brown and Proschan, Journal of Applied Probability 20 (1983); recalled.
 */
export function brownProschan(
  life: WeibullLife,
  perfect: number,
): { readonly meanBetweenPerfect: number; readonly failuresEach: number; readonly failureRate: number } {
  const meanBetweenPerfect = meanLife({ ...life, scale: life.scale * perfect ** (-1 / life.shape) })
  return { meanBetweenPerfect, failuresEach: 1 / perfect, failureRate: 1 / perfect / meanBetweenPerfect }
}
