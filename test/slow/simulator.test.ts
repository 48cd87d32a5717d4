import { expect, test } from 'vitest'
import { lifeModelSchema } from '../../src/forecast/life-model.js'
import { agreement } from '../cases/agreement.js'
import { closedFormCases } from '../cases/closed-form.js'
import { workedCases } from '../cases/worked.js'
import { simulateSlowly } from './simulator.js'

/** Histories of a case, however many a faster simulator may be asked for. */
const enough = 2000

test.each([...closedFormCases, ...workedCases])('$id: $source ($held)', (known) => {
  const { model, alternative = 'leave', expect: expectations } = known
  const histories = Math.min(known.histories, known.slowHistories ?? enough)
  const result = simulateSlowly(lifeModelSchema.parse(model), null, alternative, { seed: 20, histories })
  const views = result.histories.map((one) => ({ ...one, stops: one.stops + one.sameDayStops }))
  for (const expectation of expectations) {
    const { expected, found, standardError } = agreement(views, expectation)
    const off = Math.abs(found - expected)
    // The second term is for what is certain, where only rounding is left.
    const allowed = 4 * standardError + 1e-9 * Math.abs(expected)
    expect(off, `${JSON.stringify(expectation)}; found ${found} ± ${standardError}`).toBeLessThanOrEqual(
      allowed,
    )
  }
})

test('a history without end cannot be told, and the part that makes it so is named', () => {
  const model = lifeModelSchema.parse({
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 10,
    parts: [{ id: 'fuse', modes: [{ id: 'blows', clock: 'years', shape: 1, scale: 1e-5 }] }],
  })
  expect(() => simulateSlowly(model, null, 'leave', { seed: 1, histories: 1 })).toThrow(/cannot tell.*fuse/)
})

test('the same seed gives the same histories, and each history stands by itself', () => {
  const model = lifeModelSchema.parse(closedFormCases[0]!.model)
  const ten = simulateSlowly(model, null, 'leave', { seed: 3, histories: 10 }).histories
  expect(simulateSlowly(model, null, 'leave', { seed: 3, histories: 4 }).histories).toEqual(ten.slice(0, 4))
  expect(simulateSlowly(model, null, 'leave', { seed: 4, histories: 10 }).histories).not.toEqual(ten)
})
