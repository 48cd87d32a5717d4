import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { canonicalText } from './canonical.js'
import { longestEntry, parseEntry } from './entry.js'
import { logbookJsonSchema } from './json-schema.js'
import { readKept } from './kept.js'
import { kinds } from './kinds.js'
import { readOldVersion } from './versions.js'

// Written when version 1 was the present one. Kept as it is for ever: it must always be readable.
const fixture = readFileSync(join(import.meta.dirname, 'fixtures/version-1.jsonl'), 'utf8')
  .trimEnd()
  .split('\n')

const hours = {
  version: 1,
  id: '01HZZZZZZZ0000000000000001',
  boat: 'trial',
  set: 'main',
  from: '2019-05-12',
  until: '2019-05-12',
  noted: '2019-05-12T18:00:00Z',
  device: 'saloon',
  n: 1,
  kind: 'hours',
  body: { meterHours: 4210.5 },
  corrects: [],
}

function problemsOf(input: unknown) {
  const parsed = parseEntry(input)
  return parsed.ok ? [] : parsed.problems
}

test.each(fixture)('version 1 is read for ever, its text unchanged: %s', (line) => {
  const parsed = parseEntry(line)
  expect(parsed.ok && parsed.text).toBe(line)
  expect(readKept(line)).toEqual(JSON.parse(line))
})

test('the old entries hold one of every kind that version 1 had', () => {
  const held = new Set(fixture.map((line) => readKept(line).kind))
  expect([...held].sort()).toEqual([...kinds].sort())
})

test('fields in another order and blanks between them are the same entry', () => {
  const shuffled = JSON.stringify(Object.fromEntries(Object.entries(hours).reverse()), null, 2)
  const parsed = parseEntry(shuffled)
  expect(parsed.ok && parsed.text).toBe(canonicalText(hours))
})

test('everything that is wrong is told at once, in words', () => {
  const wrong = {
    ...hours,
    id: 'x',
    boat: 'Trial Boat',
    from: '2019-02-30',
    noted: 'yesterday',
    n: 0,
    body: { meterHours: 'many', tide: 3 },
    colour: 'red',
  }
  expect(problemsOf(wrong)).toEqual([
    { code: 'wrong-form', path: 'id', found: '"x"', allowed: 'a ULID: 26 digits and capital letters' },
    {
      code: 'wrong-form',
      path: 'boat',
      found: '"Trial Boat"',
      allowed:
        'small letters and digits, words joined by hyphens, beginning with a letter, at most 60 characters',
    },
    {
      code: 'not-allowed',
      path: 'from',
      found: '"2019-02-30"',
      allowed: 'a date such as 2019, 2019-05 or 2019-05-12, of the years 1900 to 2199, that the calendar has',
    },
    {
      code: 'wrong-form',
      path: 'noted',
      found: '"yesterday"',
      allowed: 'an instant in universal time such as 2024-05-01T10:30:00Z',
    },
    { code: 'out-of-range', path: 'n', found: '0', allowed: 'a whole number from 1 to 1000000000' },
    {
      code: 'wrong-type',
      path: 'body.meterHours',
      found: '"many"',
      allowed: 'a number from 0 to 200000 h',
    },
    { code: 'unknown-field', path: 'body.tide', found: '"tide"', allowed: 'only the fields of this kind' },
    { code: 'unknown-field', path: 'colour', found: '"colour"', allowed: 'only the fields of this kind' },
  ])
})

test('an unknown kind is told together with what else is wrong', () => {
  const codes = problemsOf({ ...hours, kind: 'regatta', until: '2018', n: 1.5 }).map(({ code, path }) => [
    code,
    path,
  ])
  expect(codes).toEqual([
    ['wrong-type', 'n'],
    ['not-one-of', 'kind'],
    ['ends-before-it-begins', 'until'],
  ])
})

test.each([
  ['nothing', undefined],
  ['null', 'null'],
  ['a list', '[]'],
  ['a number', 4],
  ['half an entry', canonicalText(hours).slice(0, 60)],
  ['brackets without end', '['.repeat(90_000)],
  ['more than an entry may hold', `"${'x'.repeat(longestEntry)}"`],
  ['a number that is none', { ...hours, body: { meterHours: Number.NaN } }],
  ['a hidden prototype', canonicalText(hours).replace('"body":{', '"body":{"__proto__":{"meterHours":1},')],
  ['control characters', { ...hours, body: { meterHours: 1, remark: 'red\u001b[31m' } }],
  ['half a character', { ...hours, body: { meterHours: 1, remark: '\ud800' } }],
  ['blanks alone', { ...hours, body: { meterHours: 1, remark: '  ' } }],
  ['a set for an entry of the boat', { ...hours, kind: 'boat', body: { name: 'Trial' } }],
  ['no set for an entry of a set', { ...hours, set: null }],
  ['particulars that say nothing', { ...hours, kind: 'set', body: {} }],
  ['a void without a reason', { ...hours, voids: true, corrects: ['01HZZZZZZZ0000000000000002'] }],
  ['a correction of itself', { ...hours, corrects: [hours.id] }],
  ['a day after the end', { ...hours, from: '2019-06', until: '2019-05' }],
  ['a version still to come', { ...hours, version: 2 }],
])('%s is refused', (_, input) => {
  const problems = problemsOf(input)
  expect(problems.length).toBeGreaterThan(0)
  for (const { allowed } of problems) expect(allowed).not.toMatch(/Invalid|undefined/)
})

