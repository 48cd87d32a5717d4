import { expect, test } from 'vitest'
import { shippedLimits } from '../../test/shipped-limits.js'
import { absorption, insulationAt25, insulationAt40, leakageMicroamp, oldLeastMohm } from './insulation.js'
import { absorptionTest } from './tests-absorption.js'
import { insulationTest } from './tests-insulation.js'

// Electrical reference 1.2, derived from the two laws of IEEE 43-2013 (recalled); four digits printed.
test.each([
  [10, 0.125, 0.656],
  [15, 0.1768, 0.708],
  [20, 0.25, 0.7622],
  [25, 0.3536, 0.8186],
  [30, 0.5, 0.877],
  [40, 1, 1],
  [50, 2, 1.5195],
  [60, 4, 2.2517],
  [70, 8, 3.2609],
  [80, 16, 4.6245],
])('at %f °C the factors to 40 °C are %f and %f', (windingC, softening, set) => {
  const at40 = insulationAt40({ measuredMohm: 1, windingC })
  expect(at40.softening).toBeCloseTo(softening, 4)
  expect(at40.set).toBeCloseTo(set, 4)
  expect(at40.lower).toBe(Math.min(at40.softening, at40.set))
})

// IEEE 43-1974, kV + 1; quoted. Check case 1.
test.each([
  [240, 1.24],
  [480, 1.48],
])('a winding of %f V made before 1970 must read %f MΩ', (ratedV, mohm) => {
  expect(oldLeastMohm({ ratedV, addedMohm: shippedLimits('insulation-old-added').value })).toBeCloseTo(
    mohm,
    12,
  )
})

// Check cases 2, 3, 5 and 6: halving seen, set resin recalled.
test('readings brought to 40 °C', () => {
  expect(insulationAt40({ measuredMohm: 8, windingC: 20 }).softening).toBeCloseTo(2, 3)
  expect(insulationAt40({ measuredMohm: 3, windingC: 60 }).softening).toBeCloseTo(12, 2)
  expect(insulationAt40({ measuredMohm: 20, windingC: 20 }).set).toBeCloseTo(15.24, 1)
  expect(insulationAt40({ measuredMohm: 3, windingC: 70 }).set).toBeCloseTo(9.783, 2)
})

// MIL-M-17413A, doubling per 15 °C; seen. Check case 11.
test('5 MΩ at 40 °C are 10 MΩ at 25 °C', () => {
  expect(insulationAt25({ measuredMohm: 5, windingC: 40 })).toBe(10)
  const { worked } = judge({ 'winding-to-frame': 5, winding: 40 })
  expect(worked.at(-1)).toMatchObject({ value: 10, unit: 'Mohm' })
})

// Derived. Check case 12.
test('500 V across 1.24 MΩ leak 403.2 µA', () => {
  expect(leakageMicroamp({ testV: 500, mohm: 1.24 })).toBeCloseTo(403.2, 1)
  const { worked } = judge({ 'winding-to-frame': 1.24, winding: 40, tester: 500 })
  expect(worked.at(-1)?.unit).toBe('uA')
  expect(worked.at(-1)?.value).toBeCloseTo(403.2, 1)
})

test.each([9.9, 85.1, Number.NaN])('refuses a winding at %f °C and says so', (windingC) => {
  expect(() => insulationAt40({ measuredMohm: 5, windingC })).toThrow(
    `windingC must be 10 to 85 °C; found ${windingC}`,
  )
})

const judge = (readings: Parameters<typeof insulationTest.judge>[0]) =>
  insulationTest.judge(readings, shippedLimits)

// IEEE 43-2013 table 3, 5 MΩ random-wound, recalled; 1 MΩ, army course, seen.
test.each([
  [0.99, 'stop', 'fail'],
  [1, 'hold', 'fail'],
  [4.99, 'hold', 'fail'],
  [5, 'good', 'pass'],
])('%f MΩ at 40 °C is %s', (mohm, band, verdict) => {
  expect(judge({ 'winding-to-frame': mohm, winding: 40 })).toMatchObject({ band, verdict })
})

test('a winding made before 1970 is let through from kV + 1 on, a form-wound one only from 100 MΩ', () => {
  const at = { winding: 40, rated: 240 }
  expect(judge({ ...at, 'winding-to-frame': 1.24, 'winding-kind': 'before-1970' }).band).toBe('old-enough')
  expect(judge({ ...at, 'winding-to-frame': 1.23, 'winding-kind': 'before-1970' }).band).toBe('hold')
  expect(judge({ ...at, 'winding-to-frame': 99, 'winding-kind': 'form-wound' }).band).toBe('hold')
})

