import { expect, test } from 'vitest'
import { boatOf } from '../../bench/advice/boat.js'
import { normal, uniform } from '../../bench/advice/chance.js'
import { closedOf, difference, partings } from '../../bench/advice/compare.js'
import { ledBy, rules } from '../../bench/advice/rules.js'
import { type BoatResult, type PolicyId, tryBoat } from '../../bench/advice/trial.js'

/** Boats whose costs are a common luck and what each policy adds to it. */
function madeUp(adds: Readonly<Record<PolicyId, number>>): BoatResult[] {
  return Array.from({ length: 200 }, (_, boat) => {
    const luck = 20_000 * uniform([1, boat])
    const outcomes = Object.fromEntries(
      Object.entries(adds).map(([policy, add], p) => [
        policy,
        [{ cost: luck + add + 300 * normal([2, boat, p]), daysWithout: 0, replaced: 0 }],
      ]),
    ) as unknown as BoatResult['outcomes']
    return { boat, outcomes } as BoatResult
  })
}

const ids = rules.map(({ id }) => id)
const adds = {
  gensettle: 400,
  'half-price': 1000,
  'always-mend': 3000,
  'twenty-years': 5000,
  'first-large': 1500,
  knowing: 0,
} as const

test('the share of the gap that is closed is told with its interval, of the best rule', () => {
  const boats = madeUp(adds)
  const closed = closedOf(boats, { lives: 1, rules: ids, seed: 3 })
  expect(closed.rule).toBe('half-price')
  expect(closed.gap).toBeCloseTo(1000, -2)
  expect(closed.low).toBeLessThan(0.6)
  expect(closed.high).toBeGreaterThan(0.6)
  expect(closed.high - closed.low).toBeLessThan(0.2)
  expect(closed.withoutGap).toBe(0)
})

test('where nothing is gained by knowing, no share is told without saying so', () => {
  const closed = closedOf(madeUp({ ...adds, knowing: 1000 }), { lives: 1, rules: ids, seed: 3 })
  expect(closed.withoutGap).toBeGreaterThan(0.05)
})

test('a difference is taken boat by boat, so that common luck drops out', () => {
  const { mean, error } = difference(madeUp(adds), 1, ['always-mend', 'gensettle'])
  expect(Math.abs(mean - 2600)).toBeLessThan(4 * error)
  expect(error).toBeLessThan(50)
})

test('what the kinds of parting add comes to the whole difference', () => {
  const boats = madeUp(adds).map((boat, b) => ({
    ...boat,
    outcomes: {
      ...boat.outcomes,
      gensettle: boat.outcomes.gensettle.map((outcome) => ({ ...outcome, replaced: b % 2 })),
      'first-large': boat.outcomes['first-large'].map((outcome) => ({ ...outcome, replaced: b % 3 })),
    },
  }))
  const kinds = partings(boats, 1, 'first-large')
  expect(kinds.map(({ lives }) => lives).reduce((a, b) => a + b)).toBe(200)
  const sum = kinds.reduce((total, { share }) => total + share, 0)
  expect(sum).toBeCloseTo(difference(boats, 1, ['first-large', 'gensettle']).mean, 6)
})

test('the same seed gives the same boat and the same lives, bit for bit', async () => {
  const trial = { seed: 5, lives: 1, advised: 1, histories: 100 }
  const first = await tryBoat(7, trial)
  const again = await tryBoat(7, trial)
  expect({ ...again, askedMs: 0 }).toEqual({ ...first, askedMs: 0 })
})

test('rules that decide alike lead alike: always mending is a limit that nothing reaches', () => {
  const { nature } = boatOf(5, 2)
  const mended = ledBy({ answer: () => 'mend' }, nature, 1)
  expect(ledBy({ answer: ({ estimate }) => (estimate > 1e9 ? 'replace' : 'mend') }, nature, 1)).toEqual(
    mended,
  )
  const replaced = ledBy({ answer: () => 'mend', replaceAt: { year: 1 } }, nature, 1)
  expect(replaced.replaced).toEqual([1])
})
