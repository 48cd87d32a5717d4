import { expect, test } from 'vitest'
import { shippedCatalogue } from '../../test/shipped-limits.js'
import { trialModel } from '../../test/trial-model.js'
import { meanOf } from '../alternatives/sum-of-amounts.js'
import { normalQuantile } from '../forecast/special-normal.js'
import { meanPriceOf, priceOf, priceOfOutage, waitOf } from './quotes-wait.js'

const month = 365.25 / 12
/** Wanted every second day in winter and never from April on; the first day is free, then 10, from the third 50 a day. */
const model = {
  startMonth: 1.5,
  use: {
    hoursByMonth: Array(12).fill(0),
    startsByMonth: Array(12).fill(0),
    lowLoadShare: 0,
    powerNeededByMonth: [0.5, 0.5, 0.5, ...Array(9).fill(0)],
  },
  powerLoss: {
    curve: [
      { days: 1, cost: 0 },
      { days: 3, cost: 20 },
      { days: 4, cost: 70 },
    ],
    byMonth: [1, 2, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1],
  },
}

test('the price of an outage is the curve at its wanted days, times the month in which it begins', () => {
  const price = priceOfOutage(model, 0)
  expect(priceOf(price, 2)).toBeCloseTo(0, 9)
  // four days hold two that are wanted
  expect(priceOf(price, 4)).toBeCloseTo(2 * 10, 9)
  expect(priceOf(price, 8)).toBeCloseTo(2 * 70, 9)
  // to the end of March: half of a month and a half is wanted; nothing more after it, until the winter comes round
  const wanted = 0.75 * month
  const spring = 2 * (70 + (wanted - 4) * 50)
  expect(priceOf(price, 1.5 * month)).toBeCloseTo(spring, 6)
  expect(priceOf(price, 6 * month)).toBeCloseTo(spring, 6)
  // begun in March it is half as dear
  expect(priceOf(priceOfOutage(model, 0.6 * month), 8)).toBeCloseTo(70, 9)
})

test('the mean price is what a sum over even steps of chance finds', () => {
  const price = priceOfOutage(model, 0)
  const days = { median: 9, logSd: 0.5 }
  const steps = 20_000
  const sum = Array.from({ length: steps }, (_, i) =>
    priceOf(price, 9 * Math.exp(0.5 * normalQuantile((i + 0.5) / steps))),
  ).reduce((total, value) => total + value / steps, 0)
  expect(meanPriceOf(price, days)).toBeCloseTo(sum, 1)
  expect(meanPriceOf(price, 8)).toBeCloseTo(priceOf(price, 8), 9)
})

test('of a set that stands all of the wait counts, of one that runs the work', () => {
  const part = (broken?: string) =>
    trialModel(
      [
        {
          id: 'pump',
          ...(broken === undefined ? {} : { broken }),
          repair: { hours: 12, workshopDays: 3, supply: [{ chance: 1, days: 20 }] },
          modes: [{ id: 'leak', clock: 'years', shape: 2, scale: 10 }],
        },
      ],
      { labour: { hoursPerDay: 6 } },
    )
  const covers = { parts: [{ part: 'pump', did: 'renewed' as const }] }
  const of = (offer: object, broken?: string) =>
    waitOf({ covers, ...offer }, { model: part(broken), offers: shippedCatalogue.offers })
  expect(of({})).toMatchObject({ days: 5, beginsIn: 0, by: 'usual', stands: false })
  expect(of({}, 'leak')).toMatchObject({ days: 25, by: 'usual', stands: true })
  expect(of({ days: 30 })).toMatchObject({ days: 5, beginsIn: 25, by: 'usual' })
  expect(of({ days: 30 }, 'leak')).toMatchObject({ days: { median: 34.5, logSd: 0.3 }, beginsIn: 0 })
  expect(of({ days: 30, daysOut: 4 })).toMatchObject({ days: { median: 4.6 }, beginsIn: 26, by: 'promised' })
  expect(meanOf(of({ days: 30, daysOut: 4 }, 'leak').days)).toBeCloseTo(34.5 * Math.exp(0.045), 9)
})
