/**
 * Twenty boats: in which month each of them that fails does so.
 *
 * @module
 */

export const boats = 20
/** Under one boat in twenty no dot is drawn. */
export const leastDrawn = 1 / boats

/**
 * How many boats of twenty fail in each month, from the chance of having failed by its end. Dot j of n stands where the
 * cumulative chance passes (j − ½)/n of the whole, so that dots are as many and as early as the odds are.
 */
export function boatsByMonth(cumulative: readonly number[]): number[] {
  const whole = cumulative.at(-1) ?? 0
  const dots = whole < leastDrawn ? 0 : Math.round(whole * boats)
  const counts = cumulative.map(() => 0)
  let month = 0
  for (let j = 1; j <= dots; j++) {
    while (month < cumulative.length - 1 && cumulative[month]! < ((j - 0.5) / dots) * whole) month++
    counts[month]!++
  }
  return counts
}
