import { expect, test } from 'vitest'
import type { WeibullLife } from '../../src/forecast/lives.js'
import { meanLife } from '../../src/forecast/lives.js'
import { gamma } from '../../src/forecast/special-gamma.js'
import { renewals, renewalVariance, weibullRenewalSeries } from '../oracles/renewal.js'
import {
  ageCostRate,
  agePresentValue,
  bestAge,
  bestBlock,
  bestEveryNYears,
  bestWithMinimalRepair,
  everyNYears,
  repairLimits,
} from '../oracles/replacement.js'

// The yardsticks that the simulator is held to are themselves held here to published structures and to values
// recomputed by an independent program. Derived unless said otherwise.

function weibull(shape: number, scale = 1): WeibullLife {
  return { kind: 'weibull', shape, scale }
}

function endedBy(shape: number, scale = 1): (age: number) => number {
  return (age) => -Math.expm1(-((age / scale) ** shape))
}

function expectRelative(found: number, expected: number, tolerance: number): void {
  expect(Math.abs(found / expected - 1)).toBeLessThan(tolerance)
}

// Age replacement, planned cost 1, scale 1: shape, failure cost, cheapest age, cost per time.
// Criterion of Barlow and Proschan (1965), recalled.
test.each([
  [1.5, 2, 2.17464137974, 2.21199979756, 1e-6],
  [1.5, 3, 1.15707679688, 3.22702512726, 1e-6],
  [1.5, 5, 0.675492, 4.9313, 5e-6],
  [1.5, 10, 0.378144491573, 8.3016163239, 1e-6],
  [1.5, 20, 0.226119874637, 13.5523381073, 1e-6],
  [2.0, 2, 1.09079696963, 2.18159393927, 1e-6],
  [2.0, 3, 0.737914, 2.95166, 5e-6],
  [2.0, 5, 0.510655224295, 4.08524179436, 1e-6],
  [2.0, 10, 0.336451191255, 6.0561214426, 1e-6],
  [2.0, 20, 0.230426798272, 8.75621833433, 1e-6],
  [2.5, 2, 0.883602, 2.07647, 5e-6],
  [2.5, 3, 0.6568557988, 2.66179779975, 1e-6],
  [2.5, 5, 0.493046957597, 3.46204273879, 1e-6],
  [2.5, 10, 0.35457440963, 4.75054679898, 1e-6],
  [2.5, 20, 0.262382, 6.38401, 5e-6],
  [3.0, 2, 0.810342027426, 1.96996260424, 1e-6],
  [3.0, 3, 0.636547860282, 2.43115907058, 1e-6],
  [3.0, 5, 0.502609582103, 3.03139670426, 1e-6],
  [3.0, 10, 0.382456, 3.94935, 5e-6],
  [3.0, 20, 0.297770470635, 5.05403343139, 1e-6],
  [4.0, 2, 0.766113237492, 1.79861781521, 1e-6],
  [4.0, 3, 0.64159460775, 2.11286672147, 1e-6],
  [4.0, 5, 0.538402, 2.49712, 5e-6],
  [4.0, 10, 0.439097186787, 3.04778596481, 1e-6],
  [4.0, 20, 0.364100812462, 3.66841564008, 1e-6],
])(
  'shape %f, failure %f times dearer: cheapest age and its cost',
  (shape, failure, age, costRate, tolerance) => {
    const life = weibull(shape)
    const costs = { failure, planned: 1 }
    const best = bestAge(life, costs)!
    expectRelative(best.age, age, tolerance)
    expectRelative(best.costRate, costRate, tolerance)
    expectRelative(ageCostRate(life, { ...costs, age: best.age }), best.costRate, 1e-9)
    const toFailure = failure / meanLife(life)
    for (const other of [0.3, 0.7, 1.5, 4]) {
      expect(ageCostRate(life, { ...costs, age: best.age * other })).toBeGreaterThan(best.costRate)
    }
    expect(best.costRate).toBeLessThan(toFailure)
  },
)

test('age replacement in hours, and no cheapest age for lives that do not wear', () => {
  const best = bestAge(weibull(2.5, 1000), { failure: 5, planned: 1 })!
  expectRelative(best.age, 493.046957597, 1e-6)
  expectRelative(best.costRate, 0.00346204273879, 1e-6)
  expectRelative(5 / meanLife(weibull(2.5, 1000)), 0.00563530248993, 1e-6)
  expect(bestAge(weibull(1), { failure: 5, planned: 1 })).toBeUndefined()
})

