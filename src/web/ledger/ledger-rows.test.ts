import { expect, test } from 'vitest'
import { longTrialLog, trialEntry, trialId } from '../../../test/trial-log.js'
import { currentEntries } from '../../logbook/current.js'
import type { Entry } from '../../logbook/kinds.js'
import { ledgerOf } from './ledger-rows.js'

function ledger(kept: readonly Entry[], more: Partial<Parameters<typeof ledgerOf>[0]> = {}) {
  const { entries } = currentEntries(kept)
  return ledgerOf({ log: { entries, kept, waiting: [] }, asked: new Set(), ...more })
}

const at = (from: string) => ({ from, until: from })
const hours = (number: number, from: string, meterHours: number) =>
  trialEntry(number, 'hours', { meterHours }, at(from)) as Entry

test('three readings in a row are one line, two are not', () => {
  const log = [hours(1, '2024-01-01', 10), hours(2, '2024-02-01', 20), hours(3, '2024-03-01', 30)]
  expect(ledger(log)[0]?.rows).toMatchObject([
    { is: 'readings', entries: [{ id: trialId(3) }, { id: trialId(2) }, { id: trialId(1) }] },
  ])
  expect(ledger(log.slice(1))[0]?.rows.map(({ is }) => is)).toEqual(['entry', 'entry'])
})

test('a reading that is asked about is not folded away', () => {
  const log = [1, 2, 3, 4].map((number) => hours(number, `2024-0${number}-01`, number))
  const rows = ledger(log, { asked: new Set([trialId(4)]) })[0]!.rows
  expect(rows.map(({ is }) => is)).toEqual(['entry', 'readings'])
})

test('a correction stands with what it corrects, and what was taken back stays in sight', () => {
  const note = trialEntry(
    3,
    'note',
    { text: 'twice' },
    { ...at('2024-01-02'), corrects: [trialId(4)], voids: true },
  )
  const log = [
    hours(1, '2024-01-01', 5321),
    { ...hours(2, '2024-01-01', 5231), corrects: [trialId(1)] },
    hours(4, '2024-01-02', 5240),
    note as Entry,
  ]
  expect(ledger(log)[0]?.rows).toMatchObject([
    { is: 'taken-back', entry: { id: trialId(4) }, by: { id: trialId(3) } },
    { is: 'entry', entry: { id: trialId(2) }, old: [{ id: trialId(1) }] },
  ])
})

test('a year carries its hours, stops, days and money; a bill and its work are paid once', () => {
  const log = [
    hours(1, '2023-12-01', 100),
    hours(2, '2024-06-01', 180),
    trialEntry(3, 'stop', { daysWithoutPower: 3, curedSameDay: false }, at('2024-07-01')),
    trialEntry(
      4,
      'work',
      { parts: [{ part: 'drive-belt', did: 'renewed' }], by: 'workshop', why: 'failed', cost: 50 },
      at('2024-07-02'),
    ),
    trialEntry(5, 'bill', { amount: 50, work: trialId(4) }, at('2024-07-03')),
    trialEntry(6, 'meter-changed', { newMeterHours: 0 }, at('2024-08-01')),
    hours(7, '2024-09-01', 20),
  ] as Entry[]
  expect(ledger(log).map(({ year, carried, paidInAll }) => ({ year, ...carried, paidInAll }))).toEqual([
    { year: '2024', hours: 100, stops: 1, daysWithoutPower: 3, paid: 50, paidInAll: 50 },
    { year: '2023', hours: 0, stops: 0, daysWithoutPower: 0, paid: 0, paidInAll: 0 },
  ])
})

test('only what is wanted is shown, and the years carry all the same', () => {
  const log = [hours(1, '2024-01-01', 10), hours(2, '2024-02-01', 30)]
  const years = ledger(log, { wanted: ({ kind }) => kind === 'stop' })
  expect(years).toEqual([])
})

test('twenty thousand entries are in order, each once', () => {
  const log = longTrialLog({ entries: 20_000, years: 20 }) as Entry[]
  const years = ledger(log)
  const days = years.flatMap(({ rows }) =>
    rows.flatMap((row) => (row.is === 'readings' ? row.entries : [row.entry]).map(({ until }) => until)),
  )
  expect(days).toEqual([...days].sort().reverse())
  expect(years.reduce((sum, { count }) => sum + count, 0)).toBe(days.length)
})
