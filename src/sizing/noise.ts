/**
 * Levels of noise: at a distance, together, and apart. [dB]
 *
 * @module
 */

import { requireWithin } from '../units/require.js'

/** Level at another distance in the open. `L − 20 lg(r / r₀)`, r and r₀ [m]. Derived; walls and water give more. */
export function levelAt(of: { readonly decibel: number; readonly metres: number }, metres: number): number {
  requireWithin('metres', metres, 0.1, 1000, 'm')
  return of.decibel - 20 * Math.log10(metres / of.metres)
}

/** Level of several at once. `10 lg Σ 10^(L/10)`. Derived. */
export function levelTogether(decibels: readonly number[]): number {
  return 10 * Math.log10(decibels.reduce((sum, one) => sum + power(one), 0))
}

/** What is left for one where another is there already. `10 lg(10^(L/10) − 10^(B/10))`; undefined where B is as much. Derived. */
export function levelWithout(of: {
  readonly together: number
  readonly background: number
}): number | undefined {
  const left = power(of.together) - power(of.background)
  return left > 0 ? 10 * Math.log10(left) : undefined
}

function power(decibel: number): number {
  return 10 ** (decibel / 10)
}
