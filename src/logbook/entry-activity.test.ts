import { expect, test } from 'vitest'
import { trialEntry } from '../../test/trial-log.js'
import { parseEntry } from './entry.js'
import type { Body, Kind } from './kinds.js'
import { oddities } from './oddities.js'

function codes<K extends Kind>(kind: K, body: Body<K>) {
  const parsed = parseEntry(trialEntry(1, kind, body))
  return parsed.ok ? [] : parsed.problems.map(({ code, path }) => `${code} ${path}`)
}

const at = { job: 'elbow', name: 'fit-elbow' }

test('an activity may be told piece by piece, and what does not hang together is told at once', () => {
  expect(codes('activity', at)).toEqual([])
  expect(codes('activity', { ...at, state: 'done' })).toEqual([])
  expect(codes('activity', { ...at, days: { usual: 2 }, after: [], needs: [] })).toEqual([])
  expect(
    codes('activity', {
      ...at,
      after: ['fit-elbow', 'open', 'open'],
      needs: ['owner', 'owner'],
      days: { low: 3, high: 2 },
    }),
  ).toEqual([
    'named-twice body.after',
    'named-twice body.needs',
    'follows-itself body.after',
    'not-rising body.days',
  ])
  expect(codes('activity', { ...at, days: { low: -1 } })).toEqual(['out-of-range body.days.low'])
})

test('free days are weekdays or days of people, and shares of months of the weather', () => {
  expect(codes('free-days', { who: 'yard', weekdays: [], days: ['2027-03-02'] })).toEqual([])
  expect(codes('free-days', { who: 'weather', months: [{ month: 1, share: 0.2 }] })).toEqual([])
  expect(codes('free-days', { who: 'owner' })).toEqual(['says-nothing body'])
  expect(codes('free-days', { who: 'owner', months: [{ month: 1, share: 0.2 }] })).toEqual([
    'not-allowed body.months',
  ])
  const twice = [
    { month: 1, share: 0.2 },
    { month: 1, share: 0.3 },
  ]
  expect(codes('free-days', { who: 'weather', weekdays: ['monday', 'monday'], months: twice })).toEqual([
    'named-twice body.weekdays',
    'not-allowed body.weekdays',
    'named-twice body.months',
  ])
})

test('days that lie ahead are what free days are for', () => {
  const entry = trialEntry(1, 'free-days', { who: 'owner', notDays: ['2026-07'] }, { from: '2026-06-01' })
  expect(oddities([entry], { today: '2026-01-01', parts: new Map() })).toEqual([])
})
