import { expect, test } from 'vitest'
import { trialEntry } from '../../test/trial-log.js'
import { readBoatLines } from './boat-lines.js'
import { canonicalText } from './canonical.js'

const header = {
  type: 'gensettle-boat-lines',
  version: 1,
  boat: 'trial',
  units: 'as the names of the fields say',
  date: '2024-05-01',
  source: 'invented',
}

function file(...lines: unknown[]): string {
  return `${lines.map((line) => (typeof line === 'string' ? line : JSON.stringify(line))).join('\n')}\n`
}

test('a file of lines gives its entries in canonical text', () => {
  const entry = trialEntry(1, 'hours', { meterHours: 12 })
  expect(readBoatLines(file(header, entry, '', trialEntry(2, 'note', { text: 'fine' })))).toMatchObject({
    ok: true,
    header,
    entries: [{ text: canonicalText(entry) }, { entry: { kind: 'note' } }],
  })
})

test('every wrong line is told at once under its number', () => {
  const read = readBoatLines(
    file(
      { ...header, version: 2 },
      trialEntry(1, 'hours', { meterHours: -1 }),
      '{"half',
      trialEntry(2, 'hours', { meterHours: 1 }),
      trialEntry(2, 'hours', { meterHours: 2 }),
    ),
  )
  expect(read.ok ? [] : read.problems.map(({ code, path }) => [code, path])).toEqual([
    ['not-one-of', 'line 1 version'],
    ['out-of-range', 'line 2 body.meterHours'],
    ['not-json', 'line 3'],
    ['same-id-other-text', '01HZZZZZZZ0000000000000002'],
  ])
})

test('another boat among the lines, and a file that is none, are refused', () => {
  const other = readBoatLines(file(header, trialEntry(1, 'hours', { meterHours: 1 }, { boat: 'other' })))
  expect(other).toMatchObject({ ok: false, problems: [{ code: 'other-boat', path: 'line 2 boat' }] })
  expect(readBoatLines('').ok).toBe(false)
  expect(readBoatLines('\u0000\u0001').ok).toBe(false)
})

test('of a thousand wrong lines the first are told, and how many more there are', () => {
  const read = readBoatLines(file(header, ...Array.from({ length: 1000 }, () => '{}x')))
  expect(read.ok ? [] : read.problems.slice(-1)).toMatchObject([
    { code: 'and-more', found: '800 more problems' },
  ])
})
