/**
 * When each occasion is, by the clock.
 *
 * @module
 */

import type { Occasion } from '../catalogue/load-schema.js'
import type { Habits } from './load-type.js'

/** Those within others fall in their middle. Practice. */
export const clockOf: Readonly<Record<Occasion, { readonly from: number; readonly hours: number }>> = {
  day: { from: 8, hours: 10 },
  evening: { from: 20, hours: 3 },
  night: { from: 23, hours: 9 },
  cooking: { from: 18, hours: 2 },
  laundry: { from: 10, hours: 3 },
  charging: { from: 14, hours: 4 },
}

/** Occasions that part the day between them, and those that fall within each. */
export const partsOfDay = {
  day: ['day', 'laundry', 'charging'],
  cooking: ['cooking'],
  evening: ['evening'],
  night: ['night'],
} as const satisfies Partial<Record<Occasion, readonly Occasion[]>>

const hoursOfDay = 24

/** The hours of an occasion by the clock. */
export function hoursOf(occasion: Occasion): number[] {
  const { from, hours } = clockOf[occasion]
  return Array.from({ length: hours }, (_, at) => (from + at) % hoursOfDay)
}

/** The same as it is lived: the evening goes on where the cooking ends. */
export function windowOf(occasion: Occasion, { setHours }: Habits): number[] {
  const { cooking } = clockOf
  const cooked = Math.ceil(Math.min(cooking.hours, setHours.cooking))
  const moved = occasion === 'evening' ? cooking.from + cooked - clockOf.evening.from : 0
  return hoursOf(occasion).map((hour) => (hour + moved + hoursOfDay) % hoursOfDay)
}
