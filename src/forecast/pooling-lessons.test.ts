import { describe, expect, test } from 'vitest'
import { meanLnKappa, type TrialPart, trialModel } from '../../test/trial-model.js'
import type { LifeModel } from './life-model.js'
import { forecastOf } from './odds.js'
import { type BoatLessons, lessonsOf, poolLessons, withLessons } from './pooling-lessons.js'
import { posteriorOf } from './posterior.js'
import { normalQuantile } from './special-normal.js'
import { threefryUniform } from './threefry.js'

const spread = { boatLogSd: 0.28, setLogSd: 0.28 }
const setFactor = { ...spread, letDowns: [] }

/** Parts that have worn out before, each life a draw of Weibull(3, scale · e^shift). */
function wornParts(lnFactor: number, draws: () => number, system = 'cooling'): TrialPart[] {
  return Array.from({ length: 12 }, (_, p) => ({
    id: `part-${p}`,
    system,
    age: { years: 0.5 },
    pastLives: Array.from({ length: 3 }, () => ({
      age: { years: Math.exp(lnFactor) * 4 * (-Math.log(draws())) ** (1 / 3) },
      ended: { failed: 'worn' },
    })),
    modes: [{ id: 'worn', clock: 'years' as const, shape: 3, scale: 4, logSd: 0.15 }],
  }))
}

function uniforms(seed: number): () => number {
  let n = 0
  return () => threefryUniform(seed, 77, n++, 0)
}

function taughtBy(model: LifeModel, boat = 'x'): BoatLessons {
  return { boat, sets: [lessonsOf(model, posteriorOf(model, { seed: 1 }))] }
}

const silent = trialModel(
  [
    {
      id: 'new',
      system: 'cooling',
      modes: [{ id: 'worn', clock: 'years', shape: 3, scale: 4, logSd: 0.15 }],
    },
  ],
  { setFactor },
)

describe('what one set shows', () => {
  test('of a set nobody has written anything of is nothing, neither of the boat nor of a system', () => {
    expect(lessonsOf(silent, posteriorOf(silent, { seed: 1 }))).toEqual({
      factor: { mean: 0, precision: 0 },
      systems: {},
    })
  })

  test('put back on its prior is what is believed of her factor', () => {
    const model = trialModel(wornParts(0.4, uniforms(1)), { setFactor })
    const posterior = posteriorOf(model, { seed: 1 })
    const { factor } = lessonsOf(model, posterior)
    const shrunk = (factor.precision * factor.mean) / (factor.precision + 1 / (2 * 0.28 ** 2))
    expect(shrunk).toBeCloseTo(meanLnKappa(posterior), 9)
    expect(factor.precision).toBeGreaterThan(50)
  })
})

