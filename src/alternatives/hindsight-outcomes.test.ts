import { describe, expect, test } from 'vitest'
import { trialEntry } from '../../test/trial-log.js'
import { lifeModelSchema } from '../forecast/life-model.js'
import { dayNumber } from '../logbook/dates.js'
import type { Entry } from '../logbook/kinds.js'
import {
  becameOf,
  failuresEntered,
  failuresIn,
  isComplete,
  type SpanTruth,
  stoppedIn,
} from './hindsight-outcomes.js'

const span = { asOf: '2020-01-01', until: '2020-07-01' }
const mode = { id: 'wear', clock: 'years', shape: 2, scale: 10 } as const
const { parts } = lifeModelSchema.parse({
  type: 'gensettle/life-model',
  version: 1,
  horizonYears: 5,
  parts: [
    { id: 'pump', modes: [mode, { ...mode, id: 'asleep', hidden: true }] },
    { id: 'trip', modes: [{ ...mode, hidden: true }] },
    { id: 'impeller', service: { everyYears: 1, renews: true }, modes: [mode] },
  ],
})
const [pump, trip, impeller] = parts as [(typeof parts)[0], (typeof parts)[0], (typeof parts)[0]]

function complete(from: string, until: string, of: 'stops' | 'work') {
  return { of, firstDay: dayNumber(from), lastDay: dayNumber(until), entry: 'x' }
}

const whole = (['stops', 'work'] as const).map((of) => complete('2019-06-01', '2021-01-01', of))

function truth(entries: readonly Entry[], more: Partial<SpanTruth> = {}): SpanTruth {
  const failures = failuresEntered(entries)
  return { entries, failures, complete: whole, brokenBefore: new Set(), ...more }
}

const stop = (from: string, cause?: { part: string; mode?: string }) =>
  trialEntry(
    1,
    'stop',
    { daysWithoutPower: 1, curedSameDay: false, ...(cause === undefined ? {} : { cause }) },
    { from },
  )
type Done = Extract<Entry, { kind: 'work' }>['body']['parts'][number]
type Why = Extract<Entry, { kind: 'work' }>['body']['why']
const work = (from: string, why: Why, ...done: readonly Done[]) =>
  trialEntry(2, 'work', { parts: done, by: 'owner', why }, { from })

