/**
 * Stop lines that stand open: by a test that failed, or by a danger that was found and not made safe.
 *
 * @module
 */

import type { CatalogueOwed, StageId } from '../catalogue/owed-schema.js'
import type { SetRegister } from '../register/register-types.js'
import { lowInsulationIn } from './insulation-stop.js'
import type { ProofResult } from './results.js'
import { sayFigure } from './say-figure.js'
import { proofTestOf } from './tests.js'

/** Something that was passed over with a reason, which stays in sight. */
export interface PassedOver {
  readonly entry: string
  readonly date: string
  /** Place among the entries as they follow one another. */
  readonly order: number
  readonly about: string
  readonly because: string
}

/** A stop line that an entry opens which is no reading of a test, and why. */
export interface StandsOpen {
  readonly line: string
  readonly entry: string
  /** Place among the entries as they follow one another. */
  readonly order: number
  readonly why: string
}

export interface OpenLine {
  readonly line: string
  readonly hazard: string
  /** What was found. */
  readonly why: string
  readonly act: string
  readonly clearWhen: readonly string[]
  /** The first step that it bars. */
  readonly bars: StageId
  /** Entries that opened it. */
  readonly entries: readonly string[]
  /** Tests whose next good reading closes it; none: what was found must be made safe. */
  readonly closedBy: readonly string[]
  readonly never: boolean
  /** One careful look that does not settle it hands it to a licensed marine electrician. */
  readonly licensed: boolean
  readonly passedOver?: PassedOver
}

/** The open ones, in the order of the table. */
export function openLinesOf(of: {
  readonly owed: CatalogueOwed
  readonly register: SetRegister
  /** The latest of each. */
  readonly results: readonly ProofResult[]
  readonly passed: readonly PassedOver[]
  readonly standing: readonly StandsOpen[]
}): OpenLine[] {
  const { owed, register, results, passed, standing } = of
  return owed.lines.flatMap((rule): OpenLine[] => {
    const failing = results.filter(({ test, judgement: { band } }) =>
      rule.opens.some((one) => one.test === test && band !== undefined && one.bands.includes(band)),
    )
    const dangers = register.openDangers.filter(
      ({ danger, madeSafeBy }) => madeSafeBy === undefined && rule.dangers.includes(danger),
    )
    // A reading without its temperature cannot be told, yet stops where it is too low as it stands.
    const low = rule.line === 'insulation' ? lowInsulationIn(register.readings) : []
    const causes = [
      ...standing.filter(({ line }) => line === rule.line),
      ...failing.map(({ entry, judgement, order }) => ({ entry, order, why: judgement.says })),
      ...dangers.map(({ entry, danger, part }) => ({
        entry,
        order: -1,
        why: `A danger was found at the ${part.replaceAll('-', ' ')} and is not made safe: ${danger.replaceAll('-', ' ')}.`,
      })),
      ...low
        .filter(({ entry }) => !failing.some((result) => result.entry === entry))
        .map(({ entry, at40Mohm, corrected, leastMohm }) => ({
          entry,
          order: -1,
          why: `The winding reads ${sayFigure(at40Mohm, 'Mohm', leastMohm)}${corrected ? ' at 40\u00a0°C' : ''} and must read ${leastMohm}\u00a0MΩ or more.`,
        })),
    ]
    if (causes.length === 0) return []
    const never = rule.neverPassedOver === true
    const lastCause = Math.max(...causes.map(({ order }) => order))
    const passedOver = never
      ? undefined
      : passed.findLast(({ about, order }) => about === rule.line && order > lastCause)
    return [
      {
        line: rule.line,
        hazard: rule.hazard,
        why: [...new Set(causes.map(({ why }) => why))].join(' '),
        act: rule.act,
        clearWhen: rule.clearWhen,
        bars: rule.bars,
        entries: [...new Set(causes.map(({ entry }) => entry))],
        closedBy: rule.opens.flatMap(({ test }) => (proofTestOf(test) === undefined ? [] : [test])),
        never,
        licensed: rule.licensed === true,
        ...(passedOver === undefined ? {} : { passedOver }),
      },
    ]
  })
}
