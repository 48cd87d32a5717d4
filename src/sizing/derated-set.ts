/**
 * What is left of a set where it stands.
 *
 * @module
 */

import { alternatorFactor, factorByRise } from './alternator-rating.js'
import { engineDerating, standardPressureKPa } from './engine-derating.js'
import type { Derated, Judged } from './judged-set.js'
import type { SizedSet } from './sized-set.js'

/** Air as usual where nobody told it: at the sea, 45 °C in the engine space, three fifths humid; coolant 7 K above the sea. Practice. */
const usualAir = { engineSpaceC: 45, humidity: 0.6, altitudeM: 0, seaWaterC: 25, coolantAboveSeaK: 7 }

/** Engine and alternator in the air that they get there. */
export function deratedOf({ book: { sizing }, space }: Judged, set: SizedSet): Derated {
  const { engineSpaceC, humidity, altitudeM, seaWaterC } = { ...usualAir, ...withoutUndefined(space) }
  const { power } = engineDerating(sizing.engine, {
    aspiration: set.aspiration,
    mechanicalEfficiency: sizing.engine.mechanicalEfficiency.typical,
    air: {
      pressureKPa: Math.min(standardPressureKPa(altitudeM), sizing.engine.reference.pressureKPa),
      temperatureC: engineSpaceC,
      humidity,
      chargeCoolantC: seaWaterC + usualAir.coolantAboveSeaK,
    },
  })
  const engineFactor = Math.min(1, power)
  const factor = alternatorFactor(sizing.alternator, { airC: engineSpaceC, altitudeM })
  return {
    engineFactor,
    alternatorFactor: factor,
    alternatorFactorByRise: factorByRise({
      riseK: sizing.alternator.classRiseK.h,
      aboveK: engineSpaceC - sizing.alternator.heat.aboveC,
    }),
    engineKW: engineFactor * set.ratingKW,
    alternatorKVA: factor * set.kVA,
  }
}

function withoutUndefined<T extends object>(record: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as never
}
