import { expect, test } from 'vitest'
import { shippedCatalogue } from '../../test/shipped-limits.js'
import { trialEntry } from '../../test/trial-log.js'
import type { Body, Entry } from '../logbook/kinds.js'
import { registerOf } from '../register/register.js'
import { judged } from './alternatives-of.js'
import { openStops } from './open-stops.js'

const day = (n: number) => ({ from: `2020-06-${String(n).padStart(2, '0')}` })
const set = trialEntry(1, 'set', { ratingKw: 7, volts: [230], hertz: 50, built: '2004' }, day(1))
const asOf = '2020-12-31'

function stopsOf(...entries: readonly Entry[]) {
  const all = [set, ...entries]
  const register = registerOf({ entries: all, boat: 'trial', set: 'main', asOf, catalogue: shippedCatalogue })
  return openStops({ entries: all, register, catalogue: shippedCatalogue })
}

/** Why each line bars leaving it as it is; none: it may be left. */
const barsLeaving = (...entries: readonly Entry[]) =>
  judged(stopsOf(...entries), [{ id: 'leave', now: 'leave' }]).alternatives[0]!.barred

function winding(n: number, part: string, mohm: number, windingC: number | undefined = 18): Entry {
  const conditions = [{ name: 'winding', value: windingC, unit: 'C' as const }]
  const body: Body<'reading'> = {
    test: 'insulation-test',
    part,
    values: [{ name: 'winding-to-frame', value: mohm, unit: 'Mohm' }],
    conditions,
  }
  return trialEntry(n, 'reading', body, day(n))
}

const bare = (n: number, mohm: number): Entry => {
  const { conditions: _, ...body } = winding(n, 'stator-winding', mohm).body as Body<'reading'>
  return trialEntry(n, 'reading', body, day(n))
}

test('a wet winding stops the set, whatever another winding reads after it', () => {
  const [stop, ...more] = stopsOf(winding(10, 'stator-winding', 1.8), winding(11, 'rotor-winding', 46))
  expect(more).toEqual([])
  expect(stop).toMatchObject({ line: 'insulation', by: 'winding', parts: ['stator-winding'] })
  expect(stop?.why).toMatch(/^Do not energise the set: the stator winding reads 0\.392\u00a0MΩ at 40\u00a0°C/)
})

test('the stop closes with a later good reading of the same winding', () => {
  expect(stopsOf(winding(10, 'stator-winding', 1.8), winding(30, 'stator-winding', 80))).toEqual([])
})

test('without a temperature the reading itself must reach the limit', () => {
  expect(stopsOf(bare(10, 0.6))[0]?.why).toMatch(/reads 0\.6\d*\u00a0MΩ and must read 1\u00a0MΩ/)
  expect(stopsOf(bare(10, 5))).toEqual([])
})

test('a winding colder than the law reaches is judged at its coldest', () => {
  expect(stopsOf(winding(10, 'stator-winding', 1.5, 4))).toHaveLength(1)
})

const bond = (n: number, ohm: number): Entry =>
  trialEntry(
    n,
    'reading',
    {
      test: 'bond-test',
      values: [{ name: 'bond', value: ohm, unit: 'ohm' }],
      conditions: [{ name: 'leads', value: 0.1, unit: 'ohm' }],
      answers: [{ name: 'what', is: 'frame' }],
    },
    day(n),
  )

test('a failed test of a stop line holds it open until its next good reading', () => {
  expect(stopsOf(bond(10, 3))).toMatchObject([{ line: 'earth-path', by: 'test', test: 'bond-test' }])
  expect(stopsOf(bond(10, 3))[0]?.why).toMatch(/^No safe path to earth: /)
  expect(stopsOf(bond(10, 3), bond(20, 0.15))).toEqual([])
  expect(stopsOf(bond(20, 0.15), bond(10, 3))).toEqual([])
})

