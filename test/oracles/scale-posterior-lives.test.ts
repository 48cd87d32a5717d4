import { expect, test } from 'vitest'
import { cumulativeHazard, logDensity, survival, type WeibullLife } from '../../src/forecast/lives.js'
import { type KnownLife, requireLives, weibullLogLikelihood } from './scale-posterior-lives.js'

const life: WeibullLife = { kind: 'weibull', shape: 2.3, scale: 700 }
const of = (...lives: KnownLife[]): number => weibullLogLikelihood(lives, life)

test('each kind of life by its definition', () => {
  expect(of({ ended: 'failed', age: 500 })).toBeCloseTo(logDensity(life, 500), 13)
  expect(of({ ended: 'sound', age: 500 })).toBeCloseTo(-cumulativeHazard(life, 500), 13)
  const between = Math.log(survival(life, 400) - survival(life, 600))
  expect(of({ ended: 'failed-between', afterAge: 400, byAge: 600 })).toBeCloseTo(between, 12)
})

test('a life that came under watch aged counts only what it lived since', () => {
  const before = cumulativeHazard(life, 300)
  expect(of({ ended: 'failed', age: 500, entryAge: 300 })).toBeCloseTo(logDensity(life, 500) + before, 12)
  expect(of({ ended: 'sound', age: 500, entryAge: 300 })).toBeCloseTo(
    before - cumulativeHazard(life, 500),
    12,
  )
  const between: KnownLife = { ended: 'failed-between', afterAge: 400, byAge: 600 }
  expect(of({ ...between, entryAge: 300 })).toBeCloseTo(of(between) + before, 12)
})

test('a narrow gap is the density times its width, however narrow', () => {
  const gap = 1e-9
  const between = of({ ended: 'failed-between', afterAge: 500, byAge: 500 + gap })
  expect(between - Math.log(gap)).toBeCloseTo(logDensity(life, 500), 4)
})

test('counts multiply, and lives far beyond the scale stay finite', () => {
  expect(of({ ended: 'sound', age: 500, count: 3 })).toBeCloseTo(3 * of({ ended: 'sound', age: 500 }), 13)
  expect(of({ ended: 'failed-between', afterAge: 1e5, byAge: 2e5 })).toBeCloseTo(
    -cumulativeHazard(life, 1e5),
    3,
  )
})

test.each<[KnownLife, string]>([
  [{ ended: 'sound', age: 5, count: 0 }, 'count must be above 0; found 0'],
  [{ ended: 'sound', age: 5, entryAge: -1 }, 'entryAge must be 0 or above; found -1'],
  [{ ended: 'failed', age: 5, entryAge: 6 }, 'age must be entryAge or above; found 5'],
  [{ ended: 'failed', age: 0 }, 'age of a failure must be above 0; found 0'],
  [{ ended: 'failed-between', afterAge: 4, byAge: 4 }, 'byAge must be above afterAge; found 4'],
  [
    { ended: 'failed-between', afterAge: 2, byAge: 4, entryAge: 3 },
    'afterAge must be entryAge or above; found 2',
  ],
  [{ ended: 'sound', age: Number.NaN }, 'age must be entryAge or above; found NaN'],
])('refuses %o', (known, message) => {
  expect(() => requireLives([known])).toThrow(message)
})
