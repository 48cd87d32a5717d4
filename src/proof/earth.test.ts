import { expect, test } from 'vitest'
import { shippedLimits } from '../../test/shipped-limits.js'
import {
  bearableMilliamp,
  bodyMilliamp,
  capacitorLeakMilliamp,
  earthAmps,
  faultAmps,
  groundFaultSeconds,
  highestEarthOhm,
  seenVolts,
  sourceBehind,
  trippingLeakOhm,
} from './earth.js'
import type { ProofTest, Readings } from './test-type.js'
import { bondTest, changeoverTest, neutralBondTest } from './tests-earth.js'
import { leakageTest, tripTest } from './tests-leakage.js'
import { strayTest, touchTest } from './tests-touch.js'

/** A figure that was worked out on the way, by the words it begins with. */
function worked(test: ProofTest, readings: Readings, begins: string): number | undefined {
  return test.judge(readings, shippedLimits).worked.find(({ name }) => name.startsWith(begins))?.value
}

// Check cases 45 and 46: IEC 60479-1, copy of an earlier edition seen; salt-wet body recalled.
test('current through a body', () => {
  expect(bodyMilliamp({ volts: 230, ohm: 1350 })).toBeCloseTo(170.4, 1)
  expect(bodyMilliamp({ volts: 120, ohm: 1625 })).toBeCloseTo(73.8, 1)
  expect(bodyMilliamp({ volts: 230, ohm: shippedLimits('body-salt-wet').value })).toBeCloseTo(298.7, 1)
})

// Check cases 47 and 48: IEEE 80 and UL 943, recalled.
test('what a body bears, and how fast an interrupter must be', () => {
  expect(bearableMilliamp(0.1)).toBeCloseTo(366.8, 1)
  expect(bearableMilliamp(1)).toBe(116)
  expect([bearableMilliamp(0.029), bearableMilliamp(3.1)]).toEqual([undefined, undefined])
  const device = { kind: 'main', device: 30, tripped: 'yes', time: 0.1 }
  expect(worked(tripTest, device, 'What a body')).toBeCloseTo(366.8, 1)
  expect(worked(touchTest, { open: 230 }, 'What a body')).toBe(116)
  expect(worked(touchTest, { open: 230 }, 'Through a wet hand')).toBeCloseTo(298.7, 1)
  for (const [ma, seconds] of [
    [6, 5.594],
    [10, 2.694],
    [20, 1],
    [264, 0.025],
  ] as const) {
    expect(Math.abs(groundFaultSeconds(ma) - seconds)).toBeLessThanOrEqual(0.001)
  }
})

// Check cases 49 and 50: IEC 60364 recalled; derived.
test('earths and leaks that go with a device', () => {
  expect(highestEarthOhm({ touchV: 50, tripMa: 30 })).toBeCloseTo(1667, 0)
  expect(highestEarthOhm({ touchV: 50, tripMa: 10 })).toBe(5000)
  expect(trippingLeakOhm({ volts: 120, tripMa: 5 })).toBe(24_000)
  expect(trippingLeakOhm({ volts: 120, tripMa: 30 })).toBe(4_000)
  expect(trippingLeakOhm({ volts: 230, tripMa: 30 })).toBeCloseTo(7_667, 0)
  expect(trippingLeakOhm({ volts: 230, tripMa: 10 })).toBe(23_000)
  const leak = { leak: 10, device: 30, line: 230 }
  expect(worked(leakageTest, leak, 'Insulation that this leak')).toBe(23)
  expect(worked(leakageTest, leak, 'Insulation at which')).toBeCloseTo(7.667, 3)
  expect(worked(tripTest, { kind: 'main', device: 30, tripped: 'no' }, 'Highest earth')).toBeCloseTo(1667, 0)
})

// Check case 52; derived: an interrupter for people trips, a device of 30 mA does not.
test('one filter capacitor of 0.1 µF leaks 9.05 mA at 240 V 60 Hz', () => {
  const leak = capacitorLeakMilliamp({ uF: 0.1, volts: 240, hertz: 60 })
  expect(leak).toBeCloseTo(9.05, 2)
  expect(leak).toBeGreaterThan(shippedLimits('trip-ground-most').value)
  expect(leak).toBeLessThan(shippedLimits('leakage-trip').value)
})

test('a leak that filters account for is told apart from a fault', () => {
  const judge = (leak: number) =>
    leakageTest.judge({ leak, device: 5, line: 240, filters: 0.1, hertz: 60 }, shippedLimits)
  expect(judge(10).worked.at(-1)?.value).toBeCloseTo(9.05, 2)
  expect(judge(10)).toMatchObject({ band: 'trips', verdict: 'fail' })
  expect(judge(10).next).toMatch(/^Filters alone pass 9\.05/)
  expect(judge(25).next).toMatch(/^Add branches/)
})

