import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { shippedCatalogue } from '../../test/shipped-limits.js'
import { threefryUniform } from '../forecast/threefry.js'
import { conflictsOf, statesOf } from './conflicts.js'
import { type Demand, demandOf, onShares } from './demand.js'
import { activeOf, apparentOf, pointOf, stepsOf } from './demand-grid.js'
import {
  demandFactor,
  durationCurve,
  legMeans,
  powerPoints,
  shareAbove,
  shareBelow,
} from './demand-points.js'
import type { HouseRule, Load } from './load-type.js'
import { trialLoad } from './trial-loads.js'

const { loadRules } = shippedCatalogue

function demand(loads: readonly Load[], rules: readonly HouseRule[] = [], twoLegs = false): Demand {
  return demandOf({ loads, rules, loadRules, occasion: 'day', season: 'warm', twoLegs })
}

function list(...of: readonly (readonly [kW: number, share: number])[]): Load[] {
  return of.map(([kW, share], i) => trialLoad(`load-${i}`, { watts: 1000 * kW, share }))
}

function moments(active: Float64Array): { readonly mean: number; readonly variance: number } {
  const mean = active.reduce((sum, chance, i) => sum + chance * i * 100, 0)
  return { mean, variance: active.reduce((sum, chance, i) => sum + chance * (i * 100 - mean) ** 2, 0) }
}

describe('against closed forms', () => {
  test('ten equal loads are binomial', () => {
    const active = activeOf(demand(list(...Array.from({ length: 10 }, () => [1, 0.3] as const))).whole)
    expect(shareAbove(active, 5)).toBeCloseTo(0.047349, 6)
    expect(1 - shareAbove(active, 5)).toBeCloseTo(0.952651, 6)
    expect(pointOf(active, 0.95)).toBe(50)
    const { mean, variance } = moments(active)
    expect(mean).toBeCloseTo(3000, 6)
    expect(Math.sqrt(variance)).toBeCloseTo(1449.14, 2)
  })

  test('three loads of 1, 2 and 4 kW', () => {
    const active = activeOf(demand(list([1, 0.5], [2, 0.25], [4, 0.1])).whole)
    const chances = [0.3375, 0.3375, 0.1125, 0.1125, 0.0375, 0.0375, 0.0125, 0.0125]
    chances.forEach((chance, kW) => {
      expect(Math.abs(active[10 * kW]! - chance)).toBeLessThan(1e-9)
    })
    expect(moments(active).mean).toBeCloseTo(1400, 9)
    expect(moments(active).variance).toBeCloseTo(2.44e6, 3)
    expect([0.5, 0.95, 0.99].map((share) => pointOf(active, share))).toEqual([10, 50, 70])
    expect(shareAbove(active, 4.5)).toBeCloseTo(0.0625, 9)
  })

  test('a base load, two compressors and what a galley adds', () => {
    const loads = [
      ...list([0.3, 1], [1.6, 0.55], [1.6, 0.55], [1.5, 0.15], [1.2, 0.3], [1.4, 0.03]),
      // 150 W is no whole number of steps: twice the list, at twice the power, is.
    ]
    const doubled = [
      ...loads.map((load, i) =>
        trialLoad(`twice-${i}`, { watts: 2 * load.watts, share: load.duty.warm.hard }),
      ),
      trialLoad('small', { watts: 300, share: 0.35 }),
    ]
    const active = activeOf(demand(doubled).whole)
    const { mean, variance } = moments(active)
    expect(mean / 2).toBeCloseTo(2739.5, 6)
    expect(Math.sqrt(variance) / 2).toBeCloseTo(1385.15, 2)
    expect([0.5, 0.9, 0.95, 0.99].map((share) => pointOf(active, share) * 50)).toEqual([
      3100, 4700, 5000, 6200,
    ])
    expect(powerPoints(demand(doubled).whole).kW.most).toBe(15.5)
    expect(shareAbove(active, 10)).toBeCloseTo(0.030221, 6)
    expect(shareAbove(active, 12)).toBeCloseTo(0.0171134, 6)
    expect(shareBelow(active, 4.8)).toBeCloseTo(0.4768897, 6)
  })

  test('shared weather makes three compressors run together more often', () => {
    const three = (share: number, hardShare: number) =>
      activeOf(demand([0, 1, 2].map((i) => trialLoad(`c${i}`, { watts: 1000, share, hardShare }))).whole)[30]!
    expect(three(0.55, 0.55)).toBeCloseTo(0.166375, 9)
    expect(three(0.2, 0.9)).toBeCloseTo(0.3685, 9)
  })

  test('reactive power is added apart from active power', () => {
    const of = (kW: number, powerFactor: number, i: number) =>
      trialLoad(`v${i}`, { watts: 1000 * kW, vars: 1000 * kW * Math.tan(Math.acos(powerFactor)), share: 1 })
    const loads = [of(1.5, 1, 0), of(1.2, 0.75, 1), of(2, 0.9, 2), of(0.8, 0.6, 3)]
    const sum = (field: 'watts' | 'vars') => loads.reduce((total, load) => total + load[field], 0)
    expect(sum('watts')).toBeCloseTo(5500, 6)
    expect(sum('vars')).toBeCloseTo(3093.6, 1)
    expect(Math.hypot(sum('watts'), sum('vars'))).toBeCloseTo(6310.3, 1)
    expect(sum('watts') / Math.hypot(sum('watts'), sum('vars'))).toBeCloseTo(0.87158, 5)
    const arithmetic = loads.reduce((total, { watts, vars }) => total + Math.hypot(watts, vars), 0)
    expect(arithmetic).toBeCloseTo(6655.6, 1)
    const { whole } = demand(loads)
    expect([whole.rows - 1, whole.columns - 1]).toEqual([55, 32])
    expect(pointOf(apparentOf(whole), 0.5)).toBe(Math.ceil(Math.hypot(55, 32)))
  })
})

