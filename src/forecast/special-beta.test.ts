import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { betaCdf, betaQuantile } from './special-beta.js'

// Derived, in forty-digit arithmetic.
test.each([
  [1.4, 0.6, 0.3, 0.1084909073729957],
  [1.4, 0.6, 0.99, 0.9205320387728857],
  [0.02, 1.98, 0.1, 0.9719689036708178],
  [200, 300, 0.41, 0.6776281647721794],
  [3, 5, 1e-10, 3.49999999895e-29],
])('weights %f and %f at %f', (towardsOne, towardsZero, share, expected) => {
  expect(Math.abs(betaCdf({ towardsOne, towardsZero, share }) / expected - 1)).toBeLessThan(1e-13)
})

test('closed cases: one weight 1, and the arcsine law', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.05, max: 20, noNaN: true }),
      fc.double({ min: 1e-6, max: 0.9999, noNaN: true }),
      (a, share) => {
        expect(betaCdf({ towardsOne: a, towardsZero: 1, share })).toBeCloseTo(share ** a, 11)
        expect(betaQuantile({ towardsOne: a, towardsZero: 1, chance: share })).toBeCloseTo(
          share ** (1 / a),
          12,
        )
        const arcsine = (2 / Math.PI) * Math.asin(Math.sqrt(share))
        expect(betaCdf({ towardsOne: 0.5, towardsZero: 0.5, share })).toBeCloseTo(arcsine, 12)
      },
    ),
  )
})

test('the quantile undoes the distribution for detections from 1 % to 99 %', () => {
  const detection = fc.double({ min: 0.01, max: 0.99, noNaN: true })
  const chance = fc.double({ min: 1e-9, max: 1, noNaN: true })
  fc.assert(
    fc.property(detection, chance, (detection, chance) => {
      const beta = { towardsOne: 2 * detection, towardsZero: 2 * (1 - detection) }
      const share = betaQuantile({ ...beta, chance })
      // Near 1 a double cannot say where the share lies; there only the side is held.
      if (share > 1e-300 && share < 0.999) expect(betaCdf({ ...beta, share })).toBeCloseTo(chance, 12)
      else expect(share >= 0 && share <= 1).toBe(true)
    }),
  )
})

test('mean of the drawn share is the detection it came from', () => {
  for (const detection of [0.2, 0.7, 0.9]) {
    const beta = { towardsOne: 2 * detection, towardsZero: 2 * (1 - detection) }
    let sum = 0
    for (let index = 0; index < 2000; index++) sum += betaQuantile({ ...beta, chance: (index + 0.5) / 2000 })
    expect(sum / 2000).toBeCloseTo(detection, 3)
  }
})

test('no weight on one side means certainty of the other', () => {
  expect(betaQuantile({ towardsOne: 0, towardsZero: 2, chance: 0.9 })).toBe(0)
  expect(betaQuantile({ towardsOne: 2, towardsZero: 0, chance: 0.1 })).toBe(1)
  expect(betaCdf({ towardsOne: 0, towardsZero: 2, share: 0 })).toBe(1)
  expect(betaCdf({ towardsOne: 2, towardsZero: 0, share: 0.999 })).toBe(0)
  expect(() => betaCdf({ towardsOne: 0, towardsZero: 0, share: 0.5 })).toThrow('towardsOne must be above 0')
  expect(() => betaQuantile({ towardsOne: 1, towardsZero: 1, chance: 2 })).toThrow('chance must be')
})