test('the wet winding of a hose burst: what it reads, what it must, and that it is not rewound for that', () => {
  const { says, next, limits } = judge({ 'winding-to-frame': 1.8, winding: 18 })
  expect(says).toMatch(
    /^Do not energise the set\. The winding reads 0\.392\u00a0MΩ at 40\u00a0°C and must read 1\u00a0MΩ/,
  )
  expect(next).toMatch(/^Wash salt out .* no reason for a rewind/)
  expect(limits.map(({ held }) => held)).toEqual(['seen', 'recalled'])
})

test('what was left out, or looks odd, is asked about and never guessed', () => {
  const asked = (readings: Parameters<typeof judge>[0]) => judge(readings).asks.map(({ code }) => code)
  expect(asked({ 'winding-to-frame': 8 })).toEqual(['missing'])
  expect(asked({ 'winding-to-frame': 8, winding: 12, 'dew-point': 13 })).toEqual(['below-dew-point'])
  expect(asked({ 'winding-to-frame': 8, winding: 4 })).toEqual(['past-the-laws'])
  expect(asked({ 'winding-to-frame': 550, winding: 20, 'tester-top': 550 })).toEqual(['at-top'])
  expect(asked({ 'winding-to-frame': 550, winding: 20 })).toEqual(['maybe-at-top'])
  expect(asked({ 'winding-to-frame': 550, winding: 20, 'tester-top': 1000 })).toEqual([])
  expect(asked({ 'winding-to-frame': 1.8e-6, winding: 20 })).toEqual(['ohms'])
  expect(asked({ 'winding-to-frame': 1.8e5, winding: 20 })).toEqual(['megohms'])
  expect(asked({ 'winding-to-frame': 8, winding: 20, tester: 9 })).toEqual(['few-volts'])
})

test('"it is so" answers a doubt of the meter, never one of the dew point', () => {
  expect(judge({ 'winding-to-frame': 1.8e-6, winding: 20, 'sure-ohms': 'yes' }).band).toBe('stop')
  const wet = { 'winding-to-frame': 8, winding: 12, 'dew-point': 13, 'sure-below-dew-point': 'yes' }
  expect(judge(wet).verdict).toBe('cannot tell')
})

// Check cases 7, 8 and 10: IEEE 43-2000 table as an instrument's manual prints it, quoted; army manual, seen.
test('polarisation index and the army’s ratio', () => {
  const rise = (readings: Parameters<typeof judge>[0]) => absorptionTest.judge(readings, shippedLimits)
  expect(absorption({ laterMohm: 520, earlierMohm: 200 })).toBeCloseTo(2.6, 2)
  expect(rise({ 'one-minute': 200, 'ten-minutes': 520, 'insulation-class': 'f' }).verdict).toBe('pass')
  expect(rise({ 'one-minute': 200, 'ten-minutes': 360, 'insulation-class': 'f' }).verdict).toBe('fail')
  expect(rise({ 'one-minute': 200, 'ten-minutes': 360, 'insulation-class': 'a' }).verdict).toBe('pass')
  expect(rise({ 'ten-seconds': 6, 'one-minute': 6.9 }).verdict).toBe('pass')
  expect(rise({ 'ten-seconds': 6, 'one-minute': 6.6 }).verdict).toBe('fail')
})

// Storage procedure of large motors; seen. A reading between two bands takes the lower one.
test.each([
  [1.09, 'poor'],
  [1.1, 'doubtful'],
  [1.245, 'doubtful'],
  [1.25, 'fair'],
  [1.4, 'good'],
  [1.6, 'good'],
  [1.61, 'excellent'],
])('a ratio of %f is %s', (ratio, band) => {
  const readings = { 'half-minute': 100, 'one-minute': 100 * ratio }
  expect(absorptionTest.judge(readings, shippedLimits).band).toBe(band)
})

// IEEE 43-2013; recalled.
test('above 5,000 MΩ no index means anything, and one reading alone shows no rise', () => {
  const high = absorptionTest.judge({ 'one-minute': 6000, 'ten-minutes': 6100, winding: 40 }, shippedLimits)
  expect(high).toMatchObject({ verdict: 'cannot tell', asks: [] })
  expect(absorptionTest.judge({ 'one-minute': 60 }, shippedLimits).verdict).toBe('cannot tell')
})

// Practice, and IEEE 43, recalled.
test('what hangs on a winding, a tester at its top, or water on it leave no index', () => {
  const rise = (readings: Parameters<typeof judge>[0]) =>
    absorptionTest.judge({ 'half-minute': 100, 'one-minute': 150, ...readings }, shippedLimits)
  expect(rise({ 'taken-off': 'no' })).toMatchObject({ verdict: 'cannot tell', asks: [] })
  expect(rise({ 'tester-top': 150 }).asks).toMatchObject([{ code: 'at-top', confirmable: false }])
  expect(rise({ winding: 12, 'dew-point': 13 }).asks).toMatchObject([{ code: 'below-dew-point' }])
  expect(rise({ winding: 4 }).verdict).toBe('pass')
})
