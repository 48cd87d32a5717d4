/**
 * Windings that read too low to be energised, by the log's readings.
 *
 * @module
 */

import type { Measured } from '../register/register-types.js'
import { insulationAt40 } from './insulation.js'
import type { Limits } from './limits.js'
import { windingParts } from './tests-insulation.js'

/** Its megohms are of other moments than the one that counts. */
const risesOnly = 'insulation-absorption'

/** A temperature that is none of the winding's. */
const ofTheAir = 'dew-point'

/** A winding under the stop line. */
export interface LowInsulation {
  /** Left out: nobody said which winding. */
  readonly part?: string
  readonly entry: string
  readonly at40Mohm: number
  /** Brought to 40 °C; otherwise the reading stood for itself. */
  readonly corrected: boolean
  readonly leastMohm: number
}

/** The latest insulation reading of each winding, judged at 40 °C: a good one of one winding says nothing of another. */
export function lowInsulationIn(readings: readonly Measured[], limits: Limits): LowInsulation[] {
  const latest = new Map<string, Measured>()
  for (const reading of [...readings].sort((a, b) => a.day - b.day)) {
    const { test, part } = reading
    const measures = test.includes('insulation') && test !== risesOnly
    if (measures && (part === undefined || isWinding(part)) && measuredIn(reading)) {
      latest.set(part ?? '', reading)
    }
  }
  return [...latest.values()].flatMap((reading) => lowIn(reading, limits))
}

function isWinding(part: string): boolean {
  return windingParts.some((winding) => winding === part)
}

function measuredIn({ values }: Measured): Measured['values'][number] | undefined {
  return values.find(({ unit }) => unit === 'Mohm' || unit === 'kohm')
}

function lowIn(reading: Measured, limits: Limits): LowInsulation[] {
  const measured = measuredIn(reading)
  if (measured === undefined) return []
  const measuredMohm = measured.unit === 'kohm' ? measured.value / 1000 : measured.value
  const windingC = [...reading.conditions, ...reading.values].find(
    ({ unit, name }) => unit === 'C' && name !== ofTheAir,
  )?.value
  // Without a temperature the reading stands for itself; past the ends of the law, its end: a colder winding is worse still than it is judged there.
  const [coldest, hottest] = [limits('insulation-law-coldest').value, limits('insulation-law-hottest').value]
  const judgedC = windingC === undefined ? 40 : Math.min(hottest, Math.max(coldest, windingC))
  const at40Mohm = insulationAt40({ measuredMohm, windingC: judgedC }).lower
  const leastMohm = limits('insulation-floor').value
  if (at40Mohm >= leastMohm) return []
  const { entry, part } = reading
  const corrected = windingC !== undefined
  return [{ ...(part === undefined ? {} : { part }), entry, at40Mohm, corrected, leastMohm }]
}
