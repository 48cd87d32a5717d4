import fc from 'fast-check'
import { expect, test } from 'vitest'
import { sayDate } from '../words/say.js'
import { dateTyped, numberTyped } from './typed.js'

test.each([
  ['5240', 5240],
  ['5,240', 5240],
  ['5 240.5', 5240.5],
  ['1,234,567', 1234567],
  ['12,5', 12.5],
  ['£38', 38],
  ['€ 1,200.50', 1200.5],
  ['-3', -3],
  ['.39', 0.39],
])('%s is a number', (text, number) => {
  expect(numberTyped(text)).toBe(number)
})

test.each(['', 'many', '12,34,5', '1.2.3', '5 h', '-'])('"%s" is none', (text) => {
  expect(numberTyped(text)).toBeUndefined()
})

test.each([
  ['25 Nov 2026', '2026-11-25'],
  ['nov 2026', '2026-11'],
  ['2026', '2026'],
  ['2026-11-25', '2026-11-25'],
  ['3/4/2019', '2019-04-03'],
  ['today', '2026-11-25'],
  ['yesterday', '2026-11-24'],
])('%s is a date', (text, date) => {
  expect(dateTyped(text, '2026-11-25')).toBe(date)
})

test.each(['', 'spring', '31 Feb 2026', '99/99/2019'])('"%s" is none', (text) => {
  expect(dateTyped(text, '2026-11-25')).toBeUndefined()
})

test('a date that is said can be typed again', () => {
  const day = fc
    .integer({ min: 0, max: 40_000 })
    .map((days) => new Date(days * 86_400_000).toISOString().slice(0, 10))
  const date = fc.tuple(day, fc.constantFrom(4, 7, 10)).map(([text, length]) => text.slice(0, length))
  fc.assert(
    fc.property(date, (text) => {
      expect(dateTyped(sayDate(text), '2026-11-25')).toBe(text)
    }),
  )
})