// Check case 53; derived: 119.8 V on 10 MΩ, 15.65 V on 3 kΩ, 6.0 mA through a short.
test('120 V behind 20 kΩ on two meters, and back from what they show', () => {
  const seen = (meterOhm: number) => seenVolts({ sourceV: 120, seriesOhm: 20_000, meterOhm })
  expect(seen(10e6)).toBeCloseTo(119.8, 1)
  expect(seen(3000)).toBeCloseTo(15.65, 2)
  const behind = sourceBehind({
    light: { volts: seen(10e6), meterOhm: 10e6 },
    heavy: { volts: seen(3000), meterOhm: 3000 },
  })
  expect(behind?.volts).toBeCloseTo(120, 9)
  expect(behind?.ohm).toBeCloseTo(20_000, 6)
  const read = { open: 119.76, loaded: 15.652 }
  expect(worked(touchTest, read, 'Through a dead short')).toBeCloseTo(6, 3)
  expect(worked(touchTest, read, 'Through a wet hand, as it is fed now')).toBeCloseTo(120_000 / 20_770, 2)
  expect(touchTest.judge(read, shippedLimits).next).toMatch(/^It still stands at 15\.7/)
  expect(touchTest.judge({ open: 60, loaded: 0.5 }, shippedLimits).next).toMatch(/^It falls to 0\.5/)
})

test('volts that do not fall come from a source of no resistance, and no current is no source', () => {
  const two = (light: number, heavy: number) =>
    sourceBehind({
      light: { volts: light, meterOhm: 10e6 },
      heavy: { volts: heavy, meterOhm: 3000 },
    })
  expect(two(40, 40)).toEqual({ volts: 40, ohm: 0 })
  expect(two(40, 41)).toEqual({ volts: 40, ohm: 0 })
  expect(two(40, 0)).toBeUndefined()
})

// Check case 55; derived.
test('two bonds share the neutral’s current', () => {
  const share = (loadA: number) => earthAmps({ loadA, neutralOhm: 0.05, earthOhm: 0.1 })
  expect(share(20)).toBeCloseTo(6.667, 3)
  expect(1000 * share(0.09)).toBeCloseTo(30, 6)
  const twice = {
    ...quiet,
    'with-load': 'rises',
    load: 20,
    'earth-current': 6600,
    'neutral-ohms': 0.05,
    'earth-ohms': 0.1,
  }
  expect(strayTest.judge(twice, shippedLimits).band).toBe('two-bonds')
  expect(worked(strayTest, twice, 'Of the load, by the earth')).toBe(33)
  expect(worked(strayTest, twice, 'By the earth')).toBeCloseTo(6.67, 2)
  expect(worked(strayTest, twice, 'Load at which')).toBeCloseTo(0.09, 9)
})

// Check case 57; derived.
test('a fault of 120 V round a loop of 0.55 Ω drives 218 A', () => {
  expect(faultAmps({ volts: 120, loopOhm: 0.55 })).toBeCloseTo(218.2, 1)
  const read = { what: 'frame', bond: 0.23, leads: 0.18, line: 120, 'rest-of-loop': 0.5, breaker: 30 }
  expect(worked(bondTest, read, 'What a fault')).toBeCloseTo(218.2, 1)
  expect(worked(bondTest, read, 'Times its breaker')).toBeCloseTo(7.27, 2)
})

const bond = (readings: Readings) => bondTest.judge({ what: 'frame', ...readings }, shippedLimits)

// Continuity to 0.1 Ω and underwater metal to 1 Ω: IEC 60364-6 and ABYC E-2, recalled and quoted.
test('a bond is read net of the leads', () => {
  expect(bond({ bond: 0.28, leads: 0.18 })).toMatchObject({ band: 'good', verdict: 'pass' })
  expect(bond({ bond: 0.29, leads: 0.18 })).toMatchObject({ band: 'high', verdict: 'fail' })
  expect(bond({ bond: 900, leads: 0.18 }).band).toBe('open')
  expect(bond({ bond: 0.9, leads: 0.1, what: 'sea-metal' }).verdict).toBe('pass')
  expect(bond({ bond: 0.1, leads: 0.18 }).asks[0]?.code).toBe('below-leads')
  expect(bond({ bond: 0.2 }).asks[0]).toMatchObject({ code: 'missing', field: 'leads' })
  expect(bond({ bond: 0.2, leads: 0.15, 'test-current': 0.01 }).next).toMatch(/one strand/)
})

const neutral = (readings: Readings) =>
  neutralBondTest.judge(
    { system: 'earthed', source: 'set', 'neutral-switched': 'yes', ...readings },
    shippedLimits,
  )

// 46 CFR 183.376 and ISO 13297:2020 clause 6, seen; limits practice.
test('each source has its own bond, shore none aboard, an insulated system none', () => {
  expect(neutral({ bonds: 1, closed: 0.05, lifted: 20 })).toMatchObject({ band: 'right', verdict: 'pass' })
  expect(neutral({ bonds: 0 }).band).toBe('none')
  expect(neutral({ bonds: 2 }).band).toBe('two')
  expect(neutral({ bonds: 1, source: 'shore' }).band).toBe('two')
  expect(neutral({ bonds: 0, source: 'shore' }).verdict).toBe('pass')
  expect(neutral({ bonds: 1, source: 'shore', transformer: 'yes' }).verdict).toBe('pass')
  expect(neutral({ bonds: 1, system: 'insulated' }).band).toBe('two')
  expect(neutral({ bonds: 1, closed: 1.2 }).band).toBe('poor')
  expect(neutral({ bonds: 1, closed: 0.05, lifted: 0.2 }).band).toBe('joined')
  expect(neutral({ bonds: 1, 'neutral-switched': 'no' }).says).toMatch(/one in all/)
})

