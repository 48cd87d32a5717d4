import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  compareDates,
  compareInstants,
  dateOfDay,
  dayNumber,
  daySpan,
  daySpanOf,
  exactnessOf,
  firstDay,
  isLogDate,
  isSurelyBefore,
  lastDay,
  midOf,
  yearsBetween,
} from './dates.js'

const day = fc.integer({ min: -25_567, max: 84_005 }).map(dateOfDay)
const date = fc.tuple(day, fc.constantFrom(4, 7, 10)).map(([full, length]) => full.slice(0, length))

test.each(['2019', '2019-05', '2019-05-12', '2020-02-29', '2000-02-29', '1900', '2199-12-31'])(
  '%s is a date',
  (text) => {
    expect(isLogDate(text)).toBe(true)
  },
)

test.each([
  '',
  '19',
  '2019-5',
  '2019-13',
  '2019-00',
  '2019-05-00',
  '2019-04-31',
  '2019-02-29',
  '1900-02-29',
  '2019-05-12T10',
  ' 2019',
  '1899',
  '2200',
])('%j is none', (text) => {
  expect(isLogDate(text)).toBe(false)
})

test.each([
  ['2019', 'year', '2019-01-01', '2019-12-31'],
  ['2019-05', 'month', '2019-05-01', '2019-05-31'],
  ['2020-02', 'month', '2020-02-01', '2020-02-29'],
  ['2019-05-12', 'day', '2019-05-12', '2019-05-12'],
])('%s is exact to the %s: %s to %s', (text, exact, first, last) => {
  expect([exactnessOf(text), firstDay(text), lastDay(text)]).toEqual([exact, first, last])
})

// Four hundred Gregorian years have 146,097 days.
test('days are counted from 1 January 1970', () => {
  expect(dayNumber('1970-01-01')).toBe(0)
  expect(dayNumber('2000-03-01')).toBe(11_017)
  expect(daySpan('1970')).toEqual({ first: 0, last: 364 })
  expect(midOf(daySpan('1970-01'))).toBe(15)
  expect(daySpanOf({ from: '1970', until: '1971' })).toEqual({ first: 0, last: 729 })
  expect(yearsBetween({ first: 0, last: 146_097 })).toBe(400)
  expect(() => dayNumber('2019-02-30')).toThrow('day must be a date exact to the day; found 2019-02-30')
})

test('a day number and its date are one', () => {
  fc.assert(fc.property(day, (text) => dateOfDay(dayNumber(text)) === text))
})

test('dates are ordered by the first day they can mean, then by the last', () => {
  expect(['2019-12', '2020', '2019', '2019-01-01', '2019-01'].sort(compareDates)).toEqual([
    '2019-01-01',
    '2019-01',
    '2019',
    '2019-12',
    '2020',
  ])
  expect(compareDates('2019', '2019')).toBe(0)
  fc.assert(
    fc.property(date, date, (a, b) => {
      expect(Math.sign(compareDates(a, b))).toBe(-Math.sign(compareDates(b, a)) + 0)
      if (isSurelyBefore(a, b)) expect(daySpan(a).last).toBeLessThan(daySpan(b).first)
    }),
  )
})

test('an instant with thousandths comes after the same second without', () => {
  expect(compareInstants('2024-01-01T00:00:00Z', '2024-01-01T00:00:00.001Z')).toBe(-1)
  expect(compareInstants('2024-01-01T00:00:01Z', '2024-01-01T00:00:00.999Z')).toBe(1)
  expect(compareInstants('2024-01-01T00:00:01Z', '2024-01-01T00:00:01Z')).toBe(0)
})
