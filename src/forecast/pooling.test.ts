import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { furtherMember, type Lesson, lessonOf, throughNoise, together } from './pooling.js'
import { normalQuantile } from './special-normal.js'
import { threefryUniform } from './threefry.js'

const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const lesson = fc.record({ mean: finite(-3, 3), precision: finite(0.2, 100) })

describe('a lesson', () => {
  test('put back on its prior gives the posterior again', () => {
    fc.assert(
      fc.property(lesson, finite(0.05, 2), ({ mean, precision }, priorVariance) => {
        fc.pre(precision * priorVariance > 0.11)
        const variance = 1 / (1 / priorVariance + precision)
        const posterior = { mean: variance * precision * mean, variance }
        const back = lessonOf({ posterior, priorVariance })
        expect(back.mean).toBeCloseTo(mean, 9)
        expect(back.precision).toBeCloseTo(precision, 7)
      }),
    )
  })

  test('of a posterior hardly narrower than its prior, or wider, says nothing', () => {
    expect(lessonOf({ posterior: { mean: 0.02, variance: 0.97 }, priorVariance: 1 }).precision).toBe(0)
    expect(lessonOf({ posterior: { mean: 0.2, variance: 1.2 }, priorVariance: 1 }).precision).toBe(0)
    expect(throughNoise({ mean: 0, precision: 0 }, 1).precision).toBe(0)
  })

  test('through noise is that of the sum of both variances, and two of one thing add up', () => {
    expect(throughNoise({ mean: 2, precision: 4 }, 0.75)).toEqual({ mean: 2, precision: 1 })
    expect(
      together([
        { mean: 1, precision: 3 },
        { mean: 5, precision: 1 },
      ]),
    ).toEqual({ mean: 2, precision: 4 })
    expect(together([])).toEqual({ mean: 0, precision: 0 })
  })

  test('needs variances above nought', () => {
    expect(() => lessonOf({ posterior: { mean: 0, variance: 0 }, priorVariance: 1 })).toThrow('variance must')
    expect(() => lessonOf({ posterior: { mean: 0, variance: 1 }, priorVariance: 0 })).toThrow('priorVariance')
  })
})

/** The same by brute force: o on a fine grid, ρ on the same ten. */
function byGrid(lessons: readonly Lesson[], variance: number) {
  let [weight, first, second] = [0, 0, 0]
  for (let r = 0; r < 10; r++) {
    const share = (r + 0.5) / 10
    const own = (1 - share) * variance
    const sd = Math.sqrt(share * variance)
    const steps = 4000
    for (let i = 0; i < steps; i++) {
      const o = sd * 10 * ((2 * i + 1) / steps - 1)
      let density = Math.exp(-0.5 * (o / sd) ** 2) / steps
      for (const { mean, precision } of lessons) {
        const spread = own + 1 / precision
        density *= Math.exp(-0.5 * ((mean - o) ** 2 / spread)) / Math.sqrt(spread)
      }
      weight += density
      first += density * o
      second += density * (o * o + own)
    }
  }
  const mean = first / weight
  return { mean, variance: second / weight - mean * mean }
}

