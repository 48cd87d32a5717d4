import { expect, test } from 'vitest'
import { shippedCatalogue } from '../../test/shipped-limits.js'
import { unitOf } from '../catalogue/figure-unit.js'
import { valueAt } from '../catalogue/path.js'
import { catalogueFor } from '../catalogue/scale.js'
import { leavable } from '../logbook/bodies-work.js'
import { leftOutOf, type Scope } from './left-out.js'
import { meanOf } from './sum-of-amounts.js'

const catalogue = catalogueFor(shippedCatalogue, {
  ratingKW: 10,
  rpm: 1500,
  excitation: 'brushless-regulator',
})
const labour = {
  paidPerHour: 100,
  ownPerHour: 10,
  perTrip: 80,
  hoursPerDay: 6,
  overrun: { median: 1, logSd: 0 },
  ownerAccessFactor: 1,
}
const known = { model: { labour }, catalogue }
const rewind: Scope = { withTax: 2000, covers: { parts: [{ part: 'stator-winding', did: 'renewed' }] } }
const bearing: Scope = { withTax: 400, covers: { parts: [{ part: 'outboard-bearing', did: 'renewed' }] } }
const ofWork = (work: Parameters<typeof leftOutOf>[0], scope: Scope) => leftOutOf(work, scope, known)

test('removal and refitting make the whole of opening, with the hands of what goes ashore', () => {
  // the alternator apart, its end and the panels: 7 + 1.2 + 0.25 hours; drawing the stator the rest of its 13
  const [out, back] = [ofWork('removal', rewind), ofWork('refitting', rewind)]
  expect(out.hours! + back.hours!).toBeCloseTo(13, 9)
  expect(out.hours).toBeCloseTo(0.43 * 13, 9)
  expect(out.amount).toMatchObject({ median: expect.closeTo(559, 9), logSd: 0.25 })
  // a bearing that is pressed aboard: its end and the panels only
  expect(ofWork('removal', bearing).hours! + ofWork('refitting', bearing).hours!).toBeCloseTo(1.45, 9)
  // nothing says what must be opened
  expect(ofWork('removal', { withTax: 500, covers: { parts: [] } })).toMatchObject({ by: 'hours', hours: 6 })
})

test('a set is brought aboard, a part is not; what goes ashore takes a second visit', () => {
  const set: Scope = { withTax: 9000, covers: { parts: [], newSet: { ratingKw: 10, used: false } } }
  expect(ofWork('removal', set).hours).toBeCloseTo(0.43 * 50, 9)
  expect(ofWork('lifting', set).figures).toEqual(['wholeSet.installation.lifting.typical'])
  expect(ofWork('lifting', bearing).figures).toEqual(['offers.lifting.price.typical'])
  const frame: Scope = { withTax: 900, covers: { parts: [{ part: 'base-frame', did: 'renewed' }] } }
  expect(ofWork('lifting', frame).figures).toEqual(['wholeSet.installation.lifting.typical'])
  expect(ofWork('travel', bearing)).toMatchObject({ visits: 1, amount: 80 })
  expect(ofWork('travel', rewind)).toMatchObject({ visits: 2, amount: 160 })
})

test('pieces are at their usual prices, or a share of the price where none is bought', () => {
  expect(ofWork('parts', bearing)).toMatchObject({ by: 'pieces', amount: { median: 55 } })
  expect(ofWork('parts', rewind)).toMatchObject({ by: 'share', amount: { median: 700 } })
})

test('whatever is left out costs something, and every figure that it rests on can be found', () => {
  for (const scope of [rewind, bearing, { withTax: 100, covers: { parts: [] } }]) {
    for (const work of leavable) {
      const { amount, figures } = ofWork(work, scope)
      expect(meanOf(amount), work).toBeGreaterThan(0)
      expect(figures.length, work).toBeGreaterThan(0)
      for (const path of figures) {
        expect(valueAt(catalogue, path), path).toEqual(expect.any(Number))
        expect(catalogue.origins.has(path), path).toBe(true)
        expect(unitOf(catalogue, path)).not.toBe('')
      }
    }
  }
})
