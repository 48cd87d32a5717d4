import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { chanceOfEnding, type WeibullLife } from '../../src/forecast/lives.js'
import { posteriorMean, posteriorQuantile, type ScalePosterior, scalePosterior } from './scale-posterior.js'
import { type KnownLife, weibullLogLikelihood } from './scale-posterior-lives.js'

const prior = { medianScale: 6000, logSd: Math.LN2 }

function posteriorOf(shape: number, lives: readonly KnownLife[], from = prior): ScalePosterior {
  return scalePosterior({
    prior: from,
    logLikelihood: (scale) => weibullLogLikelihood(lives, { shape, scale }),
  })
}

const sound = (age: number, count = 1): KnownLife => ({ ended: 'sound', age, count })
const failed = (age: number, count = 1): KnownLife => ({ ended: 'failed', age, count })

function expectRelative(found: number, expected: number, tolerance: number): void {
  expect(Math.abs(found / expected - 1)).toBeLessThan(tolerance)
}

test('without evidence the posterior is the prior', () => {
  const median = fc.double({ min: 1, max: 1e5, noNaN: true })
  fc.assert(
    fc.property(median, fc.double({ min: 0.05, max: 1.2, noNaN: true }), (medianScale, logSd) => {
      const posterior = posteriorOf(2, [], { medianScale, logSd })
      expect(posterior.logScales.length).toBe(201)
      expect(posterior.logEvidence).toBeCloseTo(0, 5)
      expectRelative(posteriorQuantile(posterior, 0.5), medianScale, 1e-9)
      expectRelative(posteriorQuantile(posterior, 0.8413447460685429), medianScale * Math.exp(logSd), 1e-5)
      expectRelative(
        posteriorMean(posterior, (scale) => scale),
        medianScale * Math.exp(logSd ** 2 / 2),
        1e-4,
      )
    }),
  )
})

// Derived: four million even points. Evidence, mean, chance ahead, 5 %, 50 % and 95 % points.
test('one part that outlived the prior by far pulls the grid out after it', () => {
  const posterior = posteriorOf(2, [sound(100_000)])
  const ahead = (scale: number): number =>
    chanceOfEnding({ kind: 'weibull', shape: 2, scale }, { age: 100_000, ahead: 300 })
  expect(posterior.logEvidence).toBeCloseTo(-9.13309110403, 4)
  expectRelative(
    posteriorMean(posterior, (scale) => scale),
    71662.461695,
    1e-4,
  )
  expectRelative(posteriorMean(posterior, ahead), 0.0150588446149, 1e-4)
  expectRelative(posteriorQuantile(posterior, 0.05), 43407.0242642, 1e-4)
  expectRelative(posteriorQuantile(posterior, 0.5), 66763.8032834, 1e-4)
  expectRelative(posteriorQuantile(posterior, 0.95), 116349.870397, 1e-4)
})

// Derived: four million even points.
test('many steep lives draw the grid in', () => {
  const lives = [sound(9000, 30), ...[8000, 8200, 8400, 8600, 8800].map((age) => failed(age, 8))]
  const posterior = posteriorOf(8, lives)
  expect(posterior.logEvidence).toBeCloseTo(-356.091024571, 6)
  expectRelative(
    posteriorMean(posterior, (scale) => scale),
    9352.08722831,
    1e-8,
  )
  expectRelative(posteriorQuantile(posterior, 0.05), 9058.19575575, 1e-6)
  expectRelative(posteriorQuantile(posterior, 0.5), 9345.36171805, 1e-6)
  expectRelative(posteriorQuantile(posterior, 0.95), 9668.90791225, 1e-6)
})

// Derived: four million even points.
test('failures known only to lie between two looks', () => {
  const posterior = posteriorOf(2, [
    { ended: 'failed-between', afterAge: 4000, byAge: 6000 },
    { ended: 'failed-between', afterAge: 2000, byAge: 7000 },
  ])
  expect(posterior.logEvidence).toBeCloseTo(-2.28075363149, 6)
  expectRelative(
    posteriorMean(posterior, (scale) => scale),
    5674.00086073,
    1e-5,
  )
  expectRelative(posteriorQuantile(posterior, 0.05), 3030.66123208, 1e-5)
  expectRelative(posteriorQuantile(posterior, 0.5), 5186.08306101, 1e-5)
  expectRelative(posteriorQuantile(posterior, 0.95), 9949.9073261, 1e-5)
})

