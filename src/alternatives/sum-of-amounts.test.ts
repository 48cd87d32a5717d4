import fc from 'fast-check'
import { expect, test } from 'vitest'
import { normalQuantile } from '../forecast/special-normal.js'
import { meanBeyond, meanOf, sumOfAmounts, varianceOf } from './sum-of-amounts.js'

// Hull, "Options, futures and other derivatives", the example of a call: price 42, strike 40, interest 10 % a year, volatility
// 20 % a year, half a year: 4.76. Recalled. The forward is 42·e^0.05, and the value is discounted by e^−0.05.
test('the mean beyond a bound is that of the published example', () => {
  const logSd = 0.2 * Math.sqrt(0.5)
  const forward = 42 * Math.exp(0.05)
  const beyond = meanBeyond({ median: forward * Math.exp(-(logSd ** 2) / 2), logSd }, 40)
  expect(beyond * Math.exp(-0.05)).toBeCloseTo(4.76, 2)
})

test('the mean beyond a bound is what a sum over even steps of chance finds', () => {
  const amount = { median: 8, logSd: 0.4 }
  const steps = 20_000
  const mean = (k: number) =>
    Array.from({ length: steps }, (_, i) =>
      Math.max(0, 8 * Math.exp(0.4 * normalQuantile((i + 0.5) / steps)) - k),
    ).reduce((sum, value) => sum + value / steps, 0)
  for (const k of [2, 8, 20]) expect(meanBeyond(amount, k)).toBeCloseTo(mean(k), 3)
})

test('at its limits it is the whole, nothing, or what is fixed', () => {
  const amount = { median: 8, logSd: 0.4 }
  expect(meanBeyond(amount, 0)).toBeCloseTo(meanOf(amount), 12)
  expect(meanBeyond(amount, 1e9)).toBeCloseTo(0, 12)
  expect(meanBeyond(12, 5)).toBe(7)
  expect(meanBeyond(3, 5)).toBe(0)
  expect(meanBeyond({ median: 8, logSd: 0 }, 5)).toBe(3)
  expect(meanBeyond({ exponentialMean: 4 }, 4)).toBeCloseTo(4 / Math.E, 12)
})

const amount = fc.oneof(
  fc.double({ min: 0, max: 5000, noNaN: true }),
  fc.record({
    median: fc.double({ min: 0, max: 5000, noNaN: true }),
    logSd: fc.double({ min: 0, max: 1, noNaN: true }),
  }),
)

test('a sum has the mean and the variance of what is in it', () => {
  fc.assert(
    fc.property(fc.array(amount, { maxLength: 6 }), (list) => {
      const sum = sumOfAmounts(list)
      const mean = list.reduce<number>((total, one) => total + meanOf(one), 0)
      const variance = list.reduce<number>((total, one) => total + varianceOf(one), 0)
      expect(meanOf(sum)).toBeCloseTo(mean, 6)
      expect(Math.abs(varianceOf(sum) - variance)).toBeLessThanOrEqual(1e-6 * (1 + variance))
    }),
    { numRuns: 60 },
  )
  expect(sumOfAmounts([])).toBe(0)
  expect(sumOfAmounts([0, { median: 140, logSd: 0.25 }])).toEqual({ median: 140, logSd: 0.25 })
})
