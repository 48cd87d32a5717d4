import fc from 'fast-check'
import { expect, test } from 'vitest'
import { lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { lifeSpans, monthByMonth, monthsAhead, weightedQuantile } from './month-by-month.js'

/** One part that fails by the calendar alone, as new, whose odds are those of a Weibull life. */
const shape = 1.7
const scale = 2.5
function modelOf(kappaLogSd: number) {
  return lifeModelSchema.parse({
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 5,
    startMonth: 9.5,
    setFactor: { boatLogSd: kappaLogSd, setLogSd: 0 },
    parts: [{ id: 'pump', modes: [{ id: 'wear', clock: 'years', shape, scale }] }],
  })
}

test('by the end of each month the odds are those of the life itself', () => {
  const model = modelOf(0)
  const asked = { seed: 4, months: 30, livesPerNode: 20_000 }
  const { months, parts, stopping } = monthByMonth(model, posteriorOf(model, { seed: 1 }), asked)
  for (const [k, { ends }] of months.entries()) {
    const expected = 1 - Math.exp(-((ends / scale) ** shape))
    expect(Math.abs(parts[0]!.failing[k]! - expected)).toBeLessThan(
      5 * Math.sqrt((expected * (1 - expected)) / asked.livesPerNode) + 1e-4,
    )
    expect(stopping.expected[k]).toBeCloseTo(parts[0]!.failing[k]!, 10)
    expect(stopping.low[k]).toBeCloseTo(stopping.high[k]!, 10)
  }
})

test('where nobody knows how good the set is, low and high lie apart with the expected between', () => {
  const model = modelOf(0.5)
  const asked = { seed: 4, months: 24, livesPerNode: 400 }
  const { stopping } = monthByMonth(model, posteriorOf(model, { seed: 1 }), asked)
  const last = stopping.expected.length - 1
  expect(stopping.low[last]!).toBeLessThan(stopping.expected[last]! - 0.05)
  expect(stopping.high[last]!).toBeGreaterThan(stopping.expected[last]! + 0.05)
})

test('months are those of the calendar, from the one it is', () => {
  const use = {
    hoursByMonth: [0, 0, 0, 20, 20, 20, 20, 20, 20, 20, 0, 0],
    startsByMonth: [],
    powerNeededByMonth: [],
    lowLoadShare: 0,
  }
  const months = monthsAhead({ startMonth: 9.75, use }, 5)
  expect(months.map(({ month, yearsOn, laidUp }) => [month, yearsOn, laidUp])).toEqual([
    [9, 0, false],
    [10, 0, true],
    [11, 0, true],
    [0, 1, true],
    [1, 1, true],
  ])
  expect(months[0]!.ends).toBeCloseTo(0.25 / 12, 12)
  expect(months[4]!.ends).toBeCloseTo(4.25 / 12, 12)
})

test('ages by which parts have gone are the quantiles of the life', () => {
  const model = modelOf(0)
  const [span] = lifeSpans(model, posteriorOf(model, { seed: 1 }), { seed: 3 })
  const quantile = (share: number) => scale * (-Math.log(1 - share)) ** (1 / shape)
  expect(span!.tenth / quantile(0.1)).toBeCloseTo(1, 0)
  expect(span!.half / quantile(0.5)).toBeGreaterThan(0.93)
  expect(span!.half / quantile(0.5)).toBeLessThan(1.07)
  expect(span!.ninth / quantile(0.9)).toBeGreaterThan(0.93)
  expect(span!.ninth / quantile(0.9)).toBeLessThan(1.07)
})

test('a weighted quantile lies within the values, rises with its share, and is the middle of two even ones', () => {
  const value = fc.double({ min: -10, max: 10, noNaN: true })
  const drawn = fc.array(fc.record({ value, weight: fc.double({ min: 0.01, max: 1, noNaN: true }) }), {
    minLength: 1,
    maxLength: 9,
  })
  fc.assert(
    fc.property(drawn, (list) => {
      const values = list.map((each) => each.value)
      const weights = list.map((each) => each.weight)
      const [a, b] = [0.1, 0.9].map((share) => weightedQuantile({ values, weights, share }))
      expect(a).toBeLessThanOrEqual(b!)
      expect(a).toBeGreaterThanOrEqual(Math.min(...values))
      expect(b).toBeLessThanOrEqual(Math.max(...values))
    }),
  )
  expect(weightedQuantile({ values: [3, 1], weights: [1, 1], share: 0.5 })).toBe(2)
})
