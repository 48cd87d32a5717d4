import { expect, test } from 'vitest'
import { trialEntry } from '../../test/trial-log.js'
import { byDate } from './current.js'
import type { Entry } from './kinds.js'
import { oddities } from './oddities.js'

const known = { today: '2024-06-01', parts: new Map([['impeller', new Set(['wear'])]]) }

function questions(...entries: Entry[]): string[] {
  const particulars = trialEntry(900, 'set', { ratingKw: 7 }, { from: '2004' })
  return oddities(byDate([particulars, ...entries]), known).map(({ question }) => question)
}

function hours(number: number, from: string, meterHours: number): Entry {
  return trialEntry(number, 'hours', { meterHours }, { from, until: from })
}

test('a question about one day names it once, one about two names both, and a year is no day', () => {
  expect(questions(hours(1, '2020-08-12', 100), hours(2, '2020-08-12', 149.5))).toEqual([
    'The meter went from 100 h to 149.5 h on one day, 2020-08-12: 49.5 h, and a day has 24. Is one of them wrong?',
  ])
  expect(questions(hours(1, '2020-08-12', 100), hours(2, '2020-08-13', 160))).toEqual([
    'The meter went from 100 h on 2020-08-12 to 160 h on 2020-08-13: 60 h in 2 days, more than 24 a day. Is one of them wrong?',
  ])
  expect(questions(hours(1, '2020', 500), hours(2, '2021-03', 400))).toEqual([
    'The meter showed 400 h in 2021-03, which is 100 h less than in 2020 (500 h). Is one of them wrong, or was the meter changed?',
  ])
})

test('a stop of one day is told as of that day, one of several as from and to', () => {
  const stop = (number: number, from: string, until: string, how: { days: number; sameDay?: boolean }) =>
    trialEntry(
      number,
      'stop',
      { daysWithoutPower: how.days, curedSameDay: how.sameDay ?? false },
      { from, until },
    )
  expect(questions(stop(1, '2021-07-01', '2021-07-01', { days: 4 }))).toEqual([
    'The stop of 2021-07-01 lasted 1 day at most, yet 4 days without power are entered. Which is right?',
  ])
  expect(questions(stop(1, '2021-07-01', '2021-07-03', { days: 4 }))).toEqual([
    'The stop from 2021-07-01 to 2021-07-03 lasted 3 days at most, yet 4 days without power are entered. Which is right?',
  ])
  expect(questions(stop(1, '2021-07-01', '2021-07-03', { days: 0, sameDay: true }))).toEqual([
    'The stop that began on 2021-07-01 is entered as cured the same day, yet it ended on 2021-07-03. Which is right?',
  ])
})

test('what was entered twice is asked about by its name', () => {
  expect(questions(hours(1, '2020-05-01', 5), hours(2, '2020-05-01', 5))).toEqual([
    'The meter reading of 2020-05-01 is entered twice, alike in everything. Did it happen twice?',
  ])
})