test('months of use, points of the price of a day and fields of a set must not contradict themselves', () => {
  const month = { month: 4, hours: 1, starts: 1, needShare: 1, lowLoadShare: 0 }
  expect(problemsOf({ ...hours, kind: 'use', body: { months: [month, month] } })).toMatchObject([
    { code: 'named-twice', path: 'body.months' },
  ])
  const curve = [
    { days: 2, price: 5 },
    { days: 2, price: 9 },
  ]
  const terms = { ...hours, set: null, kind: 'terms', body: { withoutPower: [{ months: [1, 1], curve }] } }
  expect(problemsOf(terms).map(({ code }) => code)).toEqual(['named-twice', 'not-rising'])
  expect(problemsOf({ ...hours, kind: 'set', body: { has: ['avr'], hasNot: ['avr'] } })).toMatchObject([
    { code: 'has-and-has-not' },
  ])
})

test.each([
  [{ id: 'a' }, ['missing body.now']],
  [
    { id: 'a', leftOut: true, now: 'leave', price: 3 },
    ['left-out-but-told body.now', 'left-out-but-told body.price'],
  ],
  [{ id: 'a', now: 'mend' }, ['missing body.parts']],
  [{ id: 'a', now: 'replace', days: 2 }, ['not-of-this body.days', 'missing body.replaceWith']],
  [
    {
      id: 'a',
      now: 'mend',
      parts: [{ part: 'elbow', agesLess: 0.5 }, { part: 'elbow' }],
      price: 1,
      job: 'elbow',
      replaceWith: 'new-same',
    },
    [
      'not-of-this body.replaceWith',
      'priced-twice body.price',
      'not-of-this body.parts.0.agesLess',
      'named-twice body.parts.1',
    ],
  ],
  [{ id: 'a', now: 'give-up', later: { year: 1 } }, ['not-of-this body.later']],
  [{ id: 'a', now: 'mend', parts: [{ part: 'elbow' }], besides: 10 }, ['not-of-this body.besides']],
  [
    { id: 'a', now: 'mend', parts: [{ part: 'elbow', outcome: 'reconditioned', agesLess: 0.5 }], price: 10 },
    [],
  ],
  [{ id: 'a', leftOut: true, remark: 'too dear by far' }, []],
])('an alternative must hang together: %j', (body, faults) => {
  const found = problemsOf({ ...hours, kind: 'alternative', body })
  expect(found.map(({ code, path }) => `${code} ${path}`)).toEqual(faults)
})

test('whatever comes in is answered, never thrown', () => {
  fc.assert(
    fc.property(fc.oneof(fc.jsonValue(), fc.string()), (value) => {
      expect(parseEntry(value).ok).toBe(false)
    }),
  )
  fc.assert(
    fc.property(fc.constantFrom(...Object.keys(hours)), fc.jsonValue(), (field, value) => {
      expect(typeof parseEntry({ ...hours, [field]: value }).ok).toBe('boolean')
    }),
  )
})

test('canonical text is what JSON reads back, whatever the order of the fields', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (value) => {
      const text = canonicalText(value)
      expect(canonicalText(JSON.parse(text))).toBe(text)
    }),
  )
  expect(canonicalText({ b: [1e21, -0, 0.1], a: undefined, '€': 'é"\n', A: null })).toBe(
    '{"A":null,"b":[1e+21,0,0.1],"€":"é\\"\\n"}',
  )
  expect(() => canonicalText({ a: Number.NaN })).toThrow('value must be one that JSON can write; found NaN')
})

test('an entry of an older version is brought forward step by step', () => {
  const versions = {
    present: 3,
    steps: {
      1: (old: object) => ({ ...old, version: 2, second: true }),
      2: (old: object) => ({ ...old, version: 3, third: true }),
    },
  }
  expect(readOldVersion({ version: 1 }, versions)).toEqual({
    ok: true,
    value: { version: 3, second: true, third: true },
  })
  expect(readOldVersion({ version: 0 }, versions)).toMatchObject({
    ok: false,
    problems: [{ code: 'unknown-version', found: '0', allowed: 'one of: 1, 2, 3' }],
  })
  expect(readOldVersion({ version: 4 }, versions)).toMatchObject({
    problems: [{ allowed: '3 or older: this entry was written by a newer program' }],
  })
})

// `npx vitest run src/logbook -u` remakes the file.
test('the published schema is the one in force', async () => {
  await expect(`${JSON.stringify(logbookJsonSchema(), null, 2)}\n`).toMatchFileSnapshot(
    '../../docs/schema/logbook.schema.json',
  )
})
