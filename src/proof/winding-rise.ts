/**
 * How hot a winding is, told by its own resistance: the field of a run, and what its insulation bears.
 *
 * @module
 */

import { choice, degrees, ohms } from './fields.js'
import type { Taken } from './judging.js'
import type { Limit, Limits } from './limits.js'
import { windingTemperature } from './resistance.js'
import type { Worked } from './test-type.js'

/** All of them, or nothing is worked out. The class decides whether the rise is too much; without it none is said to be. */
export const riseFields = [
  ohms({
    id: 'cold-ohm',
    name: 'A winding before the run, four wires',
    help: 'The same winding both times, at its own ends, set stopped and locked out.',
    condition: true,
    further: true,
    least: 0.0001,
    most: 1000,
  }),
  degrees({
    id: 'cold',
    name: 'Its temperature then',
    condition: true,
    further: true,
    least: -30,
    most: 60,
  }),
  ohms({
    id: 'hot-ohm',
    name: 'The same winding within a minute of stopping',
    condition: true,
    further: true,
    least: 0.0001,
    most: 1000,
  }),
  degrees({
    id: 'air',
    name: 'Air into the alternator during the run',
    condition: true,
    further: true,
    least: -30,
    most: 80,
  }),
  choice({
    id: 'insulation-class',
    name: 'Class of insulation on the plate',
    further: true,
    of: { b: 'B', f: 'F', h: 'H' },
  }),
] as const

export interface WindingRise {
  /** Mean of the winding. [°C] */
  readonly windingC: number
  /** Above the air that cools it. [K] */
  readonly riseK: number
  /** What its class bears; left out: not told. */
  readonly limit?: Limit
  readonly over: boolean
  readonly worked: readonly Worked[]
}

/** None where a reading of it is not given. */
export function riseOf(taken: Taken, limits: Limits): WindingRise | undefined {
  const [coldOhm, coldC, hotOhm, airC] = ['cold-ohm', 'cold', 'hot-ohm', 'air'].map((id) => taken.number(id))
  if (coldOhm === undefined || coldC === undefined || hotOhm === undefined || airC === undefined)
    return undefined
  const windingC = windingTemperature({ coldOhm, coldC, hotOhm })
  const riseK = windingC - airC
  const known = taken.choice('insulation-class')
  const limit = known === undefined ? undefined : limits(`winding-rise-${known}`)
  return {
    windingC,
    riseK,
    ...(limit === undefined ? {} : { limit }),
    over: limit !== undefined && riseK > limit.value,
    worked: [
      { name: 'Winding by its ohms, the mean of it', value: windingC, unit: 'C' },
      { name: 'Rise of the winding above the air', value: riseK, unit: 'K' },
    ],
  }
}
