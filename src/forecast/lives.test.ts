import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  chanceOfEnding,
  cumulativeHazard,
  hazard,
  hazardAhead,
  type Life,
  lifeQuantile,
  logDensity,
  lognormalFromThree,
  meanLife,
  meanResidualLife,
  requireLife,
  residualQuantile,
  residualSurvival,
  survival,
} from './lives.js'
import { integrate } from './special-quadrature.js'

function expectRelative(found: number, expected: number, tolerance: number): void {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(tolerance * Math.abs(expected))
}

const weibull = fc.record({
  kind: fc.constant('weibull' as const),
  shape: fc.double({ min: 0.3, max: 10, noNaN: true }),
  scale: fc.double({ min: 1e-2, max: 1e5, noNaN: true }),
})
const lognormal = fc.record({
  kind: fc.constant('lognormal' as const),
  median: fc.double({ min: 1e-2, max: 1e5, noNaN: true }),
  logSd: fc.double({ min: 0.05, max: 2, noNaN: true }),
})
const anyLife: fc.Arbitrary<Life> = fc.oneof(weibull, lognormal)

// Derived, in forty-digit arithmetic: shape, scale, age, ahead; chance of ending, mean and median left, hazard.
test.each([
  [0.3, 6000, 1e-3, 1e-6, 2.77666402233408e-6, 56080.0057421269, 1848.32504182798, 2.77763950057104],
  [0.3, 6000, 2e4, 300, 0.00640346666306042, 204450.40130702, 54390.326600964, 2.15255810124967e-5],
  [10, 1000, 2512, 0.001, 0.0390443210407962, 0.0251063871333939, 0.017403444219695, 39.8269194387865],
  [10, 1000, 300, 1e-7, 1.96830000295243e-14, 651.354777082819, 664.013056703768, 1.9683e-7],
  [1, 500, 1e5, 20, 0.0392105608476768, 500, 346.573590279973, 0.002],
  [1.7, 800, 0, 1e-9, 5.81764239573772e-21, 713.795601999459, 644.848813748737, 0],
])('Weibull shape %f, scale %f, aged %f', (shape, scale, age, ahead, ends, mean, median, rate) => {
  const life: Life = { kind: 'weibull', shape, scale }
  expectRelative(chanceOfEnding(life, { age, ahead }), ends, 2e-13)
  expectRelative(meanResidualLife(life, age), mean, 2e-13)
  expectRelative(residualQuantile(life, { age, chance: 0.5 }), median, 2e-13)
  expectRelative(hazard(life, age), rate, 2e-13)
})

// Derived, in forty-digit arithmetic: median, log-sd, age, ahead; chance of ending, mean and median left, hazard.
test.each([
  [500, 0.7, 1e-3, 10, 1.14545113679974e-8, 638.809656602443, 499.999, 2.79031724471095e-74],
  [500, 0.7, 400, 50, 0.104361158143637, 464.464223267087, 303.944964254413, 0.00216655499207917],
  [500, 0.2, 5000, 50, 0.439134575150147, 87.075070141263, 59.9663592495193, 0.0115985206150378],
  [500, 1.5, 1e6, 1000, 0.00349341403413236, 376607.895516752, 216075.977259318, 3.50106471837913e-6],
  [500, 0.02, 510, 1, 0.141404321688512, 5.42564291289914, 4.21360050312991, 0.148748742143431],
])('lognormal median %f, log-sd %f, aged %f', (median, logSd, age, ahead, ends, mean, half, rate) => {
  const life: Life = { kind: 'lognormal', median, logSd }
  expectRelative(chanceOfEnding(life, { age, ahead }), ends, 1e-11)
  expectRelative(meanResidualLife(life, age), mean, 1e-11)
  expectRelative(residualQuantile(life, { age, chance: 0.5 }), half, 1e-11)
  expectRelative(hazard(life, age), rate, 1e-11)
})

test('shape 1 neither ages nor mends: the same mean left at every age', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1e4, noNaN: true }), (times) => {
      const life: Life = { kind: 'weibull', shape: 1, scale: 70 }
      expectRelative(meanResidualLife(life, 70 * times), 70, 1e-12)
    }),
  )
})

test('mean left rises with age for shapes below 1 and falls for shapes above', () => {
  const pair = fc.tuple(
    fc.double({ min: 0, max: 20, noNaN: true }),
    fc.double({ min: 0.01, max: 5, noNaN: true }),
  )
  fc.assert(
    fc.property(fc.double({ min: 0.3, max: 10, noNaN: true }), pair, (shape, [age, more]) => {
      fc.pre(Math.abs(shape - 1) > 0.01)
      const life: Life = { kind: 'weibull', shape, scale: 1 }
      const change = meanResidualLife(life, age + more) - meanResidualLife(life, age)
      if (shape < 1) expect(change).toBeGreaterThan(0)
      else expect(change).toBeLessThan(0)
    }),
  )
})

test('slope of the mean left is h(t) m(t) − 1', () => {
  fc.assert(
    fc.property(anyLife, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (life, chance) => {
      const age = lifeQuantile(life, chance)
      const step = 1e-4 * age
      const slope = (meanResidualLife(life, age + step) - meanResidualLife(life, age - step)) / (2 * step)
      const expected = hazard(life, age) * meanResidualLife(life, age) - 1
      expect(Math.abs(slope - expected)).toBeLessThan(1e-4 * (1 + Math.abs(expected)))
    }),
  )
})

