import { expect, test } from 'vitest'
import { fuelMeasureOf, keptPrice, spokenPrice } from './fuel.js'

test('fuel is priced by the measure that is spoken aboard, and kept by the litre', () => {
  const us = fuelMeasureOf({ units: { volume: 'us-gallon' } })
  expect(us.name).toBe('a US gallon')
  // A US gallon is 231 cubic inches of 2.54 cm: 3.785 411 784 l by definition.
  expect(spokenPrice(1, us)).toBe(3.78541)
  expect(keptPrice(4, us)).toBe(1.05669)
  const litre = fuelMeasureOf({})
  expect(litre.name).toBe('a litre')
  expect(spokenPrice(1.45, litre)).toBe(1.45)
})

test('a price that is shown and not changed is kept as it was', () => {
  const imperial = fuelMeasureOf({ units: { volume: 'imperial-gallon' } })
  for (const price of [1.2, 1.455, 0.9]) {
    expect(keptPrice(spokenPrice(price, imperial), imperial)).toBeCloseTo(price, 4)
  }
})
