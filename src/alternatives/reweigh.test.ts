import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type LifeModel, type LifeModelInput, lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { cheapestAlong, costLines, reweigh, withPrices } from './reweigh.js'
import { column, type Sample } from './sample.js'
import { simulate } from './simulate.js'

const span = { seed: 9, from: 0, count: 300 }

/** A small set with work of both hands, trips, outages, a quote, a new set and giving up. */
const input: LifeModelInput = {
  type: 'gensettle/life-model',
  version: 1,
  horizonYears: 7,
  realInterestPerYear: 0.02,
  setFactor: { boatLogSd: 0.3, setLogSd: 0.3 },
  labour: {
    paidPerHour: 60,
    ownPerHour: 15,
    perTrip: 80,
    overrun: { median: 1.1, logSd: 0.3 },
  },
  powerLoss: {
    curve: [
      { days: 0.25, cost: 0 },
      { days: 2, cost: 70 },
      { days: 7, cost: 450 },
    ],
    byMonth: [0, 0, 0.5, 1, 1, 1, 1, 1, 1, 0.5, 0, 0],
  },
  access: [{ id: 'end', hours: 2 }],
  giveUp: { costNow: 900, costPerYear: 700, daysWithoutPerYear: 12 },
  candidates: [
    { id: 'new', price: { median: 5000, logSd: 0.2 }, install: 1500, leadDays: 30, installDays: 3 },
  ],
  parts: [
    {
      id: 'pump',
      age: { years: 3 },
      access: ['end'],
      service: { everyYears: 1.5, renews: true, price: 40, hours: 1, by: 'owner', diligence: 0.7 },
      repair: {
        price: { median: 200, logSd: 0.4 },
        hours: 2,
        by: 'owner',
        supply: [{ chance: 1, days: 5 }],
      },
      modes: [{ id: 'wear', clock: 'years', shape: 2, scale: 3, logSd: 0.3 }],
    },
    {
      id: 'winding',
      age: { years: 12 },
      access: ['end'],
      repair: { price: { median: 1500, logSd: 0.4 }, hours: 9, trips: 2, workshopDays: 8 },
      modes: [{ id: 'wet', clock: 'years', shape: 2.5, scale: 14, logSd: 0.3 }],
    },
  ],
  alternatives: [
    { id: 'leave' },
    {
      id: 'mend',
      now: {
        parts: [{ part: 'winding' }],
        quote: { price: 2000, overrun: { median: 1.1, logSd: 0.2 }, besides: { median: 300, logSd: 0.2 } },
      },
    },
    { id: 'mend-itself', now: { parts: [{ part: 'winding' }, { part: 'pump' }] } },
    { id: 'replace', now: { replaceWith: 'new' } },
    { id: 'give-up', now: 'give-up' },
  ],
}
const model: LifeModel = lifeModelSchema.parse(input)
const posterior = posteriorOf(model, { seed: 2 })
const samples = simulate(model, posterior, span)

function expectSame(a: readonly Sample[], b: readonly Sample[]): void {
  for (const [i, sample] of a.entries()) {
    for (const quantity of [
      'cost',
      'now',
      'power',
      'ownHours',
      'paidHours',
      'trips',
      'daysWithout',
    ] as const) {
      if (quantity === 'now' && sample.alternative === 'mend-itself') continue
      const one = column(sample, quantity)
      const other = column(b[i]!, quantity)
      for (let k = 0; k < one.length; k++) {
        const near = Math.abs(one[k]! - other[k]!) <= 1e-8 * (1 + Math.abs(other[k]!))
        expect(near, `${sample.alternative} ${quantity} ${k}: ${one[k]} against ${other[k]}`).toBe(true)
      }
    }
  }
}

test('the histories of this test hold every kind of money that is moved', () => {
  for (const quantity of ['ownHours', 'paidHours', 'trips', 'power', 'quoteFactor'] as const) {
    const sums = samples.map((sample) => column(sample, quantity).reduce((a, b) => a + b, 0))
    expect(Math.max(...sums), quantity).toBeGreaterThan(0)
  }
})