const randomLoad = fc.record({
  watts: fc.integer({ min: 0, max: 40 }).map((steps) => 100 * steps),
  vars: fc.integer({ min: 0, max: 20 }).map((steps) => 100 * steps),
  share: fc.double({ min: 0, max: 1, noNaN: true }),
  hardShare: fc.double({ min: 0, max: 1, noNaN: true }),
  leg: fc.constantFrom('one' as const, 'two' as const, 'both' as const),
})
const randomList = fc.record({
  loads: fc.array(randomLoad, { minLength: 1, maxLength: 16 }),
  groups: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 16, maxLength: 16 }),
  rulesFrom: fc.integer({ min: 2, max: 4 }),
  second: fc.boolean(),
})

/** Rules that keep apart the loads of the same group; and one across two groups, so that rules overlap. */
function rulesOf(count: number, groups: readonly number[], from: number, second: boolean): HouseRule[] {
  const rules = [0, 1, 2, 3, 4].flatMap((group) => {
    const members = Array.from({ length: count }, (_, i) => i).filter(
      (i) => groups[i] === group && group >= from,
    )
    return members.length < 2
      ? []
      : [{ id: `g${group}`, loads: members.slice(0, 5).map((i) => `l${i}`), atMost: 1 }]
  })
  const [a, b] = rules
  if (!second || a === undefined || b === undefined) return rules
  return [
    ...rules,
    { id: 'across', loads: [a.loads[0]!, b.loads[0]!, b.loads[1]!], atMost: 2 },
    { id: 'x', loads: [a.loads[1]!, b.loads[0]!], atMost: 1 },
  ]
}

test('every set of loads that can be on, one by one, gives the same distribution', () => {
  fc.assert(
    fc.property(randomList, ({ loads: of, groups, rulesFrom, second }) => {
      const loads = of.map((load, i) => trialLoad(`l${i}`, load))
      const rules = rulesOf(loads.length, groups, rulesFrom, second)
      const made = demand(loads, rules, true)
      const { hardShare } = loadRules.weather
      const bySteps = { whole: new Map<string, number>(), one: new Map<string, number>() }
      for (const weather of ['easy', 'hard'] as const) {
        const shares = onShares({ loads, loadRules, occasion: 'day', season: 'warm', weather })
        const chances = setChances(loads, rules, shares)
        chances.forEach((chance, on) => {
          const weighed = chance * (weather === 'hard' ? hardShare : 1 - hardShare)
          add(bySteps.whole, loads, on, () => 1, weighed)
          add(bySteps.one, loads, on, ({ leg }) => (leg === 'one' ? 1 : leg === 'both' ? 0.5 : 0), weighed)
        })
      }
      for (const [name, grid] of [
        ['whole', made.whole],
        ['one', made.legs[0]!],
      ] as const) {
        for (const [key, chance] of bySteps[name]) {
          const [p, q] = key.split(' ').map(Number)
          expect(Math.abs(grid.chance[p! * grid.columns + q!]! - chance)).toBeLessThan(1e-9)
        }
        expect(grid.chance.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9)
      }
    }),
    { numRuns: 25, seed: 6 },
  )
})

