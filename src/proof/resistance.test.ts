import { expect, test } from 'vitest'
import { shippedLimits } from '../../test/shipped-limits.js'
import {
  capacitorAmps,
  capacitorSetVolts,
  imbalancePercent,
  resistanceAt,
  windingTemperature,
  zeroResistanceC,
} from './resistance.js'
import type { Readings } from './test-type.js'
import { capacitorTest, diodeTest, windingResistanceTest } from './tests-resistance.js'
import { loadRunTest } from './tests-running.js'

// Check cases 13 and 14: 234.5 and 225 seen (UL text), 235 and 228 recalled (IEC 60034-1, cable standards).
test.each([
  ['copper', 0.60806],
  ['copperIec', 0.60784],
  ['aluminium', 0.61224],
  ['aluminiumCable', 0.61089],
] as const)('0.5 Ω of %s at 20 °C is %f Ω at 75 °C', (metal, ohm) => {
  const zeroC = zeroResistanceC[metal]
  expect(resistanceAt({ ohm: 0.5, fromC: 20, toC: 75, zeroC })).toBeCloseTo(ohm, 4)
})

// Check case 18; derived with 234.5, seen.
test('a winding of 0.50 Ω at 20 °C and 0.62 Ω hot is at 81.08 °C', () => {
  const hot = windingTemperature({ coldOhm: 0.5, coldC: 20, hotOhm: 0.62 })
  expect(hot).toBeCloseTo(81.08, 1)
  expect(hot - 20).toBeCloseTo(61.1, 1)
  expect(hot - 30).toBeCloseTo(51.1, 1)
  const run = { full: 60, 'coolant-1': 82, 'coolant-2': 82, 'coolant-3': 82, joint: 6, tripped: 'no' }
  const read = { ...run, 'cold-ohm': 0.5, cold: 20, 'hot-ohm': 0.62, air: 30 }
  const judge = (more: Readings) => loadRunTest.judge({ ...read, ...more }, shippedLimits)
  expect(judge({}).worked.map(({ value }) => Number(value.toFixed(1)))).toEqual([0, 81.1, 51.1])
  expect(judge({}).next).toMatch(/81\.1\u00a0°C as the temperature/)
  expect([judge({}).band, judge({ 'hot-ohm': 0.9 }).band]).toEqual(['steady', 'steady'])
  // IEC 60034-1, recalled: class F bears 105 K, class H 125 K.
  const hotter = { 'hot-ohm': 0.74 }
  expect(judge({ ...hotter, 'insulation-class': 'f' })).toMatchObject({
    band: 'hot-winding',
    verdict: 'fail',
  })
  expect(judge({ ...hotter, 'insulation-class': 'h' }).band).toBe('steady')
})

// Check case 17; derived.
test('0.210, 0.214 and 0.209 Ω differ by 1.42 % and pass', () => {
  expect(imbalancePercent([0.21, 0.214, 0.209])).toBeCloseTo(1.42, 2)
  const read = { first: 0.21, second: 0.214, third: 0.209, leads: 'four-wire' }
  expect(resistance(read)).toMatchObject({ verdict: 'pass', band: 'even' })
})

// Check case 16, TM 9-6115-645-24 table 4-3, seen: 24.85 to 33.61 Ω are 15 % either side of 29.23 Ω.
test('the band of the army’s table', () => {
  const share = shippedLimits('winding-table').value / 100
  expect(29.23 * (1 - share)).toBeCloseTo(24.85, 2)
  expect(29.23 * (1 + share)).toBeCloseTo(33.61, 2)
  const exciter = { leads: 'four-wire', expected: 29.23, winding: 25, 'sure-milliohms': 'yes' }
  const band = (first: number, from: string) => resistance({ ...exciter, first, 'expected-from': from }).band
  expect([24.86, 33.61, 24.8, 33.7].map((ohm) => band(ohm, 'table'))).toEqual(['even', 'even', 'off', 'off'])
  expect(band(24.86, 'links')).toBe('off')
})

const resistance = (readings: Readings) => windingResistanceTest.judge(readings, shippedLimits)

// Check case 19; derived: 0.070 Ω through leads of 0.20 Ω reads 0.27 Ω, 3.86 times too much.
test('a low winding read through two leads is asked about again', () => {
  const { verdict, asks } = resistance({ first: 0.27, second: 0.27, leads: 'two-wire' })
  expect(verdict).toBe('cannot tell')
  expect(asks.map(({ code }) => code)).toEqual(['two-wire'])
  expect(asks[0]?.question).toMatch(/0\.07 Ω through leads of 0\.2 Ω reads 0\.27 Ω/)
})