const age = fc.double({ min: 100, max: 20_000, noNaN: true })
const shape = fc.double({ min: 0.5, max: 6, noNaN: true })
const lives: fc.Arbitrary<KnownLife[]> = fc.array(
  fc.oneof(
    age.map((at): KnownLife => sound(at)),
    age.map((at): KnownLife => failed(at)),
    fc
      .tuple(age, age)
      .map(([one, more]): KnownLife => ({ ended: 'failed-between', afterAge: one, byAge: one + more })),
  ),
  { minLength: 1, maxLength: 5 },
)

test('having lasted can only raise the scale', () => {
  fc.assert(
    fc.property(shape, lives, age, (shape, lives, lasted) => {
      const before = posteriorMean(posteriorOf(shape, lives), Math.log)
      const after = posteriorMean(posteriorOf(shape, [...lives, sound(lasted)]), Math.log)
      expect(after).toBeGreaterThan(before - 1e-9)
    }),
  )
})

test('the order of the evidence does not matter, nor whether it comes at once', () => {
  fc.assert(
    fc.property(shape, lives, (shape, lives) => {
      const one = posteriorOf(shape, lives)
      const other = posteriorOf(shape, [...lives].reverse())
      expect(other.logEvidence).toBeCloseTo(one.logEvidence, 9)
      const twice = posteriorOf(shape, [...lives, ...lives])
      const counted = posteriorOf(
        shape,
        lives.map((life) => ({ ...life, count: 2 })),
      )
      expect(counted.logEvidence).toBeCloseTo(twice.logEvidence, 9)
      expectRelative(posteriorQuantile(counted, 0.5), posteriorQuantile(twice, 0.5), 1e-9)
    }),
  )
})

test('the chance of failing ahead rises with the span', () => {
  fc.assert(
    fc.property(shape, lives, age, age, (shape, lives, ahead, more) => {
      const posterior = posteriorOf(shape, lives)
      const within = (span: number): number =>
        posteriorMean(posterior, (scale) => {
          const life: WeibullLife = { kind: 'weibull', shape, scale }
          return chanceOfEnding(life, { age: 500, ahead: span })
        })
      expect(within(ahead + more)).toBeGreaterThanOrEqual(within(ahead))
    }),
  )
})

test('a median in the place of the posterior makes the chance ahead too low', () => {
  const posterior = posteriorOf(2, [sound(5000)])
  const ahead = (scale: number): number =>
    chanceOfEnding({ kind: 'weibull', shape: 2, scale }, { age: 5000, ahead: 300 })
  expect(ahead(posteriorQuantile(posterior, 0.5))).toBeLessThan(0.7 * posteriorMean(posterior, ahead))
})

test('a known scale is one point', () => {
  const posterior = posteriorOf(2, [sound(5000)], { medianScale: 5000, logSd: 0 })
  expect([...posterior.chances]).toEqual([1])
  expect(posterior.logEvidence).toBeCloseTo(-1, 12)
  expect(posteriorQuantile(posterior, 0.9)).toBeCloseTo(5000, 8)
})

test('refuses evidence that no scale could give, and priors that are none', () => {
  const never = (): number => -Infinity
  expect(() => scalePosterior({ prior, logLikelihood: never })).toThrow('logLikelihood must be above −∞')
  expect(() => scalePosterior({ prior, logLikelihood: () => Number.NaN })).toThrow('found NaN')
  expect(() => posteriorOf(2, [], { medianScale: 0, logSd: 1 })).toThrow('medianScale must be')
  expect(() => posteriorOf(2, [], { medianScale: 1, logSd: -1 })).toThrow('logSd must be')
  expect(() => posteriorQuantile(posteriorOf(2, []), 1)).toThrow('chance must be')
})
