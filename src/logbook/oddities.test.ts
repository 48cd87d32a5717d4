import { expect, test } from 'vitest'
import { trialEntry, trialId } from '../../test/trial-log.js'
import { byDate } from './current.js'
import type { Entry } from './kinds.js'
import { oddities } from './oddities.js'

const known = {
  today: '2024-06-01',
  parts: new Map([
    ['impeller', new Set(['wear'])],
    ['exhaust-elbow', new Set(['leak', 'choke'])],
  ]),
  checks: new Set(['close-look', 'insulation']),
  passable: new Map([
    ['insulation', true],
    ['earth-path', false],
  ]),
}
const particulars = trialEntry(900, 'set', { ratingKw: 7 }, { from: '2004' })

function codes(...entries: Entry[]): [string, number[]][] {
  return oddities(byDate([particulars, ...entries]), known).map(({ code, ids }) => [
    code,
    ids.map((id) => Number(id.slice(10))),
  ])
}

function hours(number: number, from: string, meterHours: number, until = from): Entry {
  return trialEntry(number, 'hours', { meterHours }, { from, until })
}

function work(number: number, from: string, did: 'removed' | 'renewed' | 'cleaned'): Entry {
  return trialEntry(
    number,
    'work',
    { parts: [{ part: 'impeller', did }], by: 'owner', why: 'preventive' },
    { from },
  )
}

test('an ordinary log raises no question', () => {
  expect(
    codes(
      hours(1, '2019', 100),
      hours(2, '2020-05-01', 180),
      work(3, '2020-05-01', 'renewed'),
      trialEntry(
        4,
        'stop',
        { daysWithoutPower: 2, curedSameDay: false },
        { from: '2021-07-01', until: '2021-07-03' },
      ),
      trialEntry(5, 'finding', {
        about: [{ part: 'exhaust-elbow', mode: 'leak' }],
        verdict: 'unsure',
        check: 'close-look',
      }),
    ),
  ).toEqual([])
})

test('a date that has not come, exact to the year or the day', () => {
  expect(codes(hours(1, '2025', 1), hours(2, '2024-06-02', 1))).toEqual([
    ['date-ahead', [2]],
    ['date-ahead', [1]],
  ])
  expect(codes(hours(1, '2024', 1), hours(2, '2024-06-01', 1))).toEqual([])
})

test('hours that fall, but not where the meter was changed or the order of the dates is open', () => {
  expect(codes(hours(1, '2020', 500), hours(2, '2021', 400))).toEqual([['hours-fell', [1, 2]]])
  expect(
    codes(
      hours(1, '2020', 500),
      trialEntry(2, 'meter-changed', { newMeterHours: 0 }, { from: '2020-12-31' }),
      hours(3, '2021', 40),
    ),
  ).toEqual([])
  expect(codes(hours(1, '2020', 500), hours(2, '2020-03-01', 400))).toEqual([])
  expect(
    codes(
      hours(1, '2020', 500),
      trialEntry(2, 'stop', { daysWithoutPower: 0, curedSameDay: true, meterHours: 300 }, { from: '2021' }),
    ),
  ).toEqual([['hours-fell', [1, 2]]])
})

test('more than 24 hours a day, even if the two dates lay as far apart as they can', () => {
  expect(codes(hours(1, '2020-05-01', 100), hours(2, '2020-05-02', 148))).toEqual([])
  expect(codes(hours(1, '2020-05-01', 100), hours(2, '2020-05-02', 149))).toEqual([
    ['hours-too-fast', [1, 2]],
  ])
  expect(codes(hours(1, '2020', 0), hours(2, '2021', 24 * 731))).toEqual([])
})

test('work on a part after it was taken out, until it is fitted again', () => {
  expect(codes(work(1, '2020', 'removed'), work(2, '2021', 'cleaned'))).toEqual([
    ['work-after-removal', [1, 2]],
  ])
  expect(codes(work(1, '2020', 'removed'), work(2, '2021', 'renewed'), work(3, '2022', 'cleaned'))).toEqual(
    [],
  )
  const fitted = trialEntry(2, 'fitted', { part: 'impeller', quality: 'original' }, { from: '2021' })
  expect(codes(work(1, '2020', 'removed'), fitted, work(3, '2022', 'cleaned'))).toEqual([])
  expect(codes(work(1, '2020', 'removed'), work(2, '2020-07', 'cleaned'))).toEqual([])
})

test('the same thing entered twice', () => {
  expect(codes(hours(1, '2020', 5), hours(2, '2020', 5), hours(3, '2020', 6))).toEqual([
    ['entered-twice', [1, 2]],
  ])
})

test('names that the catalogue does not have are asked about once each', () => {
  const finding = (number: number, part: string, mode?: string) =>
    trialEntry(number, 'finding', {
      about: [{ part, mode }],
      verdict: 'unsure',
      check: 'sniff',
      seen: `${number}`,
    })
  expect(codes(finding(1, 'impellor'), finding(2, 'impellor'), finding(3, 'impeller', 'leak'))).toEqual([
    ['unknown-part', [1, 2]],
    ['unknown-check', [1, 2, 3]],
    ['unknown-mode', [3]],
  ])
})

