import { expect, test } from 'vitest'
import { sayChance, sayDate, sayHours, sayList, sayNumber, sayRate, sayYears, withUnits } from './say.js'

const plain = (text: string) => text.replaceAll('\u00a0', ' ')

test('chances are said of a hundred when likely and as one in so many when seldom', () => {
  expect([0.61, 0.1, 0.083, 0.024, 0.0061, 0.0004, 0, 1].map((chance) => plain(sayChance(chance)))).toEqual([
    '61 in 100',
    '10 in 100',
    '1 in 12',
    '1 in 40',
    '1 in 160',
    'under 1 in 1,000',
    'none seen',
    '99 in 100 or more',
  ])
})

test('rates, spans and work are said as a person would', () => {
  expect([1.31, 0.03, 0.0001].map((rate) => plain(sayRate(rate)))).toEqual([
    '1.3 a year',
    '1 in 35 years',
    'under 1 in 5,000 years',
  ])
  expect([0.05, 0.5, 1, 1.6, 4.3, 17.2, 400].map((years) => plain(sayYears(years)))).toEqual([
    '1 month',
    '6 months',
    '1 year',
    '19 months',
    '4.5 years',
    '17 years',
    'over 100 years',
  ])
  expect([0, 0.25, 1, 3.17].map((hours) => plain(sayHours(hours)))).toEqual([
    'nothing',
    '15 minutes',
    '1 h',
    '3 h 10 min',
  ])
})

test('numbers, dates and lists', () => {
  expect([5240, 12.4, 1.24, 0.39, 0.04].map((value) => sayNumber(value))).toEqual([
    '5,240',
    '12',
    '1.2',
    '0.4',
    '0.04',
  ])
  expect(['2026-11-14', '2026-11', '2004'].map((date) => plain(sayDate(date)))).toEqual([
    '14 Nov 2026',
    'Nov 2026',
    '2004',
  ])
  expect(sayList(['a', 'b', 'c'])).toBe('a, b and c')
})

test('a number stays with its unit at the end of a line', () => {
  expect(withUnits('Fit a new set of 5.6 kW in 3 years, 2 hours of it')).toBe(
    'Fit a new set of 5.6\u00a0kW in 3\u00a0years, 2 hours of it',
  )
})
