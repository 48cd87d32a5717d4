import { expect, test } from 'vitest'
import { normalQuantile } from '../forecast/special-normal.js'
import { threefryUniform } from '../forecast/threefry.js'
import { earliestTimes, emptyTimes, longestWay, networkOf } from './network.js'
import { betaShapeOf, finishByFormula, largerOf, threePointMoments } from './network-pert.js'

// Formulas: Malcolm, Roseboom, Clark and Fazar 1959, and Clark 1961 (both recalled). The figures of these cases were worked
// from the formulas apart from this program (derived).

const points = {
  a: { low: 5, usual: 8, high: 17 },
  b: { low: 1, usual: 2, high: 3 },
  c: { low: 1, usual: 1, high: 4 },
  d: { low: 4, usual: 6, high: 14 },
  e: { low: 2, usual: 3, high: 4 },
  f: { low: 0.5, usual: 1, high: 1.5 },
}
const after: Readonly<Record<string, string[]>> = { c: ['b'], d: ['c'], e: ['a', 'd'], f: ['e'] }

test('three points give the published mean and variance', () => {
  const moments = Object.values(points).map(threePointMoments)
  expect(moments.map(({ mean }) => mean)).toEqual([9, 2, 1.5, 7, 3, 1])
  const variances = [4, 1 / 9, 0.25, 25 / 9, 1 / 9, 1 / 36]
  moments.forEach(({ sd }, i) => {
    expect(sd ** 2).toBeCloseTo(variances[i]!, 12)
  })
})

test('the beta that is drawn from has the published mean', () => {
  for (const three of Object.values(points)) {
    const { towardsOne, towardsZero } = betaShapeOf(three)
    const mean = three.low + ((three.high - three.low) * towardsOne) / (towardsOne + towardsZero)
    expect(mean).toBeCloseTo(threePointMoments(three).mean, 12)
  }
})

test('a network of six by both formulas: the meeting of two chains costs what one chain alone does not show', () => {
  const made = networkOf(Object.keys(points).map((name) => ({ name, after: after[name] ?? [] })))
  if (!made.ok) throw new Error('it must be a network')
  const { network } = made
  const moments = network.steps.map(({ name }) => threePointMoments(points[name as keyof typeof points]))
  const { chain, met } = finishByFormula(network, moments)
  expect(chain.mean).toBeCloseTo(14.5, 12)
  expect(chain.sd ** 2).toBeCloseTo(3.277777777778, 10)
  expect(met.mean).toBeCloseTo(14.9796213056, 9)
  expect(met.sd ** 2).toBeCloseTo(2.43678387176 + 1 / 9 + 1 / 36, 9)
})

test('the same network played with normal days: finish, and how often each chain is the longest', () => {
  const made = networkOf(Object.keys(points).map((name) => ({ name, after: after[name] ?? [] })))
  if (!made.ok) throw new Error('it must be a network')
  const { network } = made
  const moments = network.steps.map(({ name }) => threePointMoments(points[name as keyof typeof points]))
  const histories = 20_000
  const into = emptyTimes(6)
  const a = network.steps.findIndex(({ name }) => name === 'a')
  let sum = 0
  let squares = 0
  let onA = 0
  for (let h = 0; h < histories; h++) {
    const lasts = moments.map(({ mean, sd }, i) => mean + sd * normalQuantile(threefryUniform(11, i, h, 0)))
    const finish = earliestTimes(network, { from: 0, endOf: (i, start) => start + lasts[i]!, into })
    sum += finish
    squares += finish ** 2
    if (longestWay(network, into)[a]) onA++
  }
  const mean = sum / histories
  const error = Math.sqrt((squares / histories - mean ** 2) / histories)
  expect(Math.abs(mean - 14.9796213056)).toBeLessThan(4 * error)
  const share = 0.287260882825
  expect(Math.abs(onA / histories - share)).toBeLessThan(4 * Math.sqrt((share * (1 - share)) / histories))
  const chain = { mean: 10.5, sd: Math.sqrt(1 / 9 + 0.25 + 25 / 9) }
  expect(largerOf({ mean: 9, sd: 2 }, chain).firstIsLarger).toBeCloseTo(share, 9)
})

test.each([
  [[0, 1], [0, 1], 0, [0.5641895835, 0.6816901138, 0.5]],
  [[10, 2], [12, 3], 0.5, [12.3435, 7.07079, 0.224846]],
  [[20, 4], [20, 4], 0.8, [21.0093, 14.9814, 0.5]],
  [[15, 1], [10, 1], 0, [15.0001, 0.999641, 0.999797]],
] as const)(
  'the larger of N%j and N%j with correlation %d',
  (one, other, correlation, [mean, variance, first]) => {
    const found = largerOf({ mean: one[0], sd: one[1] }, { mean: other[0], sd: other[1] }, { correlation })
    expect(found.mean / mean).toBeCloseTo(1, 5)
    expect(found.sd ** 2 / variance).toBeCloseTo(1, 5)
    expect(found.firstIsLarger).toBeCloseTo(first, 6)
  },
)

test('the larger of two that move as one is the one that lies higher', () => {
  const low = { mean: 3, sd: 2 }
  expect(largerOf(low, { mean: 5, sd: 2 }, { correlation: 1 })).toEqual({ mean: 5, sd: 2, firstIsLarger: 0 })
  expect(largerOf(low, low, { correlation: 1 })).toEqual({ ...low, firstIsLarger: 0.5 })
})
