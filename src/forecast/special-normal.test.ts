import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { lnNormalCdf, normalCdf, normalDensity, normalQuantile, scaledNormalTail } from './special-normal.js'

// Held values in this file: derived, in forty-digit arithmetic.

test.each([
  [-37, 5.725571222524577e-300],
  [-20, 2.7536241186062337e-89],
  [-8, 6.220960574271784e-16],
  [-3, 0.0013498980316300946],
  [-0.5, 0.3085375387259869],
  [0, 0.5],
  [0.25, 0.5987063256829237],
  [1, 0.8413447460685429],
  [2.5, 0.9937903346742238],
])('Φ(%f)', (z, expected) => {
  expect(Math.abs(normalCdf(z) / expected - 1)).toBeLessThan(2e-15)
})

test.each([
  [-1000, -500007.82669481216],
  [-38, -726.5572160188201],
  [-2, -3.783184333682032],
  [0, -Math.LN2],
  [3, -0.0013508099647481938],
  [8, -6.220960574271786e-16],
])('ln Φ(%f)', (z, expected) => {
  expect(Math.abs(lnNormalCdf(z) / expected - 1)).toBeLessThan(2e-15)
})

test('the quantile undoes the distribution, to the last digits of both', () => {
  const exponent = fc.double({ min: -690, max: -0.01, noNaN: true })
  fc.assert(
    fc.property(exponent, (exponent) => {
      const chance = Math.exp(exponent)
      const z = normalQuantile(chance)
      // One part in 1e15 of z is this much of the chance, in parts: z · φ(z) / Φ(z), about z² in the tail.
      const parts = 1 + z * z
      expect(Math.abs(normalCdf(z) / chance - 1)).toBeLessThan(1e-15 * parts + 1e-15)
    }),
    { numRuns: 500 },
  )
})

test('the two halves mirror one another', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 30, noNaN: true }), (z) => {
      expect(normalCdf(-z) + normalCdf(z)).toBeCloseTo(1, 15)
      expect(normalDensity(-z)).toBe(normalDensity(z))
      if (z < 25) {
        expect(Math.abs((scaledNormalTail(z) * Math.exp((-z * z) / 2)) / normalCdf(-z) - 1)).toBeLessThan(
          1e-13,
        )
      }
    }),
  )
  expect(normalQuantile(0.25)).toBe(-normalQuantile(0.75))
})

test('density is the slope of the distribution', () => {
  fc.assert(
    fc.property(fc.double({ min: -6, max: 6, noNaN: true }), (z) => {
      const h = 1e-4
      const slope = (normalCdf(z + h) - normalCdf(z - h)) / (2 * h)
      expect(Math.abs(slope - normalDensity(z))).toBeLessThan(1e-8)
    }),
  )
})

test('ends of the span', () => {
  expect(normalQuantile(0)).toBe(-Infinity)
  expect(normalQuantile(1)).toBe(Infinity)
  expect(normalQuantile(0.5)).toBe(0)
  expect(normalCdf(-Infinity)).toBe(0)
  expect(normalCdf(Infinity)).toBe(1)
  expect(normalCdf(Number.NaN)).toBeNaN()
  expect(lnNormalCdf(50)).toBe(-0)
  expect(() => normalQuantile(1.1)).toThrow('chance must be 0 to 1')
  expect(() => scaledNormalTail(-1)).toThrow('z must be')
})
