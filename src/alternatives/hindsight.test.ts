import { describe, expect, test } from 'vitest'
import { shippedCatalogue as catalogue } from '../../test/shipped-limits.js'
import { trialEntry } from '../../test/trial-log.js'
import type { Entry } from '../logbook/kinds.js'
import { hindsightOf, type LookedBack, scoreOf } from './hindsight.js'
import type { Memory } from './memory.js'

/** Noted on the day they tell of. */
function at<K extends Entry['kind']>(
  number: number,
  kind: K,
  body: Extract<Entry, { kind: K }>['body'],
  from: string,
  until = from,
): Entry {
  const noted = `${until}T18:00:00Z`
  // biome-ignore lint/suspicious/noExplicitAny: the body is that of the kind, which the parameters hold to.
  return trialEntry(number, kind, body as any, { from, until, noted }) as Entry
}

const log: readonly Entry[] = [
  at(1, 'set', { ratingKw: 7, rpm: 1500, built: '2010' }, '2018-03-01'),
  at(2, 'hours', { meterHours: 2000 }, '2018-03-01'),
  at(3, 'hours', { meterHours: 2600 }, '2020-12-01'),
  at(
    4,
    'stop',
    { daysWithoutPower: 3, curedSameDay: false, cause: { part: 'starter' } },
    '2020-08-04',
    '2020-08-07',
  ),
  at(
    5,
    'work',
    { parts: [{ part: 'starter', did: 'renewed', was: 'failed' }], by: 'workshop', why: 'failed' },
    '2020-08-07',
  ),
  at(6, 'complete', { of: ['stops', 'work'] }, '2020-01-01', '2020-12-31'),
]

/** What is kept under keys, and how often something new had to be worked out. */
function countingMemory(): Memory & { kept: () => number } {
  const values = new Map<string, unknown>()
  return {
    posterior: (_, make) => make(),
    find: (key) => {
      const text = JSON.stringify(key)
      return values.has(text) ? { value: values.get(text) } : undefined
    },
    keep: (key, value) => void values.set(JSON.stringify(key), value),
    kept: () => values.size,
  }
}

const question = {
  boat: 'trial',
  set: 'main',
  asOf: '2021-03-01',
  months: 6,
  most: 2,
  by: 'noted',
  catalogue,
  seed: 1,
} as const

describe('a boat whose log was kept as things happened', () => {
  const memory = countingMemory()
  const hindsight = hindsightOf({ ...question, entries: log, memory })

  test('is looked back on at dates that follow one another', () => {
    expect(hindsight.dates.map(({ asOf, until, complete }) => [asOf, until, complete])).toEqual([
      ['2020-01-01', '2020-07-01', true],
      ['2020-07-01', '2021-01-01', false],
    ])
    expect(hindsight.unknownThen).toBe(0)
  })

  test('has every part of a complete span scored, and none of another', () => {
    const [first, second] = hindsight.dates as [LookedBack, LookedBack]
    expect(first.parts.length).toBeGreaterThan(50)
    expect(new Set(first.parts.map(({ became }) => became))).toEqual(new Set(['held']))
    expect(new Set(second.parts.map(({ became }) => became))).toEqual(new Set(['not-complete']))
    expect(hindsight.brier!.told).toBe(first.parts.length)
    expect(hindsight.leftOut['not-complete']).toBe(second.parts.length)
    expect(hindsight.wholeSet).toMatchObject({ spans: 1, came: 0 })
  })

  test('tells of a failure in a span that is not complete, with the chance it had been given', () => {
    const [, second] = hindsight.dates as [LookedBack, LookedBack]
    expect(second.failed).toMatchObject([{ part: 'starter', stopped: true }])
    expect(second.failed[0]!.chance).toBe(second.parts.find(({ part }) => part === 'starter')!.chance)
    expect(hindsight.notComplete).toMatchObject({ spans: 1, entered: 1 })
  })

  test('is the same to the bit with entries added that were noted later, and nothing is worked out again', () => {
    const later = [
      trialEntry(
        9,
        'finding',
        { about: [{ part: 'starter' }], verdict: 'defect-seen', seen: 'slow' },
        { from: '2019-11-01', noted: '2021-02-01T10:00:00Z' },
      ),
    ]
    const kept = memory.kept()
    const again = hindsightOf({ ...question, entries: [...log, ...later], memory })
    expect(again.dates.map(({ parts }) => parts)).toEqual(hindsight.dates.map(({ parts }) => parts))
    expect(memory.kept()).toBe(kept)
    const happened = hindsightOf({
      ...question,
      entries: [...log, ...later],
      by: 'happened',
      asOf: '2020-07-02',
      most: 1,
    })
    const chance = (dates: readonly LookedBack[]) =>
      dates[0]!.parts.find(({ part }) => part === 'starter')!.chance
    expect(chance(happened.dates)).toBeGreaterThan(1.5 * chance(hindsight.dates))
  })

  test('scores a declaration that is made later on what was said before it', () => {
    const declared = at(7, 'complete', { of: ['stops', 'work'] }, '2020-01-01', '2021-02-01')
    const again = hindsightOf({ ...question, entries: [...log, declared], memory })
    expect(again.dates.map(({ stopping }) => stopping)).toEqual(
      hindsight.dates.map(({ stopping }) => stopping),
    )
    expect(again.dates[1]!.parts.filter(({ became }) => became === 'failed')).toMatchObject([
      { part: 'starter' },
    ])
    expect(again.wholeSet).toMatchObject({ spans: 2, came: 1 })
  })
})

