/**
 * The outcome of a check from a number that was read.
 *
 * @module
 */

import type { FaultCheck } from '../catalogue/fault-schema.js'
import type { Problem } from '../catalogue/problem.js'
import { shown } from '../catalogue/problem.js'
import { insulationAt40 } from '../proof/insulation.js'
import type { Limits } from '../proof/limits.js'
import { outcomeByProof } from './proved.js'

/** A number as it was read, in the unit of the check. */
export interface FaultReading {
  readonly value: number
  /** What it is held against, where the check asks for that: the book's figure, what is marked on it. */
  readonly against?: number | undefined
  /** Of the winding, where the check brings it to 40 °C. [°C] */
  readonly windingC?: number | undefined
}

export interface Rated {
  /** [V] */
  readonly volts?: number | undefined
  /** [Hz] */
  readonly hertz?: number | undefined
}

/** More is as good as this. [MΩ] */
const endlessMohm = 1e6

export type Banded =
  | { readonly ok: true; readonly outcome: string }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** What a reading is judged by besides the check's own bands. */
export interface BandedBy {
  readonly rated: Rated
  /** Of the tests of the proof: what is one of them is judged there. */
  readonly limits: Limits
}

/** The band that a reading falls into; its end belongs to the band above. Every number from nought up has one. */
export function outcomeOfReading(check: FaultCheck, read: FaultReading, { rated, limits }: BandedBy): Banded {
  const { reading, id } = check
  const refuse = (found: unknown, allowed: string, code = 'reading'): Banded => ({
    ok: false,
    problems: [{ code, path: id, found: shown(found), allowed }],
  })
  if (reading === undefined) return refuse(read.value, 'an outcome in words: no number tells this one')
  if (!Number.isFinite(read.value) || read.value < 0) return refuse(read.value, `${reading.what}, from 0 up`)
  const whole = reading.rated === undefined ? read.against : rated[reading.rated]
  const needsWhole = reading.rated !== undefined || reading.against !== undefined
  if (needsWhole && (whole === undefined || !(whole > 0))) {
    return refuse(
      whole,
      reading.rated === undefined
        ? `${reading.against}, to hold it against`
        : `the ${reading.rated} that the set is rated at, in the log`,
      'missing',
    )
  }
  let { value } = read
  if (reading.corrected === 'winding') {
    const { windingC } = read
    if (windingC === undefined || windingC < 10 || windingC > 85) {
      return refuse(windingC, 'the temperature of the winding, 10 to 85 °C', 'missing')
    }
    value = insulationAt40({ measuredMohm: Math.min(value, endlessMohm), windingC }).lower
  }
  const proved = outcomeByProof(id, read, limits)
  if (proved !== undefined) return { ok: true, outcome: proved }
  const band = reading.bands.find(
    ({ upTo, of }) => upTo === undefined || value < (of === 'share' ? (upTo / 100) * whole! : upTo),
  )!
  return { ok: true, outcome: band.outcome }
}
