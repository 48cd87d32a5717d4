import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { gamma, lnGamma, lowerGammaShare, scaledUpperGamma, upperGammaShare } from './special-gamma.js'

function relative(found: number, expected: number): number {
  return expected === 0 ? Math.abs(found) : Math.abs(found / expected - 1)
}

// Held values in this file: derived, by series in forty-digit arithmetic, unless said otherwise.

test.each([
  [0.001, 6.907178885383853],
  [0.25, 1.2880225246980774],
  [0.9999, 0.00005772979156120022],
  [1.0001, -0.000057713342220477625],
  [1.75, -0.08440112102048555],
  [2.0001, 0.000042281658112830715],
  [5.5, 3.9578139676187165],
  [11.5, 16.292000476567242],
  [12.5, 18.734347511936445],
  [300, 1409.2020674704117],
  [1e5, 1051287.7089736569],
])('ln Γ(%f)', (x, expected) => {
  // The arguments beside 1 and 2 are themselves rounded, which alone moves the answer by 1e-12.
  expect(relative(lnGamma(x), expected)).toBeLessThan(Math.abs(expected) < 1e-4 ? 5e-12 : 2e-15)
})

test('Γ of whole numbers is the factorial, and Γ(1/2) is √π', () => {
  let factorial = 1
  for (let n = 1; n <= 12; n++) {
    expect(gamma(n)).toBe(factorial)
    factorial *= n
  }
  expect(gamma(0.5)).toBeCloseTo(Math.sqrt(Math.PI), 15)
  expect(gamma(172)).toBe(Infinity)
})

test('Γ(x + 1) = x Γ(x), across the seams of the method', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-3, max: 100, noNaN: true }), (x) => {
      expect(relative(gamma(x + 1), x * gamma(x))).toBeLessThan(2e-13)
      expect(Math.abs(lnGamma(x + 1) - Math.log(x) - lnGamma(x))).toBeLessThan(1e-12)
    }),
  )
})

test.each([
  [0.1, 0.001, 0.4732314316075549],
  [0.1, 0.5, 0.05859755410986648],
  [0.1, 5, 0.000143938965846734],
  [0.4, 700, 8.718454392522546e-307],
  [2.5, 1, 0.8491450360846097],
  [2.5, 30, 1.215456977718304e-11],
  [30, 20, 0.9781817824744427],
  [30, 90, 6.3926569911375e-14],
  [1000, 1100, 0.0010593232539299773],
  [1000, 900, 0.9994500977342882],
])('upper share, shape %f at %f', (shape, at, expected) => {
  expect(relative(upperGammaShare({ shape, at }), expected)).toBeLessThan(2e-13)
})

test.each([
  [0.1, 1e-8, 0.16659398838160216],
  [3.3, 0.001, 1.4205656408213865e-11],
  [30, 1, 1.4330814167223182e-33],
  [1000, 900, 0.0005499022657117829],
])('lower share, shape %f at %f', (shape, at, expected) => {
  expect(relative(lowerGammaShare({ shape, at }), expected)).toBeLessThan(2e-13)
})

test.each([
  [0.1, 0, 9.513507698668732],
  [0.1, 0.3, 1.1768568130283208],
  [0.1, 1e4, 0.00025116604046715506],
  [0.5, 700, 0.03776950748468322],
  [3.3, 0.01, 2.7104062997092035],
  [3.3, 2, 14.705696426081358],
  [3.3, 5000, 321981405.2086383],
  [1, 12345, 1],
])('upper incomplete gamma with its exponential out, shape %f at %f', (shape, at, expected) => {
  expect(relative(scaledUpperGamma({ shape, at }), expected)).toBeLessThan(2e-13)
})

test('shape 1 is the exponential', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-12, max: 700, noNaN: true }), (at) => {
      expect(relative(upperGammaShare({ shape: 1, at }), Math.exp(-at))).toBeLessThan(1e-13)
      expect(relative(lowerGammaShare({ shape: 1, at }), -Math.expm1(-at))).toBeLessThan(1e-13)
    }),
  )
})

test('the two shares make one, and Γ(a + 1, x) = a Γ(a, x) + x^a e^(−x)', () => {
  const shape = fc.double({ min: 0.05, max: 60, noNaN: true })
  const at = fc.double({ min: 1e-6, max: 1e4, noNaN: true })
  fc.assert(
    fc.property(shape, at, (shape, at) => {
      expect(lowerGammaShare({ shape, at }) + upperGammaShare({ shape, at })).toBeCloseTo(1, 12)
      const stepped = shape * scaledUpperGamma({ shape, at }) + at ** shape
      if (at < 600) expect(relative(scaledUpperGamma({ shape: shape + 1, at }), stepped)).toBeLessThan(1e-11)
    }),
    { numRuns: 400 },
  )
})

test('ends of the span', () => {
  expect(upperGammaShare({ shape: 2, at: 0 })).toBe(1)
  expect(upperGammaShare({ shape: 2, at: Infinity })).toBe(0)
  expect(lowerGammaShare({ shape: 2, at: Infinity })).toBe(1)
  expect(() => lnGamma(0)).toThrow('x must be above 0; found 0')
  expect(() => gamma(-1)).toThrow('x must be above 0; found -1')
  expect(() => lowerGammaShare({ shape: 0, at: 1 })).toThrow('shape must be')
  expect(() => scaledUpperGamma({ shape: 1, at: -1 })).toThrow('at must be')
})