/** Chance of every set of the list, as bits: those of each group of rules, times each load's own for the rest. */
function setChances(
  loads: readonly Load[],
  rules: readonly HouseRule[],
  shares: readonly number[],
): Float64Array {
  const conflicts = conflictsOf(
    loads.map(({ id }) => id),
    rules,
  )
  const chances = new Float64Array(1 << loads.length)
  const bound = conflicts.map((conflict) => {
    const { states } = statesOf(conflict, shares)
    const byMask = new Map<number, number>()
    for (const { on, chance } of states) {
      const mask = conflict.members.reduce((bits, i, k) => (on & (1 << k) ? bits | (1 << i) : bits), 0)
      byMask.set(mask, chance)
    }
    return { mask: conflict.members.reduce((bits, i) => bits | (1 << i), 0), byMask }
  })
  const under = bound.reduce((bits, { mask }) => bits | mask, 0)
  for (let on = 0; on < chances.length; on += 1) {
    let chance = 1
    for (const { mask, byMask } of bound) chance *= byMask.get(on & mask) ?? 0
    for (let i = 0; i < loads.length && chance > 0; i += 1) {
      if ((under & (1 << i)) === 0) chance *= on & (1 << i) ? shares[i]! : 1 - shares[i]!
    }
    chances[on] = chance
  }
  return chances
}

function add(
  to: Map<string, number>,
  loads: readonly Load[],
  on: number,
  factor: (load: Load) => number,
  chance: number,
): void {
  if (chance === 0) return
  let [p, q] = [0, 0]
  loads.forEach((load, i) => {
    if ((on & (1 << i)) === 0) return
    p += stepsOf(factor(load) * load.watts)
    q += stepsOf(factor(load) * load.vars)
  })
  const key = `${p} ${q}`
  to.set(key, (to.get(key) ?? 0) + chance)
}

describe('rules of the house', () => {
  test('move use and keep it: each load is on as long as without, no set that is forbidden is ever on, and else least is said', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0.02, max: 0.3, noNaN: true }), { minLength: 3, maxLength: 7 }),
        fc.uniqueArray(fc.tuple(fc.nat(6), fc.nat(6)), { minLength: 2, maxLength: 6 }),
        (shares, pairs) => {
          const ids = shares.map((_, i) => `l${i}`)
          const rules = pairs
            .map(([a, b]) => [a % shares.length, b % shares.length] as const)
            .filter(([a, b]) => a !== b)
            .map(([a, b], i) => ({ id: `r${i}`, loads: [`l${a}`, `l${b}`], atMost: 1 }))
          for (const conflict of conflictsOf(ids, rules)) {
            const { states, kept } = statesOf(conflict, shares)
            const none = states.find(({ on }) => on === 0)!.chance
            conflict.members.forEach((member, k) => {
              const had = states
                .filter(({ on }) => on & (1 << k))
                .reduce((sum, { chance }) => sum + chance, 0)
              expect(had).toBeCloseTo(kept * shares[member]!, 9)
            })
            // Greatest entropy with given shares: the chance of a set is a product over its loads.
            const odds = conflict.members.map((_, k) => states.find(({ on }) => on === 1 << k)!.chance / none)
            for (const { on, chance } of states) {
              const product = odds.reduce((all, one, k) => (on & (1 << k) ? all * one : all), none)
              expect(Math.abs(chance - product)).toBeLessThan(1e-9)
            }
            for (const { members, atMost } of conflict.rules) {
              for (const { on } of states) {
                expect(
                  members.filter((i) => on & (1 << conflict.members.indexOf(i))).length,
                ).toBeLessThanOrEqual(atMost)
              }
            }
          }
        },
      ),
      { numRuns: 60, seed: 6 },
    )
  })

  test('that leave no room for all that is wanted say so, and cut it', () => {
    const two = list([2, 0.8], [1, 0.7])
    const made = demand(two, [{ id: 'r', loads: ['load-0', 'load-1'], atMost: 1 }])
    expect(made.kept).toBeCloseTo(1 / 1.5, 9)
    expect(activeOf(made.whole)[30] ?? 0).toBe(0)
    expect(activeOf(made.whole)[0]).toBeCloseTo(0, 9)
    const chain = list([1, 0.9], [1, 0.9], [1, 0.9])
    const chained = demand(chain, [
      { id: 'a', loads: ['load-0', 'load-1'], atMost: 1 },
      { id: 'b', loads: ['load-1', 'load-2'], atMost: 1 },
    ])
    expect(chained.kept).toBeLessThan(0.56)
    expect(chained.kept).toBeGreaterThan(0.5)
  })
})

