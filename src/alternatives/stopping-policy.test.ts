import { describe, expect, test } from 'vitest'
import { repairLimits } from '../../test/oracles/replacement.js'
import { uniformOfWord } from '../forecast/threefry.js'
import { followStopping, learnStopping, type Stopping } from './stopping-policy.js'

/**
 * Once a year a unit's repair bill is seen, exponential with a mean that grows with its age; it is paid, or the unit is
 * replaced, as it is in any case at age 8. Hastings, "The repair limit replacement method", Operational Research Quarterly
 * 20 (1969); the plan and its values by dynamic programming are ours (test/oracles), worked to 1e-6.
 */
const plan = {
  price: 6000,
  discount: 1 / 1.05,
  meanBills: [0, 400, 600, 900, 1300, 1800, 2400, 3100],
  rule: 'limit',
} as const
const { values, limits } = repairLimits(plan)

/** Histories of one unit that is never replaced before its last age; replaced, it costs what a new one costs for ever. */
function histories(count: number, seed: number): Stopping & { readonly bills: readonly Float64Array[] } {
  let state = seed
  const next = () => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return uniformOfWord(state >>> 0)
  }
  const renewed = plan.price + plan.discount * values[1]!
  const bills = plan.meanBills.map((mean) =>
    Float64Array.from({ length: count }, () => -mean * Math.log(next())),
  )
  const paid = new Float64Array(count)
  const stopped = bills.map((bill, age) =>
    paid.map((before, i) => {
      paid[i] = before + plan.discount ** age * bill[i]!
      return before + plan.discount ** age * renewed
    }),
  )
  const last = plan.meanBills.length
  // At age 0 there is no bill and nothing to decide.
  return {
    bills: bills.slice(1),
    stopped: stopped.slice(1),
    never: paid.map((all) => all + plan.discount ** last * renewed),
    known: bills.slice(1).map((bill) => [bill]),
  }
}

describe('a repair limit with an answer by dynamic programming', () => {
  const policy = learnStopping(histories(20_000, 0x2545f491))
  const fresh = histories(40_000, 0x1234567)
  const followed = followStopping(policy, fresh)

  test('what is learnt costs, on fresh histories, what the best policy costs', () => {
    const n = followed.cost.length
    const mean = followed.cost.reduce((sum, cost) => sum + cost, 0) / n
    const sd = Math.sqrt(followed.cost.reduce((sum, cost) => sum + (cost - mean) ** 2, 0) / n)
    expect(values[0]).toBeCloseTo(29_983.8, 1)
    expect(Math.abs(mean - values[0]!)).toBeLessThan((4 * sd) / Math.sqrt(n))
    // And not what mending costs to the end.
    const always = fresh.never.reduce((sum, cost) => sum + cost, 0) / n
    expect(always - mean).toBeGreaterThan(10 * (sd / Math.sqrt(n)))
  })

  test('it stops within a tenth of the price from the limit of each age', () => {
    const slack = 0.1 * plan.price
    followed.date.forEach((_, i) => {
      for (let date = 0; date < fresh.bills.length; date++) {
        const bill = fresh.bills[date]![i]!
        const limit = limits[date + 1]!
        if (followed.date[i] === date) expect(bill).toBeGreaterThan(limit - slack)
        if (followed.date[i] === -1 || followed.date[i]! > date) expect(bill).toBeLessThan(limit + slack)
        if (followed.date[i] === date) break
      }
    })
  })
})

test('where nothing known tells one history from another, all stop at the date that is cheapest on the mean', () => {
  const count = 400
  const flat = (cost: number) =>
    Float64Array.from({ length: count }, (_, i) => cost + (i % 2 === 0 ? 50 : -50))
  const none = [new Float64Array(count)]
  const stopping = {
    stopped: [flat(900), flat(700), flat(800)],
    never: flat(1000),
    known: [none, none, none],
  }
  const { date, cost } = followStopping(learnStopping(stopping), stopping)
  expect(new Set(date)).toEqual(new Set([1]))
  expect(cost).toEqual(flat(700))
})
