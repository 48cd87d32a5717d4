/**
 * What is left of a set where it stands.
 *
 * @module
 */

import { fuelLitresPerHour } from '../catalogue/whole-set.js'
import { alternatorFactor, factorByRise } from './alternator-rating.js'
import { engineDerating, type IntakeAir, standardPressureKPa } from './engine-derating.js'
import { boostRatio, sweptLitresOf } from './engine-size.js'
import { engineFactor as airCounts, fuelOfCycle, testCorrection } from './engine-test.js'
import { usualSeaC } from './judge-heat.js'
import type { Derated, Judged, PlaceBook } from './judged-set.js'
import type { SizedSet } from './sized-set.js'

/** Air as usual where nobody told it: at the sea, 45 °C in the engine space, three fifths humid; coolant 7 K above the sea. Practice. */
const usualAir = { engineSpaceC: 45, humidity: 0.6, altitudeM: 0, seaWaterC: usualSeaC, coolantAboveSeaK: 7 }

/** Engine and alternator in the air that they get there. */
export function deratedOf({ book, space }: Judged, set: SizedSet): Derated {
  const { sizing } = book
  const { engineSpaceC, humidity, altitudeM, seaWaterC } = { ...usualAir, ...withoutUndefined(space) }
  const air: IntakeAir = {
    pressureKPa: Math.min(standardPressureKPa(altitudeM), sizing.engine.reference.pressureKPa),
    temperatureC: engineSpaceC,
    humidity,
    chargeCoolantC: seaWaterC + usualAir.coolantAboveSeaK,
  }
  const { power } = engineDerating(sizing.engine, {
    aspiration: set.aspiration,
    mechanicalEfficiency: sizing.engine.mechanicalEfficiency.typical,
    air,
  })
  const engineFactor = Math.min(1, power)
  const alpha = correctionOf(book, set, air)
  const factor = alternatorFactor(sizing.alternator, { airC: engineSpaceC, altitudeM })
  return {
    engineFactor,
    alternatorFactor: factor,
    alternatorFactorByRise: factorByRise({
      riseK: sizing.alternator.classRiseK.h,
      aboveK: engineSpaceC - sizing.alternator.heat.aboveC,
    }),
    ...(alpha === undefined ? {} : { engineFactorByTest: Math.min(1, 1 / alpha) }),
    engineKW: engineFactor * set.ratingKW,
    alternatorKVA: factor * set.kVA,
  }
}

/** What the correction of engine tests makes of the same air, by the fuel that the engine burns at its rating. */
function correctionOf({ sizing, wholeSet }: PlaceBook, set: SizedSet, air: IntakeAir): number | undefined {
  const { ratingKW, rpm, condition, aspiration } = set
  const litres = fuelLitresPerHour(wholeSet, { ratingKW, loadKW: ratingKW, condition })
  const burnt = fuelOfCycle({
    kgPerHour: sizing.fuel.kgPerLitre * litres,
    rpm,
    sweptLitres: sweptLitresOf(sizing, set),
  })
  const { testCorrection: correction } = sizing.engine
  const factor = airCounts(correction, burnt / boostRatio(sizing, set))
  return testCorrection(correction, { aspiration, air, factor })
}

function withoutUndefined<T extends object>(record: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as never
}
