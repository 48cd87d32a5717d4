import { expect, test } from 'vitest'
import { shippedLimits } from '../../test/shipped-limits.js'
import { allowableAmps, dropVolts, fullLoadAmps } from './conductor.js'
import type { Readings } from './test-type.js'
import { breakerTest, conductorTest } from './tests-conductors.js'

// Check case 63: 46 CFR 183.320, seen.
test('the breaker of 10 kVA at 240 V, and of a machine that is derated', () => {
  const judge = (more: Readings) =>
    breakerTest.judge({ rating: 10, volts: 240, phases: 'one', breaker: 45, ...more }, shippedLimits)
  expect(fullLoadAmps({ kVA: 10, volts: 240, phases: 1 })).toBeCloseTo(41.67, 2)
  expect(judge({}).worked[1]?.value).toBeCloseTo(47.9, 1)
  expect(judge({ 'built-for-40': 'yes' }).worked.map(({ value }) => Number(value.toFixed(1)))).toEqual([
    33.3, 38.3,
  ])
  expect([judge({}).band, judge({ breaker: 50 }).band, judge({ breaker: 40 }).band]).toEqual([
    'right',
    'too-big',
    'small',
  ])
  expect(judge({ 'all-poles': 'no' }).band).toBe('pole')
})

// Check case 64: 33 CFR 183.425 table 5 seen; bundling quoted.
test('10 AWG of 105 °C in an engine space, and with three in a bundle', () => {
  const at = { gauge: '10', insulation: '105', engineSpace: true, bundled: 1 }
  expect(allowableAmps(at, shippedLimits).amps).toBeCloseTo(51, 1)
  expect(allowableAmps({ ...at, bundled: 3 }, shippedLimits).amps).toBeCloseTo(35.7, 1)
  expect(allowableAmps({ ...at, bundled: 30 }, shippedLimits).limits.map(({ id }) => id)).toEqual([
    'wire-10-at-105',
    'engine-space-105',
    'bundle-25',
  ])
})

// Check cases 65, 67 and 68; derived.
test('drops of volts along feeders', () => {
  const drop = (at: { metres: number; amps: number; ohm: number; phases?: number }) =>
    dropVolts({ metres: at.metres, amps: at.amps, ohmPerMetre: at.ohm, phases: at.phases ?? 1 })
  expect(drop({ metres: 6, amps: 41.67, ohm: 0.002061 })).toBeCloseTo(1.031, 3)
  const three = fullLoadAmps({ kVA: 10, volts: 208, phases: 3 })
  expect(three).toBeCloseTo(27.76, 2)
  expect(drop({ metres: 20, amps: three, ohm: 0.003277, phases: 3 })).toBeCloseTo(3.151, 2)
  expect(drop({ metres: 12, amps: 25, ohm: 0.0175 / 6 })).toBeCloseTo(1.75, 3)
  expect(drop({ metres: 12, amps: 25, ohm: (0.0175 * 1.216) / 6 })).toBeCloseTo(2.128, 3)
})

const feeder = {
  gauge: 'awg-8',
  insulation: 'c-105',
  'engine-space': 'no',
  load: 41.67,
  volts: 240,
  phases: 'one',
  length: 6,
}
const judge = (more: Readings) => conductorTest.judge({ ...feeder, ...more }, shippedLimits)

test('a conductor that fits, carries too much, is guarded too late, or loses too many volts', () => {
  expect(judge({})).toMatchObject({ band: 'good', verdict: 'pass' })
  expect(judge({}).worked.at(-1)?.value).toBeCloseTo(0.429, 3)
  expect(judge({ gauge: 'awg-14' }).band).toBe('overloaded')
  expect(judge({ breaker: 130 }).band).toBe('unguarded')
  expect(judge({ length: 60 }).band).toBe('drop')
  expect(judge({ length: 60, circuit: 'other' }).band).toBe('good')
})

test('metric cable: the drop is told, what it may carry is not', () => {
  const metric = { gauge: undefined, insulation: undefined, section: 6, load: 25, volts: 230, length: 12 }
  const told = judge(metric)
  expect(told).toMatchObject({ verdict: 'cannot tell', asks: [] })
  expect(told.worked.map(({ value }) => Number(value.toFixed(3)))).toEqual([1.75, 0.761])
  expect(judge({ gauge: undefined, section: undefined }).asks[0]?.code).toBe('missing')
  expect(judge({ insulation: undefined }).asks[0]?.field).toBe('insulation')
})
