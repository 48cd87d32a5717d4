import { expect, test } from 'vitest'
import { dayPrice } from '../../alternatives/answer-view.js'
import { dayPriceOf } from './day-price.js'

test('pages and workers reckon the price of a day alike', () => {
  const byMonth = Array.from({ length: 12 }, () => 1)
  const curves = [
    [
      { days: 0, cost: 0 },
      { days: 1, cost: 40 },
      { days: 7, cost: 520 },
    ],
    [{ days: 2, cost: 60 }],
    [{ days: 0, cost: 0 }],
  ]
  const prices = curves.map((curve) => dayPriceOf({ powerLoss: { curve, byMonth } }))
  expect(prices).toEqual([80, 30, 0])
  expect(prices).toEqual(curves.map((curve) => dayPrice({ powerLoss: { curve, byMonth } })))
})
