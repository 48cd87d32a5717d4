import fc from 'fast-check'
import { expect, test } from 'vitest'
import { endPlaces, halfLabel, labelPlaces, placeOn, scaleAround } from './scales.js'
import { boats, boatsByMonth } from './twenty.js'

const value = fc.integer({ min: -1e8, max: 1e8 }).map((pence) => pence / 100)

test('a scale holds every value between even, round ticks', () => {
  fc.assert(
    fc.property(fc.array(value, { minLength: 1, maxLength: 12 }), fc.boolean(), (values, fromZero) => {
      const scale = scaleAround(values, { fromZero, ticks: 5 })
      const { low, high, ticks } = scale
      const slack = (high - low) * 1e-9
      for (const each of values) {
        expect(each).toBeGreaterThanOrEqual(low - slack)
        expect(each).toBeLessThanOrEqual(high + slack)
        expect(placeOn(scale, each)).toBeGreaterThanOrEqual(0)
        expect(placeOn(scale, each)).toBeLessThanOrEqual(100)
      }
      if (fromZero) expect(placeOn(scale, 0)).toBeCloseTo((100 * -low) / (high - low), 6)
      const step = ticks[1]! - ticks[0]!
      for (let i = 1; i < ticks.length; i++) expect(ticks[i]! - ticks[i - 1]!).toBeCloseTo(step, 4)
      expect(ticks.length).toBeLessThanOrEqual(9)
    }),
  )
})

test('known scales', () => {
  expect(scaleAround([16_900, 44_800], { fromZero: false, ticks: 6 }).ticks).toEqual([
    15_000, 20_000, 25_000, 30_000, 35_000, 40_000, 45_000,
  ])
  expect(scaleAround([0, 3600], { fromZero: true, ticks: 5 }).ticks).toEqual([0, 1000, 2000, 3000, 4000])
  expect(placeOn({ low: 1000, high: 3000 }, 1500)).toBe(25)
  expect(placeOn({ low: 1000, high: 3000 }, 9000)).toBe(100)
})

test('labels of a range never meet, whatever the width of the drawing that they were set for', () => {
  const place = fc.double({ min: 0, max: 100, noNaN: true })
  const width = fc.integer({ min: 280, max: 960 })
  fc.assert(
    fc.property(fc.tuple(place, place, place), width, (drawn, px) => {
      const [low, middle, high] = drawn.toSorted((a, b) => a - b) as [number, number, number]
      const room = (2 * halfLabel * 100) / px
      const places = labelPlaces({ low, middle, high }, room)
      const label = 2 * halfLabel - 6
      const box = ({ at, dx, anchor }: (typeof places)['low']) => {
        const x = (at * px) / 100 + dx
        const from = anchor === 'start' ? x : anchor === 'end' ? x - label : x - label / 2
        return { from, to: from + label }
      }
      const [a, b, c] = [box(places.low), box(places.middle), box(places.high)]
      expect(a.to).toBeLessThanOrEqual(b.from + 1e-6)
      expect(b.to).toBeLessThanOrEqual(c.from + 1e-6)
    }),
  )
})

test('labels at the ends of a width stay inside the rims and never meet', () => {
  const place = fc.double({ min: 0, max: 100, noNaN: true })
  fc.assert(
    fc.property(place, place, fc.double({ min: 8, max: 20, noNaN: true }), (one, other, room) => {
      const places = endPlaces({ low: Math.min(one, other), high: Math.max(one, other) }, room)
      const box = ({ at, anchor }: (typeof places)['low']) => {
        const from = anchor === 'start' ? at : anchor === 'end' ? at - room : at - room / 2
        return { from, to: from + room }
      }
      const [low, high] = [box(places.low), box(places.high)]
      expect(low.from).toBeGreaterThanOrEqual(-1e-9)
      expect(high.to).toBeLessThanOrEqual(100 + 1e-9)
      expect(low.to).toBeLessThanOrEqual(high.from + 1e-9)
    }),
  )
})

test('twenty boats: as many dots as the chance says, none before its month can hold one', () => {
  const rising = fc
    .array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 25 })
    .map((list) => list.toSorted((a, b) => a - b))
  fc.assert(
    fc.property(rising, (cumulative) => {
      const counts = boatsByMonth(cumulative)
      const whole = cumulative.at(-1)!
      const total = counts.reduce((a, b) => a + b, 0)
      expect(total).toBe(whole < 0.05 ? 0 : Math.round(whole * boats))
      let below = 0
      counts.forEach((count, month) => {
        below += count
        // The dots up to a month never stray from its cumulative share by more than one boat.
        if (total > 0) expect(Math.abs(below - (cumulative[month]! / whole) * total)).toBeLessThanOrEqual(1)
        if (month > 0 && cumulative[month] === cumulative[month - 1]) expect(count).toBe(0)
      })
    }),
  )
  expect(boatsByMonth([0, 0, 0.1, 0.2, 0.2, 0.5])).toEqual([0, 0, 2, 2, 0, 6])
  expect(boatsByMonth([0.01, 0.04])).toEqual([0, 0])
})
