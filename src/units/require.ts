/**
 * Checks on numbers that come from outside a calculation.
 *
 * @module
 */

/**
 * Refuses a number that is outside `low` to `high` (both ends allowed), or that is no number.
 *
 * @throws RangeError naming the quantity, the allowed span and what was found.
 */
export function requireWithin(name: string, value: number, low: number, high: number, unit: string): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`${name} must be ${low} to ${high} ${unit}; found ${value}`)
  }
}
