/**
 * The mean of a column.
 *
 * @module
 */

export function mean(values: Float64Array): number {
  let sum = 0
  for (const value of values) sum += value
  return sum / values.length
}
