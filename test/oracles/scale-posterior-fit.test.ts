import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { fitWeibull, likeliestScale, scaleLowerLimit, type WeibullFit } from './scale-posterior-fit.js'
import { type KnownLife, weibullLogLikelihood } from './scale-posterior-lives.js'

type Fitted = Extract<WeibullFit, { outcome: 'fitted' }>

function fitted(lives: readonly KnownLife[]): Fitted {
  const fit = fitWeibull(lives)
  if (fit.outcome !== 'fitted') throw new Error(`expected a fit, got ${fit.outcome}`)
  return fit
}

const sound = (age: number): KnownLife => ({ ended: 'sound', age })
const failed = (age: number): KnownLife => ({ ended: 'failed', age })

const age = fc.double({ min: 10, max: 5000, noNaN: true })
const life: fc.Arbitrary<KnownLife> = fc.oneof(
  age.map(sound),
  age.map(failed),
  fc
    .tuple(age, age)
    .map(([one, more]): KnownLife => ({ ended: 'failed-between', afterAge: one, byAge: one + more })),
)
const lives = fc.array(life, { minLength: 3, maxLength: 8 })

test('all failed, shape 1: the scale is the mean life', () => {
  fc.assert(
    fc.property(fc.array(age, { minLength: 1, maxLength: 9 }), (ages) => {
      const mean = ages.reduce((sum, one) => sum + one, 0) / ages.length
      expect(Math.abs(likeliestScale(ages.map(failed), 1)! / mean - 1)).toBeLessThan(1e-12)
    }),
  )
})

test('no scale beside the likeliest is likelier, whatever ended how', () => {
  const shape = fc.double({ min: 0.3, max: 10, noNaN: true })
  fc.assert(
    fc.property(lives, shape, (lives, shape) => {
      const scale = likeliestScale(lives, shape)
      fc.pre(scale !== undefined)
      const at = (factor: number): number => weibullLogLikelihood(lives, { shape, scale: scale! * factor })
      expect(at(1)).toBeGreaterThanOrEqual(at(1.001) - 1e-10)
      expect(at(1)).toBeGreaterThanOrEqual(at(0.999) - 1e-10)
    }),
  )
})

test('no shape beside the likeliest is likelier, and the ends of each span lie 1.92 below the top', () => {
  fc.assert(
    fc.property(lives, (lives) => {
      const fit = fitWeibull(lives)
      fc.pre(fit.outcome === 'fitted')
      const profile = (shape: number): number =>
        weibullLogLikelihood(lives, { shape, scale: likeliestScale(lives, shape)! })
      for (const factor of [0.7, 0.99, 1.01, 1.4]) {
        expect(profile(fit.shape * factor)).toBeLessThanOrEqual(fit.logLikelihood + 1e-9)
      }
      for (const end of [fit.shapeSpan.low, fit.shapeSpan.high]) {
        if (end !== null) expect(fit.logLikelihood - profile(end)).toBeCloseTo(1.9207294, 5)
      }
    }),
    { numRuns: 25 },
  )
})

test('other units of time: the scale follows, the shape stays, the likelihood falls by failures × ln k', () => {
  const ages = [120, 340, 560, 610, 900]
  const one = fitted([...ages.map(failed), sound(1000)])
  const other = fitted([...ages.map((age) => failed(age * 24)), sound(24_000)])
  expect(other.shape).toBeCloseTo(one.shape, 6)
  expect(other.scale / 24).toBeCloseTo(one.scale, 4)
  expect(one.logLikelihood - other.logLikelihood).toBeCloseTo(5 * Math.log(24), 9)
})

test('narrow gaps about each failure fit as the failures do', () => {
  const ages = [120, 340, 560, 610, 900]
  const exact = fitted([...ages.map(failed), sound(1000)])
  const gaps = ages.map(
    (age): KnownLife => ({ ended: 'failed-between', afterAge: age - 0.5, byAge: age + 0.5 }),
  )
  const near = fitted([...gaps, sound(1000)])
  expect(near.shape).toBeCloseTo(exact.shape, 4)
  expect(near.scale).toBeCloseTo(exact.scale, 1)
})

test('failures at one age with nothing outliving them: the shape runs to its limit, and that is said', () => {
  expect(fitWeibull([failed(500), failed(500), sound(200)])).toMatchObject({ outcome: 'shape-at-limit' })
  expect(fitWeibull([failed(500), sound(200)])).toMatchObject({
    outcome: 'shape-at-limit',
    shape: expect.closeTo(50, 3),
  })
})

test('nothing failed, or nothing lasted: nothing to fit, and that is said', () => {
  expect(fitWeibull([sound(500)])).toEqual({ outcome: 'undetermined', because: 'no failures' })
  expect(fitWeibull([])).toEqual({ outcome: 'undetermined', because: 'no failures' })
  expect(fitWeibull([{ ended: 'failed-between', afterAge: 0, byAge: 50 }])).toEqual({
    outcome: 'undetermined',
    because: 'no age survived',
  })
  expect(likeliestScale([sound(500)], 2)).toBeUndefined()
})

test('the lower limit of lives without a failure: the chance of that luck is what doubt was left', () => {
  const lives = [sound(2000), sound(3500), { ...sound(5000), entryAge: 1000 }]
  const scale = scaleLowerLimit({ lives, shape: 1.7, confidence: 0.9 })
  expect(Math.exp(weibullLogLikelihood(lives, { shape: 1.7, scale }))).toBeCloseTo(0.1, 12)
  expect(() => scaleLowerLimit({ lives: [failed(3)], shape: 2, confidence: 0.9 })).toThrow(
    'lives must be sound',
  )
  expect(() => scaleLowerLimit({ lives: [sound(0)], shape: 2, confidence: 0.9 })).toThrow(
    'longest age must be',
  )
  expect(() => scaleLowerLimit({ lives, shape: 2, confidence: 1 })).toThrow('confidence must be')
})