test.each([
  { quote: 3100 },
  { ownPerHour: 0 },
  { ownPerHour: 41 },
  { paidPerHour: 93 },
  { perTrip: 10 },
  { powerFactor: 0 },
  { powerFactor: 2.6 },
  { quote: 900, ownPerHour: 30, paidPerHour: 50, perTrip: 120, powerFactor: 1.4 },
])('re-weighed at %j, histories are as if played again', (change) => {
  const again = simulate(withPrices(model, change), posterior, span)
  expectSame(reweigh(model, samples, change).samples, again)
})

test('nothing moved, nothing changed', () => {
  const same = reweigh(model, samples, { quote: 2000, powerFactor: 1 })
  expect(same.model).toEqual(model)
  for (const [i, sample] of same.samples.entries()) expect(sample).toBe(samples[i])
})

test('what a repair limit chose beforehand is not linear in the rates: it stays as it was chosen', () => {
  const limit = { knots: [300, 300, 300] as [number, number, number], above: { replaceWith: 'new' } }
  const limited = lifeModelSchema.parse({ ...input, alternatives: [{ id: 'leave', limit }] })
  const before = simulate(limited, posterior, span)
  const change = { ownPerHour: 200 }
  const again = simulate(withPrices(limited, change), posterior, span)
  const replaced = (of: readonly Sample[]) => column(of[0]!, 'replacements').reduce((a, b) => a + b, 0)
  expect(replaced(reweigh(limited, before, change).samples)).toBe(replaced(before))
  expect(replaced(again)).toBeGreaterThan(replaced(before))
})

test('lines of expected cost go through what is re-weighed, and barred alternatives have none', () => {
  const barred = lifeModelSchema.parse({
    ...input,
    alternatives: input.alternatives!.map((each) =>
      each.id === 'leave' ? { ...each, barred: 'stop' } : each,
    ),
  })
  for (const [price, values] of [
    ['quote', [500, 2000, 4000]],
    ['ownPerHour', [0, 15, 60]],
    ['powerFactor', [0, 1, 3]],
  ] as const) {
    const lines = costLines(barred, samples, price)
    expect(lines.map(({ id }) => id)).toEqual(['mend', 'mend-itself', 'replace', 'give-up'])
    for (const value of values) {
      const moved = reweigh(barred, samples, { [price]: value }).samples
      for (const line of lines) {
        const cost = column(moved.find(({ alternative }) => alternative === line.id)!, 'cost')
        const expected = cost.reduce((a, b) => a + b, 0) / cost.length
        expect(line.at + line.slope * value).toBeCloseTo(expected, 6)
      }
    }
  }
})

test('the cheapest along a track is the cheapest at each of its places', () => {
  const number = fc.double({ min: -1000, max: 1000, noNaN: true })
  const lines = fc.array(fc.record({ at: number, slope: fc.double({ min: -5, max: 5, noNaN: true }) }), {
    minLength: 1,
    maxLength: 8,
  })
  fc.assert(
    fc.property(lines, (drawn) => {
      const named = drawn.map((line, i) => ({ id: `line-${i}`, ...line }))
      const { first, changes } = cheapestAlong(named, { low: 0, high: 100 })
      for (let price = 0; price <= 100; price += 12.5) {
        const id = changes.findLast(({ at }) => at <= price)?.to ?? first
        const cost = (line: { at: number; slope: number }) => line.at + line.slope * price
        const least = Math.min(...named.map(cost))
        expect(cost(named.find((line) => line.id === id)!)).toBeLessThanOrEqual(least + 1e-6)
      }
      for (let i = 1; i < changes.length; i++)
        expect(changes[i]!.at).toBeGreaterThanOrEqual(changes[i - 1]!.at)
    }),
  )
})