test('doubling the scale halves the cost per time', () => {
  const [one, two] = [weibull(3, 100), weibull(3, 200)].map(
    (life) => bestAge(life, { failure: 7, planned: 2 })!,
  )
  expectRelative(two!.costRate, one!.costRate / 2, 1e-9)
})

test('age policy for ever: r times its present value tends to its cost per time', () => {
  const life = weibull(2.5, 1000)
  const policy = { failure: 5, planned: 1, age: 500 }
  const perTime = ageCostRate(life, policy)
  expectRelative(1e-7 * agePresentValue(life, { ...policy, interest: 1e-7 }), perTime, 1e-3)
  expect(agePresentValue(life, { ...policy, interest: 1e-4 })).toBeLessThan(perTime / 1e-4)
})

const ages = [0.25, 0.5, 1, 1.5, 2, 3, 5]
// Two ways: power series in eighty digits and a grid. Structure: Smith and Leadbetter (1963), recalled.
const renewalFunctions = [
  {
    shape: 0.8,
    expected: [
      0.341184043038, 0.607953852091, 1.09850883211, 1.56619544257, 2.02354797026, 2.92363595818,
      4.70165931826,
    ],
  },
  {
    shape: 1.5,
    expected: [
      0.121901501447, 0.330269844472, 0.84157813665, 1.39091515034, 1.94550079863, 3.05371394216,
      5.2691599471,
    ],
  },
  { shape: 2.0, expected: [0.0612246, 0.230794, 0.753691, 1.32949, 1.89404, 3.02175, 5.27852] },
  {
    shape: 3.0,
    expected: [
      0.015515726985, 0.118262668991, 0.672329100238, 1.25523513253, 1.80107525689, 2.92477492284,
      5.16527453639,
    ],
  },
  {
    shape: 5.0,
    expected: [
      0.000976089602137, 0.0307706306714, 0.635778446404, 1.13268896859, 1.72166393702, 2.80312829618,
      4.97400601692,
    ],
  },
]

test.each(renewalFunctions)('expected renewals, shape $shape', ({ shape, expected }) => {
  ages.forEach((until, index) => {
    const found = renewals({ endedBy: endedBy(shape), until, steps: shape < 1 ? 600 : 200 })
    expect(Math.abs(found - expected[index]!)).toBeLessThan(1e-5)
    if (until <= 1) expect(weibullRenewalSeries({ shape, at: until })).toBeCloseTo(found, 5)
  })
})

// Power series in many digits.
test.each([
  [2, 1.25, 1.0426931509],
  [2, 2, 1.8940393468],
  [2, 3, 3.021745009],
  [3, 2, 1.8010752569],
])('expected renewals to more digits, shape %f at %f', (shape, until, expected) => {
  expect(renewals({ endedBy: endedBy(shape), until, steps: 400 })).toBeCloseTo(expected, 8)
})

test('expected renewals with mean life 1, and late ones on their asymptote', () => {
  const scale = 1 / gamma(1.5)
  const held: [number, number][] = [
    [0.5, 0.184297702135],
    [1, 0.624069901397],
    [1.5, 1.13415913862],
  ]
  for (const [until, expected] of held) {
    expect(renewals({ endedBy: endedBy(2, scale), until, steps: 300 })).toBeCloseTo(expected, 6)
  }
  // t/μ + (σ² − μ²)/(2μ²).
  const mean = gamma(1 + 1 / 1.5)
  const square = gamma(1 + 2 / 1.5)
  const asymptote = 5 / mean + (square - 2 * mean ** 2) / (2 * mean ** 2)
  expect(asymptote).toBeCloseTo(5.26916008027, 9)
  expect(renewals({ endedBy: endedBy(1.5), until: 5, steps: 400 })).toBeCloseTo(asymptote, 5)
})

// Closed form λt/2 − 1/4 + e^(−2λt)/4 for two exponential phases.
test.each([
  [0.5, 0.283833820809],
  [1, 0.754578909722],
  [2, 1.75008386566],
])('two exponential phases by %f', (until, expected) => {
  const twoPhases = (age: number): number => -Math.expm1(-2 * age) - 2 * age * Math.exp(-2 * age)
  expect(until - 0.25 + Math.exp(-4 * until) / 4).toBeCloseTo(expected, 9)
  expect(Math.abs(renewals({ endedBy: twoPhases, until, steps: 800 }) - expected)).toBeLessThan(1e-9)
})

