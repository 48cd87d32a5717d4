import { expect, test } from 'vitest'
import { dayNumber } from '../../logbook/dates.js'
import { dayScale, laidUpSpans, worthSaying, yearStarts } from './time-scale.js'

const from = (first: number, laidUp: readonly number[], count = 12) =>
  Array.from({ length: count }, (_, k) => ({
    month: (first + k) % 12,
    yearsOn: Math.floor((first + k) / 12),
    laidUp: laidUp.includes((first + k) % 12),
    ends: (k + 1) / 12,
  }))

test('months laid up one after the other are one span, also over the turn of the year', () => {
  const spans = laidUpSpans(from(9, [10, 11, 0, 1, 2]))
  expect(spans).toHaveLength(1)
  expect(spans[0]!.months).toBe(5)
  expect(spans[0]!.from).toBeCloseTo(100 / 12, 9)
  expect(spans[0]!.width).toBeCloseTo(500 / 12, 9)
  expect(laidUpSpans(from(0, []))).toEqual([])
})

test('years begin in January, and the first where the drawing does', () => {
  expect(yearStarts(from(9, [], 24), 2026).map(({ at, year }) => [Math.round(at), year])).toEqual([
    [0, 2026],
    [13, 2027],
    [63, 2028],
  ])
})

test('words are put to the last month before each lay-up and to the end', () => {
  expect(worthSaying(from(9, [10, 11, 0, 1, 2], 25))).toEqual([12, 24])
  expect(worthSaying(from(10, [10, 11, 0, 1, 2], 25))).toEqual([11, 23])
  expect(worthSaying(from(5, [10, 11, 0, 1, 2], 25))).toEqual([4, 16, 24])
  expect(worthSaying(from(5, [], 25))).toEqual([6, 12, 24])
})

test('a scale of days holds every day, ticked by weeks, by months, or by a few of them', () => {
  const of = (...dates: string[]) => dayScale(dates.map(dayNumber))
  const dates = (scale: ReturnType<typeof dayScale>) => scale.ticks.map(({ date }) => date)
  const weeks = of('2027-03-03', '2027-03-20')
  // 8 March 2027 is a Monday (ISO 8601; derived)
  expect(dates(weeks)).toEqual(['2027-03-08', '2027-03-15'])
  expect([weeks.low, weeks.high]).toEqual([dayNumber('2027-03-03'), dayNumber('2027-03-21')])
  expect(dates(of('2027-05-20', '2027-03-03'))).toEqual(['2027-04-01', '2027-05-01'])
  const long = of('2027-01-01', '2029-06-30')
  expect(dates(long).length).toBeLessThanOrEqual(7)
  expect(dates(long)[0]).toBe('2027-01-01')
  const short = of('2027-03-03')
  expect(short.high - short.low).toBe(14)
})