describe('a part', () => {
  test('failed where a stop within the span names it, on its last day too, and not before its first', () => {
    const on = (day: string) => becameOf(pump, span, truth([stop(day, { part: 'pump' })]))
    expect([on('2020-01-01'), on('2020-01-02'), on('2020-07-01'), on('2020-07-02')]).toEqual([
      'held',
      'failed',
      'failed',
      'held',
    ])
  })

  test('failed where work found it failed and no stop told of it', () => {
    const done = { part: 'pump', did: 'renewed', was: 'failed' } as const
    expect(becameOf(pump, span, truth([work('2020-03-01', 'failed', done)]))).toBe('failed')
    expect(becameOf(pump, span, truth([work('2020-03-01', 'not-known', done)]))).toBe('failed')
    // found at a look, or renewed by rote: not met in service
    expect(becameOf(pump, span, truth([work('2020-03-01', 'found', done)]))).toBe('held')
    const alone = { part: 'pump', did: 'renewed' } as const
    expect(becameOf(pump, span, truth([work('2020-03-01', 'failed', alone)]))).toBe('failed')
  })

  test('failed once for a stop and the work that mended it: the work after the end is none of the next span', () => {
    const entries = [
      stop('2020-06-28', { part: 'pump' }),
      work('2020-07-09', 'failed', { part: 'pump', did: 'renewed', was: 'failed' }),
    ]
    const next = { asOf: '2020-07-01', until: '2021-01-01' }
    expect(failuresEntered(entries)).toHaveLength(1)
    expect(becameOf(pump, span, truth(entries))).toBe('failed')
    expect(becameOf(pump, next, truth(entries))).not.toBe('failed')
  })

  test('held by a mode that does not show is no failure in service', () => {
    expect(becameOf(pump, span, truth([stop('2020-03-01', { part: 'pump', mode: 'asleep' })]))).toBe('held')
    expect(becameOf(trip, span, truth([stop('2020-03-01', { part: 'trip' })]))).toBe('held')
  })

  test('is left out, failure or not, unless the whole span is complete for stops and for work', () => {
    const failed = [stop('2020-03-01', { part: 'pump' })]
    for (const declared of [
      [],
      [complete('2019-06-01', '2021-01-01', 'stops')],
      [complete('2019-06-01', '2021-01-01', 'work')],
      [complete('2020-01-03', '2021-01-01', 'work'), complete('2019-06-01', '2021-01-01', 'stops')],
    ]) {
      expect(becameOf(pump, span, truth(failed, { complete: declared }))).toBe('not-complete')
    }
  })

  test('is left out where it stood failed before, was taken off, or was renewed sound', () => {
    const broken = { brokenBefore: new Set(['pump']) }
    expect(becameOf(pump, span, truth([], broken))).toBe('stood-broken')
    const done = (did: Done['did'], was?: Done['was']) =>
      truth([work('2020-03-01', 'preventive', { part: 'pump', did, ...(was === undefined ? {} : { was }) })])
    expect(becameOf(pump, span, done('removed'))).toBe('taken-off')
    expect(becameOf(pump, span, done('renewed', 'sound'))).toBe('renewed-sound')
    expect(becameOf(pump, span, done('renewed'))).toBe('renewed-sound')
    // found and renewed in time, as the forecast has it; adjusted: the part stays
    expect(becameOf(pump, span, done('renewed', 'defective'))).toBe('held')
    expect(becameOf(pump, span, done('adjusted'))).toBe('held')
    // a service renews it in the forecast too
    const service = work('2020-03-01', 'preventive', { part: 'impeller', did: 'renewed', was: 'sound' })
    expect(becameOf(impeller, span, truth([service]))).toBe('held')
  })

  test('is left out where its failure may lie on either side of an end', () => {
    expect(becameOf(pump, span, truth([stop('2020-07', { part: 'pump' })]))).toBe('day-not-known')
    expect(becameOf(pump, span, truth([stop('2020-05', { part: 'pump' })]))).toBe('failed')
    const both = [stop('2020-07', { part: 'pump' }), stop('2020-02-02', { part: 'pump' })]
    expect(becameOf(pump, span, truth(both))).toBe('failed')
  })

  test('is left out where the set went', () => {
    const gone = trialEntry(3, 'set', { standing: 'gone' }, { from: '2020-04-01' })
    expect(becameOf(pump, span, truth([gone]))).toBe('set-gone')
  })
})

test('spans declared complete join where they meet, and not across a gap', () => {
  const halves = (second: string) =>
    (['stops', 'work'] as const).flatMap((of) => [
      complete('2019-06-01', '2020-03-31', of),
      complete(second, '2020-12-31', of),
    ])
  expect(isComplete(span, halves('2020-04-01'))).toBe(true)
  expect(isComplete(span, halves('2020-03-01'))).toBe(true)
  expect(isComplete(span, halves('2020-04-02'))).toBe(false)
  expect(isComplete(span, whole)).toBe(true)
})

test('a stop of the set counts without a cause, and a failure without a stop does not', () => {
  expect(stoppedIn([stop('2020-03-01')], span)).toBe(true)
  expect(stoppedIn([stop('2020-01-01')], span)).toBe(false)
  const done = { part: 'pump', did: 'renewed', was: 'failed' } as const
  const worked = [work('2020-03-01', 'failed', done)]
  expect(stoppedIn(worked, span)).toBe(false)
  expect(failuresIn(failuresEntered(worked), span)).toMatchObject([{ part: 'pump', stopped: false }])
})
