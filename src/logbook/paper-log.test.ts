import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { parseEntry } from './entry.js'
import { type PaperLogOptions, readPaperLog } from './paper-log.js'
import { inOrder, readDate } from './paper-log-dates.js'
import { bareNumber, markShownBy, numberFrom } from './paper-log-numbers.js'

const options: PaperLogOptions = {
  boat: 'trial',
  set: 'main',
  parts: [
    { id: 'impeller', names: ['Raw-water pump impeller', 'impeller'] },
    { id: 'elbow', names: ['Mixing elbow', 'exhaust elbow'] },
    { id: 'strainer', names: ['strainer'] },
    { id: 'belt', names: ['Drive belt', 'belt'] },
  ],
}

function read(csv: string, more: Partial<PaperLogOptions> = {}) {
  const log = readPaperLog(csv, { ...options, ...more })
  if (!log.ok) throw new Error(JSON.stringify(log.problems, null, 1))
  return log
}

function problems(csv: string, more: Partial<PaperLogOptions> = {}) {
  const log = readPaperLog(csv, { ...options, ...more })
  return log.ok ? [] : log.problems.map(({ code, path, found }) => [code, path, found])
}

test('an ordinary log: hours, work, bills and notes, with what was guessed said', () => {
  const log = read(
    [
      'Date,Engine hours (h),Work done,By,Cost (£),Weather',
      '14/05/2012,"1,204.5",New impeller fitted,self,£38.50,fine',
      ',,,,,',
      '2013,,Ran well all summer,,,',
      'June 2014,1530,"Exhaust elbow leaking, replaced",the yard,412.00,',
      '03/02/2015,1602,,,,',
      '20/06/2015,,harbour dues,,20,',
    ].join('\r\n'),
  )
  expect(log.drafts).toEqual([
    {
      boat: 'trial',
      set: 'main',
      from: '2012-05-14',
      kind: 'work',
      body: {
        parts: [{ part: 'impeller', did: 'renewed' }],
        by: 'owner',
        why: 'not-known',
        what: 'New impeller fitted (by self)',
        cost: 38.5,
        meterHours: 1204.5,
        remark: 'Weather: fine',
      },
    },
    { boat: 'trial', set: 'main', from: '2013', kind: 'note', body: { text: 'Ran well all summer' } },
    {
      boat: 'trial',
      set: 'main',
      from: '2014-06',
      kind: 'work',
      body: {
        parts: [{ part: 'elbow', did: 'renewed' }],
        by: 'workshop',
        why: 'not-known',
        what: 'Exhaust elbow leaking, replaced (by the yard)',
        cost: 412,
        meterHours: 1530,
      },
    },
    { boat: 'trial', set: 'main', from: '2015-02-03', kind: 'hours', body: { meterHours: 1602 } },
    {
      boat: 'trial',
      set: 'main',
      from: '2015-06-20',
      kind: 'bill',
      body: { amount: 20, what: 'harbour dues' },
    },
  ])
  expect(log.read).toEqual({
    columns: { date: 'Date', hours: 'Engine hours (h)', what: 'Work done', by: 'By', cost: 'Cost (£)' },
    otherColumns: ['Weather'],
    dateOrder: 'day-first',
    decimal: 'point',
    rows: 5,
    guessed: [
      { row: 2, as: 'impeller renewed, by owner' },
      { row: 5, as: 'elbow renewed, by workshop' },
    ],
    unknownParts: [],
  })
})

test('a table of another country: semicolons, decimal commas, headings that must be named', () => {
  const csv =
    'Datum;Stunden;Was;Kosten\n3.4.2018;5.240,5;Strainer cleaned;12,90\n25.4.2018;5.251;belt tightened;\n'
  const columns = { date: 'Datum', hours: 'Stunden', what: 'Was', cost: 'Kosten' }
  const log = read(csv, { columns })
  expect(log.read).toMatchObject({ dateOrder: 'day-first', decimal: 'comma' })
  expect(log.drafts).toMatchObject([
    {
      from: '2018-04-03',
      body: { parts: [{ part: 'strainer', did: 'cleaned' }], meterHours: 5240.5, cost: 12.9 },
    },
    { from: '2018-04-25', body: { parts: [{ part: 'belt', did: 'adjusted' }], meterHours: 5251 } },
  ])
})

