import fc from 'fast-check'
import { expect, test } from 'vitest'
import { threefryUniform } from '../forecast/threefry.js'
import { drawOf, type Lasts, momentsOf, usualDays } from './calendar-lasts.js'

const histories = 4000

function drawn(lasts: Lasts, gone = 0): number[] {
  const draw = drawOf(lasts)
  return Array.from({ length: histories }, (_, h) => draw((n) => threefryUniform(1, n, h, 0), gone))
}

function meanAndSd(list: readonly number[]) {
  const mean = list.reduce((sum, each) => sum + each, 0) / list.length
  const variance = list.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (list.length - 1)
  return { mean, sd: Math.sqrt(variance), error: Math.sqrt(variance / list.length) }
}

const work: Lasts = { is: 'three-point', low: 4, usual: 6, high: 14 }
const delivery: Lasts = {
  is: 'delivery',
  ways: [
    { chance: 0.4, median: 2, logSd: 0.4 },
    { chance: 0.6, median: 12, logSd: 0.4 },
  ],
  wrongChance: 0.2,
}

test('what is drawn has the mean of the formulas, and the spread of its own law', () => {
  const ofWork = meanAndSd(drawn(work))
  expect(Math.abs(ofWork.mean - 7)).toBeLessThan(4 * ofWork.error)
  // the beta's own variance, (μ − a)(b − μ)/7 (derived), not the published ((b − a)/6)²
  expect(ofWork.sd / Math.sqrt((3 * 7) / 7)).toBeCloseTo(1, 1)
  const ofDelivery = meanAndSd(drawn(delivery))
  const { mean, sd } = momentsOf(delivery)
  expect(Math.abs(ofDelivery.mean - mean)).toBeLessThan(4 * ofDelivery.error)
  expect(ofDelivery.sd / sd).toBeCloseTo(1, 1)
})

test('of what is under way, the days to come are those of the draws that last longer', () => {
  for (const lasts of [work, { ...delivery, wrongChance: 0 } satisfies Lasts]) {
    const longer = meanAndSd(drawn(lasts).filter((days) => days > 8))
    const found = meanAndSd(drawn(lasts, 8))
    expect(Math.abs(found.mean - longer.mean)).toBeLessThan(4 * Math.hypot(found.error, longer.error))
  }
})

test('nothing lasts less than is gone, or less than the least; what is past the most is over', () => {
  fc.assert(
    fc.property(
      fc.tuple(fc.nat(30), fc.nat(30), fc.nat(30)),
      fc.double({ min: 0, max: 60, noNaN: true }),
      fc.double({ min: 0.001, max: 0.999, noNaN: true }),
      (three, gone, u) => {
        const [low, usual, high] = three.toSorted((a, b) => a - b) as [number, number, number]
        const days = drawOf({ is: 'three-point', low, usual, high })(() => u, gone)
        expect(days).toBeGreaterThanOrEqual(Math.max(low, gone) - 1e-9)
        expect(days).toBeLessThanOrEqual(Math.max(high, gone) + 1e-9)
      },
    ),
    { numRuns: 60 },
  )
})

test('the usual wait is as likely too short as too long', () => {
  expect(
    usualDays({ is: 'delivery', ways: [{ chance: 1, median: 9, logSd: 0.4 }], wrongChance: 0 }),
  ).toBeCloseTo(9, 9)
  const middle = usualDays({ ...delivery, wrongChance: 0 })
  const sooner = drawn({ ...delivery, wrongChance: 0 }).filter((days) => days <= middle).length
  expect(sooner / histories).toBeCloseTo(0.5, 1)
})
