/**
 * The fault model that is shipped, for tests.
 *
 * @module
 */

import type { Catalogue } from '../src/catalogue/catalogue.js'
import type { FaultModel } from '../src/catalogue/read-fault-model.js'
import { shippedCatalogue, shippedFaultModel } from '../src/cli/shipped.js'
import type { CaseBody } from '../src/faults/case.js'
import type { PriorGiven } from '../src/faults/priors.js'

export function shippedFaults(): { readonly catalogue: Catalogue; readonly model: FaultModel } {
  return { catalogue: shippedCatalogue(), model: shippedFaultModel() }
}

/** Nothing known of the set but its kind. */
export const nothingKnown: PriorGiven = { clocks: {}, kind: {}, defective: {}, work: [], closed: {} }

/** A case with symptoms and outcomes answered. */
export function caseWith(of: {
  readonly present?: readonly string[]
  readonly absent?: readonly string[]
  readonly outcomes?: Readonly<Record<string, string>>
}): CaseBody {
  const { present = [], absent = [], outcomes = {} } = of
  return {
    name: 'trial',
    lines: [],
    symptoms: [
      ...present.map((symptom) => ({ symptom, is: 'present' as const })),
      ...absent.map((symptom) => ({ symptom, is: 'absent' as const })),
    ],
    checks: Object.entries(outcomes).map(([check, outcome]) => ({ check, outcome })),
  }
}
