import fc from 'fast-check'
import { expect, test } from 'vitest'
import { trialEntry, trialId } from '../../test/trial-log.js'
import { dayNumber } from '../logbook/dates.js'
import { entriesKnown, notedLate, pastSpans } from './hindsight-spans.js'

const asOf = fc
  .date({ min: new Date('1990-01-01'), max: new Date('2090-01-01'), noInvalidDate: true })
  .map((date) => date.toISOString().slice(0, 10))

test('spans follow one another, are over, and no day lies in two of them', () => {
  fc.assert(
    fc.property(asOf, fc.constantFrom(3, 6, 12, 24), fc.integer({ min: 1, max: 20 }), (day, months, most) => {
      const spans = pastSpans({ asOf: day, months, most })
      expect(spans).toHaveLength(most)
      spans.slice(1).forEach((span, i) => {
        expect(span.asOf).toBe(spans[i]!.until)
      })
      const last = spans.at(-1)!
      expect(last.until <= day).toBe(true)
      expect(dayNumber(day) - dayNumber(last.until)).toBeLessThan(months * 31)
    }),
  )
})

test('the same spans come out on whichever day of a half-year one asks', () => {
  const on = (day: string) => pastSpans({ asOf: day, months: 6, most: 3 })
  expect(on('2026-07-01')).toEqual(on('2026-12-31'))
  expect(on('2026-11-25')).toEqual([
    { asOf: '2025-01-01', until: '2025-07-01' },
    { asOf: '2025-07-01', until: '2026-01-01' },
    { asOf: '2026-01-01', until: '2026-07-01' },
  ])
})

test('as noted by then, entries typed in later are not used, not even where they tell of earlier days', () => {
  const entries = [
    trialEntry(1, 'hours', { meterHours: 100 }, { from: '2019-05-01', noted: '2019-05-02T10:00:00Z' }),
    trialEntry(2, 'hours', { meterHours: 120 }, { from: '2019-06-01', noted: '2021-01-01T10:00:00Z' }),
    trialEntry(
      3,
      'hours',
      { meterHours: 101 },
      { from: '2019-05-01', noted: '2021-01-01T11:00:00Z', corrects: [trialId(1)] },
    ),
  ]
  const ids = (day: string, by: 'noted' | 'happened') => entriesKnown(entries, day, by).map(({ id }) => id)
  expect(ids('2020-01-01', 'noted')).toEqual([trialId(1)])
  expect(ids('2019-05-01', 'noted')).toEqual([])
  expect(ids('2021-01-01', 'noted')).toEqual([trialId(3), trialId(2)])
  expect(ids('2020-01-01', 'happened')).toEqual([trialId(3), trialId(2)])
})

test('by the day it happened, particulars count from the first day, but not that a set is gone', () => {
  const set = trialEntry(1, 'set', { ratingKw: 7, standing: 'gone' }, { from: '2024-03-01' })
  const [known] = entriesKnown([set], '2010-01-01', 'happened')
  expect(known).toMatchObject({ from: '2010-01-01', body: { ratingKw: 7 } })
  expect(known!.body).not.toHaveProperty('standing')
  const stop = trialEntry(2, 'stop', { daysWithoutPower: 1, curedSameDay: false }, { from: '2024-03-01' })
  expect(entriesKnown([stop], '2010-01-01', 'happened')[0]!.from).toBe('2024-03-01')
})

test('a log typed in at once is told from one kept as things happened', () => {
  const paper = Array.from({ length: 9 }, (_, i) =>
    trialEntry(i + 1, 'note', { text: 'x' }, { from: `201${i}-05-01`, noted: '2024-01-01T12:00:00Z' }),
  )
  expect(notedLate(paper)).toEqual({ late: 9, of: 9 })
  const kept = trialEntry(20, 'note', { text: 'x' }, { from: '2023-12-20', noted: '2024-01-01T12:00:00Z' })
  expect(notedLate([kept])).toEqual({ late: 0, of: 1 })
})
