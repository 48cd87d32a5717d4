/**
 * Reading entries that were written by an older version of the program.
 *
 * What was kept is never rewritten: an old entry is brought to the present form each time it is read.
 *
 * @module
 */

import { shown } from '../catalogue/problem.js'
import { presentVersion } from './kinds.js'
import type { Problem } from './problems.js'

/** Brings an entry from its version to the next one. */
export type VersionStep = (old: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>

/** The version that entries are written in, and the step out of each one before it. */
export interface Versions {
  readonly present: number
  readonly steps: Readonly<Record<number, VersionStep>>
}

/** A step for every version there has been; version 1 is the first, so there is none yet. */
const ourVersions: Versions = { present: presentVersion, steps: {} }

/** A value in the present form, still to be checked; or that its version is none we know. */
export type PresentForm =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * Brings a value of any version to the present form, one step after another.
 *
 * A value without a version passes through: the check that follows says what it lacks.
 */
export function readOldVersion(input: unknown, versions: Versions = ourVersions): PresentForm {
  let value = input
  for (;;) {
    const version = versionOf(value)
    if (version === undefined || version === versions.present) return { ok: true, value }
    const step = versions.steps[version]
    if (step === undefined) {
      const allowed =
        version > versions.present
          ? `${versions.present} or older: this entry was written by a newer program`
          : `one of: ${[...Object.keys(versions.steps), versions.present].join(', ')}`
      return {
        ok: false,
        problems: [{ code: 'unknown-version', path: 'version', found: shown(version), allowed }],
      }
    }
    value = step(value as Readonly<Record<string, unknown>>)
  }
}

function versionOf(value: unknown): number | undefined {
  if (typeof value !== 'object' || value === null || !('version' in value)) return undefined
  return typeof value.version === 'number' ? value.version : undefined
}
