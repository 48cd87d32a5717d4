import { describe, expect, test } from 'vitest'
import { economicLife } from './economic-life.js'

/** A flow that goes on all the time against payments at the ends of years: A_end = A_flow (e^r − 1)/r. */
const perYear = Math.log(1.08)
const atYearEnds = (flow: number) => (flow * 0.08) / perYear

/** Present values at year ends of a price, yearly costs and what a life's end fetches. */
const presentValues = (price: number, costs: readonly number[], fetches: readonly number[]) =>
  costs.map((_, k) => ({
    years: k + 1,
    presentValue: {
      mean:
        price +
        costs.slice(0, k + 1).reduce((sum, cost, j) => sum + cost / 1.08 ** (j + 1), 0) -
        (fetches[k] ?? 0) / 1.08 ** (k + 1),
      standardError: 0,
    },
  }))

describe('equivalent annual cost at 8 %', () => {
  // Worked from the formula to the cent; the case is of the kind of Newnan's economic life of a challenger; recalled.
  test('of a price of 7,500 with costs of 500 that rise by 1,300 a year is least at four years', () => {
    const costs = Array.from({ length: 7 }, (_, k) => 500 + 1300 * k)
    const { lives, best } = economicLife(presentValues(7500, costs, []), perYear)
    const published = [8600, 5330.77, 4643.62, 4589.55, 4778.84, 5081.62, 5442.31]
    lives.forEach(({ costPerYear }, k) => {
      expect(atYearEnds(costPerYear)).toBeCloseTo(published[k]!, 2)
    })
    expect(best.years).toBe(4)
  })

  // A defender's market value falls 2,500, 1,900, 1,500, 1,200; running 2,300, 2,900, 3,600: worked from the formula; recalled.
  test('of an old set counts what it would fetch today', () => {
    const { lives } = economicLife(presentValues(2500, [2300, 2900, 3600], [1900, 1500, 1200]), perYear)
    expect(lives.map(({ costPerYear }) => atYearEnds(costPerYear).toFixed(2))).toEqual([
      '3100.00',
      '3269.23',
      '3500.49',
    ])
  })
})

test('without interest it is the mean a year', () => {
  const presentValue = { mean: 5000, standardError: 50 }
  expect(economicLife([{ years: 5, presentValue }], 0).best).toEqual({
    years: 5,
    costPerYear: 1000,
    error: 10,
  })
})