test('month first, as told or as one date shows', () => {
  expect(read('date,hours\n5/14/2012,1\n6/7/2012,2\n').drafts.map(({ from }) => from)).toEqual([
    '2012-05-14',
    '2012-06-07',
  ])
  expect(read('date,hours\n6/7/2012,2\n', { dateOrder: 'month-first' }).drafts[0]?.from).toBe('2012-06-07')
  expect(read('date,hours\n6/7/2012,2\n', { dateOrder: 'day-first' }).drafts[0]?.from).toBe('2012-07-06')
  expect(read('date,hours\n6/6/2012,2\n').read.dateOrder).toBe('does-not-matter')
})

test('what cannot be known is asked, what contradicts itself is told', () => {
  expect(problems('date,hours\n6/7/2012,"1,234"\n')).toEqual([
    ['date-order-open', 'row 2 date', '"6/7/2012"'],
    ['decimal-mark-open', 'row 2 hours', '1,234'],
  ])
  const contradicting = problems('date,hours\n14/5/2012,1.5\n5/14/2012,"2,5"\n').map(([code]) => code)
  expect(contradicting).toEqual(['date-orders-differ', 'decimal-marks-differ', 'no-date', 'no-number'])
})

test('every bad row is told with everything wrong in it, and nothing is read', () => {
  const csv = [
    'date,hours,what,cost',
    '2019-02-30,many,,minus five',
    '2019-03-01,,,',
    ',12,,',
    '2019-03-02,12,fine,3,4,surplus',
    '2019-03-03,900000,,',
  ].join('\n')
  expect(
    problems(csv)
      .map(([code, path]) => `${code} ${path}`)
      .sort(),
  ).toEqual(
    [
      'no-date row 2 date',
      'no-number row 2 hours',
      'no-number row 2 cost',
      'says-nothing row 3',
      'missing row 4 date',
      'too-many-cells row 5',
      'no-number row 6 hours',
    ].sort(),
  )
})

test.each([
  ['nothing', ''],
  ['headings alone', 'date,hours\n'],
  ['no headings', '2019-05-12,1200\n2019-06-12,1240\n'],
  ['quotes without end', 'date,what\n2019-05-12,"began but never\nended'],
  ['a picture', '\ufffd\ufffd\u0000JFIF\u0001\u0002'],
  ['a word too long', `date,what\n2019,${'x'.repeat(2000)}\n`],
  ['more than a log', 'x'.repeat(5_000_001)],
])('%s is refused', (_, csv) => {
  expect(problems(csv).length).toBeGreaterThan(0)
})

test('headings that are named must be there, each for one field', () => {
  expect(
    problems('date,hours\n2019,1\n', { columns: { date: 'When', what: 'hours', hours: 'hours' } }),
  ).toEqual([
    ['no-such-column', 'columns.date', '"When"'],
    ['column-twice', 'columns.what', '"hours"'],
  ])
})

test.each([
  [
    'impeller and belt renewed, strainer cleaned',
    'impeller renewed, belt renewed, strainer cleaned, by owner',
  ],
  ['Replaced raw-water pump impeller; checked belt', 'impeller renewed, belt tested, by owner'],
  ['Belt snapped. New one fitted', 'belt renewed, by owner, had failed'],
  ['strainer lid taken off and washed out', 'strainer removed, by owner'],
])('%j is taken for: %s', (what, as) => {
  expect(read(`date,what\n2019,"${what}"\n`).read.guessed).toEqual([{ row: 2, as }])
})

