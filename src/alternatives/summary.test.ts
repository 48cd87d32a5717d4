import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { simulate } from './simulate.js'
import { equivalentPerYear, estimateOf, meanOfWorst, quantileOf, summarise } from './summary.js'

const oneToTen = Float64Array.from({ length: 10 }, (_, i) => i + 1)

// Worked by hand: of 1 … 10 the dearest fifth is 9 and 10; the dearest quarter is 10, 9 and half of 8; the dearest tenth 10. Held: derived.
test.each([
  [0.8, 9.5],
  [0.75, 9.2],
  [0.9, 10],
  [0, 5.5],
])('the mean of the worst beyond %d of 1 to 10 is %d', (alpha, worst) => {
  expect(meanOfWorst(oneToTen, alpha)).toBeCloseTo(worst, 12)
})

test('the worst are never better than the mean, and never dearer than the dearest', () => {
  const money = fc.float64Array({ min: -1e6, max: 1e6, noNaN: true, minLength: 1, maxLength: 60 })
  fc.assert(
    fc.property(money, fc.double({ min: 0, max: 0.99, noNaN: true }), (values, alpha) => {
      const sorted = values.sort()
      const worst = meanOfWorst(sorted, alpha)
      expect(worst).toBeGreaterThanOrEqual(estimateOf(sorted).mean - 1e-6)
      expect(worst).toBeLessThanOrEqual(sorted.at(-1)! + 1e-6)
    }),
  )
})

test('a mean comes with its standard error, a single value with none', () => {
  // s² of 1 … 10 is 55/6; s/√10 = 0.957427. Held: derived.
  expect(estimateOf(oneToTen).mean).toBe(5.5)
  expect(estimateOf(oneToTen).standardError).toBeCloseTo(Math.sqrt(55 / 60), 12)
  expect(estimateOf(Float64Array.of(3)).standardError).toBeNaN()
  expect(() => estimateOf(new Float64Array(0))).toThrow('histories must be 1')
})

test('quantiles lie straight between the values', () => {
  expect(quantileOf(oneToTen, 0.5)).toBe(5.5)
  expect(quantileOf(oneToTen, 0.1)).toBeCloseTo(1.9, 12)
  expect(quantileOf(oneToTen, 1)).toBe(10)
  expect(() => quantileOf(oneToTen, 1.1)).toThrow('share must be 0 to 1')
})

test('an even payment is worth the present value it stands for', () => {
  // ∫₀¹⁰ 100 e^(−0.05 t) dt = 2000 (1 − e^(−0.5)). Held: derived.
  const presentValue = 2000 * (1 - Math.exp(-0.5))
  expect(equivalentPerYear({ presentValue, perYear: 0.05, years: 10 })).toBeCloseTo(100, 9)
  expect(equivalentPerYear({ presentValue: 1000, perYear: 0, years: 10 })).toBe(100)
  expect(equivalentPerYear({ presentValue: 1000, perYear: 1e-13, years: 10 })).toBeCloseTo(100, 6)
})

test('a part that fails evenly comes out at what can be reckoned by hand', () => {
  // Exponential life of 2 years, 100 a failure, no outage: a cost of 500 in 10 years and 0.5 failures a year. Held: derived.
  const model = lifeModelSchema.parse({
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 10,
    care: { fittingOutShare: 0 },
    dangers: { fire: 0.01 },
    parts: [
      {
        id: 'pump',
        repair: { price: 100 },
        modes: [
          { id: 'seal', clock: 'years', shape: 1, scale: 2, dangers: ['fire'] },
          { id: 'body', clock: 'years', shape: 1, scale: 1e9 },
        ],
      },
    ],
  })
  const [sample] = simulate(model, posteriorOf(model, { seed: 1 }), { seed: 1, from: 0, count: 4000 })
  const summary = summarise(model, sample!)
  const { cost, headings } = summary
  expect(Math.abs(cost.mean - 500)).toBeLessThan(4 * cost.standardError)
  expect(headings.failures).toEqual(cost)
  expect(summary.costPerYear).toBeCloseTo(cost.mean / 10, 9)
  expect(summary.failures[0]!.perYear).toBeCloseTo(cost.mean / 1000, 9)
  expect(summary.dangersPerYear.fire).toBeCloseTo(cost.mean / 100_000, 9)
  expect(summary.stopsPerYear.mean + summary.sameDayStopsPerYear.mean).toBeCloseTo(cost.mean / 1000, 9)
  // One history in e⁵ = 148 has no failure in ten years.
  expect(summary.firstFailure).toEqual([
    { part: 'pump', mode: 'seal', share: expect.closeTo(1 - Math.exp(-5), 2) },
  ])
  expect(summary.replacedShare).toBe(0)
})
