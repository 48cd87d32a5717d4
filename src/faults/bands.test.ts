import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { shippedFaults } from '../../test/fault-model.js'
import { readingUnits } from '../logbook/bodies-seen.js'
import { limitsOf } from '../proof/limits.js'
import { proofTestOf } from '../proof/tests.js'
import { outcomeOfReading } from './bands.js'

const { model, catalogue } = shippedFaults()
const limits = limitsOf(catalogue)
const measured = model.checks.filter(({ reading }) => reading !== undefined)
const check = (id: string) => model.checks.find((one) => one.id === id)!
const by = { rated: { volts: 230, hertz: 50 }, limits }
const outcome = (id: string, value: number, more: { against?: number; windingC?: number } = {}) => {
  const banded = outcomeOfReading(check(id), { value, ...more }, by)
  return banded.ok ? banded.outcome : banded.problems[0]!.code
}

test('every number from nought up falls into a band of every check that takes one', () => {
  expect(measured.length).toBeGreaterThanOrEqual(20)
  fc.assert(
    fc.property(
      fc.constantFrom(...measured),
      fc.oneof(fc.double({ min: 0, max: 1e9, noNaN: true }), fc.double({ min: 0, max: 300, noNaN: true })),
      (one, value) => {
        const banded = outcomeOfReading(one, { value, against: 100, windingC: 40 }, by)
        expect(banded.ok && one.outcomes.some(({ id }) => id === banded.outcome)).toBe(true)
      },
    ),
    { numRuns: 400 },
  )
})

test('a higher reading never falls into an earlier band', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...measured),
      fc.double({ min: 0, max: 400, noNaN: true }),
      fc.double({ min: 0, max: 400, noNaN: true }),
      (one, a, b) => {
        const place = (value: number) => {
          const banded = outcomeOfReading(one, { value, against: 100, windingC: 40 }, by)
          return banded.ok ? one.reading!.bands.findIndex((band) => band.outcome === banded.outcome) : -1
        }
        expect(place(Math.min(a, b))).toBeLessThanOrEqual(place(Math.max(a, b)))
      },
    ),
    { numRuns: 300 },
  )
})

test('units are those in which readings are kept', () => {
  for (const { id, reading } of measured) expect(readingUnits, id).toContain(reading!.unit)
})

// Under 25 V counts as no voltage worth the name: TM 55-1930-209-14P-9-4, seen. The other edges are practice.
test.each([
  [0.4, 'none'],
  [5, 'a-few'],
  [24, 'a-few'],
  [115, 'half'],
  [180, 'low'],
  [230, 'right'],
  [260, 'high'],
  [460, 'double'],
])('%d V of 230 is %s', (volts, band) => {
  expect(outcome('volts-unloaded', volts)).toBe(band)
})

// 5 MΩ at 40 °C for random wound: IEEE 43-2013 as summarised, seen; 1 MΩ: MIL-HDBK-1164, 11.4.4, seen.
test('insulation is brought to 40 °C first', () => {
  expect(outcome('stator-insulation', 6, { windingC: 40 })).toBe('good')
  expect(outcome('stator-insulation', 6, { windingC: 15 })).toBe('middling')
  expect(outcome('stator-insulation', 1.8, { windingC: 18 })).toBe('low')
  expect(outcome('stator-insulation', 6)).toBe('missing')
})

// 35 ppm: recommended limit at work, seen; 9 ppm is practice.
test('the end of a band belongs to the band above', () => {
  expect(outcome('gas-on-load', 8.9)).toBe('low')
  expect(outcome('gas-on-load', 9)).toBe('some')
  expect(outcome('gas-on-load', 35)).toBe('danger')
})

test('what a number is held against is asked for', () => {
  expect(outcome('capacitance', 34, { against: 40 })).toBe('low')
  expect(outcome('capacitance', 38, { against: 40 })).toBe('right')
  expect(outcome('capacitance', 38)).toBe('missing')
  expect(outcomeOfReading(check('volts-unloaded'), { value: 230 }, { rated: {}, limits }).ok).toBe(false)
  expect(outcome('volts-unloaded', -3)).toBe('reading')
  expect(outcome('impeller', 3)).toBe('reading')
})

test.each([
  ['stator-insulation', 'insulation-test', 'winding-to-frame', 60],
  ['touch-volts', 'touch-volts', 'open', 60],
  ['leakage', 'residual-current', 'leak', 60],
])('%s says what the proof says of the same number', (id, proof, field, most) => {
  const [usual] = check(id).outcomes
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: most, noNaN: true }), (value) => {
      const { verdict, band } = proofTestOf(proof)!.judge({ [field]: value, winding: 40 }, limits)
      const found = outcome(id, value, { windingC: 40 })
      if (verdict === 'fail') expect(found).not.toBe(usual!.id)
      if (verdict === 'pass' && band !== 'within') expect(found).toBe(usual!.id)
    }),
    { numRuns: 60 },
  )
})