describe('a further member', () => {
  test('is what it would be alone where no other has anything to say', () => {
    expect(furtherMember([], { variance: 0.0784 })).toMatchObject({ mean: 0, variance: 0.0784 })
    const silent = [{ mean: 7, precision: 0 }]
    expect(furtherMember(silent, { variance: 0.0784 })).toMatchObject({ mean: 0, variance: 0.0784 })
    expect(furtherMember([{ mean: 1, precision: 9 }], { variance: 0 })).toMatchObject({
      mean: 0,
      variance: 0,
    })
  })

  test('agrees with adding up over a fine grid', () => {
    fc.assert(
      fc.property(fc.array(lesson, { minLength: 1, maxLength: 4 }), finite(0.3, 2), (lessons, variance) => {
        const closed = furtherMember(lessons, { variance })
        const grid = byGrid(lessons, variance)
        expect(closed.mean).toBeCloseTo(grid.mean, 5)
        expect(closed.variance).toBeCloseTo(grid.variance, 5)
      }),
      { numRuns: 20 },
    )
  })

  test('eight schools, hardly held back: the common effect is the one that complete pooling gives', () => {
    // Effects of coaching in eight schools with their standard errors, and 7.7 ± 4.1 pooled (Gelman and others, Bayesian
    // Data Analysis, 5.5, after Rubin 1981). Effects held: quoted; the pooled figure: recalled.
    const effects = [28, 8, -3, 7, -1, 1, 18, 12]
    const errors = [15, 10, 16, 11, 9, 11, 10, 18]
    const lessons = effects.map((mean, i) => ({ mean, precision: 1 / errors[i]! ** 2 }))
    const pooled = together(lessons)
    expect(pooled.mean).toBeCloseTo(7.7, 1)
    expect(Math.sqrt(1 / pooled.precision)).toBeCloseTo(4.1, 1)
    // Within a prior of 20 points the further school lies between nought and the pooled effect, and near it.
    const further = furtherMember(lessons, { variance: 400 })
    expect(further.common).toBeGreaterThan(5)
    expect(further.common).toBeLessThan(pooled.mean)
  })

  test('never lies further out than what all say, nor on the other side', () => {
    fc.assert(
      fc.property(fc.array(lesson, { minLength: 1, maxLength: 6 }), (lessons) => {
        const { mean } = furtherMember(lessons, { variance: 1 })
        expect(mean).toBeLessThanOrEqual(Math.max(0, ...lessons.map((one) => one.mean)) + 1e-9)
        expect(mean).toBeGreaterThanOrEqual(Math.min(0, ...lessons.map((one) => one.mean)) - 1e-9)
      }),
    )
  })

  test('lies further off, and more surely, the more members say the same', () => {
    const alike = (count: number) =>
      furtherMember(Array<Lesson>(count).fill({ mean: 0.4, precision: 40 }), { variance: 0.0784 })
    const means = [1, 2, 4, 8].map((count) => alike(count).mean)
    const variances = [0, 1, 2, 4, 8].map((count) => alike(count).variance)
    expect([...means].sort((a, b) => a - b)).toEqual(means)
    expect([...variances].sort((a, b) => b - a)).toEqual(variances)
  })
})

describe('drawn from what is known', () => {
  const variance = 0.0784
  let drawn = 0
  const uniform = () => threefryUniform(11, 7, drawn++, 0)
  const normal = (sd: number) => sd * normalQuantile(uniform())

  test.each([0.25, 0.65, 0.85])('a common share of %s and the common value are found again', (share) => {
    const boats = 400
    const found = Array.from({ length: 12 }, () => {
      const common = normal(Math.sqrt(share * variance))
      const lessons = Array.from({ length: boats }, () => {
        const own = common + normal(Math.sqrt((1 - share) * variance))
        return { mean: own + normal(0.1), precision: 100 }
      })
      const further = furtherMember(lessons, { variance })
      const error = Math.sqrt(((1 - share) * variance + 0.01) / boats)
      expect(Math.abs(further.common - common)).toBeLessThan(4 * error + 0.03 * Math.abs(common))
      return further.share
    })
    const mean = found.reduce((a, b) => a + b, 0) / found.length
    expect(Math.abs(mean - share)).toBeLessThan(0.08)
  })

  test('a further boat lies within the 90 % that are said, nine times in ten, with two, four and eight others', () => {
    for (const others of [2, 4, 8]) {
      let within = 0
      const rounds = 1500
      for (let round = 0; round < rounds; round++) {
        const share = uniform()
        const common = normal(Math.sqrt(share * variance))
        const own = () => common + normal(Math.sqrt((1 - share) * variance))
        const lessons = Array.from({ length: others }, () => ({ mean: own() + normal(0.2), precision: 25 }))
        const { mean, variance: left } = furtherMember(lessons, { variance })
        if (Math.abs(own() - mean) < 1.6449 * Math.sqrt(left)) within++
      }
      expect(within / rounds).toBeGreaterThan(0.88)
      expect(within / rounds).toBeLessThan(0.93)
    }
  })

  test.each([
    [0.8, 0.75],
    [0.4, 0.95],
    // what hearing boats costs that have nothing in common: an eighth
    [0, 1.125],
  ])(
    'with a common share of %s, guessing a further boat by four others misses by %s or less of what nought does',
    (share, most) => {
      let [pooled, alone] = [0, 0]
      for (let round = 0; round < 3000; round++) {
        const common = normal(Math.sqrt(share * variance))
        const own = () => common + normal(Math.sqrt((1 - share) * variance))
        const lessons = Array.from({ length: 4 }, () => ({ mean: own() + normal(0.15), precision: 44 }))
        const truth = own()
        pooled += (truth - furtherMember(lessons, { variance }).mean) ** 2
        alone += truth ** 2
      }
      expect(pooled / alone).toBeLessThan(most)
    },
  )
})
