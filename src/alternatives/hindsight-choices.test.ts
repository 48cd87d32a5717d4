import { describe, expect, test } from 'vitest'
import { trialEntry, trialId } from '../../test/trial-log.js'
import type { Entry } from '../logbook/kinds.js'
import { afterChoice, entriesAtChoice, pastChoices } from './hindsight-choices.js'

const of = { boat: 'trial', set: 'main', asOf: '2024-06-01' }
const on = (from: string, noted = `${from}T18:00:00Z`) => ({ from, noted })
const quote = (number: number, job: string, from: string) =>
  trialEntry(
    number,
    'quote',
    {
      job,
      amount: 260,
      firmness: 'firm',
      subjectToStripDown: false,
      excludes: [],
      covers: { parts: [{ part: 'diodes', did: 'renewed' }] },
    },
    on(from),
  )
const decision = (number: number, from: string, body: object) =>
  trialEntry(number, 'decision', { choice: 'have it done', ...body }, on(from))

describe('choices', () => {
  test('are what was decided and the prices on which nothing was, oldest first, none of them ahead', () => {
    const entries = [
      quote(1, 'diodes', '2020-03-01'),
      decision(2, '2020-03-09', { job: 'diodes', alternative: 'mend' }),
      quote(3, 'rewind', '2021-03-01'),
      decision(4, '2019-05-05', {}),
      quote(5, 'later', '2024-06-01'),
    ]
    expect(pastChoices(entries, of).map(({ entry, kind, asOf }) => [entry, kind, asOf])).toEqual([
      [trialId(4), 'decision', '2019-05-05'],
      [trialId(2), 'decision', '2020-03-09'],
      [trialId(3), 'quote', '2021-03-01'],
    ])
    expect(pastChoices(entries, of)[1]).toMatchObject({
      job: 'diodes',
      alternative: 'mend',
      quoted: 260,
      covers: ['diodes'],
    })
  })

  test('of another boat or set are none of hers, and what was taken back is none', () => {
    const other = trialEntry(1, 'decision', { choice: 'x' }, { ...on('2020-01-01'), set: 'spare' })
    const taken = trialEntry(3, 'note', { text: 'no' }, { corrects: [trialId(2)], voids: true })
    expect(pastChoices([other, decision(2, '2020-01-01', {}), taken], of)).toEqual([])
    expect(pastChoices([decision(2, '2020-01-01', {})], { ...of, boat: 'other' })).toEqual([])
  })

  test('are looked at with what was noted by that moment and nothing later', () => {
    const entries: Entry[] = [
      trialEntry(1, 'hours', { meterHours: 1 }, on('2019-01-01')),
      quote(2, 'diodes', '2020-03-01'),
      trialEntry(3, 'hours', { meterHours: 2 }, on('2020-01-01', '2020-03-02T00:00:00Z')),
    ]
    const [choice] = pastChoices(entries, of)
    const ids = (by: 'noted' | 'happened') => entriesAtChoice(entries, choice!, by).map(({ id }) => id)
    expect(ids('noted')).toEqual([trialId(1), trialId(2)])
    expect(ids('happened')).toEqual([trialId(1), trialId(3), trialId(2)])
  })
})

describe('after a choice', () => {
  const log: Entry[] = [
    trialEntry(
      9,
      'stop',
      { daysWithoutPower: 9, curedSameDay: false, cause: { part: 'diodes' } },
      on('2020-02-27'),
    ),
    quote(1, 'diodes', '2020-03-01'),
    trialEntry(
      2,
      'work',
      {
        parts: [{ part: 'diodes', did: 'renewed', was: 'failed' }],
        by: 'workshop',
        why: 'failed',
        job: 'diodes',
        cost: 300,
      },
      on('2020-03-10'),
    ),
    trialEntry(
      3,
      'stop',
      { daysWithoutPower: 4, curedSameDay: false, cause: { part: 'starter' } },
      on('2020-08-01'),
    ),
    trialEntry(
      4,
      'work',
      { parts: [{ part: 'starter', did: 'renewed', was: 'failed' }], by: 'owner', why: 'failed', cost: 200 },
      on('2020-08-05'),
    ),
    trialEntry(5, 'bill', { amount: 210, work: trialId(4) }, { ...on('2020-09-01'), set: null }),
    trialEntry(6, 'set', { ratingKw: 8 }, { ...on('2021-02-01'), set: 'new' }),
    trialEntry(7, 'set', { standing: 'gone' }, on('2021-02-01')),
    trialEntry(8, 'stop', { daysWithoutPower: 9, curedSameDay: false }, on('2023-01-01')),
  ]
  const [choice] = pastChoices(log, of)
  const after = afterChoice(log, choice!, { ...of, catalogue: { parts: [] } })

  test('work on the job and sets that come and go are what was done', () => {
    expect(after.done).toEqual([
      { entry: trialId(2), day: '2020-03-10', parts: ['diodes'], by: 'workshop' },
      { entry: trialId(6), day: '2021-02-01', parts: [], set: 'new' },
      { entry: trialId(7), day: '2021-02-01', parts: [], set: 'main' },
    ])
  })

  test('two years are looked at, a bill counts in the place of its work’s cost, and each failure once', () => {
    expect(after).toMatchObject({ until: '2022-03-01', stops: 1, daysWithoutPower: 4, paid: 510 })
    // that of the diodes came before the choice, though they were mended after it
    expect(after.failures).toEqual(['starter'])
  })

  test('not past the day that is asked for', () => {
    const soon = afterChoice(log, choice!, { ...of, asOf: '2020-06-01', catalogue: { parts: [] } })
    expect(soon).toMatchObject({ until: '2020-06-01', stops: 0, paid: 300 })
  })
})
