/**
 * Distributions of active and reactive power on a grid, and how independent groups of loads are added to one.
 *
 * Cell (i, j) of a grid holds the chance of i steps of active and j steps of reactive power. Adding a group is a sum over
 * its few outcomes of the grid shifted by each: exact but for the rounding of each load to a step.
 *
 * @module
 */

/** Step of the grid, both ways: 100 W and 100 var. */
export const stepW = 100

/** Joint distribution, row by row of active power. */
export interface DemandGrid {
  readonly rows: number
  readonly columns: number
  /** `chance[i * columns + j]` */
  readonly chance: Float64Array
}

/** One outcome of a group of loads: its power in steps, and its chance. The chances of a group add up to one. */
export interface Outcome {
  readonly p: number
  readonly q: number
  readonly chance: number
}

/** Steps of a power. [W or var] */
export function stepsOf(power: number): number {
  return Math.round(power / stepW)
}

/** Distribution of the sum of independent groups. */
export function gridOf(groups: readonly (readonly Outcome[])[]): DemandGrid {
  const most = (of: 'p' | 'q') =>
    groups.reduce((sum, group) => sum + Math.max(...group.map((outcome) => outcome[of])), 0)
  const [rows, columns] = [most('p') + 1, most('q') + 1]
  const chance = new Float64Array(rows * columns)
  chance[0] = 1
  // Small groups first: the grid stays small for longest.
  const reach = (group: readonly Outcome[]) => Math.max(...group.map(({ p, q }) => p + q))
  const ordered = [...groups].sort((a, b) => reach(a) - reach(b))
  let [usedRows, usedColumns] = [1, 1]
  for (const group of ordered) {
    addGroup({ rows, columns, chance }, group, { rows: usedRows, columns: usedColumns })
    usedRows += Math.max(...group.map(({ p }) => p))
    usedColumns += Math.max(...group.map(({ q }) => q))
  }
  return { rows, columns, chance }
}

/** Adds a group in place: from the far corner back, so that what is read has not been written yet. */
function addGroup(
  { columns, chance }: DemandGrid,
  group: readonly Outcome[],
  used: { readonly rows: number; readonly columns: number },
): void {
  const off = group.filter(({ p, q }) => p === 0 && q === 0).reduce((sum, one) => sum + one.chance, 0)
  const on = group.filter(({ p, q, chance: of }) => (p > 0 || q > 0) && of > 0)
  const shifts = on.map(({ p, q }) => p * columns + q)
  const factors = on.map(({ chance: of }) => of)
  for (let i = used.rows - 1; i >= 0; i -= 1) {
    for (let at = i * columns + used.columns - 1; at >= i * columns; at -= 1) {
      const here = chance[at]!
      if (here === 0) continue
      for (let k = 0; k < shifts.length; k += 1) chance[at + shifts[k]!]! += factors[k]! * here
      chance[at] = off * here
    }
  }
}

/** Chances of the steps of active power alone. */
export function activeOf({ rows, columns, chance }: DemandGrid): Float64Array {
  const sums = new Float64Array(rows)
  for (let i = 0; i < rows; i += 1) {
    let sum = 0
    for (let at = i * columns; at < (i + 1) * columns; at += 1) sum += chance[at]!
    sums[i] = sum
  }
  return sums
}

/** A mixture of distributions, each with its weight. */
export function mixed(parts: readonly { readonly grid: DemandGrid; readonly weight: number }[]): DemandGrid {
  const [only] = parts
  if (parts.length === 1 && only!.weight === 1) return only!.grid
  const rows = Math.max(...parts.map(({ grid }) => grid.rows))
  const columns = Math.max(...parts.map(({ grid }) => grid.columns))
  const chance = new Float64Array(rows * columns)
  for (const { grid, weight } of parts) {
    for (let i = 0; i < grid.rows; i += 1) {
      for (let j = 0; j < grid.columns; j += 1) {
        chance[i * columns + j]! += weight * grid.chance[i * grid.columns + j]!
      }
    }
  }
  return { rows, columns, chance }
}

/** Slack of a sum of chances, so that rounding does not push a percentage point to the next step. */
const slack = 1e-9

/** The least value of which the chance not to exceed it reaches `share`; values in rising order. */
export function pointOf(chances: Float64Array, share: number): number {
  let sum = 0
  for (let i = 0; i < chances.length; i += 1) {
    sum += chances[i]!
    if (sum >= share - slack) return i
  }
  return chances.length - 1
}

/** Chances of apparent power in steps of its own, rounded up. */
export function apparentOf({ rows, columns, chance }: DemandGrid): Float64Array {
  const sums = new Float64Array(Math.ceil(Math.hypot(rows, columns)) + 1)
  for (let i = 0; i < rows; i += 1) {
    for (let j = 0; j < columns; j += 1) {
      const here = chance[i * columns + j]!
      if (here !== 0) sums[Math.ceil(Math.hypot(i, j) - 1e-9)]! += here
    }
  }
  return sums
}
