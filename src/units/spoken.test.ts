import fc from 'fast-check'
import { expect, test } from 'vitest'
import { isSpoken, type SpokenUnit, spokenUnit, toKept, toSpoken } from './spoken.js'

const units: readonly SpokenUnit[] = ['F', 'bar', 'psi', 'US gal', 'imp gal', 'ft', 'hp']

test('freezing, boiling and where the scales meet', () => {
  expect(toKept({ value: 32, unit: 'F' })).toEqual({ value: 0, unit: 'C' })
  expect(toKept({ value: 212, unit: 'F' })).toEqual({ value: 100, unit: 'C' })
  expect(toKept({ value: -40, unit: 'F' })).toEqual({ value: -40, unit: 'C' })
})

test('gallons, pounds and horses', () => {
  // Definitions of 1959 and of the gallons; held: recalled.
  expect(toKept({ value: 1, unit: 'US gal' }).value).toBe(3.785411784)
  expect(toKept({ value: 1, unit: 'psi' }).value).toBeCloseTo(6.894757, 6)
  expect(toKept({ value: 1, unit: 'hp' }).value).toBeCloseTo(0.7457, 4)
})

test('what is kept as it is stays as it is', () => {
  expect(toKept({ value: 0.39, unit: 'Mohm' })).toEqual({ value: 0.39, unit: 'Mohm' })
  expect(isSpoken('C')).toBe(false)
})

test('there and back again', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...units),
      fc.double({ min: -500, max: 5000, noNaN: true }),
      (unit, value) => {
        const back = toSpoken(toKept({ value, unit }).value, unit)
        expect(back).toBeCloseTo(value, 4)
      },
    ),
  )
})

test('what a boat chose is spoken, the rest as it is kept', () => {
  const choices = ['fahrenheit', 'psi', 'litre', undefined]
  expect(['C', 'kPa', 'l', 'kW', 'Mohm'].map((unit) => spokenUnit(unit, choices))).toEqual([
    'F',
    'psi',
    'l',
    'kW',
    'Mohm',
  ])
})