describe('lessons put together', () => {
  test('with none, or with silent ones, the model is given back as it is', () => {
    expect(withLessons(silent, undefined)).toBe(silent)
    expect(withLessons(silent, poolLessons([], spread))).toBe(silent)
    expect(withLessons(silent, poolLessons([taughtBy(silent)], spread))).toBe(silent)
  })

  test('two sets of one boat count as one boat, and tell more than one set does', () => {
    const lesson = { factor: { mean: 0.5, precision: 100 }, systems: {} }
    const pool = (...boats: BoatLessons[]) => poolLessons(boats, spread)
    const one = pool({ boat: 'a', sets: [lesson] })
    const two = pool({ boat: 'a', sets: [lesson, lesson] })
    const apart = pool({ boat: 'a', sets: [lesson] }, { boat: 'b', sets: [lesson] })
    expect([one.boats, two.boats, apart.boats]).toEqual([1, 1, 2])
    expect(two.boat.mean).toBeGreaterThan(one.boat.mean)
    expect(apart.boat.mean).toBeGreaterThan(two.boat.mean)
  })

  test('move the chances of a boat that says nothing herself the way the others have shown', () => {
    const chanceOf = (model: LifeModel) =>
      forecastOf(model, posteriorOf(model, { seed: 1 }), { seed: 1 }).set.failing[3]!
    const others = (shift: number) =>
      [1, 2, 3].map((seed) =>
        taughtBy(trialModel(wornParts(shift, uniforms(seed)), { setFactor }), `${seed}`),
      )
    const plain = chanceOf(silent)
    expect(chanceOf(withLessons(silent, poolLessons(others(0.5), spread)))).toBeLessThan(0.8 * plain)
    expect(chanceOf(withLessons(silent, poolLessons(others(-0.5), spread)))).toBeGreaterThan(1.25 * plain)
  })

  test('of a system move that system alone, beside the boat’s own part', () => {
    const pooled = poolLessons([taughtBy(trialModel(wornParts(0, uniforms(4)), { setFactor }))], spread)
    const two = trialModel(
      [
        { id: 'a', system: 'cooling', modes: [{ id: 'm', clock: 'years', shape: 2, scale: 9, logSd: 0.2 }] },
        { id: 'b', system: 'fuel', modes: [{ id: 'm', clock: 'years', shape: 2, scale: 9, logSd: 0.2 }] },
      ],
      { setFactor },
    )
    const [a, b] = withLessons(two, pooled).parts.map(({ modes }) => modes[0]!)
    const { mean, variance } = pooled.systems.cooling!
    expect(b!.lifeFactor).toBeCloseTo(Math.exp(pooled.boat.mean), 12)
    expect(b!.logSd).toBe(0.2)
    expect(a!.lifeFactor).toBeCloseTo(Math.exp(pooled.boat.mean + 0.2 * mean), 12)
    expect(a!.logSd).toBeCloseTo(0.2 * Math.sqrt(variance), 12)
    expect(withLessons(two, pooled).setFactor.boatLogSd).toBe(Math.sqrt(pooled.boat.variance))
  })
})

test('boats drawn from a known common part, each with a set of its own: the further boat is found again', () => {
  const draws = uniforms(9)
  const normal = (sd: number) => sd * normalQuantile(draws())
  const fleets = [0.25, -0.25, 0]
  for (const common of fleets) {
    const boats = Array.from({ length: 8 }, (_, i) => {
      const lnKappa = common + normal(0.12) + normal(0.28)
      return taughtBy(trialModel(wornParts(lnKappa, draws), { setFactor }), `${i}`)
    })
    const { boat } = poolLessons(boats, spread)
    // eight sets' own parts of 0.28 leave the common part known to about ± 0.11
    expect(Math.abs(boat.mean - common)).toBeLessThan(2.5 * 0.11 + 0.3 * Math.abs(common))
    expect(Math.sqrt(boat.variance)).toBeLessThan(0.28)
    expect(Math.sqrt(boat.variance)).toBeGreaterThan(0.1)
  }
})

test('systems that live longer and shorter than the rest are found again, with the factor they share', () => {
  const draws = uniforms(21)
  const logSd = 0.4
  // own scales of a system's modes in units of their spread: what is common to them, and a draw of their own
  const common = { cooling: 0.9, fuel: -0.9 }
  const boats = Array.from({ length: 6 }, (_, i) => {
    const parts = Object.entries(common).flatMap(([system, z]) =>
      Array.from({ length: 10 }, (_, p): TrialPart => {
        const lnFactor = logSd * (z + 0.4 * normalQuantile(draws()))
        const [part] = wornParts(lnFactor, draws, system)
        const modes = part!.modes.map((mode) => ({ ...mode, logSd }))
        return { ...part!, id: `${system}-${p}`, modes }
      }),
    )
    return taughtBy(trialModel(parts, { setFactor }), `${i}`)
  })
  const { systems, boat } = poolLessons(boats, spread)
  expect(systems.cooling!.modes).toBe(60)
  expect(systems.cooling!.mean).toBeGreaterThan(0.7)
  expect(systems.cooling!.mean).toBeLessThan(1.1)
  expect(systems.fuel!.mean).toBeGreaterThan(-1.1)
  expect(systems.fuel!.mean).toBeLessThan(-0.7)
  // of the variance of one mode, 0.4² is her own; the rest was common and is known now
  expect(systems.cooling!.variance).toBeLessThan(0.45)
  expect(Math.abs(boat.mean)).toBeLessThan(0.1)
})
