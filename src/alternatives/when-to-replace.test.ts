import { describe, expect, test } from 'vitest'
import { bestEveryNYears, everyNYears } from '../../test/oracles/replacement.js'
import { type LifeModel, type LifeModelInput, lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { compile } from './program.js'
import { playSpan } from './simulate.js'
import { startStates } from './start-states.js'
import { whenToReplace } from './when-to-replace.js'

/** A set of one part that is minimally repaired: its age stays what it was (Kijima II with nothing taken away). */
function minimallyRepaired(more: Partial<LifeModelInput> & { readonly age: number }): LifeModel {
  const { age, ...others } = more
  return lifeModelSchema.parse({
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 10,
    realInterestPerYear: 0.05,
    candidates: [{ id: 'new', price: 7000 }],
    parts: [
      {
        id: 'set',
        age: { years: age },
        repair: { price: 800 },
        modes: [
          {
            id: 'worn',
            clock: 'years',
            shape: 2,
            scale: 6,
            remedy: { outcome: 'reconditioned', agesLess: 0 },
          },
        ],
      },
    ],
    alternatives: [
      { id: 'leave', now: 'leave' },
      { id: 'replace', now: { replaceWith: 'new' } },
    ],
    ...others,
  })
}

async function askedOf(model: LifeModel, factor = 1) {
  const posterior = posteriorOf(model, { seed: 1 })
  const program = compile(model, posterior)
  const span = { seed: 3, from: 0, count: 2_000 }
  return (await whenToReplace({
    model,
    samples: playSpan(program, span),
    states: startStates(program, span),
    seed: span.seed,
    play: async (alternatives, which) => playSpan({ ...program, alternatives }, which),
    playModel: async (other, { count, ...which }) =>
      playSpan(compile(other, posterior), { ...which, count: count * factor }),
  }))!
}

/**
 * Replacing every n years with minimal repair between (Barlow and Hunter, Operations Research 8 (1960); recalled), shape 2,
 * scale 6 years, a repair 800, a new one 7,000, 5 % continuous: best at 20.8 years, 924.85 a year; and the old one goes when
 * its own running cost reaches that. Worked by the oracle to 1e-6.
 */
const life = { kind: 'weibull', shape: 2, scale: 6 } as const
const plan = { repair: 800, price: 7000, interest: 0.05 }
const when = await askedOf(minimallyRepaired({ age: 15 }), 10)

describe('a set that ages and is minimally repaired', () => {
  const best = bestEveryNYears(life, plan)

  test('the yearly cost of each life of a new one is the closed form’s', () => {
    expect(best.years).toBeCloseTo(20.8091, 3)
    for (const { years, costPerYear, error } of when.fresh.lives) {
      const expected = 0.05 * everyNYears(life, { ...plan, years })
      expect(Math.abs(costPerYear - expected), `${years} years`).toBeLessThan(4 * error)
    }
    // Lives are tried up to 20 years, and it still falls there.
    expect(when.fresh.best.years).toBeGreaterThanOrEqual(17)
  })

  test('the old one pays until a further year costs what a new one costs a year', () => {
    when.marginal.forEach((cost, k) => {
      // c·∫h over the year, by which hazard grows straight: 800·(2·(15 + k) + 1)/36.
      const expected = (800 * (2 * (15 + k) + 1)) / 36
      expect(Math.abs(cost - expected), `year ${k + 1}`).toBeLessThan(60)
    })
    expect(when.marginal[0]).toBeCloseTo(when.old.lives[0]!.costPerYear, 9)
    expect(when.paysYears).toBeGreaterThanOrEqual(5)
    expect(when.paysYears).toBeLessThanOrEqual(7)
  })
})

test('an old one that costs more from the first year on pays no further year', async () => {
  expect((await askedOf(minimallyRepaired({ age: 40 }), 4)).paysYears).toBe(0)
})

test('where nothing ages, no rule that looks each year saves, and every planned year of replacement adds cost', async () => {
  const model = minimallyRepaired({ age: 5 })
  const parts = model.parts.map((part) => ({
    ...part,
    modes: part.modes.map((mode) => ({ ...mode, shape: 1 })),
  }))
  const when = await askedOf({ ...model, parts })
  expect(when.yearly).toBeUndefined()
  expect(when.planned).toHaveLength(9)
  for (const { adds } of when.planned) expect(adds.mean).toBeGreaterThan(4 * adds.standardError)
})

test('where it ages and no limit was given, a rule that looks each year saves what the best planned year saves, or more', async () => {
  const when = await askedOf(minimallyRepaired({ age: 25, horizonYears: 12 }))
  const planned = Math.min(...when.planned.map(({ adds }) => adds.mean))
  const { saves, stopsIn } = when.yearly!
  expect(planned).toBeLessThan(0)
  expect(saves.mean).toBeGreaterThan(-planned - 3 * saves.standardError)
  expect(stopsIn.reduce((sum, share) => sum + share, 0)).toBeGreaterThan(0.9)
})

test('the limit of each year is straight between its knots', async () => {
  const limit = { knots: [3000, 2000, 500] as [number, number, number], above: { replaceWith: 'new' } }
  const alternatives = [
    { id: 'leave', now: 'leave' as const, limit },
    { id: 'replace', now: { replaceWith: 'new' } },
  ]
  const when = await askedOf(minimallyRepaired({ age: 15, alternatives }))
  expect(when.limitByYear).toEqual([3000, 2800, 2600, 2400, 2200, 2000, 1700, 1400, 1100, 800])
})
