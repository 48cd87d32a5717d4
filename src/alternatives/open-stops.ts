/**
 * Conditions under which the set must not be run, as far as the register tells.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import { failedLinesIn, type ProofBook } from '../proof/failed-lines.js'
import { type LowInsulation, lowInsulationIn } from '../proof/insulation-stop.js'
import { windingParts as windings } from '../proof/tests-insulation.js'
import type { Measured, SetRegister } from '../register/register-types.js'

/** Something that blocks running on; work on one of the parts closes it, with a reading. */
export interface OpenStop {
  readonly parts: readonly string[]
  /** The mode that it comes from, where it is one. */
  readonly mode?: string
  readonly why: string
  /** Mended along with any work that is done, for no part of the model stands for it; the tests owed afterwards see to it. */
  readonly byAnyWork?: true
  /** The test whose next good reading closes it. */
  readonly test?: string
}

/** Windings whose insulation is measured to the frame. */
export const windingParts: ReadonlySet<string> = new Set(windings)

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

/**
 * Tests that failed and hold a stop line open: volts on metal, a bond that is not made, a leak of exhaust. Insulation is judged
 * winding by winding, apart.
 */
export function failedTestsIn(register: SetRegister, book: ProofBook): OpenStop[] {
  return failedLinesIn(register, book)
    .filter(({ line }) => line !== 'insulation')
    .map(({ hazard, says, test, part }) => ({
      parts: part === undefined ? [] : [part],
      why: `${hazard}: ${says}`,
      byAnyWork: true,
      test,
    }))
}

/** The plain name of a part, without what follows a comma. */
function nameOf(model: LifeModel, id: string): string {
  const name = model.parts.find((part) => part.id === id)?.name ?? id
  return name.split(',')[0]!.toLowerCase()
}

/** Windings that read too low to be energised. */
export function lowInsulation(readings: readonly Measured[], model: LifeModel): OpenStop[] {
  return lowInsulationIn(readings).map((low) => ({
    parts: low.part === undefined ? [...windingParts] : [low.part],
    why: whyOf(low, model),
  }))
}

function whyOf({ part, at40Mohm, corrected, leastMohm }: LowInsulation, model: LifeModel): string {
  const winding = part === undefined ? 'winding' : nameOf(model, part)
  return `Do not energise the set: the ${winding} reads ${at40Mohm.toFixed(2)}\u00a0MΩ${corrected ? ' at 40\u00a0°C' : ''} and must read ${leastMohm}\u00a0MΩ or more.`
}
