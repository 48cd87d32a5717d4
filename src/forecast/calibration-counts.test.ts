import fc from 'fast-check'
import { expect, test } from 'vitest'
import { countChances, expectedCounts, shareInterval } from './calibration-counts.js'

const chances = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 9 })

/** Every way in which the events can fall out, one by one. */
function byEnumeration(list: readonly number[]): number[] {
  const sums = new Array<number>(list.length + 1).fill(0)
  for (let ways = 0; ways < 1 << list.length; ways++) {
    let chance = 1
    let count = 0
    list.forEach((p, i) => {
      const comes = (ways >> i) & 1
      chance *= comes ? p : 1 - p
      count += comes
    })
    sums[count]! += chance
  }
  return sums
}

test('chances of counts are those of going through every way in which it can fall out', () => {
  fc.assert(
    fc.property(chances, (list) => {
      const each = countChances(list)
      byEnumeration(list).forEach((chance, k) => {
        expect(each[k]!).toBeCloseTo(chance, 12)
      })
    }),
  )
})

test('equal chances give the binomial: ten of a half, to the printed digits of its tables', () => {
  // 252, 210 and 1 of 1,024. Derived.
  const each = countChances(Array<number>(10).fill(0.5))
  expect(each[5]!).toBeCloseTo(252 / 1024, 14)
  expect(each[4]!).toBeCloseTo(210 / 1024, 14)
  expect(each[10]!).toBeCloseTo(1 / 1024, 14)
})

test('bounds hold at least what they promise, and one event less on either side would not', () => {
  fc.assert(
    fc.property(chances, (list) => {
      const { low, high } = expectedCounts(list, 0.9)
      const each = countChances(list)
      const sum = (from: number, to: number) => each.slice(from, to).reduce((a, b) => a + b, 0)
      expect(sum(0, low)).toBeLessThanOrEqual(0.05 + 1e-12)
      expect(sum(high + 1, each.length)).toBeLessThanOrEqual(0.05 + 1e-12)
      expect(sum(0, low + 1)).toBeGreaterThan(0.05 - 1e-12)
      expect(sum(high, each.length)).toBeGreaterThan(0.05 - 1e-12)
    }),
  )
})

test('no chances at all leave nothing to expect', () => {
  expect(expectedCounts([], 0.9)).toEqual({ low: 0, high: 0 })
  expect(expectedCounts([0, 0], 0.9)).toEqual({ low: 0, high: 0 })
  expect(expectedCounts([1, 1, 0], 0.9)).toEqual({ low: 2, high: 2 })
})

test.each([
  // Of no event in n the upper bound is 1 − (tail)^(1/n), of n in n the lower one (tail)^(1/n). Derived.
  { events: 0, trials: 20, confidence: 0.95, low: 0, high: 1 - 0.025 ** (1 / 20) },
  { events: 5, trials: 5, confidence: 0.9, low: 0.05 ** (1 / 5), high: 1 },
])('the interval of $events in $trials in closed form', ({ low, high, ...seen }) => {
  expect(shareInterval(seen).low).toBeCloseTo(low, 10)
  expect(shareInterval(seen).high).toBeCloseTo(high, 10)
})

test.each([
  // Tables of exact 95 % limits, to four digits. Held: recalled.
  { events: 1, trials: 10, low: 0.0025, high: 0.445 },
  { events: 4, trials: 20, low: 0.0573, high: 0.4366 },
  { events: 15, trials: 148, low: 0.0578, high: 0.1617 },
])('the interval of $events in $trials as tabled', ({ low, high, ...seen }) => {
  const found = shareInterval({ ...seen, confidence: 0.95 })
  expect(found.low).toBeCloseTo(low, 4)
  expect(found.high).toBeCloseTo(high, 4)
})

test('at its bounds the interval leaves the tails it says, counted from the binomial itself', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 0, max: 40 }), (trials, k) => {
      const events = Math.min(k, trials)
      const { low, high } = shareInterval({ events, trials, confidence: 0.9 })
      const tail = (share: number, from: number, to: number) =>
        countChances(Array<number>(trials).fill(share))
          .slice(from, to)
          .reduce((a, b) => a + b, 0)
      if (events > 0) expect(tail(low, events, trials + 1)).toBeCloseTo(0.05, 9)
      if (events < trials) expect(tail(high, 0, events + 1)).toBeCloseTo(0.05, 9)
    }),
  )
})

test('what cannot be is thrown', () => {
  expect(() => countChances([1.2])).toThrow('chance must be')
  expect(() => shareInterval({ events: 3, trials: 2, confidence: 0.9 })).toThrow('events must be')
  expect(() => shareInterval({ events: 0, trials: 0, confidence: 0.9 })).toThrow('trials must be')
})