test('quantiles undo survival, new and aged', () => {
  const chance = fc.double({ min: 1e-9, max: 0.999, noNaN: true })
  fc.assert(
    fc.property(anyLife, chance, fc.double({ min: 0, max: 0.9999, noNaN: true }), (life, chance, used) => {
      expectRelative(1 - survival(life, lifeQuantile(life, chance)), chance, 1e-6)
      const age = lifeQuantile(life, used)
      const ahead = residualQuantile(life, { age, chance })
      expect(Math.abs(chanceOfEnding(life, { age, ahead }) - chance)).toBeLessThan(1e-6 * chance + 1e-13)
    }),
  )
})

test('reaching an age and lasting on from it multiply', () => {
  const span = fc.double({ min: 0, max: 3, noNaN: true })
  fc.assert(
    fc.property(anyLife, span, span, (life, first, second) => {
      const [age, ahead] = [first * meanLife(life), second * meanLife(life)]
      const through = survival(life, age) * residualSurvival(life, { age, ahead })
      expect(Math.abs(through - survival(life, age + ahead))).toBeLessThan(1e-12)
      expect(hazardAhead(life, { age, ahead: 0 })).toBe(0)
    }),
  )
})

test('the density integrates to the chance of ending, and its hazard to the cumulative hazard', () => {
  fc.assert(
    fc.property(anyLife, fc.double({ min: 0.2, max: 0.8, noNaN: true }), (life, chance) => {
      const from = lifeQuantile(life, chance)
      const to = lifeQuantile(life, chance + 0.02)
      const density = integrate({ from, to }, (age) => Math.exp(logDensity(life, age)))
      expect(density).toBeCloseTo(0.02, 10)
      const rise = integrate({ from, to }, (age) => hazard(life, age))
      expect(rise).toBeCloseTo(cumulativeHazard(life, to) - cumulativeHazard(life, from), 10)
    }),
  )
})

test('doubling the scale doubles every age', () => {
  fc.assert(
    fc.property(weibull, fc.double({ min: 0, max: 5, noNaN: true }), (life, times) => {
      const age = times * life.scale
      const doubled: Life = { ...life, scale: 2 * life.scale }
      expectRelative(meanResidualLife(doubled, 2 * age), 2 * meanResidualLife(life, age), 1e-11)
      expectRelative(meanLife(doubled), 2 * meanLife(life), 1e-14)
    }),
  )
})

test('age 0 and the ends', () => {
  expect(hazard({ kind: 'weibull', shape: 0.5, scale: 10 }, 0)).toBe(Infinity)
  expect(hazard({ kind: 'weibull', shape: 1, scale: 10 }, 0)).toBe(0.1)
  expect(hazard({ kind: 'lognormal', median: 10, logSd: 1 }, 0)).toBe(0)
  expect(logDensity({ kind: 'weibull', shape: 1, scale: 10 }, 0)).toBeCloseTo(Math.log(0.1), 14)
  for (const life of [
    { kind: 'weibull', shape: 2, scale: 10 },
    { kind: 'lognormal', median: 10, logSd: 0.5 },
  ] as const) {
    expect(survival(life, 0)).toBe(1)
    expect(logDensity(life, 0)).toBe(-Infinity)
    expect(residualQuantile(life, { age: 7, chance: 1 })).toBe(Infinity)
    expect(residualQuantile(life, { age: 7, chance: 0 })).toBeCloseTo(0, 12)
    expectRelative(meanResidualLife(life, 0), meanLife(life), 1e-13)
  }
})

test('a lognormal without spread ends at its median and nowhere else', () => {
  const life: Life = { kind: 'lognormal', median: 10, logSd: 0 }
  expect([0, 9.999, 10, 11].map((age) => survival(life, age))).toEqual([1, 1, 0, 0])
  expect(chanceOfEnding(life, { age: 4, ahead: 5 })).toBe(0)
  expect(chanceOfEnding(life, { age: 4, ahead: 6 })).toBe(1)
  expect(chanceOfEnding(life, { age: 12, ahead: 6 })).toBe(1)
  expect(lifeQuantile(life, 0.3)).toBe(10)
  expect(meanLife(life)).toBe(10)
})

test('three figures make a lognormal that holds the middle and has a tenth outside each end', () => {
  const cost = lognormalFromThree({ low: 50, typical: 100, high: 200 })
  expect(cost.median).toBe(100)
  expect(lifeQuantile(cost, 0.1)).toBeCloseTo(50, 10)
  expect(lifeQuantile(cost, 0.9)).toBeCloseTo(200, 10)
  expect(() => lognormalFromThree({ low: 3, typical: 2, high: 4 })).toThrow('typical must be 3 to 4')
  expect(() => lognormalFromThree({ low: 3, typical: 3, high: 3 })).toThrow('high must be above low; found 3')
  expect(() => lognormalFromThree({ low: 0, typical: 3, high: 5 })).toThrow('low must be')
})

test('a life from outside is checked', () => {
  expect(() => requireLife({ kind: 'weibull', shape: 0.1, scale: 1 })).toThrow('shape must be 0.2 to 20')
  expect(() => requireLife({ kind: 'weibull', shape: 2, scale: 0 })).toThrow('scale must be')
  expect(() => requireLife({ kind: 'lognormal', median: 5, logSd: Number.NaN })).toThrow('logSd must be')
  expect(() => requireLife({ kind: 'lognormal', median: -5, logSd: 1 })).toThrow('median must be')
  expect(() => requireLife({ kind: 'weibull', shape: 2, scale: 9 })).not.toThrow()
})
