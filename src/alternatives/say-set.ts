/**
 * A set in a line.
 *
 * @module
 */

import type { SetRegister } from '../register/register-types.js'

/** "7 kW, 230 V 50 Hz, 1,500 rpm, built 2004, 5,240 h", the hours as last read. */
export function saySet({ set, setFacts, hours }: SetRegister): string {
  const { name, ratingKw, volts, hertz, rpm, built } = setFacts
  const meter = (hours.points.findLast(({ entry }) => entry !== undefined) ?? hours.points.at(-1))?.hours
  const grid = [volts?.length ? `${volts.join('/')} V` : '', hertz ? `${hertz} Hz` : '']
    .filter(Boolean)
    .join(' ')
  return [
    name ?? set,
    ratingKw === undefined ? '' : `${ratingKw} kW`,
    grid,
    rpm === undefined ? '' : `${rpm.toLocaleString('en-GB')} rpm`,
    built === undefined ? '' : `built ${built}`,
    meter === undefined ? '' : `${Math.round(meter).toLocaleString('en-GB')} h`,
  ]
    .filter(Boolean)
    .join(', ')
}
