import { expect, test } from 'vitest'
import { meanLife, residualSurvival, survival, type WeibullLife } from '../../src/forecast/lives.js'
import { normalQuantile } from '../../src/forecast/special-normal.js'
import {
  alternating,
  cascadeRates,
  discountedTime,
  endlessRepairs,
  poissonChance,
  poissonStream,
  seriesAvailability,
  visits,
} from '../oracles/cash.js'
import { firstToFail } from '../oracles/competing.js'
import { discountedRenewals, endlessRenewals, laplaceOf } from '../oracles/renewal.js'
import { minimalRepairPresentValue } from '../oracles/replacement.js'

// Closed forms that the simulator is held to, recomputed by an independent program. Derived unless said otherwise.

function expectRelative(found: number, expected: number, tolerance = 1e-9): void {
  expect(Math.abs(found / expected - 1)).toBeLessThan(tolerance)
}

test('a Poisson stream of costs (Campbell)', () => {
  const stream = poissonStream({ rate: 0.4, interest: 0.05, horizon: 10 })
  expectRelative(1200 * stream.mean, 3777.30566676)
  expectRelative(1200 * stream.sd, 1908.14423429)
  expectRelative(1200 * poissonStream({ rate: 0.4, interest: 0, horizon: 10 }).mean, 4800)
  expectRelative(poissonChance(4, 0), 0.0183156388887)
})

test('minimal repair, new and aged', () => {
  const life: WeibullLife = { kind: 'weibull', shape: 2, scale: 8 }
  const plan = { cost: 1000, interest: 0.05, horizon: 10 }
  expectRelative(minimalRepairPresentValue(life, { ...plan, age: 0 }), 1127.55013039, 1e-8)
  expectRelative(minimalRepairPresentValue(life, { ...plan, age: 5 }), 2357.14181879, 1e-8)
  expectRelative(minimalRepairPresentValue(life, { ...plan, cost: 1, interest: 0, age: 0 }), 1.5625, 1e-8)
  expectRelative(minimalRepairPresentValue(life, { ...plan, cost: 1, interest: 0, age: 5 }), 3.125, 1e-8)
})

test('renewals of a wearing part, new and aged', () => {
  const life: WeibullLife = { kind: 'weibull', shape: 2, scale: 8 }
  const endedBy = (age: number): number => 1 - survival(life, age)
  const plan = { endedBy, until: 10, steps: 200, interest: 0.05 }
  const fromNew = discountedRenewals(plan)
  expectRelative(fromNew.expected, 1.04269315088, 1e-5)
  expectRelative(1000 * fromNew.presentValue, 773.205335231, 1e-5)
  const laplace = laplaceOf({ endedBy, until: 80, steps: 2000, interest: 0.05 })
  expectRelative(laplace, 0.713210047299, 1e-5)
  expectRelative(1000 * endlessRenewals(laplace), 2486.87250226, 1e-5)

  const firstEndedBy = (ahead: number): number => 1 - residualSurvival(life, { age: 5, ahead })
  const aged = discountedRenewals({ ...plan, firstEndedBy })
  expectRelative(aged.expected, 1.49215319137, 1e-4)
  expectRelative(1000 * aged.presentValue, 1182.97807167, 1e-4)
  expectRelative(residualSurvival(life, { age: 5, ahead: 10 }), 0.0439369336234, 1e-4)
})

test('failures that bring on others: each hit charged, and each part charged once', () => {
  const own = [0.6, 0.15, 0.05]
  const chances = [
    [0, 0.3, 0.1],
    [0, 0, 0.25],
    [0, 0, 0],
  ]
  const cost = [400, 2500, 6000]
  const rates = cascadeRates(own, chances)
  expect(rates).toEqual([0.6, 0.33, 0.1925].map((rate) => expect.closeTo(rate, 12)))
  const time = discountedTime(0.04, 8)
  const priced = (counted: readonly number[]): number =>
    time * counted.reduce((sum, rate, part) => sum + rate * cost[part]!, 0)
  expectRelative(priced(rates), 15198.7284424)
  // The last part is hit twice with chance 0.3 · 0.25 · 0.1 when the first fails.
  const onceHit = 0.1 + 0.3 * 0.25 - 0.1 * 0.3 * 0.25
  expect(onceHit).toBeCloseTo(0.1675, 12)
  expectRelative(priced([0.6, 0.33, 0.05 + 0.15 * 0.25 + 0.6 * onceHit]), 15013.8790424)
})

test('up and down in turn', () => {
  const set = alternating({ meanUp: 800, meanDown: 40, window: 2000 })
  expectRelative(set.availability, 0.952380952381)
  expectRelative(set.upAt(100), 0.955830464621)
  expectRelative(set.downTime, 93.4240362812)
  expectRelative(set.failures, 2.38321995465)
})

