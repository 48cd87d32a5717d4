import { expect, test } from 'vitest'
import { shippedLimits } from '../../test/shipped-limits.js'
import { programmeHours } from './load-programmes.js'
import type { Readings } from './test-type.js'
import { firstRecheck, monoxideTest, secondRecheck, shutdownTest } from './tests-after.js'
import {
  linksTest,
  loadRunTest,
  together,
  travelAndAcceleration,
  turnTest,
  vibrationTest,
} from './tests-running.js'

// Sizing case VI1; derived.
test('12, 9 and 8 mm/s together are 17', () => {
  expect(together({ x: 12, y: 9, z: 8 })).toBeCloseTo(17, 12)
})

// Sizing case VI2; by the measures of ISO 8528-9, derived.
test('1.12 mm/s is 17.83 µm at 10 Hz, and 1.759 m/s² at 250 Hz', () => {
  expect(travelAndAcceleration({ speed: 1.12, hertz: 10 }).micrometres).toBeCloseTo(17.83, 2)
  expect(travelAndAcceleration({ speed: 1.12, hertz: 250 }).metresPerSecondSquared).toBeCloseTo(1.759, 3)
  const worked = vibrationTest.judge({ along: 12, across: 9, upright: 8, shakes: 25 }, shippedLimits).worked
  expect(worked.map(({ unit }) => unit)).toEqual(['mm/s', 'µm', 'm/s²'])
})

// ISO 10816-6 zone ends, recalled; growth practice.
test('vibration by its class, by its own figure, or not at all', () => {
  const judge = (more: Readings) =>
    vibrationTest.judge({ along: 12, across: 9, upright: 8, ...more }, shippedLimits)
  expect(judge({})).toMatchObject({ verdict: 'cannot tell', asks: [] })
  expect(judge({ machine: 'class-5' }).band).toBe('good')
  expect(judge({ machine: 'class-3' }).band).toBe('high')
  expect(judge({ machine: 'class-2' }).band).toBe('damaging')
  expect(judge({ before: 6.8, machine: 'class-5' }).band).toBe('grown')
  expect(judge({ before: 9 }).band).toBe('as-before')
})

test('a long run: steady at full load, no joint warm', () => {
  const run = { full: 60, 'coolant-1': 82, 'coolant-2': 83, 'coolant-3': 83, joint: 6, tripped: 'no' }
  const judge = (more: Readings) => loadRunTest.judge({ ...run, ...more }, shippedLimits).band
  expect(judge({})).toBe('steady')
  expect(judge({ full: 59 })).toBe('short')
  expect(judge({ 'coolant-3': 85 })).toBe('climbing')
  expect(judge({ joint: 15 })).toBe('warm-joint')
  expect(judge({ joint: 41 })).toBe('hot-joint')
  expect(judge({ tripped: 'yes' })).toBe('trouble')
})

// Check case 70: TM 5-6115-332-14 chapter 8 and UFGS 16263A, seen.
test('others run a set for 4 h after an overhaul, and for 10 h where it runs daily', () => {
  expect(programmeHours('army', shippedLimits).all).toBe(4)
  expect(programmeHours('prime', shippedLimits).all).toBe(10)
  const plan = loadRunTest.plan?.(7, shippedLimits) ?? []
  expect(plan.slice(0, 4)).toEqual([
    '25\u00a0%: 1.75\u00a0kW for 15 min.',
    '50\u00a0%: 3.5\u00a0kW for 30 min.',
    '75\u00a0%: 5.25\u00a0kW for 60 min.',
    '100\u00a0%: 7\u00a0kW for 60 to 120 min.',
  ])
  expect(plan[4]).toMatch(/^After an overhaul others run 4 h: 1 h at half load, 2\.25 h at full load/)
})

// NIOSH 35 ppm, seen; 9 ppm practice.
test('carbon monoxide, and anybody who feels unwell', () => {
  const judge = (highest: number, more: Readings = {}) =>
    monoxideTest.judge({ highest, leak: 'no', unwell: 'no', ...more }, shippedLimits).band
  expect([judge(8.9), judge(9), judge(34.9), judge(35)]).toEqual(['clean', 'some', 'some', 'out'])
  expect(judge(0, { unwell: 'yes' })).toBe('out')
  expect(judge(0, { leak: 'yes' })).toBe('out')
  const { says } = monoxideTest.judge({ highest: 220, leak: 'no', unwell: 'no' }, shippedLimits)
  expect(says).toMatch(/Above 200 ppm nobody goes back in/)
})

test('before it is turned: free, rubbing, or water', () => {
  const judge = (turns: string, water = 'no') => turnTest.judge({ turns, water }, shippedLimits).band
  expect([judge('free'), judge('rubs'), judge('stops'), judge('free', 'yes')]).toEqual([
    'free',
    'rubs',
    'locked',
    'locked',
  ])
})

test('links are as they must be only where every difference is answered', () => {
  const judge = (more: Readings) =>
    linksTest.judge({ photographed: 'yes', differences: 'none', sensing: 'yes', ...more }, shippedLimits).band
  expect(judge({})).toBe('match')
  expect(judge({ differences: 'open' })).toBe('differ')
  expect(judge({ sensing: 'no' })).toBe('sensing')
  expect(judge({ photographed: 'no' })).toBe('unknown')
  expect(judge({ photographed: 'no', differences: 'meant' })).toBe('match')
})

test('protections that act, do not, or are not there', () => {
  const all = { oil: 'stops', coolant: 'stops', exhaust: 'stops', stop: 'stops' }
  const judge = (more: Readings) => shutdownTest.judge({ ...all, ...more }, shippedLimits)
  expect(judge({}).verdict).toBe('pass')
  expect(judge({ oil: 'fails' }).says).toMatch(/^Does not act: oil pressure/)
  expect(judge({ exhaust: 'not-fitted' })).toMatchObject({ verdict: 'pass' })
  expect(judge({ exhaust: 'not-fitted' }).next).toMatch(/somebody watches/)
  expect(judge({ stop: 'not-fitted' }).verdict).toBe('fail')
})

test('joints are looked at after the first hour and after ten, not sooner', () => {
  const look = { run: 1.2, leaks: 'none', joints: 'held' }
  expect(firstRecheck.judge(look, shippedLimits).band).toBe('held')
  expect(firstRecheck.judge({ ...look, leaks: 'drops' }, shippedLimits).verdict).toBe('fail')
  expect(firstRecheck.judge({ ...look, joints: 'moved' }, shippedLimits).band).toBe('moved')
  expect(secondRecheck.judge(look, shippedLimits).asks[0]?.code).toBe('too-soon')
})
