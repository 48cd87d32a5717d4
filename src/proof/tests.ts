/**
 * Every test, by its id: the table that the command line, the screens, the tests owed and the faults room read.
 *
 * @module
 */

import type { ProofTest } from './test-type.js'
import { absorptionTest } from './tests-absorption.js'
import { firstRecheck, monoxideTest, secondRecheck, shutdownTest } from './tests-after.js'
import { droopTest, loadStepTest, steadyTest } from './tests-classes.js'
import { breakerTest, conductorTest } from './tests-conductors.js'
import { backPressureTest, coolingTest, exhaustTest } from './tests-cooling.js'
import { bondTest, changeoverTest, neutralBondTest } from './tests-earth.js'
import { excitationTest, gapTest, residualTest } from './tests-excitation.js'
import { hotInsulationTest, insulationTest } from './tests-insulation.js'
import { leakageTest, tripTest } from './tests-leakage.js'
import { capacitorTest, diodeTest, windingResistanceTest } from './tests-resistance.js'
import { linksTest, loadRunTest, turnTest, vibrationTest } from './tests-running.js'
import { strayTest, touchTest } from './tests-touch.js'
import { balanceTest, noLoadTest } from './tests-volts.js'

/** In the order in which they are made: dead tests, the gap, the first run with the breaker open, then load. */
export const proofTests: readonly ProofTest[] = [
  turnTest,
  linksTest,
  windingResistanceTest,
  insulationTest,
  absorptionTest,
  diodeTest,
  capacitorTest,
  bondTest,
  neutralBondTest,
  changeoverTest,
  breakerTest,
  conductorTest,
  gapTest,
  residualTest,
  excitationTest,
  noLoadTest,
  balanceTest,
  touchTest,
  strayTest,
  leakageTest,
  tripTest,
  monoxideTest,
  loadStepTest,
  droopTest,
  steadyTest,
  coolingTest,
  exhaustTest,
  backPressureTest,
  vibrationTest,
  loadRunTest,
  hotInsulationTest,
  shutdownTest,
  firstRecheck,
  secondRecheck,
]

/** The test of an id; undefined where there is none. */
export function proofTestOf(id: string): ProofTest | undefined {
  return proofTests.find((test) => test.id === id)
}
