import { existsSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import type { Entry } from '../logbook/kinds.js'
import { kinds } from '../logbook/kinds.js'
import { exportToFile, importFromFile } from './boat-file.js'
import { fieldsOf } from './body-fields.js'
import { bareFieldsOf, bodyFrom } from './drafts.js'
import { meaningOf } from './field-meanings.js'
import { importLog } from './import-log.js'
import { addEntry, correctEntry } from './log.js'
import { listEntries } from './log-list.js'
import type { Result } from './result.js'
import { simulateFile } from './simulate.js'

const folder = () => mkdtempSync(join(tmpdir(), 'gensettle-'))

async function begun(): Promise<string> {
  const data = folder()
  const flags = { 'rating-kw': ['7'], rpm: ['1500'], built: ['2004'], volts: ['230'] }
  await addEntry({ kind: 'set', bare: [], flags }, { data, boat: 'petrel', set: 'main', from: '2024-01-01' })
  return data
}

function entriesOf(result: Result): readonly Entry[] {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.json.entries as readonly Entry[]
}

const faults = (result: Result) =>
  result.ok ? [] : result.problems.map(({ code, path }) => `${code} ${path}`)

test('every kind has fields that can be typed, each with its meaning, and none loses its bare ones', () => {
  for (const kind of kinds) {
    expect(fieldsOf(kind).length, kind).toBeGreaterThan(0)
    expect(bareFieldsOf(kind), kind).not.toContain(undefined)
    const untold = fieldsOf(kind).filter(({ flag }) => meaningOf(kind, flag) === undefined)
    expect(untold.map(({ flag }) => `${kind} ${flag}`)).toEqual([])
  }
})

test.each([
  ['a number', 'hours', { 'meter-hours': ['5240'] }, { meterHours: 5240 }],
  ['a list', 'set', { volts: ['240,120'] }, { volts: [240, 120] }],
  ['one of a list', 'complete', { of: ['stops', 'work'] }, { of: ['stops', 'work'] }],
  ['yes', 'fitted', { 'original-to-set': [true] }, { originalToSet: true }],
  ['a record', 'stop', { cause: ['sea-pump-seal:wear'] }, { cause: { part: 'sea-pump-seal', mode: 'wear' } }],
  [
    'records',
    'work',
    { parts: ['anode:renewed;coolant:topped-up'] },
    {
      parts: [
        { part: 'anode', did: 'renewed' },
        { part: 'coolant', did: 'topped-up' },
      ],
    },
  ],
  [
    'a record with a field left out',
    'alternative',
    { parts: ['elbow:renewed::0.8'] },
    { parts: [{ part: 'elbow', outcome: 'renewed', quality: 0.8 }] },
  ],
  [
    'a measured value',
    'reading',
    { values: ['resistance:1.8:Mohm'] },
    { values: [{ name: 'resistance', value: 1.8, unit: 'Mohm' }] },
  ],
  [
    'a field within a field',
    'bill',
    { 'tax-percent': ['20'], 'tax-included': ['no'] },
    { tax: { percent: 20, included: false } },
  ],
  [
    'JSON',
    'quote',
    { 'covers-parts': ['[{"part":"exciter","did":"renewed"}]'] },
    { covers: { parts: [{ part: 'exciter', did: 'renewed' }] } },
  ],
  [
    'a short way',
    'finding',
    { part: ['anode'], 'defect-seen': ['half gone'] },
    { about: [{ part: 'anode' }], verdict: 'defect-seen', seen: 'half gone' },
  ],
  ['what is no number', 'hours', { 'meter-hours': ['many'] }, { meterHours: 'many' }],
] as const)('%s is understood', (_, kind, flags, body) => {
  expect(bodyFrom({ kind, bare: [], flags }).body).toEqual(body)
})

test('an entry is written under the only boat and set, and odd ones are asked about', async () => {
  const data = await begun()
  const hours = (value: string, from: string) =>
    addEntry({ kind: 'hours', bare: [value], flags: {} }, { data, from })
  expect(entriesOf(await hours('5240', '2024-05-01'))).toMatchObject([{ boat: 'petrel', set: 'main', n: 2 }])
  const lower = await hours('5198', '2024-06-01')
  expect(lower.ok && lower.json.asked).toHaveLength(1)
  expect(lower.ok && lower.text).toContain('Asked')
  expect(entriesOf(await listEntries({ data, kind: 'hours' }))).toHaveLength(2)
  expect(entriesOf(await listEntries({ data, since: '2024-06' }))).toHaveLength(1)
})

test('everything wrong with an entry is told at once, and nothing is written', async () => {
  const data = folder()
  const typed = { kind: 'hours', bare: ['many'], flags: { starts: ['-1'] } } as const
  expect(faults(await addEntry(typed, { data, from: 'May', body: '{' }))).toEqual([
    'not-json --body',
    'missing --boat',
    'wrong-form from',
    'wrong-form until',
    'wrong-type body.meterHours',
    'out-of-range body.starts',
  ])
  expect(faults(await listEntries({ data }))).toEqual(['missing --boat'])
})

test('demonstration boats cannot be written to', async () => {
  const note = { kind: 'note', bare: ['hello'], flags: {} } as const
  expect(faults(await addEntry(note, { data: folder(), boat: 'marram' }))).toEqual(['read-only --boat'])
})

test('a correction stands in the place of the old entry; what is taken back goes', async () => {
  const data = await begun()
  const [old] = entriesOf(
    await addEntry({ kind: 'hours', bare: ['5240'], flags: {} }, { data, from: '2024-05-01' }),
  )
  const change = { data, bare: [], flags: { 'meter-hours': ['5204'] } }
  const [corrected] = entriesOf(await correctEntry(old!.id, change))
  expect(corrected).toMatchObject({ from: '2024-05-01', body: { meterHours: 5204 }, corrects: [old!.id] })
  expect(entriesOf(await listEntries({ data, kind: 'hours' })).map(({ id }) => id)).toEqual([corrected!.id])
  await correctEntry(corrected!.id, { data, bare: [], flags: {}, takeBack: 'another boat' })
  expect(entriesOf(await listEntries({ data, kind: 'hours' }))).toEqual([])
  expect(faults(await correctEntry('none', change))).toEqual(['unknown-entry ID'])
})

test('an old paper log is read whole, and what was guessed is told', async () => {
  const data = await begun()
  const file = join(folder(), 'log.csv')
  writeFileSync(file, 'Date,Engine hours,Was\n3/4/2019,1200,spring\n12/10/2019,1260,anode renewed\n')
  const options = { data, column: ['what=Was'], dates: 'day-first' } as const
  const judged = await importLog(file, { ...options, check: true })
  expect(judged.ok && judged.text).toContain('Nothing was written')
  expect(entriesOf(await listEntries({ data }))).toHaveLength(1)
  const read = await importLog(file, options)
  expect(entriesOf(read)).toContainEqual(
    expect.objectContaining({
      from: '2019-10-12',
      kind: 'work',
      body: expect.objectContaining({ parts: [{ part: 'anode', did: 'renewed' }] }),
    }),
  )
  expect(read.ok && read.text).toContain('row 3: anode renewed')
})

test('an old paper log with faults is refused whole', async () => {
  const data = await begun()
  const file = join(folder(), 'log.csv')
  writeFileSync(file, 'date,hours\n2019,1200\n2019-13,x\n')
  expect(faults(await importLog(file, { data }))).toEqual(['no-date row 3 date', 'no-number row 3 hours'])
  expect(faults(await importLog(join(folder(), 'none.csv'), { data, column: ['tea=T'] }))).toEqual([
    'no-such-file FILE',
    'unknown-field --column',
  ])
  expect(entriesOf(await listEntries({ data }))).toHaveLength(1)
})

test('a boat goes out as one file and comes in again', async () => {
  const data = await begun()
  const file = join(folder(), 'petrel.boat')
  expect(await exportToFile(file, { data })).toMatchObject({ ok: true, json: { entries: 1 } })
  expect(existsSync(file)).toBe(true)
  const other = folder()
  expect(await importFromFile(file, { data: other })).toMatchObject({
    ok: true,
    json: { boat: 'petrel', added: 1 },
  })
  expect(entriesOf(await listEntries({ data: other }))).toEqual(entriesOf(await listEntries({ data })))
  expect(faults(await exportToFile(file, { data }))).toEqual(['already-there file'])
  expect(faults(await exportToFile(`${file}2`, { data, boat: 'marram' }))).toEqual(['unknown-boat --boat'])
})

test('a model written by hand is played, the same for the same seed', async () => {
  const file = join(folder(), 'pump.json')
  const pump = {
    id: 'pump',
    repair: { price: 100 },
    modes: [{ id: 'seal', clock: 'years', shape: 1, scale: 2 }],
  }
  writeFileSync(
    file,
    JSON.stringify({ type: 'gensettle/life-model', version: 1, horizonYears: 5, parts: [pump] }),
  )
  const first = await simulateFile(file, { histories: 200, seed: 7 })
  expect(first).toEqual(await simulateFile(file, { histories: 200, seed: 7 }))
  expect(first.ok && first.text).toContain('pump, seal')
  expect(first.ok && first.text).toContain('makes no electrical or engine work safe')
})

test.each([
  ['{', 'not-json FILE'],
  ['{"type":"gensettle/life-model","version":1,"horizonYears":5,"parts":[]}', 'out-of-range parts'],
])('a model %s is refused', async (text, fault) => {
  const file = join(folder(), 'model.json')
  writeFileSync(file, text)
  expect(faults(await simulateFile(file, { histories: 2, seed: 1 }))).toEqual([fault])
})

test('a model that would never come to an end is told, with its part', async () => {
  const file = join(folder(), 'model.json')
  const parts = [{ id: 'fuse', modes: [{ id: 'blows', clock: 'years', shape: 1, scale: 1e-6 }] }]
  writeFileSync(file, JSON.stringify({ type: 'gensettle/life-model', version: 1, horizonYears: 5, parts }))
  const result = await simulateFile(file, { histories: 2, seed: 1 })
  expect(result).toMatchObject({ ok: false, problems: [{ code: 'cannot-tell' }] })
  expect(!result.ok && result.problems[0]!.found).toContain('fuse')
})