// Barlow and Proschan (1975), recalled.
test('a set whose parts stand still while one is down', () => {
  const parts = [
    { meanUp: 500, meanDown: 10 },
    { meanUp: 2000, meanDown: 48 },
    { meanUp: 8000, meanDown: 200 },
  ]
  expectRelative(seriesAvailability(parts), 0.935453695042)
  const apart = parts.reduce((product, { meanUp, meanDown }) => product * (meanUp / (meanUp + meanDown)), 1)
  expectRelative(apart, 0.93406264945)
  const rate = parts.reduce((sum, { meanUp }) => sum + 1 / meanUp, 0)
  expectRelative(rate, 0.002625)
  const race = firstToFail({
    lives: parts.map(({ meanUp }) => ({ shape: 1, scale: meanUp, age: 0 })),
    ahead: 200,
  })
  expectRelative(race.none, 0.591555364367)
})

test('two lives of one shape', () => {
  const lives = [3000, 4000].map((scale) => ({ shape: 2.5, scale, age: 0 }))
  const race = firstToFail({ lives, ahead: 100 })
  expect(Math.abs(race.firstEver[0]! - 0.672431968528)).toBeLessThan(1e-9)
  const least = (3000 ** -2.5 + 4000 ** -2.5) ** (-1 / 2.5)
  expectRelative(least, 2559.65006248)
  expectRelative(race.meanTime, 2271.0848859)
  expectRelative(meanLife({ kind: 'weibull', shape: 2.5, scale: least }), 2271.0848859)
})

test('two lives of different shapes: cumulative incidence', () => {
  const lives = [
    { shape: 1.3, scale: 6000, age: 0 },
    { shape: 3, scale: 5000, age: 0 },
  ]
  const race = firstToFail({ lives, ahead: 3000 })
  expect(Math.abs(race.firstEver[0]! - 0.477883960847)).toBeLessThan(1e-9)
  expectRelative(race.meanTime, 3258.65724382)
  expect(Math.abs(race.first[0]! - 0.315442202952)).toBeLessThan(1e-9)
  expect(Math.abs(race.first[1]! - 0.14775592085)).toBeLessThan(1e-9)
  expect(Math.abs(race.none - 0.536801876198)).toBeLessThan(1e-9)
})

test('what fails first of an impeller, a bearing and an injector, and what it costs with what it drags down', () => {
  const lives = [
    { shape: 2.5, scale: 900, age: 500 },
    { shape: 1.5, scale: 9000, age: 6000 },
    { shape: 2, scale: 4000, age: 3000 },
  ]
  const race = firstToFail({ lives, ahead: 300 })
  const close = (found: readonly number[], expected: readonly number[]): void => {
    expected.forEach((value, index) => {
      expect(Math.abs(found[index]! - value)).toBeLessThan(1e-8)
    })
  }
  close(race.first, [0.371462510527, 0.0309463095368, 0.0881003159519])
  close([race.none], [0.509490863984])
  close(race.firstEver, [0.805568783843, 0.0493513574314, 0.145079858726])
  expectRelative(race.meanTime, 354.775815288, 1e-8)
  const alone = lives.map(
    ({ shape, scale, age }) => 1 - residualSurvival({ kind: 'weibull', shape, scale }, { age, ahead: 300 }),
  )
  close(alone, [0.40243211896, 0.0404884869745, 0.111415027449])
  const costs = [150 + 0.3 * 1100, 900 + 0.2 * 2800, 400 + 0.05 * 3500]
  const expected = race.first.reduce((sum, chance, part) => sum + chance * costs[part]!, 0)
  expectRelative(expected, 274.141298649, 1e-8)
})

test('repairs and down time for ever', () => {
  const endless = endlessRepairs({ fail: 1.2, mend: 26, interest: 0.05 })
  expectRelative(700 * endless.repairs, 16060.1834862)
  expectRelative(30_000 * endless.downTime, 26422.0183486)
})

test('a Poisson number of costs', () => {
  const chances = Array.from({ length: 30 }, (_, count) => poissonChance(3, count))
  const below = (count: number): number => chances.slice(0, count).reduce((sum, chance) => sum + chance, 0)
  expectRelative(1 - below(5), 0.184736755476)
  expect([below(3) < 0.5, below(4) >= 0.5, below(6) < 0.95, below(7) >= 0.95]).toEqual([
    true,
    true,
    true,
    true,
  ])
  expectRelative(1000 * poissonStream({ rate: 0.5, interest: 0, horizon: 6 }).sd, 1732.05080757)
})

test('tasks that share a visit', () => {
  const due = visits([1, 1.5], 6)
  expect(due).toEqual({ tasks: [6, 4], visits: 8 })
  const work = 6 * 50 + 4 * 90
  expect(work + 8 * 120).toBe(1620)
  expect(work + 10 * 120).toBe(1860)
})

test('how many histories a half width needs', () => {
  const z = normalQuantile(0.975)
  expect(Math.ceil(((z * 1500) / (0.01 * 9000)) ** 2)).toBe(1068)
  expect(Math.ceil(((z * Math.sqrt(0.05 * 0.95)) / 0.005) ** 2)).toBe(7299)
})
