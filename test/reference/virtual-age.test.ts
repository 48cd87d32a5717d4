import { expect, test } from 'vitest'
import { chanceOfEnding, type WeibullLife } from '../../src/forecast/lives.js'
import { renewals } from '../oracles/renewal.js'
import { brownProschan, failuresAll, failuresEach, nextLife, virtualAges } from '../oracles/virtual-age.js'

// Expected values in this file: g-renewal equation and backward recursion by an independent program, agreed with by
// simulation. Models of Kijima (1989) and Kijima and Sumita (1986), recalled. Derived unless said otherwise.

function weibull(shape: number, scale = 1): WeibullLife {
  return { kind: 'weibull', shape, scale }
}

test.each([
  [2, 0, 1.32949053927],
  [2, 0.25, 1.53909807615],
  [2, 0.75, 2.00075180594],
  [2, 1, 2.25],
  [3, 0.5, 1.89343832644],
])('repairs that undo wear since the last: shape %f, q %f', (shape, keeps, expected) => {
  expect(Math.abs(failuresEach(weibull(shape), { keeps, until: 1.5, steps: 150 }) - expected)).toBeLessThan(
    1e-5,
  )
})

test.each([
  [2, 0.25, 1.5, 1.49903581496],
  [2, 0.5, 1.5, 1.6856629696],
  [3, 0.5, 1.5, 1.75822400027],
  [2, 0.5, 3, 4.42327792702],
])('repairs that work on all wear: shape %f, q %f by %f', (shape, keeps, until, expected) => {
  expect(Math.abs(failuresAll(weibull(shape), { keeps, until, steps: 40 }) - expected)).toBeLessThan(1e-3)
})

test('the ends: as new is a renewal, as old is minimal repair, constant rates do not care', () => {
  const endedBy = (age: number): number => -Math.expm1(-(age ** 2.5))
  const asNew = failuresEach(weibull(2.5), { keeps: 0, until: 1.2, steps: 150 })
  expect(asNew).toBeCloseTo(renewals({ endedBy, until: 1.2, steps: 150 }), 9)
  expect(failuresAll(weibull(2.5), { keeps: 0, until: 1.2, steps: 40 })).toBeCloseTo(asNew, 3)
  expect(failuresAll(weibull(2.5), { keeps: 1, until: 1.2, steps: 40 })).toBeCloseTo(1.2 ** 2.5, 3)
  for (const keeps of [0, 0.4, 1]) {
    expect(failuresEach(weibull(1), { keeps, until: 1.5, steps: 100 })).toBeCloseTo(1.5, 6)
    expect(failuresAll(weibull(1), { keeps, until: 1.5, steps: 30 })).toBeCloseTo(1.5, 3)
  }
})

test('under wear, repairs that work on all of it leave fewer failures', () => {
  const plan = { keeps: 0.5, until: 1.5, steps: 40 }
  expect(failuresAll(weibull(3), plan)).toBeLessThan(failuresEach(weibull(3), plan))
})

test('virtual ages one by one, and the chance of the next failure', () => {
  const lives = [1000, 800, 600]
  const each = virtualAges({ reach: 'each', keeps: 0.3 }, lives)
  const all = virtualAges({ reach: 'all', keeps: 0.3 }, lives)
  expect(each).toEqual([300, 540, 720].map((age) => expect.closeTo(age, 9)))
  expect(all).toEqual([300, 330, 279].map((age) => expect.closeTo(age, 9)))
  const life = weibull(2, 2000)
  expect(chanceOfEnding(life, { age: each[2]!, ahead: 500 })).toBeCloseTo(0.215336252421, 9)
  expect(chanceOfEnding(life, { age: all[2]!, ahead: 500 })).toBeCloseTo(0.123878062786, 9)
})

test('the next life from a virtual age', () => {
  const next = nextLife(weibull(2.5, 3000), { virtualAge: 1800, uniform: 0.5 })
  expect(Math.abs(next / 1166.11588557 - 1)).toBeLessThan(1e-9)
})

// Closed form, Brown and Proschan (1983), recalled.
test.each([
  [2, 1000, 0.25, 1772.45385091, 4, 0.00225675833419],
  [3, 4000, 0.6, 4234.97712766, 1.66666666667, 0.00039354797356],
])('perfect with a chance, minimal else: shape %f', (shape, scale, perfect, between, failures, rate) => {
  const found = brownProschan(weibull(shape, scale), perfect)
  expect(Math.abs(found.meanBetweenPerfect / between - 1)).toBeLessThan(1e-9)
  expect(Math.abs(found.failuresEach / failures - 1)).toBeLessThan(1e-9)
  expect(Math.abs(found.failureRate / rate - 1)).toBeLessThan(1e-9)
})
