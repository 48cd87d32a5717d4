import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  largestStartKVA,
  reactanceAt,
  reactiveExceeding,
  smallestSetKVA,
  startKW,
  startsTogether,
  torqueLeft,
  voltageDip,
} from './voltage-dip.js'

const trial = { startKVA: 16, startPowerFactor: 0, setKVA: 10, reactance: 0.2 }

// Worked by algebra from two impedances in series; held: derived. Printed to four places and more.
test('the dip of a start of 16 kVA on 10 kVA, by its power factor', () => {
  expect(voltageDip(trial)).toBeCloseTo(0.24242, 5)
  expect(voltageDip({ startKVA: 7.13, startPowerFactor: 0, setKVA: 10, reactance: 0.18 })).toBeCloseTo(
    0.11374,
    5,
  )
  const dips = [0, 0.4, 0.65, 1].map((startPowerFactor) => voltageDip({ ...trial, startPowerFactor }))
  ;[0.24242, 0.23053, 0.20664, 0.04758].forEach((dip, i) => {
    expect(Math.abs(dips[i]! - dip)).toBeLessThan(1e-4)
  })
  expect(voltageDip({ ...trial, startKVA: 3 * 60 * 0.12 })).toBeCloseTo(0.30168, 4)
})

test('the largest start and the smallest set are that formula turned round', () => {
  expect(largestStartKVA({ ...trial, dip: 0.3 })).toBeCloseTo(21.429, 3)
  expect(smallestSetKVA({ ...trial, dip: 0.25, startKVA: 20 })).toBeCloseTo(12, 9)
  const allowed = [0.15, 0.2, 0.25, 0.3, 0.35].map((dip) => largestStartKVA({ ...trial, dip, setKVA: 1 }))
  ;[0.882, 1.25, 1.667, 2.143, 2.692].forEach((share, i) => {
    expect(allowed[i]).toBeCloseTo(share, 3)
  })
})

test('torque left, and the power that the engine sees', () => {
  expect(torqueLeft(voltageDip(trial))).toBeCloseTo(0.57392, 4)
  expect(startKW({ ...trial, startPowerFactor: 0.4 })).toBeCloseTo(3.789, 3)
})

test('a reactance falls with the frequency, and with the rating that it is told of', () => {
  const of = { reactance: 0.2, hertz: 60, kVA: 10 }
  expect(reactanceAt(of, { hertz: 50, kVA: 10 })).toBeCloseTo(0.16667, 5)
  expect(reactanceAt(of, { hertz: 60, kVA: 5 })).toBeCloseTo(0.1, 9)
})

test('what is out of its span is refused', () => {
  expect(() => voltageDip({ ...trial, reactance: 0 })).toThrow('reactance must be 0.01 to 1')
  expect(() => voltageDip({ ...trial, startPowerFactor: 1.1 })).toThrow('startPowerFactor must be 0 to 1')
  expect(voltageDip({ ...trial, startKVA: 0 })).toBe(0)
})

const start = fc.record({
  startKVA: fc.double({ min: 0.5, max: 30, noNaN: true }),
  startPowerFactor: fc.double({ min: 0, max: 1, noNaN: true }),
  setKVA: fc.double({ min: 2, max: 30, noNaN: true }),
  reactance: fc.double({ min: 0.05, max: 0.5, noNaN: true }),
})

test('the dip exceeds its limit between the two values told, and nowhere else', () => {
  fc.assert(
    fc.property(
      start,
      fc.double({ min: 0, max: 20, noNaN: true }),
      fc.double({ min: 0, max: 15, noNaN: true }),
      fc.double({ min: 0.05, max: 0.4, noNaN: true }),
      (of, kW, kvar, dip) => {
        const span = reactiveExceeding(of, { runningKW: kW, dip })
        const within = span !== undefined && span.above < kvar && kvar < span.below
        const met = voltageDip(of, { kW, kvar })
        if (Math.abs(met - dip) > 1e-9) expect(within).toBe(met > dip)
        for (const end of span === undefined ? [] : [span.above, span.below]) {
          expect(voltageDip(of, { kW, kvar: end })).toBeCloseTo(dip, 9)
        }
      },
    ),
    { numRuns: 300, seed: 6 },
  )
})

test('the largest start that is borne dips just as far, whatever its power factor', () => {
  fc.assert(
    fc.property(start, fc.double({ min: 0.05, max: 0.4, noNaN: true }), (of, dip) => {
      const borne = { ...of, startKVA: largestStartKVA({ ...of, dip }) }
      const smallest = { ...of, setKVA: smallestSetKVA({ ...of, dip }) }
      expect(voltageDip(borne)).toBeCloseTo(dip, 9)
      if (smallest.setKVA >= 0.1 && smallest.setKVA <= 500) expect(voltageDip(smallest)).toBeCloseTo(dip, 9)
    }),
    { numRuns: 100, seed: 6 },
  )
})

// Added as phasors; held: derived.
test('two starts at once', () => {
  const both = startsTogether(
    { ...trial, startKVA: 5, startPowerFactor: 0.6 },
    { ...trial, startKVA: 5, startPowerFactor: 0.8 },
  )
  expect(both.startKVA).toBeCloseTo(Math.hypot(7, 7), 12)
  expect(both.startPowerFactor).toBeCloseTo(Math.SQRT1_2, 12)
  expect(startsTogether(trial, { ...trial, startKVA: 0 })).toEqual(trial)
})
