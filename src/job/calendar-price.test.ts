import { expect, test } from 'vitest'
import { dayNumber } from '../logbook/dates.js'
import { outagePrices } from './calendar-price.js'

const only = (month: number, value: number) => Array.from({ length: 12 }, (_, i) => (i === month ? value : 0))
const first = dayNumber('2027-03-01')
const day = (date: string) => dayNumber(date)

test('only days that want power count, by the factor of their months, whenever the outage begins', () => {
  const curve = [
    { days: 0, cost: 0 },
    { days: 2, cost: 20 },
    { days: 4, cost: 120 },
  ]
  const byMonth = only(3, 1).map((factor, month) => (month === 4 ? 0.5 : factor))
  const needed = Array.from({ length: 12 }, (_, month) => (month === 3 ? 1 : month === 4 ? 0.5 : 0))
  const price = outagePrices({ loss: { curve, byMonth }, needed }, { first, count: 120 })
  expect(price({ from: day('2027-03-05'), until: day('2027-03-30') })).toBe(0)
  // three days of April, half way up the second piece of the curve
  expect(price({ from: day('2027-03-05'), until: day('2027-04-04') })).toBe(70)
  expect(price({ from: day('2027-04-01') + 0.5, until: day('2027-04-02') + 0.5 })).toBe(10)
  // two days of April and two halves of May: 3 days at a mean factor of (2 × 1 + 1 × 0.5)/3
  expect(price({ from: day('2027-04-29'), until: day('2027-05-03') })).toBeCloseTo(70 * (2.5 / 3), 9)
  expect(price({ from: day('2027-04-05'), until: day('2027-04-05') })).toBe(0)
})