test('drawing loads by chance gives the same points', () => {
  // 40,000 days: a share of the time has a standard error of at most 0.5 / √40,000 = 0.0025; five of them are allowed.
  const draws = 40_000
  const loads = [
    trialLoad('c1', { watts: 1600, vars: 600, share: 0.25, hardShare: 0.85 }),
    trialLoad('c2', { watts: 1600, vars: 600, share: 0.25, hardShare: 0.85 }),
    ...list([0.3, 1], [2, 0.3], [1.5, 0.2], [2.4, 0.1]),
  ]
  const rules = [{ id: 'r', loads: ['load-1', 'load-2'], atMost: 1 }]
  const made = demand(loads, rules)
  const counts = new Float64Array(made.whole.rows)
  for (let draw = 0; draw < draws; draw += 1) {
    const uniform = (purpose: number) => threefryUniform(6, 0, draw, purpose)
    const hard = uniform(0) < loadRules.weather.hardShare
    let steps = 3
    for (const i of [0, 1]) if (uniform(1 + i) < (hard ? 0.85 : 0.25)) steps += 16
    const either = uniform(3)
    if (either < 0.3) steps += 20
    else if (either < 0.5) steps += 15
    if (uniform(4) < 0.1) steps += 24
    counts[steps]! += 1 / draws
  }
  const active = activeOf(made.whole)
  for (const kW of [1, 2, 3, 4, 5, 6, 7]) {
    expect(Math.abs(shareAbove(active, kW) - shareAbove(counts, kW))).toBeLessThan(0.0125)
  }
})

test('the duration curve falls, begins with all that can be on, and ends with all of the time', () => {
  const curve = durationCurve(activeOf(demand(list([1, 0.5], [2, 0.25], [4, 0.1])).whole))
  expect(curve[0]).toMatchObject({ kW: 7 })
  expect(curve[0]!.share).toBeCloseTo(0.0125, 9)
  expect(curve.at(-1)).toEqual({ kW: 0, share: 1 })
  curve.slice(1).forEach(({ kW, share }, i) => {
    expect(kW).toBeLessThan(curve[i]!.kW)
    expect(share).toBeGreaterThanOrEqual(curve[i]!.share)
  })
})

test('a load across both legs counts half on each', () => {
  const loads = [
    trialLoad('a', { watts: 1000, share: 1, leg: 'one' }),
    trialLoad('b', { watts: 3000, share: 0.5, leg: 'both' }),
    trialLoad('c', { watts: 400, share: 1, leg: 'two' }),
  ]
  expect(legMeans(demand(loads, [], true)).map(Math.round)).toEqual([1750, 1150])
  expect(demand(loads).legs).toEqual([])
})

// Sizing case V3: definitions, derived.
test('demand factor and diversity', () => {
  expect(1 / demandFactor({ drawnKW: 12, connectedKW: 18 })).toBeCloseTo(1.5, 12)
  expect(12 * demandFactor({ drawnKW: 0.6 * 12, connectedKW: 12 })).toBeCloseTo(7.2, 12)
  expect(demandFactor({ drawnKW: 0, connectedKW: 0 })).toBe(0)
})
