/**
 * How often a thermostat switches, and how often two starts meet.
 *
 * @module
 */

import { requireWithin } from '../units/require.js'

/**
 * Starts of a thermostat. [1/h] `N = 4 · N_half · D · (1 − D)`, N_half the cycles an hour at a duty of one half, D the
 * duty 0 to 1.
 *
 * Source: NEMA DC 3, form of the curve; held: recalled.
 */
export function cyclesPerHour(of: { readonly duty: number; readonly cyclesPerHourAtHalf: number }): number {
  requireWithin('duty', of.duty, 0, 1, '')
  requireWithin('cyclesPerHourAtHalf', of.cyclesPerHourAtHalf, 0, 60, '1/h')
  return 4 * of.cyclesPerHourAtHalf * of.duty * (1 - of.duty)
}

/**
 * How often two independent streams of starts come within so many seconds of one another. [1/h] `2 · λ₁ · λ₂ · τ`, λ the
 * starts [1/h], τ the window to either side [h].
 *
 * Source: derived, two Poisson streams.
 */
export function meetingsPerHour(of: {
  readonly firstPerHour: number
  readonly secondPerHour: number
  readonly windowSeconds: number
}): number {
  return (2 * of.firstPerHour * of.secondPerHour * of.windowSeconds) / 3600
}
