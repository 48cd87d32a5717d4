import { expect, test } from 'vitest'
import { shippedCatalogue as catalogue } from '../../test/shipped-limits.js'
import { trialEntry } from '../../test/trial-log.js'
import { catalogueFor } from '../catalogue/scale.js'
import { registerOf } from '../register/register.js'
import { candidatesOf } from './build-replacement.js'

test('sets that were offered can be fitted, at their own prices and days', () => {
  const entries = [
    trialEntry(1, 'set', { ratingKw: 8, rpm: 1500, excitation: 'brushless-regulator', built: '2004' }),
    trialEntry(2, 'candidate', {
      id: 'smaller',
      name: 'a set of 5 kW',
      ratingKw: 5,
      price: 9200,
      fitting: 4200,
      deliveryDays: 30,
      guaranteeYears: 3,
    }),
    trialEntry(3, 'candidate', { id: 'second-hand', ratingKw: 6, used: { years: 6, hours: 900 } }),
    trialEntry(4, 'candidate', { id: 'new-larger', ratingKw: 10, price: 15_000 }),
  ]
  const { offeredSets = [] } = registerOf({
    entries,
    boat: 'trial',
    set: 'main',
    asOf: '2024-01-01',
    catalogue,
  })
  const made = candidatesOf({
    catalogue: catalogueFor(catalogue, { ratingKW: 8, rpm: 1500, excitation: 'brushless-regulator' }),
    paidPerHour: 70,
    fuelPerLitre: 1.5,
    lowLoadShare: 0.4,
    ageYears: 20,
    daysNeeded: 100,
    offered: offeredSets,
  })
  expect(made.map(({ id }) => id)).toEqual([
    'new-smaller',
    'new-same',
    'used-same',
    'smaller',
    'second-hand',
    'new-larger',
  ])
  const of = (id: string) => made.find((one) => one.id === id)!
  expect(of('smaller')).toMatchObject({
    name: 'a set of 5 kW',
    price: 9200,
    install: 4200,
    leadDays: 30,
    guaranteeYears: 3,
  })
  // Parts of a smaller set cost less, and it runs lightly less often.
  expect(of('smaller').partPriceFactor).toBeLessThan(1)
  expect(of('smaller').lowLoadShare).toBeLessThan(0.4)
  expect(of('second-hand')).toMatchObject({ guaranteeYears: 0, used: { years: 6, hours: 900 } })
  expect(of('new-larger').price).toBe(15_000)
})
