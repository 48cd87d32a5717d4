/**
 * `npm run bench -- faults`: how fast a case is worked out, and how often cases made up from the model are found.
 *
 * @module
 */

import { catalogueFor } from '../src/catalogue/scale.js'
import { shippedCatalogue } from '../src/cli/places.js'
import { diagnose } from '../src/faults/diagnose.js'
import { faultTables } from '../src/faults/infer.js'
import { faultMoneyOf } from '../src/faults/mending-costs.js'
import { caseWith, nothingKnown, shippedFaults } from '../test/fault-model.js'
import { tryFaults } from '../test/fault-trial.js'

/** Chances of all faults, the second fault, and the worth of every check and question: the middle of many. [ms] */
export function benchDiagnosis({ repeats = 201 } = {}): number {
  const { model } = shippedFaults()
  const tables = faultTables(model)
  const kind = { ratingKW: 8, rpm: 1500, excitation: 'brushless-regulator' } as const
  const money = faultMoneyOf(model, catalogueFor(shippedCatalogue(), kind), {})
  const body = caseWith({
    present: ['little-water', 'hot-on-load', 'steam'],
    absent: ['black-smoke', 'belt-dust'],
    outcomes: { strainer: 'free', 'exchanger-temperatures': 'water-hot' },
  })
  const times = Array.from({ length: repeats }, () => {
    const began = performance.now()
    diagnose(tables, { body, given: nothingKnown, money })
    return performance.now() - began
  }).sort((a, b) => a - b)
  return times[repeats >> 1]!
}

/** The stated hit rates from 600 cases each: told from symptoms alone, and after four checks. */
export function benchFaults(): void {
  const { model } = shippedFaults()
  console.log(
    `posterior, second fault and next check over 80 × 60: ${benchDiagnosis().toFixed(2)} ms, wanted under 10 ms`,
  )
  for (const [noise, stated] of [
    [0, '0.71 and 0.85'],
    [0.8, '0.68 and 0.82'],
  ] as const) {
    const { symptomsOnly, afterChecks, afterAnyChecks } = tryFaults(model, {
      cases: 600,
      seed: 1,
      checks: 4,
      noise,
    })
    const says = ({ first, three }: { readonly first: number; readonly three: number }) =>
      `first ${first.toFixed(2)}, among three ${three.toFixed(2)}`
    console.log(`truth off the model by ${noise} in log odds, 600 cases`)
    console.log(`  symptoms only        ${says(symptomsOnly)}`)
    console.log(`  four chosen checks   ${says(afterChecks)}   stated ${stated}`)
    console.log(`  four checks at random ${says(afterAnyChecks)}`)
  }
}
