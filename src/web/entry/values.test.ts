import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { readBoatLines } from '../../logbook/boat-lines.js'
import { parseEntry } from '../../logbook/entry.js'
import { kinds } from '../../logbook/kinds.js'
import { fieldsOf, quickKinds } from './fields.js'
import { bodyOf, nameFrom, usualValues, valuesOf } from './values.js'

const today = '2026-11-25'
const root = join(import.meta.dirname, '../../..')
const fixtures = readFileSync(join(root, 'src/logbook/fixtures/version-1.jsonl'), 'utf8')
  .split('\n')
  .flatMap((line) => {
    const parsed = parseEntry(line)
    return parsed.ok ? [parsed.entry] : []
  })
const demonstration = ['marram', 'quillback', 'teasel'].flatMap((boat) => {
  const read = readBoatLines(readFileSync(join(root, 'demo', `${boat}.jsonl`), 'utf8'))
  return read.ok ? read.entries.map(({ entry }) => entry) : []
})

test('an entry that is opened and not changed stays the same, of every kind that can be typed', () => {
  expect(fixtures.length).toBeGreaterThan(15)
  expect(demonstration.length).toBeGreaterThan(500)
  for (const { kind, body } of [...fixtures, ...demonstration]) {
    const fields = fieldsOf(kind)
    const { body: again, misread } = bodyOf(fields, valuesOf(fields, body), { base: body, today })
    expect(misread).toEqual({})
    expect(again).toEqual(body)
  }
})

test('what stands in no form of a kind stays as it was', () => {
  const fields = fieldsOf('terms')
  const base = { yearsKept: 8, ownerDoes: ['minor'] }
  const { body } = bodyOf(fields, { yearsKept: '5' }, { base, today })
  expect(body).toEqual({ yearsKept: 5, ownerDoes: ['minor'] })
})

test('every quick kind can be typed, and what is asked for is enough', () => {
  const typed = {
    hours: { meterHours: '5,240' },
    finding: { 'about.0.part': 'exhaust-elbow', verdict: 'defect-seen', seen: 'weeps when hot' },
    reading: {
      test: 'insulation-test',
      'values.0.name': 'Winding to frame',
      'values.0.value': '1.8',
      'values.0.unit': 'Mohm',
    },
    stop: { daysWithoutPower: '2', curedSameDay: 'no' },
    work: { 'parts.0.part': 'drive-belt', 'parts.0.did': 'renewed', by: 'owner', why: 'preventive' },
    quote: { job: 'Rewind the stator', amount: '£2,650', firmness: 'estimate', subjectToStripDown: 'yes' },
    bill: { amount: '46' },
    note: { text: 'laid up, covers off, dry' },
  }
  for (const kind of quickKinds) {
    const fields = fieldsOf(kind)
    const { body, misread } = bodyOf(fields, { ...usualValues(fields), ...typed[kind] }, { today })
    expect(misread).toEqual({})
    const entry = { ...fixtures[0], set: 'main', kind, body, corrects: [] }
    expect(parseEntry(entry)).toMatchObject({ ok: true })
  }
})

test('a reading in Fahrenheit is kept in Celsius', () => {
  const values = { 'values.0.name': 'winding', 'values.0.value': '104', 'values.0.unit': 'F' }
  const { body } = bodyOf(fieldsOf('reading'), values, { today })
  expect(body).toEqual({ values: [{ name: 'winding', value: 40, unit: 'C' }] })
})

test('what is no number and no date is named, each where it stands', () => {
  const { misread } = bodyOf(fieldsOf('quote'), { amount: 'a lot', validUntil: 'soon' }, { today })
  expect(misread).toEqual({ amount: 'number', validUntil: 'date' })
})

test('a name from words', () => {
  expect(nameFrom('Rewind, stator only')).toBe('rewind-stator-only')
  expect(nameFrom('2nd hand set é')).toBe('nd-hand-set-e')
})

test('only kinds that there are have fields, but for those that a page of their own writes', () => {
  const without = ['case', 'house-rule', 'measured', 'photograph-removed']
  expect(kinds.filter((kind) => fieldsOf(kind).length === 0).sort()).toEqual(without)
})

test('prices of being without power are typed by length, and what is no number is told', () => {
  const fields = fieldsOf('terms')
  const read = (curve: string) =>
    bodyOf(fields, { 'withoutPower.0.months': '5 6', 'withoutPower.0.curve': curve }, { today })
  expect(read('1\t£40\n\t\n7\t1,200').body).toEqual({
    withoutPower: [
      {
        months: [5, 6],
        curve: [
          { days: 1, price: 40 },
          { days: 7, price: 1200 },
        ],
      },
    ],
  })
  expect(read('1\ta lot').misread).toEqual({ 'withoutPower.0.curve': 'number' })
})

test('shares are typed in hundredths', () => {
  const fields = fieldsOf('use')
  const values = {
    'months.0.month': '7',
    'months.0.hours': '60',
    'months.0.starts': '30',
    'months.0.needShare': '70',
    'months.0.lowLoadShare': '33.3',
  }
  const { body } = bodyOf(fields, values, { today })
  expect(body).toEqual({ months: [{ month: 7, hours: 60, starts: 30, needShare: 0.7, lowLoadShare: 0.333 }] })
  expect(valuesOf(fields, body)).toEqual(values)
})
