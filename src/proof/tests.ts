/**
 * Every test, by its id: the table that the command line, the screens, the tests owed and the faults room read.
 *
 * @module
 */

import type { ProofTest } from './test-type.js'
import { absorptionTest, insulationTest } from './tests-insulation.js'

/** In the order in which they are usually made. */
export const proofTests: readonly ProofTest[] = [insulationTest, absorptionTest]

/** The test of an id; undefined where there is none. */
export function proofTestOf(id: string): ProofTest | undefined {
  return proofTests.find((test) => test.id === id)
}
