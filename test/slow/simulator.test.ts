import { expect, test } from 'vitest'
import { lifeModelSchema } from '../../src/forecast/life-model.js'
import { agreement } from '../cases/agreement.js'
import { closedFormCases } from '../cases/closed-form.js'
import { workedCases } from '../cases/worked.js'
import { simulateSlowly } from './simulator.js'

/** Histories of a case, however many a faster simulator may be asked for. */
const enough = 2500

test.each([...closedFormCases, ...workedCases])('$id: $source ($held)', (known) => {
  const { model, alternative = 'leave', expect: expectations } = known
  const histories = Math.min(known.histories, enough)
  const result = simulateSlowly(lifeModelSchema.parse(model), null, alternative, { seed: 20, histories })
  for (const expectation of expectations) {
    const { expected, found, standardError } = agreement(result.histories, expectation)
    const off = Math.abs(found - expected)
    // The second term is for what is certain, where only rounding is left.
    const allowed = 4 * standardError + 1e-9 * Math.abs(expected)
    expect(off, `${JSON.stringify(expectation)}; found ${found} ± ${standardError}`).toBeLessThanOrEqual(
      allowed,
    )
  }
})
