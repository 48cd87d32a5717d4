import { expect, test } from 'vitest'
import { laidUpSpans, worthSaying, yearStarts } from './time-scale.js'

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
