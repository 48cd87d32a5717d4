/**
 * The fault model that is shipped, for tests.
 *
 * @module
 */

import { join } from 'node:path'
import type { Catalogue } from '../src/catalogue/catalogue.js'
import { parseFaultModel } from '../src/catalogue/fault-model.js'
import { parseCatalogue } from '../src/catalogue/parse.js'
import type { FaultModel } from '../src/catalogue/read-fault-model.js'
import type { CaseBody } from '../src/faults/case.js'
import type { PriorGiven } from '../src/faults/priors.js'
import { readCatalogueFiles } from '../src/store/catalogue-files.js'

const folder = join(import.meta.dirname, '../catalogue')

export function shippedFaults(): { readonly catalogue: Catalogue; readonly model: FaultModel } {
  const catalogue = parseCatalogue(readCatalogueFiles(folder))
  if (!catalogue.ok) throw new Error(JSON.stringify(catalogue.problems.slice(0, 3)))
  const faults = parseFaultModel(readCatalogueFiles(join(folder, 'faults')), catalogue.catalogue)
  if (!faults.ok) throw new Error(JSON.stringify(faults.problems.slice(0, 3)))
  return { catalogue: catalogue.catalogue, model: faults.model }
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