test('a set that nothing describes', () => {
  expect(codes(trialEntry(1, 'hours', { meterHours: 1 }, { set: 'port' }))).toEqual([['unknown-set', [1]]])
})

test('a quote past its validity, unless something followed it', () => {
  const quote = (number: number, validUntil: string) =>
    trialEntry(
      number,
      'quote',
      {
        job: 'rewind',
        amount: 2000,
        firmness: 'firm',
        subjectToStripDown: false,
        excludes: [],
        validUntil,
        covers: { parts: [] },
      },
      { from: '2024-03-01' },
    )
  expect(codes(quote(1, '2024-05-31'))).toEqual([['quote-expired', [1]]])
  expect(codes(quote(1, '2024-06'))).toEqual([])
  expect(
    codes(
      quote(1, '2024-05'),
      trialEntry(2, 'decision', { choice: 'taken', job: 'rewind' }, { from: '2024-05-02' }),
    ),
  ).toEqual([])
  expect(codes(quote(1, '2024-02'))).toEqual([
    ['quote-ends-before-given', [1]],
    ['quote-expired', [1]],
  ])
})

test('a quote in another money, ready or paid before it was offered', () => {
  const quote = (body: object) =>
    trialEntry(
      1,
      'quote',
      {
        job: 'rewind',
        amount: 2000,
        firmness: 'firm',
        subjectToStripDown: false,
        excludes: [],
        covers: { parts: [] },
        ...body,
      },
      { from: '2024-03-01' },
    )
  const boat = trialEntry(2, 'boat', { currency: 'GBP' }, { set: null })
  expect(codes(boat, quote({ currency: 'EUR' }))).toEqual([['quote-in-other-money', [1]]])
  expect(codes(boat, quote({ currency: 'GBP' }))).toEqual([])
  expect(codes(quote({ currency: 'EUR' }))).toEqual([])
  const stagePayments = [{ at: '2024-02-28', share: 0.5 }]
  expect(codes(quote({ readyBy: '2024-02-10', stagePayments }))).toEqual([
    ['ready-before-offered', [1]],
    ['paid-before-offered', [1]],
  ])
})

test('figures that contradict one another within an entry', () => {
  const at = { from: '2021-07-01', until: '2021-07-03' }
  expect(codes(trialEntry(1, 'stop', { daysWithoutPower: 4, curedSameDay: false }, at))).toEqual([
    ['longer-than-it-lasted', [1]],
  ])
  expect(codes(trialEntry(1, 'stop', { daysWithoutPower: 0, curedSameDay: true }, at))).toEqual([
    ['same-day-but-longer', [1]],
  ])
  expect(codes(trialEntry(1, 'bill', { amount: 100, split: { parts: 80, labour: 30 } }))).toEqual([
    ['split-above-amount', [1]],
  ])
})

test('a bill for a quote that is not in the log', () => {
  expect(codes(trialEntry(1, 'bill', { amount: 100, quote: trialId(55) }))).toEqual([
    ['names-what-is-missing', [1]],
  ])
})

test('an alternative about a part that is not on the set, or at a quote that nobody gave', () => {
  const plan = (part: string, job?: string) =>
    trialEntry(5, 'alternative', {
      id: 'try',
      now: 'mend',
      parts: [{ part }],
      ...(job === undefined ? {} : { job }),
    })
  const quote = trialEntry(6, 'quote', {
    job: 'elbow',
    amount: 600,
    firmness: 'firm',
    subjectToStripDown: false,
    excludes: [],
    covers: { parts: [] },
  })
  expect(codes(plan('impeller'))).toEqual([])
  expect(codes(plan('impellor'))).toEqual([['unknown-part', [5]]])
  expect(codes(work(1, '2019-05-01', 'removed'), plan('impeller'))).toEqual([['not-on-the-set', [5]]])
  expect(codes(work(1, '2019-05-01', 'removed'), work(2, '2019-06-01', 'renewed'), plan('impeller'))).toEqual(
    [],
  )
  const without = trialEntry(7, 'set', { hasNot: ['exhaust-elbow'] }, { from: '2005' })
  expect(codes(without, plan('exhaust-elbow'))).toEqual([['not-on-the-set', [5]]])
  expect(codes(plan('impeller', 'elbow'))).toEqual([['no-such-quote', [5]]])
  expect(codes(quote, plan('impeller', 'elbow'))).toEqual([])
})

test('passing over what no reason lifts, or what is not there, is asked about', () => {
  const over = (number: number, about: string) =>
    trialEntry(number, 'passed-over', { about, because: 'in a hurry' }, { from: '2020-06-01' })
  expect(codes(over(1, 'insulation'))).toEqual([])
  expect(codes(over(1, 'earth-path'), over(2, 'earth-pth'))).toEqual([
    ['never-passed-over', [1]],
    ['passed-over-unknown', [2]],
  ])
})