test.each([
  [2, 1, 0.446245743272],
  [2, 3, 1.04171450863],
  [1.5, 2, 1.14912347842],
])('variance of the number of renewals, shape %f by %f', (shape, until, expected) => {
  expect(Math.abs(renewalVariance({ endedBy: endedBy(shape), until, steps: 200 }) - expected)).toBeLessThan(
    1e-4,
  )
})

test.each([
  [2, 5, 0.507722636849, 4.30758967378, 4.08524179436],
  [3, 10, 0.375813364604, 4.04012748253, 3.94935029915],
])(
  'block replacement, shape %f, failure %f times dearer: never cheaper than by age',
  (shape, failure, age, rate, byAge) => {
    const costs = { failure, planned: 1 }
    const best = bestBlock(shape, costs)
    expectRelative(best.age, age, 1e-4)
    expectRelative(best.costRate, rate, 1e-6)
    expectRelative(bestAge(weibull(shape), costs)!.costRate, byAge, 1e-6)
    expect(best.costRate).toBeGreaterThan(byAge)
  },
)

// Barlow and Hunter (1960), recalled.
test.each([
  [2, 6000, 300, 4000, 21908.9023002, 0.36514837167, 13.3333333333],
  [1.5, 6000, 300, 4000, 53554.6360066, 0.224070237328, 26.6666666667],
  [3, 2000, 150, 6000, 5428.83523319, 1.65781417439, 20],
])('minimal repair, shape %f: when to renew', (shape, scale, repair, renewal, age, rate, repairs) => {
  const best = bestWithMinimalRepair(weibull(shape, scale), { repair, renewal })
  expectRelative(best.age, age, 1e-9)
  expectRelative(best.costRate, rate, 1e-9)
  expectRelative(best.repairs, repairs, 1e-9)
})

test('replaced every n years with minimal repairs between: at the best n the running cost is r times the value', () => {
  const plan = { repair: 800, price: 7000, interest: 0.05 }
  const best = bestEveryNYears(weibull(2, 6), plan)
  expectRelative(best.years, 20.8091341018, 1e-4)
  expectRelative(best.presentValue, 18497.0081083, 1e-6)
  expectRelative(plan.interest * best.presentValue, 924.850405414, 1e-6)
  expectRelative(everyNYears(weibull(2, 6), { ...plan, years: 10 }), 21866.066733, 1e-6)
  const running = plan.repair * (2 / 36) * best.years
  expectRelative(running, plan.interest * best.presentValue, 1e-4)
})

// Value iteration by an independent program; method of Hastings (1969), quoted.
const bills = { price: 6000, discount: 1 / 1.05, meanBills: [0, 400, 600, 900, 1300, 1800, 2400, 3100] }

test('repair limits fall with age', () => {
  const { values, limits } = repairLimits({ ...bills, rule: 'limit' })
  const heldValues = [
    29983.8262769, 31483.0175907, 32637.1704759, 33639.9065273, 34403.3399624, 34926.9413246, 35288.1582633,
    35586.6726234, 35983.8262769,
  ]
  const heldLimits = [
    6000.0, 4900.80677597, 3945.82006041, 3218.74059834, 2720.07263443, 2376.05650229, 2091.75711173,
    1713.51553699,
  ]
  const heldChances = [
    0.0, 4.77547582436e-6, 0.00139290084537, 0.0279768347217, 0.123395138452, 0.267126916678, 0.418296209095,
    0.575367134348,
  ]
  heldValues.forEach((held, age) => {
    expect(Math.abs(values[age]! - held)).toBeLessThan(1e-6)
  })
  heldLimits.forEach((held, age) => {
    expect(Math.abs(limits[age]! - held)).toBeLessThan(1e-6)
    const mean = bills.meanBills[age]!
    expect(mean === 0 ? 0 : Math.exp(-limits[age]! / mean)).toBeCloseTo(heldChances[age]!, 9)
  })
})

test('without a limit the same unit costs more for ever', () => {
  const { values } = repairLimits({ ...bills, rule: 'always mend' })
  const held = [
    37868.3169705, 39761.732819, 41329.81946, 42766.310433, 43959.6259546, 44792.6072523, 45142.237615,
    44879.3494957, 43868.3169705,
  ]
  held.forEach((value, age) => {
    expect(Math.abs(values[age]! - value)).toBeLessThan(1e-6)
  })
  const saving = values[3]! - repairLimits({ ...bills, rule: 'limit' }).values[3]!
  expect(Math.abs(saving - 9126.40390569)).toBeLessThan(1e-6)
})
