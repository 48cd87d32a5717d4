import { expect, test } from 'vitest'
import { links } from '../../test/catalogue-links.js'
import { shippedLimits as limits } from '../../test/shipped-limits.js'
import { trialEntry } from '../../test/trial-log.js'
import { parseEntry } from '../logbook/entry.js'
import type { Body, Entry } from '../logbook/kinds.js'
import { compareLinks, type LinksRecord, linksEntries, ratedValues, recordOfEntry } from './as-found.js'
import type { CoilValues } from './links/winding.js'

const picture = [{ sha256: 'a'.repeat(64), type: 'image/jpeg' as const, bytes: 9 }]

function entry(n: number, body: object, from = '2026-11-15'): Extract<Entry, { kind: 'links' }> {
  const read = parseEntry(
    trialEntry(n, 'links', { photographs: picture, ...body } as unknown as Body<'links'>, {
      boat: 'petrel',
      set: 'main',
      from,
      until: from,
    }),
  )
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return read.entry as Extract<Entry, { kind: 'links' }>
}

function record(body: object, state: 'as-found' | 'as-left' = 'as-found'): LinksRecord {
  const read = recordOfEntry(
    links,
    entry(1, { state, winding: 'four-leads', lines: ['L=T1', 'N=T4'], ...body }),
  )
  if (!read.ok) throw new Error(JSON.stringify(read.problems))
  return read.record
}

const series = record({ joined: ['T2-T3'], sensing: ['S1=T1', 'S2=T4'] })
const of230 = ratedValues(series, { volts: [230], ratingKw: 7 })
const compared = (found: LinksRecord, left: LinksRecord, values: CoilValues) =>
  compareLinks({ found, left }, { values, limits })

test('what a coil is made for follows from the plate and the links as found', () => {
  expect(of230.emfV).toBeCloseTo(115, 9)
  expect(of230.amps).toBeCloseTo(7000 / 230, 9)
  // 12 kW at 0.8 is the 15 kVA nameplate whose coils carry 20.83 A at 120 V. Derived.
  const star = record({
    winding: 'twelve-leads',
    joined: ['T4-T7', 'T5-T8', 'T6-T9', 'T10-T11-T12'],
    lines: ['L1=T1', 'L2=T2', 'L3=T3', 'N=T10'],
  })
  const rated = ratedValues(star, { volts: [120 * 2 * Math.sqrt(3)], ratingKw: 12, phases: 3 })
  expect(rated.amps).toBeCloseTo(20.83, 2)
  const delta = record({
    winding: 'twelve-leads',
    joined: ['T1-T6', 'T3-T5', 'T2-T4-T7-T12', 'T8-T10', 'T9-T11'],
    lines: ['L1=T1', 'N=T2', 'L2=T8'],
  })
  expect(ratedValues(delta, { volts: [240, 120] }).emfV).toBeCloseTo(120, 9)
})

test('the same joints written otherwise are no difference', () => {
  const { differences, stops, changes } = compared(
    record({ winding: 'twelve-leads', joined: ['T10-T11-T12', 'T4-T7'], lines: ['L=T1', 'N=T10'] }),
    record(
      { winding: 'twelve-leads', joined: ['T7-T4', 'T12-T10', 'T11-T10'], lines: ['L=T1', 'N=T10'] },
      'as-left',
    ),
    {},
  )
  expect({ differences, stops, changes }).toEqual({ differences: [], stops: [], changes: [] })
})

