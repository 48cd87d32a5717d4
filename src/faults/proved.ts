/**
 * Readings of checks that are also tests of the proof: judged there, so that a number means one thing everywhere.
 *
 * @module
 */

import type { Limits } from '../proof/limits.js'
import { proofTestOf } from '../proof/tests.js'

/** The test and its field that a check's number goes by, and the outcome that each band of it stands for. */
interface ProvedBy {
  readonly test: string
  readonly field: string
  /** A band that is not listed is told apart further by the check's own bands. */
  readonly outcomes: Readonly<Record<string, string>>
}

const provedBy: Readonly<Record<string, ProvedBy>> = {
  'stator-insulation': {
    test: 'insulation-test',
    field: 'winding-to-frame',
    outcomes: { hold: 'middling', good: 'good', 'old-enough': 'good' },
  },
  'touch-volts': {
    test: 'touch-volts',
    field: 'open',
    outcomes: { quiet: 'under-2', some: 'some', felt: 'some', danger: 'danger' },
  },
  leakage: {
    test: 'residual-current',
    field: 'leak',
    outcomes: { quiet: 'small', within: 'some', much: 'some', trips: 'large' },
  },
}

/** Under which test and name the reading of a check is kept in the log. */
export function keptAs(check: string): { readonly test: string; readonly field: string } {
  const { test, field } = provedBy[check] ?? { test: check, field: 'reading' }
  return { test, field }
}

/** The outcome by the verdict of the proof; undefined where no test stands for the check, or it cannot tell. */
export function outcomeByProof(
  check: string,
  read: { readonly value: number; readonly windingC?: number | undefined },
  limits: Limits,
): string | undefined {
  const by = provedBy[check]
  const test = by === undefined ? undefined : proofTestOf(by.test)
  if (by === undefined || test === undefined) return undefined
  const { band } = test.judge({ [by.field]: read.value, winding: read.windingC }, limits)
  return band === undefined ? undefined : by.outcomes[band]
}