test('leads left otherwise than they were found bar running on', () => {
  const leads = (n: number, state: 'as-found' | 'as-left', joined: string[], lines: string[]) =>
    trialEntry(n, 'links', { state, winding: 'four-leads', marks: 'nema', joined, lines }, day(n))
  const found = leads(2, 'as-found', ['T2-T3'], ['L=T1', 'N=T4'])
  const left = leads(3, 'as-left', ['T1-T3', 'T2-T4'], ['L=T1', 'N=T2'])
  expect(barsLeaving(found)).toBeUndefined()
  expect(stopsOf(found, left)).toMatchObject([{ line: 'links-unproven', by: 'links', parts: [] }])
  expect(barsLeaving(found, left)).toMatch(/^Winding links not proved: As left against as found: /)
})

const inCase = (
  n: number,
  lines: Body<'case'>['lines'],
  seen: Partial<Pick<Body<'case'>, 'symptoms' | 'checks' | 'closed'>> = {},
) => trialEntry(n, 'case', { name: 'spring', lines, symptoms: [], checks: [], ...seen }, day(n))

test('a case that is not closed bars running on: by what was answered, felt or found', () => {
  expect(barsLeaving(inCase(2, [{ line: 'flooding', is: 'open' }]))).toMatch(/^Flooding: .*“spring”/)
  const tingle = { symptoms: [{ symptom: 'tingle', is: 'present' as const }] }
  expect(barsLeaving(inCase(2, [], tingle))).toMatch(/^Volts on metal: /)
  const gas = { checks: [{ check: 'gas-on-load', outcome: 'danger' }] }
  expect(barsLeaving(inCase(2, [], gas))).toMatch(/^Carbon monoxide: /)
  const cleared = [{ line: 'touch-voltage', is: 'cleared' as const, because: 'bond remade, 0.3 V' }]
  expect(barsLeaving(inCase(2, cleared, tingle))).toBeUndefined()
  expect(barsLeaving(inCase(2, [], { ...tingle, closed: { as: 'not-known' } }))).toBeUndefined()
})

test('what speaks of one moment says nothing of the years to come', () => {
  expect(stopsOf(inCase(2, [{ line: 'people-in-water', is: 'open' }]))).toEqual([])
})

const passOver = (n: number, about: string) =>
  trialEntry(n, 'passed-over', { about, because: 'dried twice, rewind is booked' }, day(n))

test('a reason lifts the bar and stays in sight; it lifts none that may never be passed over, and none that came after', () => {
  const low = winding(10, 'stator-winding', 1.8)
  const over = stopsOf(low, passOver(12, 'insulation'))
  expect(over).toMatchObject([
    { line: 'insulation', passedOver: { because: 'dried twice, rewind is booked', date: '2020-06-12' } },
  ])
  expect(barsLeaving(low, passOver(12, 'insulation'))).toBeUndefined()
  expect(barsLeaving(passOver(9, 'insulation'), low)).toMatch(/^Do not energise/)
  expect(barsLeaving(bond(10, 3), passOver(12, 'earth-path'))).toMatch(/^No safe path to earth/)
  const overruled = { is: 'overruled' as const, because: 'the pump keeps up' }
  expect(barsLeaving(inCase(2, [{ line: 'flooding', ...overruled }]))).toBeUndefined()
  expect(barsLeaving(inCase(2, [{ line: 'touch-voltage', ...overruled }]))).toMatch(/^Volts on metal/)
})

test('a danger found bars running on until it is made safe, or passed over after it was found', () => {
  const found = trialEntry(
    5,
    'finding',
    { about: [{ part: 'fuel-pipes', mode: 'weep' }], verdict: 'defect-seen' },
    day(5),
  )
  const [stop] = stopsOf(found)
  if (stop === undefined) throw new Error('a danger must stop the set; found none')
  expect(stop).toMatchObject({ by: 'danger', line: 'fuel-and-fire', danger: 'fire', parts: ['fuel-pipes'] })
  expect(barsLeaving(passOver(4, 'fuel-and-fire'), found)).toMatch(/^A danger was found/)
  expect(barsLeaving(found, passOver(6, 'fuel-and-fire'))).toBeUndefined()
})
