/**
 * A bound on the time of an onset that costs no power function: most onsets lie past whatever is waited for.
 *
 * @module
 */

/** Slices of the uniform draw. */
export const leastOnsetSlices = 256

/** Keeps rounding in the power function from putting a bound above what it bounds. */
const below = 1 - 1e-9

const tables = new Map<number, Float64Array>()

/**
 * Per slice of the uniform draw u the least onset of a Weibull life of scale 1: (−ln u)^(1/shape) at the slice's
 * upper end. No table of draws but a bound: whoever may reach it works the onset out, so nothing is biased.
 */
export function leastOnsets(shape: number): Float64Array {
  const known = tables.get(shape)
  if (known !== undefined) return known
  const table = Float64Array.from(
    { length: leastOnsetSlices },
    (_, slice) => below * (-Math.log((slice + 1) / leastOnsetSlices)) ** (1 / shape),
  )
  tables.set(shape, table)
  return table
}
