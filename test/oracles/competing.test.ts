import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { chanceOfEnding, meanResidualLife } from '../../src/forecast/lives.js'
import { type AgedLife, firstToFail } from './competing.js'

const agedLife: fc.Arbitrary<AgedLife> = fc.record({
  shape: fc.double({ min: 0.2, max: 20, noNaN: true }),
  scale: fc.double({ min: 1, max: 1000, noNaN: true }),
  age: fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 1500, noNaN: true })),
})
const several = fc.array(agedLife, { minLength: 1, maxLength: 4 })
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

test('first to fail and none make one; first ever make one', () => {
  fc.assert(
    fc.property(several, fc.double({ min: 1e-6, max: 1e4, noNaN: true }), (lives, ahead) => {
      const race = firstToFail({ lives, ahead })
      expect(sum(race.first) + race.none).toBeCloseTo(1, 9)
      expect(sum(race.firstEver)).toBeCloseTo(1, 9)
      race.first.forEach((chance, index) => {
        expect(chance).toBeLessThanOrEqual(race.firstEver[index]! + 1e-12)
        const alone = chanceOfEnding({ kind: 'weibull', ...lives[index]! }, { age: lives[index]!.age, ahead })
        expect(chance).toBeLessThanOrEqual(alone * (1 + 1e-9))
      })
    }),
  )
})

test('one life alone: its own chance, to the last digits however small, and its own mean', () => {
  const ahead = fc.double({ min: -12, max: 3, noNaN: true }).map((power) => 10 ** power)
  fc.assert(
    fc.property(agedLife, ahead, (life, ahead) => {
      const race = firstToFail({ lives: [life], ahead })
      const { age } = life
      const alone = chanceOfEnding({ kind: 'weibull', ...life }, { age, ahead })
      expect(Math.abs(race.first[0]! - alone)).toBeLessThanOrEqual(1e-9 * alone)
      const mean = meanResidualLife({ kind: 'weibull', ...life }, age)
      expect(Math.abs(race.meanTime / mean - 1)).toBeLessThan(1e-9)
    }),
  )
})

test('constant rates share the end by their rates', () => {
  const race = firstToFail({
    lives: [
      { shape: 1, scale: 100, age: 7 },
      { shape: 1, scale: 300, age: 0 },
    ],
    ahead: 50,
  })
  const none = Math.exp(-50 / 75)
  expect(race.none).toBeCloseTo(none, 14)
  expect(race.first[0]).toBeCloseTo(0.75 * (1 - none), 12)
  expect(race.firstEver[1]).toBeCloseTo(0.25, 12)
  expect(race.meanTime).toBeCloseTo(75, 10)
})

test('new lives of one shape share the end in the ratio η^−β at any span', () => {
  const shapes = fc.double({ min: 0.3, max: 10, noNaN: true })
  fc.assert(
    fc.property(shapes, fc.double({ min: 0.01, max: 3, noNaN: true }), (shape, ahead) => {
      const lives = [1, 1.5, 2].map((scale) => ({ shape, scale, age: 0 }))
      const race = firstToFail({ lives, ahead })
      const rates = lives.map(({ scale }) => scale ** -shape)
      race.first.forEach((chance, index) => {
        const share = rates[index]! / sum(rates)
        const any = -Math.expm1(-sum(rates) * ahead ** shape)
        expect(Math.abs(chance / (share * any) - 1)).toBeLessThan(1e-9)
      })
    }),
  )
})

test('two lives alike change places freely, and a span of nothing ends nothing', () => {
  const twin = { shape: 3.3, scale: 50, age: 20 }
  const race = firstToFail({ lives: [twin, twin], ahead: Infinity })
  expect(race.first[0]).toBe(race.first[1])
  expect(race.first[0]).toBeCloseTo(0.5, 12)
  expect(race.none).toBe(0)
  expect(firstToFail({ lives: [twin], ahead: 0 })).toMatchObject({ first: [0], none: 1 })
})

test('refuses a race that is none', () => {
  const life = { shape: 2, scale: 10, age: 0 }
  expect(() => firstToFail({ lives: [], ahead: 1 })).toThrow('lives must be one or more')
  expect(() => firstToFail({ lives: [{ ...life, shape: 0.1 }], ahead: 1 })).toThrow('shape must be')
  expect(() => firstToFail({ lives: [{ ...life, scale: 0 }], ahead: 1 })).toThrow('scale must be')
  expect(() => firstToFail({ lives: [{ ...life, age: -1 }], ahead: 1 })).toThrow('age must be')
  expect(() => firstToFail({ lives: [life], ahead: Number.NaN })).toThrow('ahead must be')
})
