import fc from 'fast-check'
import { expect, test } from 'vitest'
import { inUnit, isMeterUnit, type MeterUnit } from './meter.js'

// Sizing reference, back pressure: 3 and 1.5 inHg, 39 inH2O and 1.5 psi, set installation manuals seen, change of unit derived.
test.each([
  [3, 'inHg', 10.159],
  [1.5, 'psi', 10.342],
  [39, 'inH2O', 9.714],
  [1.5, 'inHg', 5.08],
] as const)('%f %s in kilopascal', (value, unit, kPa) => {
  expect(inUnit({ value, unit }, 'kPa')).toBeCloseTo(kPa, 2)
})

test('what a meter shows in other prefixes and other scales', () => {
  expect(inUnit({ value: 1.2, unit: 'Gohm' }, 'Mohm')).toBe(1200)
  expect(inUnit({ value: 64.4, unit: 'F' }, 'C')).toBe(18)
  expect(inUnit({ value: 0.5, unit: 'in/s' }, 'mm/s')).toBe(12.7)
  expect(isMeterUnit('furlong')).toBe(false)
})

test('there and back again', () => {
  const pairs: readonly (readonly [MeterUnit, MeterUnit])[] = [
    ['ohm', 'Gohm'],
    ['F', 'C'],
    ['psi', 'inHg'],
    ['ms', 's'],
  ]
  fc.assert(
    fc.property(
      fc.constantFrom(...pairs),
      fc.double({ min: -1e4, max: 1e4, noNaN: true }),
      ([a, b], value) => {
        const back = inUnit({ value: inUnit({ value, unit: a }, b), unit: b }, a)
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-6)
      },
    ),
  )
})

test('a temperature is no pressure', () => {
  expect(() => inUnit({ value: 1, unit: 'C' }, 'kPa')).toThrow('to must be a temperature; found kPa')
})
