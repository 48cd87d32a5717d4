/**
 * Conditions under which the set must not be run on: the open stop lines, as the alternatives see them.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { Entry } from '../logbook/kinds.js'
import { limitsOf } from '../proof/limits.js'
import { type LineCause, type OpenLine, openLinesOf } from '../proof/open-lines.js'
import { windingParts as windings } from '../proof/tests-insulation.js'
import type { SetRegister } from '../register/register-types.js'

/** Something that blocks running on; work on one of the parts closes it, with a reading. */
export interface OpenStop {
  /** Of the list of stop lines. */
  readonly line: string
  /** What in the log holds it open. */
  readonly by: LineCause['by']
  readonly parts: readonly string[]
  /** A danger that was found, and the mode that it comes from. */
  readonly danger?: string
  readonly mode?: string
  readonly why: string
  /** Mended along with any work that is done, for no part of the model stands for it; the tests owed afterwards see to it. */
  readonly byAnyWork?: true
  /** The test whose next good reading closes it. */
  readonly test?: string
  /** It blocks nothing, for this reason, which stays in sight. */
  readonly passedOver?: { readonly because: string; readonly date: string }
}

/** Windings whose insulation is measured to the frame. */
export const windingParts: ReadonlySet<string> = new Set(windings)

/** What is read of a catalogue to judge the stop lines of a log. */
export type StopsBook = Pick<Catalogue, 'limits' | 'origins' | 'sources' | 'stopLines' | 'links'>

/** All that blocks running on, in the order of the stop lines, with what was passed over. */
export function openStops(of: {
  /** In their current form. */
  readonly entries: readonly Entry[]
  readonly register: SetRegister
  readonly catalogue: StopsBook
}): OpenStop[] {
  const { catalogue, ...log } = of
  return openLinesOf({ ...log, ...catalogue, limits: limitsOf(catalogue) }).flatMap(stopsOf)
}

/** A line once for each thing that holds it open, the same words once. */
function stopsOf(line: OpenLine): OpenStop[] {
  const causes = line.causes.filter(({ by }) => !(by === 'case' && line.eachTime))
  const whys = new Set<string>()
  return causes.flatMap((cause): OpenStop[] => {
    const stop = stopOf(line, cause)
    const key = `${stop.why} ${stop.mode ?? ''}`
    return whys.size === whys.add(key).size ? [] : [stop]
  })
}

function stopOf(
  { line, hazard, passedOver }: OpenLine,
  { by, why, part, danger, mode, test }: LineCause,
): OpenStop {
  const over =
    passedOver === undefined ? {} : { passedOver: { because: passedOver.because, date: passedOver.date } }
  const at = part === undefined ? [] : [part]
  if (by === 'danger' && danger !== undefined && mode !== undefined) {
    return { line, by, parts: at, danger, mode, why, ...over }
  }
  if (by === 'winding') {
    const parts = part === undefined ? [...windingParts] : at
    return { line, by, parts, why, ...(test && { test }), ...over }
  }
  return { line, by, parts: at, why: `${hazard}: ${why}`, byAnyWork: true, ...(test && { test }), ...over }
}
