import fc from 'fast-check'
import { expect, test } from 'vitest'
import { shippedCatalogue } from '../../test/shipped-limits.js'
import { trialEntry } from '../../test/trial-log.js'
import { handsOnHours, openingHours } from '../catalogue/work-hours.js'
import { registerOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { estimateOf, spanOf } from './estimate.js'

const entries = [
  trialEntry(1, 'boat', { name: 'Trial', currency: 'EUR' }),
  trialEntry(2, 'set', { ratingKw: 10, volts: [230], hertz: 50, rpm: 1500, built: '2010' }),
  trialEntry(3, 'terms', {
    paidPerHour: 80,
    ownPerHour: 10,
    travelPerTrip: 60,
    ownerDoes: ['minor'],
  }),
]
const register = registerOf({
  entries,
  boat: 'trial',
  set: 'main',
  asOf: '2026-11-25',
  catalogue: shippedCatalogue,
})
const { catalogue } = setCatalogueOf(register, shippedCatalogue)
const renew = (part: string) => ({ part, did: 'renewed' as const })
const known = { register, catalogue }
const partOf = (id: string) => catalogue.parts.find((part) => part.id === id)!

test('an owner’s job: the piece, own hours and opening, and nobody comes', () => {
  const belt = partOf('drive-belt')
  const found = estimateOf([renew('drive-belt')], known)
  const hands = handsOnHours(catalogue.access, belt).owner
  const opening = openingHours(catalogue.access, belt.access.opens).owner
  expect(found.hours).toEqual({ owner: expect.closeTo(hands + opening, 9), paid: 0 })
  expect(found.money).toBeCloseTo(belt.price.original.typical + 10 * (hands + opening), 6)
  expect(found.days).toBeCloseTo((hands + opening) / 6, 9)
  // each way in comes after those that it includes
  const order = found.ways.map(({ id }) => id)
  for (const way of found.ways) {
    for (const other of way.includes) expect(order.indexOf(other)).toBeLessThan(order.indexOf(way.id))
  }
})

test('with a workshop’s part in it, opening is paid and the way is paid once', () => {
  const found = estimateOf([renew('drive-belt'), renew('stator-winding')], known)
  const alone = estimateOf([renew('stator-winding')], known)
  expect(found.hours.paid).toBeGreaterThan(0)
  const belt = handsOnHours(catalogue.access, partOf('drive-belt')).owner
  expect(found.hours.owner).toBeCloseTo(belt, 9)
  expect(found.money - alone.money).toBeLessThan(estimateOf([renew('drive-belt')], known).money + 80 * 2)
})

test('a look takes the opening alone, cleaning no piece; what the catalogue has not is named', () => {
  const look = estimateOf([{ part: 'drive-belt', did: 'opened' }], known)
  expect(look.parts[0]).toMatchObject({ hours: 0, pieces: 0 })
  expect(look.hours.owner).toBeGreaterThan(0)
  expect(estimateOf([{ part: 'sea-strainer', did: 'cleaned' }], known).parts[0]).toMatchObject({ pieces: 0 })
  expect(estimateOf([renew('flux-coil')], known)).toMatchObject({ unknown: ['flux-coil'], money: 0 })
})

test('ways in that parts share are opened once, whatever the order of the parts', () => {
  const ids = catalogue.parts.map(({ id }) => id)
  fc.assert(
    fc.property(fc.subarray(ids, { minLength: 1, maxLength: 6 }), (some) => {
      const all = estimateOf(some.map(renew), known)
      const turned = estimateOf(some.toReversed().map(renew), known)
      expect(turned.money).toBeCloseTo(all.money, 6)
      expect(turned.ways.map(({ id }) => id)).toEqual(all.ways.map(({ id }) => id))
      expect(new Set(all.ways).size).toBe(all.ways.length)
    }),
    { numRuns: 40 },
  )
})

test('the span of a log-normal: e^(±1.2816 σ) about its median', () => {
  const { low, middle, high } = spanOf(1000, { median: 1.1, logSd: 0.2 })
  expect(middle).toBeCloseTo(1100, 9)
  // Φ(1.2816) = 0.9 (standard normal table, seen)
  expect(Math.log(high / middle) / 0.2).toBeCloseTo(1.2816, 4)
  expect(low * high).toBeCloseTo(middle ** 2, 6)
})