test('the system is asked for, never guessed', () => {
  const { asks } = neutralBondTest.judge(
    { source: 'set', 'neutral-switched': 'yes', bonds: 1 },
    shippedLimits,
  )
  expect(asks).toMatchObject([{ code: 'missing', field: 'system' }])
})

test('leaking current against its device', () => {
  const judge = (leak: number, device?: number) => leakageTest.judge({ leak, device }, shippedLimits).band
  expect([judge(4.9), judge(5), judge(9), judge(9.1), judge(30), judge(31)]).toEqual([
    'quiet',
    'within',
    'within',
    'much',
    'much',
    'trips',
  ])
  expect(judge(12, 10)).toBe('trips')
})

// IEC 61008 recalled, ABYC E-11 quoted, UL 943 recalled.
test.each([
  [{ kind: 'main', device: 30, 'tripped-at': 22, time: 0.08 }, 'good'],
  [{ kind: 'main', device: 30, 'tripped-at': 22, time: 0.11 }, 'late'],
  [{ kind: 'main', device: 30, 'tripped-at': 31 }, 'high'],
  [{ kind: 'main', device: 30, 'tripped-at': 14 }, 'early'],
  [{ kind: 'general', device: 30, 'timed-at': 30, time: 0.3 }, 'good'],
  [{ kind: 'general', device: 30, 'timed-at': 60, time: 0.2 }, 'late'],
  [{ kind: 'general', device: 30, 'timed-at': 150, time: 0.05 }, 'late'],
  [{ kind: 'people', device: 5, 'tripped-at': 5 }, 'good'],
  [{ kind: 'people', device: 5, 'tripped-at': 3 }, 'early'],
  [{ kind: 'people', device: 5, 'tripped-at': 7 }, 'high'],
  [{ kind: 'people', device: 5, 'timed-at': 20, time: 1.1 }, 'late'],
] as const)('a device tested as %j is %s', (readings, band) => {
  expect(tripTest.judge({ tripped: 'yes', ...readings }, shippedLimits).band).toBe(band)
})

test('a device that does not trip fails, one tried by its button alone is not proved', () => {
  expect(tripTest.judge({ kind: 'main', device: 30, tripped: 'no' }, shippedLimits).band).toBe('dead')
  expect(tripTest.judge({ kind: 'main', device: 30, tripped: 'yes' }, shippedLimits).verdict).toBe(
    'cannot tell',
  )
})

test('a changeover that can join two sources fails', () => {
  const judge = (readings: Readings) =>
    changeoverTest.judge({ 'can-join': 'no', 'neutral-alone': 'no', ...readings }, shippedLimits).band
  expect([
    judge({}),
    judge({ 'can-join': 'yes' }),
    judge({ 'neutral-alone': 'yes' }),
    judge({ drop: 0.6 }),
  ]).toEqual(['good', 'joins', 'neutral', 'drop'])
})

// 2 V practice, 25 V IEC 60364 recalled.
test('volts on metalwork', () => {
  const judge = (readings: Readings) => touchTest.judge(readings, shippedLimits)
  expect([1.9, 2, 25, 25.1].map((open) => judge({ open }).band)).toEqual(['quiet', 'some', 'some', 'danger'])
  expect(judge({ open: 0.3, felt: 'yes' })).toMatchObject({ band: 'felt', verdict: 'fail' })
})

const quiet = { open: 60, loaded: 0.5, line: 120, 'line-to-metal': 60, 'neutral-to-metal': 60, bonded: 'no' }

// Electrical reference 4.2; derived.
test.each([
  [{}, 'pickup'],
  [{ 'earth-current': 40 }, 'unbonded'],
  [{ open: 119.8, loaded: 15.65, 'line-to-metal': 2, 'neutral-to-metal': 118 }, 'unbonded'],
  [{ open: 30, loaded: 30, 'line-to-metal': 2, 'neutral-to-metal': 118, bonded: 'yes' }, 'no-source-bond'],
  [{ open: 20, loaded: 20, 'line-to-metal': 100, 'neutral-to-metal': 20, bonded: 'yes' }, 'poor-bond'],
  [{ open: 3, loaded: 3, 'with-load': 'rises' }, 'two-bonds'],
  [{ line: 96, 'other-leg': 144 }, 'open-neutral'],
  [{ 'stopped-shore-in': 40 }, 'shore'],
  [{ open: 0.4, loaded: 0.1, 'line-to-metal': 120, 'neutral-to-metal': 0.4, bonded: 'yes' }, 'quiet'],
] as const)('with %j it is %s', (more, cause) => {
  expect(strayTest.judge({ ...quiet, ...more }, shippedLimits).band).toBe(cause)
})