test('a half the other way round stops it, lead by lead and in volts', () => {
  const left = record({ joined: ['T2-T4'], lines: ['L=T1', 'N=T3'] }, 'as-left')
  const both = compared(series, left, of230)
  expect(both.changes).toContainEqual({ name: 'L to N', found: '230 V', left: '0 V' })
  expect(both.stops[0]).toBe('Do not start it. As left, L to N: 0 V; as found: 230 V.')
  // Its leads were not told as left: T1 and T4 as before, which are now 1 E apart.
  expect(both.stops.join(' ')).toContain('overvoltage')
  expect(both.leads).toEqual([
    { lead: 'T1', found: 'L; S1', left: 'L; S1', put: 'stays' },
    { lead: 'T2', found: 'with T3', left: 'with T4; S2', put: 'with T3' },
    { lead: 'T3', found: 'with T2', left: 'N', put: 'with T2' },
    { lead: 'T4', found: 'N; S2', left: 'with T2; S2', put: 'N; S2' },
  ])
  expect(both.differences.map(({ what, lead }) => `${what} ${lead}`)).toEqual([
    'joint T2',
    'joint T3',
    'line T3',
    'joint T4',
    'line T4',
  ])
})

// A half left off in parallel: volts as before, ohms double, capacity half. Derived.
test('a missing parallel half is caught though volts are right', () => {
  const parallel = record({ joined: ['T1-T3', 'T2-T4'], lines: ['L=T1', 'N=T2'] })
  const left = record({ joined: ['T1-T3'], lines: ['L=T1', 'N=T2'] }, 'as-left')
  const { changes, stops } = compared(parallel, left, {
    ...ratedValues(parallel, { volts: [115], ratingKw: 7 }),
    resistanceOhm: 0.3,
  })
  expect(changes).toEqual([
    { name: 'L to N, through the copper', found: '0.15 Ω', left: '0.3 Ω' },
    { name: 'each line may carry', found: '60.9 A', left: '30.4 A' },
  ])
  expect(stops.join(' ')).toContain('No voltmeter finds that')
})

test('a sensing lead moved stops it, a label does not, and a missing picture is said', () => {
  const sensed = record({ joined: ['T2-T3'], sensing: ['S1=T1', 'S2=T2'] }, 'as-left')
  expect(compared(series, sensed, of230).changes).toEqual([
    { name: 'the regulator sees', found: '2 × the EMF of a coil', left: '1 × the EMF of a coil' },
  ])
  const labelled = record({ joined: ['T2-T3'], labels: ['T2=red sleeve'] }, 'as-left')
  const { differences, stops } = compared(series, labelled, of230)
  expect(differences).toEqual([{ what: 'label', lead: 'T2', found: 'none', left: 'red sleeve' }])
  expect(stops).toEqual([])
  const bare = { ...record({ joined: ['T2-T4'], lines: ['L=T1', 'N=T3'] }, 'as-left'), photographs: [] }
  expect(compared(series, bare, of230).stops.at(-1)).toContain('no picture')
  expect(compared({ ...series, photographs: [] }, series, of230).lacks).toEqual([
    'There is no picture of them as found.',
  ])
})

test('the entries compared are the last left and what was found before it', () => {
  const body = { winding: 'four-leads', joined: ['T2-T3'], lines: ['L=T1', 'N=T4'] }
  const found = entry(1, { ...body, state: 'as-found' }, '2026-11-15')
  const left = entry(2, { ...body, state: 'as-left' }, '2026-12-09')
  const again = entry(3, { ...body, state: 'as-found' }, '2027-05-01')
  expect(linksEntries([left, found], 'main')).toEqual({ found, left })
  expect(linksEntries([left, found, again], 'main')).toEqual({ found: again })
  expect(linksEntries([left], 'main')).toEqual({ left })
  expect(linksEntries([found], 'other')).toEqual({})
})

test('an entry that names leads the winding has not is told of', () => {
  const read = recordOfEntry(
    links,
    entry(1, { state: 'as-found', winding: 'four-leads', joined: ['T2-T9'], lines: [] }),
  )
  expect(
    read.ok ? [] : read.problems.map(({ code, path }) => `${code} ${path.replace(/entry \S+ /, '')}`),
  ).toEqual(['unknown-lead joined'])
  expect(() => entry(1, { state: 'as-found', winding: 'four-leads', joined: ['T2'], lines: ['T1'] })).toThrow(
    'wrong-form',
  )
})
