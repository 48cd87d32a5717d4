/**
 * Readings of insulation as evidence.
 *
 * @module
 */

import type { Mode, Part } from '../catalogue/part-schema.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import { insulationAt40 } from '../proof/insulation.js'
import type { Measured, PartRegister, SetRegister } from '../register/register-types.js'
import { isOfPresent, yearsAgo } from './build-present.js'
import type { LifeModelInput } from './life-model.js'

type ObservationInput = NonNullable<LifeModelInput['parts'][number]['modes'][number]['observations']>[number]
type SymptomInput = NonNullable<LifeModelInput['symptoms']>[number]

/**
 * Bands of insulation resistance brought to 40 °C, the lowest first, and the chance that a sound and a defective winding
 * reads within each. Practice; the low two together are as the catalogue's insulation test: 0.06 of sound ones, 0.75 of
 * defective ones.
 */
const bands = [
  { belowMohm: 1, sound: 0.02, defective: 0.45 },
  { belowMohm: 5, sound: 0.04, defective: 0.3 },
  { belowMohm: 100, sound: 0.34, defective: 0.18 },
  { belowMohm: Infinity, sound: 0.6, defective: 0.07 },
] as const

/** Below it the reading is a symptom that one mode of several explains; above it, it speaks for every mode. [MΩ at 40 °C] */
const lowMohm = 5
const test = 'insulation-test'
/** Where nobody said how warm the winding was. Practice. */
const usualWindingC = 20
/** The laws that bring a reading to 40 °C hold between these; of both the lower answer counts. */
const [coldestC, warmestC] = [10, 85]

/** What good readings of a winding say of one of its modes. */
export function insulationOf(at: {
  readonly part: Part
  readonly mode: Mode
  readonly place: PartRegister | undefined
  readonly register: SetRegister
}): ObservationInput[] {
  const { part, mode, place, register } = at
  if (!mode.checks.some(({ check }) => check === test)) return []
  return register.readings.flatMap((reading) => {
    if (reading.part !== part.id || !isOfPresent(place, { day: reading.day, mode: mode.id })) return []
    const mohm = lowestAt40C(reading)
    if (mohm === undefined || mohm < lowMohm) return []
    const { sound, defective } = bandOf(mohm)
    return [
      { yearsAgo: yearsAgo(register, reading.day), likelihood: { sound, defective, failed: defective } },
    ]
  })
}

/** Low readings: some mode of the winding that the test knows, one being enough. */
export function insulationSymptoms(register: SetRegister, catalogue: SetCatalogue): SymptomInput[] {
  return register.readings.flatMap((reading) => {
    const part = catalogue.parts.find(({ id }) => id === reading.part)
    const mohm = lowestAt40C(reading)
    if (part === undefined || mohm === undefined || mohm >= lowMohm) return []
    const { sound, defective } = bandOf(mohm)
    const modes = part.modes.filter(
      ({ id, checks }) =>
        checks.some(({ check }) => check === test) &&
        isOfPresent(register.parts.get(part.id), { day: reading.day, mode: id }),
    )
    if (modes.length === 0) return []
    return [
      {
        yearsAgo: yearsAgo(register, reading.day),
        falseAlarm: sound,
        seen: true,
        modes: modes.map(({ id }) => ({ part: part.id, mode: id, detection: defective })),
      },
    ]
  })
}

function bandOf(mohm: number): (typeof bands)[number] {
  return bands.find(({ belowMohm }) => mohm < belowMohm) ?? bands[3]
}

function lowestAt40C(reading: Measured): number | undefined {
  if (reading.test !== test) return undefined
  const winding = reading.conditions.find(({ name, unit }) => unit === 'C' && name.includes('winding'))
  const any = reading.conditions.find(({ unit }) => unit === 'C')
  const windingC = (winding ?? any)?.value ?? usualWindingC
  const measured = reading.values.flatMap(({ unit, value }) =>
    unit === 'Mohm' ? [value] : unit === 'kohm' ? [value / 1000] : [],
  )
  if (measured.length === 0) return undefined
  // past the ends of the laws their ends: colder is worse still than it is judged there
  const within = Math.min(warmestC, Math.max(coldestC, windingC))
  return insulationAt40({ measuredMohm: Math.min(...measured), windingC: within }).lower
}