test('of a log typed in at once nothing could have been said; by the day it happened it can be', () => {
  const typedIn = log.map((entry) => ({ ...entry, noted: '2021-02-20T10:00:00Z' }))
  const noted = hindsightOf({ ...question, entries: typedIn })
  expect(noted).toMatchObject({ dates: [], unknownThen: 2, brier: null, bands: [], allBands: null })
  const happened = hindsightOf({ ...question, entries: typedIn, by: 'happened', most: 1 })
  expect(happened.dates).toHaveLength(1)
})

test('a part that stood failed when the span began, as came out later, is not scored', () => {
  const complete = at(8, 'complete', { of: ['stops', 'work'] }, '2019-12-01', '2020-12-31')
  const before = at(
    4,
    'stop',
    { daysWithoutPower: 30, curedSameDay: false, cause: { part: 'starter' } },
    '2019-12-20',
    '2020-01-20',
  )
  const mended = at(
    5,
    'work',
    { parts: [{ part: 'starter', did: 'renewed', was: 'failed' }], by: 'workshop', why: 'failed' },
    '2020-01-20',
  )
  const entries = [...log.slice(0, 3), before, mended, complete]
  const [date] = hindsightOf({ ...question, entries, asOf: '2020-07-02', most: 1 }).dates
  expect(date!.parts.find(({ part }) => part === 'starter')!.became).toBe('stood-broken')
  expect(date!.failed).toEqual([])
})

test('a failure of a part that the model of the time did not have is told, and not lost', () => {
  const complete = at(8, 'complete', { of: ['stops', 'work'] }, '2019-12-01', '2020-12-31')
  const stop = at(
    4,
    'stop',
    { daysWithoutPower: 1, curedSameDay: false, cause: { part: 'tea-urn' } },
    '2020-02-01',
  )
  const entries = [...log.slice(0, 3), stop, complete]
  const hindsight = hindsightOf({ ...question, entries, asOf: '2020-07-02', most: 1 })
  expect(hindsight).toMatchObject({ untold: 1, wholeSet: { spans: 1, came: 1 } })
  expect(hindsight.dates[0]).toMatchObject({ failed: [], failedUntold: ['tea-urn'] })
})

test('the score of several dates is that of their parts together', () => {
  const date = (became: 'failed' | 'held', chance: number): LookedBack => ({
    asOf: '2020-01-01',
    until: '2020-07-01',
    complete: true,
    parts: [{ part: 'pump', chance, became }],
    stopping: chance,
    stopped: became === 'failed',
    failed: [],
    failedUntold: [],
  })
  const score = scoreOf([date('failed', 0.5), date('held', 0.25)])
  expect(score.brier!.score).toBeCloseTo((0.25 + 0.0625) / 2, 12)
  expect(score.wholeSet).toEqual({ spans: 2, expected: 0.75, came: 1 })
  expect(score.allBands).toMatchObject({ told: 2, expected: 0.75, came: 1, judged: 'too-few' })
})
