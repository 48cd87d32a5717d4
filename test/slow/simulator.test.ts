import { expect, test } from 'vitest'
import { lifeModelSchema } from '../../src/forecast/life-model.js'
import { agreement, closedFormCases } from '../cases/closed-form.js'
import { simulateSlowly } from './simulator.js'

test.each(closedFormCases)('$id: $source ($held)', ({ model, histories, expect: expectations }) => {
  const result = simulateSlowly(lifeModelSchema.parse(model), null, 'leave', { seed: 20, histories })
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
