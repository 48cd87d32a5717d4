import fc from 'fast-check'
import { expect, test } from 'vitest'
import { lightShareIn, lightShareKnowing } from './light-running.js'

/** A tenth of the hours at each of 0.5, 1.0 … 5.0 kW, in steps of 100 W. */
const even = Float64Array.from({ length: 51 }, (_, step) => (step > 0 && step % 5 === 0 ? 0.1 : 0))
const byLoads = lightShareIn(even, { lowBelow: 0.3 })

// Counted by hand: below 3 kW of a set of 10 lie 0.5 to 2.5 kW. Derived.
test('hours below 30 % of a size', () => {
  expect(byLoads(10)).toBeCloseTo(0.5, 12)
  expect(byLoads(5)).toBeCloseTo(0.2, 12)
  expect(byLoads(1.5)).toBe(0)
  expect(byLoads(20)).toBeCloseTo(1, 12)
})

test('what is known of the present set stands, and other sizes follow the loads from there', () => {
  const known = lightShareKnowing(byLoads, { ratingKW: 10, lowLoadShare: 0.25 })!
  expect(known(10)).toBeCloseTo(0.25, 12)
  // g = ln 0.25 / ln 0.5 = 2
  expect(known(5)).toBeCloseTo(0.2 ** 2, 12)
  expect(known(20)).toBeCloseTo(1, 12)
  expect(known(1.5)).toBe(0)
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 0.99, noNaN: true }),
      fc.double({ min: 1, max: 30, noNaN: true }),
      fc.double({ min: 0, max: 10, noNaN: true }),
      (lowLoadShare, ratingKW, more) => {
        const at = lightShareKnowing(byLoads, { ratingKW: 10, lowLoadShare })!
        expect(at(ratingKW)).toBeLessThanOrEqual(at(ratingKW + more) + 1e-12)
      },
    ),
    { numRuns: 60, seed: 4 },
  )
})

test('loads that contradict what is known of the present set tell nothing of others', () => {
  expect(lightShareKnowing(byLoads, { ratingKW: 1.5, lowLoadShare: 0.3 })).toBeUndefined()
  expect(lightShareKnowing(byLoads, { ratingKW: 20, lowLoadShare: 0.3 })).toBeUndefined()
  expect(lightShareKnowing(byLoads, { ratingKW: 10, lowLoadShare: 0 })).toBeUndefined()
})
