import { describe, expect, test } from 'vitest'
import { nothingKnown, shippedFaults } from '../../test/fault-model.js'
import { tryFaults } from '../../test/fault-trial.js'
import { type Answers, faultTables, posteriorOf } from './infer.js'
import { costOfLook, entropyBits, looksAhead, questionsAhead } from './next-check.js'
import { priorsOf, weightsOf } from './priors.js'
import { costWithLook, planOfMending } from './total-cost.js'

const { model } = shippedFaults()
const tables = faultTables(model)
const weights = weightsOf(priorsOf(model, nothingKnown))
const looksAfter = (answers: Answers, ids?: readonly string[]) =>
  looksAhead(
    tables,
    posteriorOf(tables, weights, answers),
    model.checks.filter(({ id }) => ids?.includes(id) ?? true),
  )
const hot: Answers = { symptoms: { 'little-water': 'present', 'hot-on-load': 'present' }, outcomes: {} }

test('entropy is that of its definition', () => {
  expect(entropyBits(Float64Array.of(0.5, 0.25, 0.25, 0))).toBeCloseTo(1.5, 12)
  expect(entropyBits(Float64Array.of(1, 0))).toBe(0)
})

describe('a look ahead', () => {
  test('has the chances that answering it then gives', () => {
    const [look] = looksAfter(hot, ['water-flow'])
    for (const { outcome, after } of look!.branches) {
      const answered = posteriorOf(tables, weights, { ...hot, outcomes: { 'water-flow': outcome } }).chances
      for (const [f, chance] of after.entries()) expect(chance).toBeCloseTo(answered[f]!, 12)
    }
    expect(look!.branches.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 3)
  })

  test('tells nothing where every fault gives its outcomes alike', () => {
    const dull = { ...model, checks: model.checks.map((check) => ({ ...check, given: {}, remeasures: [] })) }
    const plain = faultTables(dull)
    const looks = looksAhead(plain, posteriorOf(plain, weights, hot), dull.checks)
    for (const { bits } of looks) expect(bits).toBeLessThan(1e-3)
  })

  test('is scored by what it tells, over the root of its cost, over its risk', () => {
    const [look] = looksAfter(hot, ['back-pressure'])
    // 25 and 5 minutes at 30 an hour and 15 of things; engine running, 1.25
    expect(costOfLook(look!.check, model.rule)).toBeCloseTo(30, 12)
    expect(look!.score).toBeCloseTo(look!.bits / Math.sqrt(30) / 1.25, 12)
  })

  test('goes first to where the water comes in, when it is hot and little comes out', () => {
    const best = [...looksAfter(hot)].sort((a, b) => b.score - a.score).slice(0, 3)
    const wanted = new Set(['strainer', 'impeller', 'water-flow', 'exchanger-temperatures'])
    expect(best.filter(({ check }) => wanted.has(check.id)).length).toBeGreaterThanOrEqual(2)
  })
})

test('the question worth most is one that parts the leading causes', () => {
  const asked = questionsAhead(
    tables,
    posteriorOf(tables, weights, { symptoms: { 'no-crank': 'present' }, outcomes: {} }),
    model.symptoms.map(({ id }) => id).filter((id) => id !== 'no-crank'),
  )
  expect(['cranks-slowly', 'battery-goes-flat', 'no-preheat', 'stops-in-seconds']).toContain(
    asked[0]!.symptom,
  )
  expect(asked[0]!.bits).toBeGreaterThan(asked.at(-1)!.bits)
})

describe('the cost to a working set', () => {
  test('of two causes is the cheaper order of mending', () => {
    const costs = { byFault: [100, 20], handOverFee: 1000 }
    // 20 first: 20 + 0.5 · 100; the other way 100 + 0.5 · 20
    expect(planOfMending(Float64Array.of(0.5, 0.5), costs)).toEqual({ cost: 70, mendFirst: [1, 0] })
  })

  test('is never more than any other order of all mends', () => {
    const chances = Float64Array.of(0.1, 0.4, 0.3, 0.2)
    const byFault = [40, 90, 10, 70]
    const orders = permutations([0, 1, 2, 3]).map((order) => {
      let left = 1
      return order.reduce((sum, f) => {
        const cost = sum + byFault[f]! * left
        left -= chances[f]!
        return cost
      }, 0)
    })
    expect(planOfMending(chances, { byFault, handOverFee: 1e6 }).cost).toBeCloseTo(Math.min(...orders), 9)
  })

  test('is handed over where what mends it is dear and far from sure', () => {
    const costs = { byFault: [4000, 3000], handOverFee: 200 }
    // 200 to find it, then the one that it is; mending the wrong one first would cost 3000 · 0.5 more
    expect(planOfMending(Float64Array.of(0.5, 0.5), costs)).toEqual({ cost: 3700, mendFirst: [] })
  })

  test('with a look is that look’s and what follows, and a look that tells all is worth its price', () => {
    const costs = { byFault: model.faults.map(() => 200), handOverFee: 1000 }
    const [look] = looksAfter(hot, ['impeller'])
    const branches = [
      { outcome: 'one', chance: 0.5, after: Float64Array.of(1, 0) },
      { outcome: 'other', chance: 0.5, after: Float64Array.of(0, 1) },
    ]
    const two = { byFault: [200, 200], handOverFee: 1000 }
    expect(costWithLook({ ...look!, branches }, 15, two)).toBeCloseTo(215, 9)
    expect(planOfMending(Float64Array.of(0.5, 0.5), two).cost).toBeCloseTo(300, 9)
    expect(costWithLook(look!, 15, costs)).toBeGreaterThan(200)
  })
})

/**
 * Hit rates that the rule is stated to reach from four chosen checks: the true fault first in about 0.70, among three in 0.80
 * to 0.85; 0.68 and 0.82 where the truth is off the model by 0.8 in log odds (held: practice, from 600 cases). With 100 cases
 * three standard errors are 0.14 and 0.12. `npm run bench -- faults` plays 600.
 */
describe.each([
  { noise: 0, first: 0.7, three: 0.825 },
  { noise: 0.8, first: 0.68, three: 0.82 },
])('cases made up with the truth off by $noise', ({ noise, first, three }) => {
  const hits = tryFaults(model, { cases: 100, seed: 5, checks: 4, noise })

  test('reach the stated hit rates', () => {
    expect(hits.afterChecks.first).toBeGreaterThan(first - 0.14)
    expect(hits.afterChecks.three).toBeGreaterThan(three - 0.12)
  })

  test('are told better by chosen checks than by any, and by those than by none', () => {
    expect(hits.afterChecks.first).toBeGreaterThan(hits.afterAnyChecks.first + 0.05)
    expect(hits.afterAnyChecks.first).toBeGreaterThanOrEqual(hits.symptomsOnly.first - 0.05)
  })
})

function permutations(items: readonly number[]): number[][] {
  if (items.length <= 1) return [[...items]]
  return items.flatMap((item) =>
    permutations(items.filter((other) => other !== item)).map((rest) => [item, ...rest]),
  )
}