test('a half that was left off reads twice as much', () => {
  const read = { first: 0.42, second: 0.42, leads: 'four-wire', expected: 0.21, winding: 25 }
  expect(resistance(read).band).toBe('double')
  expect(resistance({ ...read, first: 0.22, second: 0.22 }).band).toBe('even')
  expect(resistance({ ...read, first: 0.3, second: 0.3 }).band).toBe('off')
})

test('warm copper is brought to the temperature of the book before it is compared', () => {
  const read = { first: 0.25, second: 0.25, leads: 'four-wire', expected: 0.21 }
  expect(resistance({ ...read, winding: 75 }).band).toBe('even')
  expect(resistance(read).asks.map(({ code }) => code)).toEqual(['missing'])
})

test('milliohms typed as ohms, and one winding alone', () => {
  expect(resistance({ first: 210, second: 212, leads: 'four-wire' }).asks[0]?.code).toBe('milliohms')
  expect(resistance({ first: 210, second: 212, leads: 'four-wire', 'sure-milliohms': 'yes' }).band).toBe(
    'even',
  )
  expect(resistance({ first: 0.21, leads: 'four-wire' })).toMatchObject({ verdict: 'cannot tell', asks: [] })
  expect(resistance({ first: 0.2, second: 0.23, leads: 'four-wire' }).band).toBe('joint')
  expect(resistance({ first: 0.2, second: 0.21, leads: 'four-wire' }).band).toBe('uneven')
})

// Check case 60; practice, IEC 60252-1 class recalled: −5 % passes, −7 % is renewed.
test.each([
  [28.5, 'good', 'pass'],
  [27.9, 'low', 'fail'],
  [26.9, 'far-low', 'fail'],
  [31.5, 'good', 'pass'],
  [31.6, 'high', 'fail'],
])('a capacitor of 30 µF that reads %f µF is %s', (capacitance, band, verdict) => {
  const judged = capacitorTest.judge({ left: 0.4, capacitance, marked: 30 }, shippedLimits)
  expect(judged).toMatchObject({ band, verdict })
})

test('a charged capacitor is not judged but bled again', () => {
  const { verdict, asks } = capacitorTest.judge({ left: 5, capacitance: 30, marked: 30 }, shippedLimits)
  expect(verdict).toBe('cannot tell')
  expect(asks[0]).toMatchObject({ code: 'charged', confirmable: false })
})

// Check cases 59 and 61; derived.
test('a capacitor set off its speed, and the current of its capacitor', () => {
  const { linear, squared } = capacitorSetVolts({ ratedV: 240, ratedHz: 60, hertz: 57.6 })
  expect(squared).toBeCloseTo(221.2, 1)
  expect(linear).toBeCloseTo(230.4, 1)
  const amps = capacitorAmps({ uF: 30, volts: 300, hertz: 60 })
  expect(amps).toBeCloseTo(3.393, 3)
  expect(300 / amps).toBeCloseTo(88.42, 2)
  const judged = capacitorTest.judge(
    { left: 0.4, capacitance: 30, marked: 30, across: 300, hertz: 60 },
    shippedLimits,
  )
  expect(judged.worked.at(-1)?.value).toBeCloseTo(3.393, 3)
  expect(judged.next).toMatch(/about 3\.39/)
})

test('diodes one by one', () => {
  const sound = { 'forward-lowest': 0.48, 'forward-highest': 0.52, 'any-open': 'no', 'any-back': 'no' }
  const judge = (more: Readings) => diodeTest.judge({ ...sound, ...more }, shippedLimits).band
  expect(judge({})).toBe('sound')
  expect(judge({ 'any-back': 'yes' })).toBe('shorted')
  expect(judge({ 'any-open': 'yes' })).toBe('open')
  expect(judge({ 'forward-highest': 0.9 })).toBe('odd')
  // TM 55-1930-209-14P-9-4, seen: 15 kΩ or more both ways.
  expect(judge({ 'surge-one-way': 15, 'surge-other-way': 14 })).toBe('surge')
  expect(diodeTest.judge({ ...sound, 'forward-highest': 0.3 }, shippedLimits).asks[0]?.code).toBe('crossed')
})
