import fc from 'fast-check'
import { expect, test } from 'vitest'
import { threefryUniform } from '../forecast/threefry.js'
import { earliestTimes, emptyTimes, latestTimes, longestWay, networkOf, type Step } from './network.js'

const step = (name: string, ...after: string[]): Step => ({ name, after })

function passes(steps: readonly Step[], days: Readonly<Record<string, number>>) {
  const made = networkOf(steps)
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  const { network } = made
  const lasts = network.steps.map(({ name }) => days[name]!)
  const early = emptyTimes(lasts.length)
  const finish = earliestTimes(network, { from: 0, endOf: (i, start) => start + lasts[i]!, into: early })
  const late = emptyTimes(lasts.length)
  latestTimes(network, { until: finish, startOf: (i, end) => end - lasts[i]!, into: late })
  const way = longestWay(network, early)
  const named = (list: ArrayLike<number>) =>
    Object.fromEntries(network.steps.map(({ name }, i) => [name, list[i]!]))
  return {
    finish,
    early: named(early.starts),
    late: named(late.starts),
    way: network.steps.flatMap(({ name }, i) => (way[i] ? [name] : [])).toSorted(),
  }
}

test('times, slack and the longest way of a worked network', () => {
  // Worked by hand, and laid out as in textbooks of the method (eight activities, two dummy-free joins; derived):
  // A 3, B 4 | C 2 after A, D 5 after A, E 1 after B | F 2 after C, G 4 after D and E, H 3 after F and G.
  const found = passes(
    [
      step('h', 'f', 'g'),
      step('a'),
      step('b'),
      step('c', 'a'),
      step('d', 'a'),
      step('e', 'b'),
      step('f', 'c'),
      step('g', 'd', 'e'),
    ],
    { a: 3, b: 4, c: 2, d: 5, e: 1, f: 2, g: 4, h: 3 },
  )
  expect(found.finish).toBe(15)
  expect(found.early).toEqual({ a: 0, b: 0, c: 3, d: 3, e: 4, f: 5, g: 8, h: 12 })
  expect(found.late).toEqual({ a: 0, b: 3, c: 8, d: 3, e: 7, f: 10, g: 8, h: 12 })
  expect(found.way).toEqual(['a', 'd', 'g', 'h'])
})

test('times and slack of a published exercise of fourteen', () => {
  // A page of worked answers to an exercise on the method: days by (a + 4m + b)/6 and its table of times, to two places; seen.
  const days = {
    ...{ a: 5.33, b: 2.33, c: 5, d: 8.17, e: 9.67, f: 4.67, g: 5.83 },
    ...{ h: 4.33, i: 6.67, j: 4.17, k: 9.83, l: 5.33, m: 2.17, n: 7.83 },
  }
  const { early, late } = passes(
    [
      ...[step('a'), step('b'), step('c', 'a'), step('d', 'a'), step('e', 'b', 'c'), step('f', 'd')],
      ...[step('g', 'd'), step('h', 'e', 'f'), step('i', 'g', 'h'), step('j', 'i'), step('k', 'i')],
      ...[step('l', 'j'), step('m', 'k'), step('n', 'l', 'm')],
    ],
    days,
  )
  const starts = {
    a: [0, 0],
    b: [0, 8],
    c: [5.33, 5.33],
    d: [5.33, 7.17],
    e: [10.33, 10.33],
    f: [13.5, 15.33],
  }
  for (const [name, [first, last]] of Object.entries(starts)) {
    expect(Math.abs(early[name]! - first!)).toBeLessThan(0.011)
    expect(Math.abs(late[name]! - last!)).toBeLessThan(0.011)
  }
})

test('the longest of several exponential or uniform waits, and their sum, have the means of the closed forms', () => {
  const histories = 4000
  const many = (after: (i: number) => string[], draw: (u: number) => number) => {
    const made = networkOf([0, 1, 2].map((i) => step(`s${i}`, ...after(i))))
    if (!made.ok) throw new Error('it must be a network')
    const into = emptyTimes(3)
    let sum = 0
    for (let h = 0; h < histories; h++) {
      const endOf = (i: number, start: number) => start + draw(threefryUniform(3, i, h, 0))
      sum += earliestTimes(made.network, { from: 0, endOf, into })
    }
    return sum / histories
  }
  const exponential = (u: number) => -Math.log(u)
  const atOnce = () => []
  const inTurn = (i: number) => (i === 0 ? [] : [`s${i - 1}`])
  // exponential: 1 + 1/2 + 1/3, and 3; uniform: 3/4, and 3/2 (derived)
  const near = (found: number, mean: number, variance: number) =>
    expect(Math.abs(found - mean)).toBeLessThan(4 * Math.sqrt(variance / histories))
  near(many(atOnce, exponential), 1 + 1 / 2 + 1 / 3, 1 + 1 / 4 + 1 / 9)
  near(many(inTurn, exponential), 3, 3)
  near(
    many(atOnce, (u) => u),
    3 / 4,
    3 / 80,
  )
  near(
    many(inTurn, (u) => u),
    3 / 2,
    3 / 12,
  )
})

test('every circle is named with its members, every name that is none with those that are', () => {
  const made = networkOf([
    step('order'),
    step('open', 'order', 'close'),
    step('fit', 'open'),
    step('close', 'fit'),
    step('ring', 'ring'),
    step('prove', 'close', 'tide'),
    step('order'),
  ])
  if (made.ok) throw new Error('the circles must be found')
  expect(made.problems.map(({ code, found }) => [code, found])).toEqual([
    ['named-twice', 'order'],
    ['unknown-activity', 'tide'],
    ['activities-in-a-circle', expect.stringMatching(/^(open|fit|close)( after (open|fit|close)){3}$/)],
    ['activities-in-a-circle', 'ring after ring'],
  ])
  expect(made.problems[1]!.allowed).toContain('order, open, fit, close, ring')
})

/** Steps that follow some of those before them, given in any order. */
const anyNetwork = fc
  .array(fc.tuple(fc.nat(20), fc.array(fc.nat(40), { maxLength: 3 })), { minLength: 1, maxLength: 14 })
  .chain((list) =>
    fc.shuffledSubarray(
      list.map(([days, behind], i) => ({
        name: `s${i}`,
        after: i === 0 ? [] : [...new Set(behind.map((one) => `s${one % i}`))],
        days,
      })),
      { minLength: list.length },
    ),
  )

test('nothing begins before what it follows is over, and delay within the slack moves no finish', () => {
  fc.assert(
    fc.property(anyNetwork, (steps) => {
      const days = Object.fromEntries(steps.map(({ name, days }) => [name, days]))
      const { finish, early, late, way } = passes(steps, days)
      for (const { name, after } of steps) {
        for (const one of after) expect(early[name]).toBeGreaterThanOrEqual(early[one]! + days[one]!)
        const slack = late[name]! - early[name]!
        expect(slack).toBeGreaterThanOrEqual(0)
        expect(passes(steps, { ...days, [name]: days[name]! + slack }).finish).toBe(finish)
        expect(passes(steps, { ...days, [name]: days[name]! + slack + 1 }).finish).toBe(finish + 1)
      }
      expect(way.reduce((most, name) => Math.max(most, early[name]! + days[name]!), 0)).toBe(finish)
      for (const name of way) expect(late[name]).toBe(early[name])
    }),
    { numRuns: 60 },
  )
})
