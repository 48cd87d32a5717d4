/**
 * Insulation resistance of a winding brought to 40 °C.
 *
 * @module
 */

import { requireWithin } from '../units/require.js'

/** One reading, a minute after the test voltage came on. */
export interface InsulationReading {
  /** Winding to frame, as the tester showed it. [MΩ] */
  readonly measuredMohm: number
  /** Of the winding itself, not of the air. [°C] */
  readonly windingC: number
}

/** A reading at 40 °C by either law, and the lower, which gates. [MΩ] */
export interface InsulationAt40 {
  readonly softening: number
  readonly set: number
  readonly lower: number
}

/**
 * Whether the resin softens in heat is seldom known, so both temperature laws of IEEE 43 are used and the lower answer gates:
 *
 * - softening: `R40 = R · 0.5^((40 − T) / 10)`
 * - set: `R40 = R · exp(−k (1/(T + 273) − 1/313))`, k = 1245 K below 40 °C and 4230 K above
 *
 * Valid for 10 °C to 85 °C, above the dew point.
 *
 * Source: IEEE 43-2013, temperature correction; constants of the set resin recalled.
 *
 * @throws RangeError if the temperature is outside 10 °C to 85 °C, or the resistance is negative.
 */
export function insulationAt40({ measuredMohm, windingC }: InsulationReading): InsulationAt40 {
  requireWithin('measuredMohm', measuredMohm, 0, 1e7, 'MΩ')
  requireWithin('windingC', windingC, 10, 85, '°C')
  const softening = measuredMohm * 0.5 ** ((40 - windingC) / 10)
  const k = windingC < 40 ? 1245 : 4230
  const set = measuredMohm * Math.exp(-k * (1 / (windingC + 273) - 1 / 313))
  return { softening, set, lower: Math.min(softening, set) }
}

/**
 * A reading at 25 °C by the older naval rule. [MΩ] `R25 = R · 2^((T − 25) / 15)`: doubles for every 15 K of cold.
 *
 * Source: MIL-M-17413A; seen.
 */
export function insulationAt25({ measuredMohm, windingC }: InsulationReading): number {
  return measuredMohm * 2 ** ((windingC - 25) / 15)
}

/**
 * Least insulation resistance that was asked of windings made before about 1970. [MΩ] `kV + 1`, from the rated line volts.
 *
 * Source: IEEE 43-1974; quoted.
 */
export function oldLeastMohm(at: { readonly ratedV: number; readonly addedMohm: number }): number {
  return at.ratedV / 1000 + at.addedMohm
}

/** Polarisation index: ten minutes over one; or any other pair of times, the later over the earlier. */
export function absorption(at: { readonly laterMohm: number; readonly earlierMohm: number }): number {
  return Number((at.laterMohm / at.earlierMohm).toPrecision(12))
}

/** Current that leaks through insulation. [µA] `V / R`, V in volts, R in megohms. */
export function leakageMicroamp(at: { readonly testV: number; readonly mohm: number }): number {
  return at.testV / at.mohm
}
