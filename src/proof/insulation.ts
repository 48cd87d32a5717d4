/**
 * Insulation resistance of a winding: whether it may be energised.
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

export interface InsulationVerdict {
  readonly verdict: 'pass' | 'fail'
  /** At 40 °C, by the law that reads lower. [MΩ] */
  readonly at40Mohm: number
  /** [MΩ] */
  readonly leastMohm: number
}

/**
 * Least insulation resistance of a small low-voltage winding at 40 °C. [MΩ]
 *
 * Source: machine-care handbook MIL-HDBK-1164, 11.4.4 (1 MΩ with a 500 V tester); seen.
 */
const leastMohm = 1

/**
 * Judges a reading at 40 °C. Whether the resin softens in heat is seldom known, so both temperature laws of IEEE 43
 * are used and the lower answer gates:
 *
 * - softening: `R40 = R · 0.5^((40 − T) / 10)`
 * - set: `R40 = R · exp(−k (1/(T + 273) − 1/313))`, k = 1245 K below 40 °C and 4230 K above
 *
 * A low reading asks for washing, drying and another test, not for a rewind. Valid for 10 °C to 85 °C.
 *
 * Source: IEEE 43-2013, temperature correction; constants of the set resin recalled.
 *
 * @throws RangeError if the temperature is outside 10 °C to 85 °C, or the resistance is negative.
 */
export function judgeInsulation(reading: InsulationReading): InsulationVerdict {
  const { measuredMohm, windingC } = reading
  requireWithin('measuredMohm', measuredMohm, 0, 1e6, 'MΩ')
  requireWithin('windingC', windingC, 10, 85, '°C')
  const softening = measuredMohm * 0.5 ** ((40 - windingC) / 10)
  const k = windingC < 40 ? 1245 : 4230
  const set = measuredMohm * Math.exp(-k * (1 / (windingC + 273) - 1 / 313))
  const at40Mohm = Math.min(softening, set)
  return { verdict: at40Mohm >= leastMohm ? 'pass' : 'fail', at40Mohm, leastMohm }
}
