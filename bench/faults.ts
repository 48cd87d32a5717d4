/**
 * `npm run bench -- faults`: how fast a case is worked out, and how often cases made up from the model are found.
 *
 * @module
 */

import { catalogueFor } from '../src/catalogue/scale.js'
import { shippedCatalogue } from '../src/cli/places.js'
import { answersOf } from '../src/faults/case.js'
import { diagnose } from '../src/faults/diagnose.js'
import { faultTables, posteriorOf } from '../src/faults/infer.js'
import { faultMoneyOf } from '../src/faults/mending-costs.js'
import { looksAhead } from '../src/faults/next-check.js'
import { priorsOf, weightsOf } from '../src/faults/priors.js'
import { caseWith, nothingKnown, shippedFaults } from '../test/fault-model.js'
import { tryFaults } from '../test/fault-trial.js'

/** The middle of many. [ms] */
export interface FaultTimes {
  /** Chances of all faults, and what each of the checks is expected to tell. */
  readonly nextMs: number
  /** The same with the second fault, questions, and the cost to a working set after every outcome: all that a page shows. */
  readonly wholeMs: number
}

export function benchDiagnosis({ repeats = 201 } = {}): FaultTimes {
  const { model } = shippedFaults()
  const tables = faultTables(model)
  const kind = { ratingKW: 8, rpm: 1500, excitation: 'brushless-regulator' } as const
  const money = faultMoneyOf(model, catalogueFor(shippedCatalogue(), kind), {})
  const weights = weightsOf(priorsOf(model, nothingKnown))
  const body = caseWith({
    present: ['little-water', 'hot-on-load', 'steam'],
    absent: ['black-smoke', 'belt-dust'],
    outcomes: { strainer: 'free', 'exchanger-temperatures': 'water-hot' },
  })
  const middle = (work: () => void) => {
    const times = Array.from({ length: repeats }, () => {
      const began = performance.now()
      work()
      return performance.now() - began
    }).sort((a, b) => a - b)
    return times[repeats >> 1]!
  }
  return {
    nextMs: middle(() =>
      looksAhead(tables, posteriorOf(tables, weights, answersOf(model, body)), model.checks),
    ),
    wholeMs: middle(() => diagnose(tables, { body, given: nothingKnown, money })),
  }
}

/** The stated hit rates from 600 cases each: told from symptoms alone, and after four checks. */
export function benchFaults(): void {
  const { model } = shippedFaults()
  const { nextMs, wholeMs } = benchDiagnosis()
  console.log(`posterior and next check over 80 × 60: ${nextMs.toFixed(2)} ms, wanted under 10 ms`)
  console.log(`all that a page shows of a case: ${wholeMs.toFixed(2)} ms`)
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
