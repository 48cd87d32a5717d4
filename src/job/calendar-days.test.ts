import fc from 'fast-check'
import { expect, test } from 'vitest'
import { trialEntry } from '../../test/trial-log.js'
import { dateOfDay, dayNumber } from '../logbook/dates.js'
import type { Body } from '../logbook/kinds.js'
import { daysKnownOf, endOn, isFree, latestStartOn, openDaysOf, weatherOn } from './calendar-days.js'

function known(...list: readonly (readonly [string, string, Body<'free-days'>])[]) {
  return daysKnownOf(
    list.map(([from, until, body], i) => trialEntry(i + 1, 'free-days', body, { from, until, set: null })),
  )
}

const freeIn = (days: ReturnType<typeof known>, from: string, count: number) =>
  Array.from({ length: count }, (_, i) => dayNumber(from) + i)
    .filter((day) => isFree(days, 'owner', day))
    .map(dateOfDay)

test('of whom nothing is said is free; what is said later, or of a span, or of a day, goes before', () => {
  expect(freeIn(known(), '2027-03-01', 3)).toHaveLength(3)
  const days = known(
    ['2027-01-01', '2027-01-01', { who: 'owner', weekdays: ['saturday', 'sunday'] }],
    ['2027-03-08', '2027-03-12', { who: 'owner', weekdays: ['tuesday', 'wednesday'] }],
    [
      '2027-01-02',
      '2027-01-02',
      { who: 'owner', notDays: ['2027-03-06'], days: ['2027-03-11', '2027-03-06'] },
    ],
    ['2027-01-03', '2027-01-03', { who: 'owner', notDays: ['2027-03-06'] }],
    ['2027-04-01', '2027-04-01', { who: 'owner', weekdays: ['friday'] }],
  )
  // 6 March 2027 is a Saturday (ISO 8601 weekday 6; derived)
  expect(freeIn(days, '2027-03-05', 10)).toEqual([
    '2027-03-07',
    '2027-03-09',
    '2027-03-10',
    '2027-03-11',
    '2027-03-13',
    '2027-03-14',
  ])
  expect(freeIn(days, '2027-04-01', 7)).toEqual(['2027-04-02'])
})

test('a whole month may be named, and weather is a share of the days of a month', () => {
  const days = known(
    ['2027-01-01', '2027-01-01', { who: 'owner', notDays: ['2027-02'] }],
    ['2027-01-01', '2027-01-01', { who: 'weather', months: [{ month: 2, share: 0.3 }] }],
  )
  expect(freeIn(days, '2027-01-31', 30)).toEqual(['2027-01-31', '2027-03-01'])
  expect(weatherOn(days, dayNumber('2027-02-10'))).toBe(0.3)
  expect(weatherOn(days, dayNumber('2027-06-10'))).toBe(1)
})

test('work goes over closed days, a run waits for days that follow one another', () => {
  const weekends = known(['2027-01-01', '2027-01-01', { who: 'owner', weekdays: ['saturday', 'sunday'] }])
  const first = dayNumber('2027-03-01')
  const open = openDaysOf(weekends, ['owner'], { first, last: first + 60 })
  const saturday = dayNumber('2027-03-06')
  expect(endOn(open, first, { days: 3, inOneRun: false })).toBe(saturday + 8)
  expect(endOn(open, saturday + 1, { days: 1.5, inOneRun: true })).toBe(saturday + 8.5)
  expect(endOn(open, saturday + 0.25, { days: 1.5, inOneRun: true })).toBe(saturday + 1.75)
  expect(endOn(open, first, { days: 3, inOneRun: true })).toBe(Number.POSITIVE_INFINITY)
  expect(latestStartOn(open, saturday + 5, { days: 2, inOneRun: true })).toBe(saturday)
  expect(latestStartOn(open, saturday, { days: 1, inOneRun: false })).toBe(Number.NEGATIVE_INFINITY)
})

test('the latest start is the last one from which it is over in time', () => {
  fc.assert(
    fc.property(
      fc.array(fc.boolean(), { minLength: 30, maxLength: 30 }),
      fc.integer({ min: 1, max: 24 }),
      fc.integer({ min: 0, max: 120 }),
      fc.boolean(),
      (days, quarters, endQuarter, inOneRun) => {
        const open = { first: 0, last: 29, isOpen: (day: number) => days[day] === true }
        const span = { days: quarters / 4, inOneRun }
        const end = endQuarter / 4
        const start = latestStartOn(open, end, span)
        if (start !== Number.NEGATIVE_INFINITY)
          expect(endOn(open, start, span)).toBeLessThanOrEqual(end + 1e-9)
        for (let later = Math.max(0, start + 0.25); later <= end; later += 0.25) {
          expect(endOn(open, later, span)).toBeGreaterThan(end + 1e-9)
        }
      },
    ),
    { numRuns: 150 },
  )
})
