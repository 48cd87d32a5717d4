import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Alternative, type LifeModelInput, lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { chooseLimits, firstLimit, type Limit, withChosenLimits } from './policy.js'
import { column } from './sample.js'
import { simulate } from './simulate.js'

const fresh = { seed: 99, from: 0, count: 2500 }

/** The limits chosen for a model, and its costs with and without them on histories that they were not chosen on. */
async function judged(input: LifeModelInput, seed: number) {
  const model = lifeModelSchema.parse(input)
  const posterior = posteriorOf(model, { seed })
  const chosen = await chooseLimits(model, {
    seed,
    play: async (alternatives, span) =>
      simulate({ ...model, alternatives: [...alternatives] }, posterior, span),
  })
  const costs = (alternatives: Alternative[]) =>
    simulate({ ...model, alternatives }, posterior, fresh).map((sample) => column(sample, 'cost'))
  return {
    chosen,
    first: firstLimit(model, posterior, { seed }),
    without: costs(model.alternatives),
    within: costs(withChosenLimits(model.alternatives, chosen)),
  }
}

function differenceOf(a: Float64Array, b: Float64Array) {
  const differences = a.map((value, i) => value - b[i]!)
  const mean = differences.reduce((sum, value) => sum + value, 0) / a.length
  const variance = differences.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (a.length - 1)
  return { mean, error: Math.sqrt(variance / a.length) }
}

const crisp = { low: 0.2, high: 3 }
const models = fc.record({
  shape: fc.constantFrom(1, 2, 3.5),
  age: fc.integer({ min: 0, max: 15 }),
  repair: fc.integer({ min: 200, max: 6000 }),
  newPrice: fc.integer({ min: 1500, max: 15_000 }),
  giveUpPerYear: fc.integer({ min: 0, max: 3000 }),
  newLife: fc.double({ min: crisp.low, max: crisp.high, noNaN: true }),
  seed: fc.integer({ min: 1, max: 1000 }),
})

test('a limit that is chosen never does worse than always mending, for what is left, mended or replaced', async () => {
  const property = fc.asyncProperty(models, async (drawn) => {
    const { chosen, within, without } = await judged(
      {
        type: 'gensettle/life-model',
        version: 1,
        horizonYears: 10,
        candidates: [{ id: 'new-same', price: drawn.newPrice, hourLifeFactor: drawn.newLife }],
        giveUp: { costNow: 300, costPerYear: drawn.giveUpPerYear },
        parts: [
          {
            id: 'end',
            age: { years: drawn.age },
            repair: { price: drawn.repair },
            modes: [{ id: 'wear', clock: 'hours', shape: drawn.shape, scale: 50_000, logSd: 0.3 }],
          },
          { id: 'hose', repair: { price: 150 }, modes: [{ id: 'age', clock: 'years', shape: 2, scale: 4 }] },
        ],
        alternatives: [
          { id: 'leave' },
          { id: 'mend', now: { parts: [{ part: 'end' }] } },
          { id: 'replace', now: { replaceWith: 'new-same' } },
          { id: 'give-up', now: 'give-up' },
        ],
      },
      drawn.seed,
    )
    expect([...chosen.keys()]).toEqual(['leave', 'mend', 'replace'])
    within.forEach((cost, a) => {
      const { mean, error } = differenceOf(cost, without[a]!)
      expect(mean).toBeLessThanOrEqual(2 * error)
    })
  })
  await fc.assert(property, { numRuns: 4, seed: 7 })
}, 60_000)

/**
 * A part fails at random λ times a year and costs c to mend; giving up costs G and then g a year. With τ years left it
 * pays to give up at a failure when τ is less than τ*, with e^(−λτ*) = (g/λ − c)/(g/λ − G), for G < c < g/λ. The cost
 * to come is V(τ*) = (G − g/λ)(1 − e^(−λτ*)) + g·τ*, and λc a year before that. Derived; the kind of policy is that of
 * Hastings (1969), quoted.
 */
function bestPolicy(of: { perYear: number; mend: number; giveUp: number; without: number; years: number }) {
  const { perYear, mend, giveUp, without, years } = of
  const forEver = without / perYear
  const last = (forEver - mend) / (forEver - giveUp)
  const lastYears = -Math.log(last) / perYear
  const cost = (giveUp - forEver) * (1 - last) + without * lastYears
  return { lastYears, cost: cost + perYear * mend * (years - lastYears) }
}

test('of a part that fails at random, what is chosen costs what the best policy costs', async () => {
  const [perYear, mend, giveUp, without, years] = [0.5, 1000, 400, 900, 6]
  const best = bestPolicy({ perYear, mend, giveUp, without, years })
  const { chosen, within } = await judged(
    {
      type: 'gensettle/life-model',
      version: 1,
      horizonYears: years,
      candidates: [{ id: 'new-same', price: 4000 }],
      giveUp: { costNow: giveUp, costPerYear: without },
      parts: [
        {
          id: 'pump',
          repair: { price: mend },
          modes: [{ id: 'breaks', clock: 'years', shape: 1, scale: 1 / perYear }],
        },
      ],
      alternatives: [{ id: 'leave' }, { id: 'give-up', now: 'give-up' }],
    },
    3,
  )
  expect(chosen.get('leave')?.above).toBe('give-up')
  const cost = within[0]!
  const mean = cost.reduce((sum, value) => sum + value, 0) / cost.length
  const error = Math.sqrt(cost.reduce((sum, value) => sum + (value - mean) ** 2, 0)) / cost.length
  expect(best.cost).toBeLessThan(perYear * mend * years - 100)
  expect(Math.abs(mean - best.cost)).toBeLessThan(3 * error)
  const limit = chosen.get('leave') as Limit
  expect(limit.knots[2]).toBeLessThan(mend)
  expect(limit.knots[0]).toBeGreaterThan(mend)
})

test('the same seed chooses the same limits', async () => {
  const input: LifeModelInput = {
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 10,
    candidates: [{ id: 'new-same', price: 2500 }],
    parts: [
      {
        id: 'end',
        age: { years: 14 },
        repair: { price: 2000 },
        modes: [{ id: 'wear', clock: 'years', shape: 3, scale: 9 }],
      },
    ],
    alternatives: [{ id: 'leave' }, { id: 'replace', now: { replaceWith: 'new-same' } }],
  }
  const [one, two] = [await judged(input, 5), await judged(input, 5)]
  expect(one.chosen).toEqual(two.chosen)
  expect(one.first).toEqual(two.first)
})

test('nothing is done above a limit that is not among the alternatives', async () => {
  const model: LifeModelInput = {
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 10,
    candidates: [{ id: 'new-same', price: 2500 }],
    parts: [
      {
        id: 'end',
        age: { years: 14 },
        repair: { price: 2000 },
        modes: [{ id: 'wear', clock: 'years', shape: 3, scale: 2 }],
      },
    ],
  }
  const of = async (...also: NonNullable<LifeModelInput['alternatives']>) => {
    const { chosen, first } = await judged({ ...model, alternatives: [{ id: 'leave' }, ...also] }, 1)
    return [first?.above, chosen.get('leave')?.above]
  }
  expect(await of()).toEqual([undefined, undefined])
  expect(await of({ id: 'give-up', now: 'give-up' })).toEqual(['give-up', 'give-up'])
  const replace = { replaceWith: 'new-same' }
  const dear = { ...model, candidates: [{ id: 'new-same', price: 50_000 }] }
  const { chosen } = await judged(
    { ...dear, alternatives: [{ id: 'leave' }, { id: 'replace', now: replace }] },
    1,
  )
  expect(chosen.get('leave')).toBeUndefined()
})
