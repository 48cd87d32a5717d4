/**
 * Conditions under which the set must not be run, as far as the register tells.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import { judgeInsulation } from '../proof/insulation.js'
import type { Measured, SetRegister } from '../register/register-types.js'

/** Something that blocks running on; work on one of the parts closes it, with a reading. */
export interface OpenStop {
  readonly parts: readonly string[]
  /** The mode that it comes from, where it is one. */
  readonly mode?: string
  readonly why: string
}

/** Windings whose insulation is measured to the frame. */
export const windingParts: ReadonlySet<string> = new Set(['stator-winding', 'rotor-winding', 'exciter'])

/** Dangers found and not made safe, and windings that read too low to be energised. */
export function openStops(register: SetRegister, model: LifeModel): OpenStop[] {
  const dangers = register.openDangers
    .filter(({ madeSafeBy }) => madeSafeBy === undefined)
    .map(({ danger, part, mode }) => ({
      parts: [part],
      mode,
      why: `A danger was found at the ${nameOf(model, part)} and is not made safe: ${danger}.`,
    }))
  return [...dangers, ...lowInsulation(register.readings, model)]
}

/** The plain name of a part, without what follows a comma. */
function nameOf(model: LifeModel, id: string): string {
  const name = model.parts.find((part) => part.id === id)?.name ?? id
  return name.split(',')[0]!.toLowerCase()
}

/** The latest insulation reading of each winding, judged at 40 °C: a good one of one winding says nothing of another. */
export function lowInsulation(readings: readonly Measured[], model: LifeModel): OpenStop[] {
  const latest = new Map<string, Measured>()
  for (const reading of [...readings].sort((a, b) => a.day - b.day)) {
    const { test, part } = reading
    if (test.includes('insulation') && (part === undefined || windingParts.has(part))) {
      latest.set(part ?? '', reading)
    }
  }
  return [...latest.values()].flatMap((reading) => insulationStop(reading, model))
}

function insulationStop({ part, values, conditions }: Measured, model: LifeModel): OpenStop[] {
  const measured = values.find(({ unit }) => unit === 'Mohm' || unit === 'kohm')
  if (measured === undefined) return []
  const measuredMohm = measured.unit === 'kohm' ? measured.value / 1000 : measured.value
  const windingC = conditions.find(({ unit }) => unit === 'C')?.value
  // Without a temperature the reading stands for itself; past the ends of the law, its end: a colder winding is worse still than it is judged there.
  const judgedC = windingC === undefined ? 40 : Math.min(85, Math.max(10, windingC))
  const { verdict, at40Mohm, leastMohm } = judgeInsulation({ measuredMohm, windingC: judgedC })
  if (verdict === 'pass') return []
  return [
    {
      parts: part === undefined ? [...windingParts] : [part],
      why: `Do not energise the set: the ${part === undefined ? 'winding' : nameOf(model, part)} reads ${at40Mohm.toFixed(2)}\u00a0MΩ${windingC === undefined ? '' : ' at 40\u00a0°C'} and must read ${leastMohm}\u00a0MΩ or more.`,
    },
  ]
}
