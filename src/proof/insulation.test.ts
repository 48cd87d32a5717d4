import { expect, test } from 'vitest'
import { judgeInsulation } from './insulation.js'

// IEEE 43-2000, 6.3.1: factor 0.707 from 35 °C to 40 °C for softening resin; recalled. Below 40 °C that law reads lower.
test('35 °C is brought to 40 °C by 0.707', () => {
  expect(judgeInsulation({ measuredMohm: 1, windingC: 35 }).at40Mohm).toBeCloseTo(Math.SQRT1_2, 3)
})

// IEEE 43-2013, table of factors for set resin: 3.3 at 70 °C; recalled. Above 40 °C that law reads lower.
test('70 °C is brought to 40 °C by 3.3', () => {
  expect(judgeInsulation({ measuredMohm: 1, windingC: 70 }).at40Mohm).toBeCloseTo(3.3, 1)
})

test('the limit itself passes, and a cold good-looking reading may fail', () => {
  expect(judgeInsulation({ measuredMohm: 1, windingC: 40 }).verdict).toBe('pass')
  expect(judgeInsulation({ measuredMohm: 1.8, windingC: 18 })).toMatchObject({ verdict: 'fail' })
})

test.each([9.9, 85.1, Number.NaN])('refuses a winding at %f °C and says so', (windingC) => {
  expect(() => judgeInsulation({ measuredMohm: 5, windingC })).toThrow(
    `windingC must be 10 to 85 °C; found ${windingC}`,
  )
})
