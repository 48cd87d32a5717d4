import { expect, test } from 'vitest'
import { shippedLimits } from '../../test/shipped-limits.js'
import { exchangerState, logMeanKelvin, transferKwPerKelvin, waterKgPerSecond } from './cooling.js'
import type { Readings } from './test-type.js'
import { backPressureTest, coolingTest, exhaustTest } from './tests-cooling.js'

const sea = shippedLimits('sea-heat').value

// Sizing cases RW1 and RW2; derived, heat capacity recalled.
test('flow of raw water that takes up a heat', () => {
  expect(waterKgPerSecond({ heatKw: 10.041, riseK: 12, heatCapacity: sea })).toBeCloseTo(0.2097, 4)
  expect((60 * waterKgPerSecond({ heatKw: 10, riseK: 10, heatCapacity: sea })) / 1.025).toBeCloseTo(14.671, 2)
})

// HX4 and HX5: thermodynamics texts, seen. HX7: derived, equal ends divide by nothing.
test('mean differences of exchangers', () => {
  expect(logMeanKelvin({ one: 215 - 90, other: 125 - 60 })).toBeCloseTo(91.753, 3)
  expect(logMeanKelvin({ one: 90 - 20, other: 75 - 40 })).toBeCloseTo(50.494, 3)
  expect(logMeanKelvin({ one: 90 - 40, other: 75 - 20 })).toBeCloseTo(52.46, 3)
  expect(logMeanKelvin({ one: 20, other: 20 })).toBe(20)
})

// HX1: problem text seen; its textbook's answer 8,524 W and 40.2 °C recalled.
test('an oil cooler in counterflow: 37.8 W/m²K on 5.223 m²', () => {
  const { logMean, coolantDrop } = exchangerState({
    coolantInC: 100,
    coolantOutC: 59.99,
    seaInC: 30,
    seaOutC: 40.2,
  })
  const heatKw = 0.1 * 2.131 * coolantDrop
  expect(Math.abs(heatKw / 8.527 - 1)).toBeLessThan(1e-3)
  expect(Math.abs(transferKwPerKelvin({ heatKw, logMean }) / (0.0378 * 5.223) - 1)).toBeLessThan(1e-3)
  // transfer units of the oil, the lesser flow
  expect(Math.abs(coolantDrop / logMean / 0.92646 - 1)).toBeLessThan(1e-3)
})

// HX1b: the same to 60 °C, its length of 25 mm tube 66.5 m in the book, recalled. HX4 and HX5: texts, seen.
test('surface that a heat takes', () => {
  const surface = (heat: number, u: number, logMean: number) =>
    transferKwPerKelvin({ heatKw: heat, logMean }) / u
  const oil = surface(0.1 * 2.131 * 40, 0.0378, logMeanKelvin({ one: 100 - 40.2, other: 60 - 30 }))
  expect(Math.abs(oil / (Math.PI * 0.025) / 66.46 - 1)).toBeLessThan(2e-3)
  const feet = surface(400 * 60 * 0.85 * 90, 40, logMeanKelvin({ one: 125, other: 65 }))
  expect(Math.abs(feet / 500.25 - 1)).toBeLessThan(5e-4)
  const heatKw = 0.2 * 1.004 * 15
  for (const [one, other, expected] of [
    [70, 35, 0.42607],
    [50, 55, 0.41011],
  ] as const) {
    expect(Math.abs(surface(heatKw, 0.14, logMeanKelvin({ one, other })) / expected - 1)).toBeLessThan(5e-4)
  }
  const water = waterKgPerSecond({ heatKw, riseK: 20, heatCapacity: 4.186 })
  expect(Math.abs(water / 0.035977 - 1)).toBeLessThan(5e-4)
})

// HB1: worked example 17.42 of an open set of thermal engineering, seen: 4.3 kg/h of 43,900 kJ/kg; 500 kg/h from 25 to 50 °C.
test('the cooling water of an engine on the test bench, and the share of the fuel that it takes', () => {
  const heatKw = 870.8 / 60
  const water = waterKgPerSecond({ heatKw, riseK: 25, heatCapacity: 4.18 })
  expect(Math.abs((3600 * water) / 500 - 1)).toBeLessThan(1e-3)
  expect((3600 * heatKw) / (4.3 * 43_900)).toBeCloseTo(0.2768, 4)
})

const clean = { coolantInC: 82, coolantOutC: 74.958, seaInC: 25, seaOutC: 36.992 }
const fouled = { ...clean, coolantInC: 92, coolantOutC: 84.958 }

