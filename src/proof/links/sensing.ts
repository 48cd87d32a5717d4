/**
 * What the regulator does with the leads it looks at.
 *
 * @module
 */

import { sizeOf } from './complex.js'
import { type JoinedWinding, jointOf, voltsBetween } from './solve-links.js'

/** What a regulator sees, and where it drives the coils so that it sees what it is set to hold. */
export interface Sensed {
  /** Between its leads, in multiples of a coil's EMF; none where nothing connects them. */
  readonly multiple: number | null
  /** EMF that each coil is driven to; none where it sees nothing and drives the field to its limit. [V] */
  readonly drivesToV: number | null
  /** That, in multiples of what each coil is made for. */
  readonly timesRated: number | null
}

/**
 * The regulator holds what it sees: `E = V(set) / k`, k the sensed volts in multiples of a coil's EMF. None where two leads
 * are not named.
 */
export function sensedBy(
  of: JoinedWinding,
  { setToV, ratedEmfV }: { readonly setToV?: number | undefined; readonly ratedEmfV?: number | undefined },
): Sensed | undefined {
  const { sensing } = of.joined
  if (sensing.length < 2) return undefined
  const [from, to] = sensing.map(({ lead }) => jointOf(of.joints, lead))
  const volts = voltsBetween(of, { from: from!, to: to! })
  const multiple = volts === undefined ? null : sizeOf(volts) / of.emf < 1e-9 ? 0 : sizeOf(volts) / of.emf
  const sees = multiple !== null && multiple > 0.02
  const drivesToV = sees && setToV !== undefined ? setToV / multiple : null
  return {
    multiple,
    drivesToV,
    timesRated: drivesToV === null || ratedEmfV === undefined ? null : drivesToV / ratedEmfV,
  }
}
