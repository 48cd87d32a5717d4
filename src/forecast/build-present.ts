/**
 * Whether what was seen once still speaks of what is there now.
 *
 * @module
 */

import type { ModeMend, PartRegister, SetRegister } from '../register/register-types.js'

const daysPerYear = 365.25

/** Whether a thing seen on a day is of what is in the place now, in its present state. */
export function isOfPresent(
  place: PartRegister | undefined,
  at: { readonly day: number; readonly mode: string },
): boolean {
  if (place === undefined) return true
  if (place.age !== 'unknown' && place.sinceDay !== undefined && at.day < place.sinceDay) return false
  return !place.mends.some((mend) => mend.day > at.day && clears(mend) && (mend.mode ?? at.mode) === at.mode)
}

/** Whether the work set a mode back to new; where none is named, only work that goes over the whole part does. */
export function clears({ did, mode }: Pick<ModeMend, 'did' | 'mode'>): boolean {
  if (did === 'patched') return false
  return mode !== undefined || did === 'reconditioned' || did === 'cleaned'
}

export function yearsAgo(register: Pick<SetRegister, 'asOfDay'>, day: number): number {
  return Math.max(0, (register.asOfDay - day) / daysPerYear)
}