test('words that tell no deed, or no part we know, become a note; a part unknown is told', () => {
  const log = read(
    'date,part,what\n2019,impeller,looked tired\n2020,Flux capacitor,renewed\n2021,belt,renewed\n',
  )
  expect(log.drafts.map(({ kind }) => kind)).toEqual(['note', 'note', 'work'])
  expect(log.read.unknownParts).toEqual([{ row: 3, found: 'Flux capacitor' }])
  expect(log.drafts[0]?.body).toEqual({ text: 'impeller: looked tired' })
})

test.each([
  ['2019-05-12', '2019-05-12'],
  ['2019/5/2', '2019-05-02'],
  ['2019', '2019'],
  ['05/2019', '2019-05'],
  ['12.5.19', '2019-05-12'],
  ['3-4-98', '1998-04-03'],
  ['12 May 2019', '2019-05-12'],
  ['May 12th, 2019', '2019-05-12'],
  ['Sept 2019', '2019-09'],
  ['12-may-19', '2019-05-12'],
])('%s is %s', (text, date) => {
  const written = readDate(text)
  expect(written && inOrder(written, 'day-first')).toBe(date)
})

test.each(['', 'soon', '31 April 2019', 'May', '12 Wotember 2019', '2019-13', '1/2/3/4', '5/2/123', '99'])(
  '%j is no date',
  (text) => {
    const written = readDate(text)
    expect(written && inOrder(written, 'day-first')).toBeUndefined()
  },
)

test.each([
  ['5240', undefined, 5240, 5240],
  ['5,240.5', 'point', 5240.5, undefined],
  ['5.240,5', 'comma', undefined, 5240.5],
  ['1,234', undefined, 1234, 1.234],
  ['1.234', undefined, 1.234, 1234],
  ['0.125', 'point', 0.125, undefined],
  ['1.234.567', 'comma', undefined, 1234567],
  ['12,90', 'comma', undefined, 12.9],
] as const)('%s shows %s', (text, mark, withPoint, withComma) => {
  expect(markShownBy(text)).toBe(mark)
  expect(numberFrom(text, 'point')).toBe(withPoint)
  expect(numberFrom(text, 'comma')).toBe(withComma)
})

test.each([
  ['£1 250', '1250'],
  ['EUR 12,50', '12,50'],
  ['85,-', '85'],
  ["1'250.00 Fr.", '1250.00'],
  ['5240 h', '5240'],
  ['about 50', undefined],
  ['-5', undefined],
  ['', undefined],
])('%j is bare %s', (text, bare) => {
  expect(bareNumber(text)).toBe(bare)
})

test('whatever the table holds, it is read into entries that are in form, or refused in words', () => {
  const words = fc.oneof(
    fc.constantFrom('new impeller', 'strainer cleaned', '', '-'),
    fc.array(fc.nat(0xffff), { maxLength: 12 }).map((codes) => String.fromCharCode(...codes)),
  )
  const date = fc.constantFrom('2019-05-12', '14/5/2019', 'May 2019', '2019', 'soon')
  const number = fc.constantFrom('12', '1.5', '£20', '', '1,5')
  const row = fc
    .tuple(date, number, words, words, number)
    .map((cells) => cells.map((text) => `"${text.replaceAll('"', '""')}"`))
  const table = fc.array(row, { maxLength: 3 })
  let readable = 0
  fc.assert(
    fc.property(table, (rows) => {
      const log = readPaperLog(
        ['date,hours,what,by,cost', ...rows.map((row) => row.join(','))].join('\n'),
        options,
      )
      if (!log.ok) {
        expect(log.problems.length).toBeGreaterThan(0)
        return
      }
      readable += 1
      for (const draft of log.drafts) {
        const entry = {
          until: draft.from,
          corrects: [],
          ...draft,
          version: 1,
          id: '01HZZZZZZZ0000000000000001',
          noted: '2024-01-01T00:00:00Z',
          device: 'saloon',
          n: 1,
        }
        expect(parseEntry(entry)).toMatchObject({ ok: true })
      }
    }),
    { numRuns: 300 },
  )
  expect(readable).toBeGreaterThan(0)
})