// DG1 and DG2; derived.
test('four temperatures of a clean exchanger and of a fouled one', () => {
  const before = exchangerState(clean)
  const now = exchangerState(fouled)
  expect(transferKwPerKelvin({ heatKw: 10, logMean: before.logMean })).toBeCloseTo(0.21079, 4)
  expect(before.transferUnits).toBeCloseTo(0.25278, 4)
  expect(waterKgPerSecond({ heatKw: 10, riseK: before.seaRise, heatCapacity: sea })).toBeCloseTo(0.209, 3)
  expect(transferKwPerKelvin({ heatKw: 10, logMean: now.logMean })).toBeCloseTo(0.17407, 4)
  expect(100 * (before.logMean / now.logMean - 1)).toBeCloseTo(-17.4, 1)
})

test('with the flow measured, heat and transfer are told, and the least flow for that heat', () => {
  const flow = (60 * waterKgPerSecond({ heatKw: 10, riseK: 11.992, heatCapacity: sea })) / 1.025
  const { worked } = coolingTest.judge({ ...readings(clean), 'sea-flow': flow }, shippedLimits)
  expect(worked.slice(-3).map(({ unit }) => unit)).toEqual(['kW', 'kW/K', 'l/min'])
  expect(worked.at(-3)?.value).toBeCloseTo(10, 9)
  expect(worked.at(-2)?.value).toBeCloseTo(0.21079, 4)
  expect(worked.at(-1)?.value).toBeCloseTo((flow * 11.992) / shippedLimits('sea-rise-most').value, 9)
})

function readings(four: typeof clean, prefix = ''): Readings {
  return {
    [`${prefix}coolant-in`]: four.coolantInC,
    [`${prefix}coolant-out`]: four.coolantOutC,
    [`${prefix}sea-in`]: four.seaInC,
    [`${prefix}sea-out`]: four.seaOutC,
  }
}

const judge = (now: typeof clean, more: Readings = {}) =>
  coolingTest.judge({ ...readings(now), ...readings(clean, 'clean-'), ...more }, shippedLimits)

test('which of the four ways it is', () => {
  expect(judge(clean).band).toBe('as-clean')
  expect(judge(fouled).band).toBe('fouled')
  // A third less water: the rise is half as much again.
  expect(judge({ coolantInC: 88, coolantOutC: 80.958, seaInC: 25, seaOutC: 43 }).band).toBe('starved')
  expect(judge({ ...clean, coolantInC: 86, coolantOutC: 74 }).band).toBe('coolant')
  expect(judge({ coolantInC: 104, coolantOutC: 96.9, seaInC: 47, seaOutC: 59 }).band).toBe('hot-outlet')
})

test('without clean figures a rise within its span tells of the flow alone', () => {
  const alone = (four: typeof clean) => coolingTest.judge(readings(four), shippedLimits).band
  expect(alone(clean)).toBe('flow-good')
  expect(alone({ ...clean, seaOutC: 42 })).toBe('starved')
})

test('too little load, too soon, or ends mixed up are asked about', () => {
  const asked = (more: Readings) => judge(clean, more).asks.map(({ code }) => code)
  expect(asked({ load: 3, rating: 7 })).toEqual(['part-load'])
  expect(asked({ steady: 8 })).toEqual(['not-steady'])
  expect(asked({ 'sea-in': 40 })).toEqual(['crossed'])
})

// Bands practice; 93 °C quoted from ABYC P-1.
test.each([
  [60, 'usual'],
  [69, 'warm'],
  [70, 'alarm'],
  [80, 'stop'],
  [93, 'hose'],
])('a hose of %f °C is %s', (hose, band) => {
  expect(exhaustTest.judge({ hose }, shippedLimits).band).toBe(band)
})

test('a rise of 10 K above its own figure tells before any alarm does', () => {
  expect(exhaustTest.judge({ hose: 58, clean: 47 }, shippedLimits)).toMatchObject({
    band: 'risen',
    verdict: 'fail',
  })
  expect(exhaustTest.judge({ hose: 56, clean: 47 }, shippedLimits).band).toBe('usual')
})

// BP1: three set manuals, seen.
test('back pressure against the limit of the engine', () => {
  const at = (pressure: number, aspiration: string) =>
    backPressureTest.judge({ pressure, aspiration }, shippedLimits).band
  expect([at(10.1, 'natural'), at(12.06, 'natural'), at(21, 'natural')]).toEqual([
    'within',
    'high',
    'very-high',
  ])
  expect([at(5, 'turbo'), at(6, 'turbo')]).toEqual(['within', 'high'])
})
