import { describe, expect, test } from 'vitest'
import { trialEntry, trialId } from '../../test/trial-log.js'
import { currentEntries } from '../logbook/current.js'
import type { Entry } from '../logbook/kinds.js'
import { hoursAt } from './hours.js'
import { registerOf, setsOf } from './register.js'

const mode = {
  name: 'worn',
  sign: 'noise',
  clock: 'hours',
  shape: 2,
  scale: 1000,
  scaleLogSd: 0.4,
  hidden: false,
  stops: 1,
  derates: 0,
  salt: false,
  lowLoad: false,
  warning: null,
  checks: [],
  links: [],
  wearLinks: [],
} as const

function partOf(id: string, system: string, over: { dangers?: string[]; whenFitted?: true } = {}) {
  return {
    id,
    system,
    ...(over.whenFitted ? { fits: { whenFitted: true } } : {}),
    modes: [{ ...mode, id: 'worn', dangers: over.dangers ?? [] }],
  }
}

const catalogue = {
  parts: [
    partOf('impeller', 'sea-water'),
    partOf('elbow', 'exhaust', { dangers: ['carbon-monoxide'] }),
    partOf('heat-trip', 'trips'),
    partOf('gas-alarm', 'safety', { whenFitted: true }),
  ],
} as unknown as Parameters<typeof registerOf>[0]['catalogue']

const ask = (entries: readonly Entry[], over: { asOf?: string; set?: string } = {}) =>
  registerOf({
    entries: currentEntries(entries).entries,
    boat: 'trial',
    set: over.set ?? 'main',
    asOf: over.asOf ?? '2024-01-01',
    catalogue,
  })

const built = trialEntry(1, 'set', { ratingKw: 7, built: '2010-01-01' }, { from: '2010-01-01' })

test('an alternative of the owner is held in its latest form, and is no evidence of a part', () => {
  const plan = (number: number, body: { id: string; leftOut?: true; price?: number }, from: string) =>
    trialEntry(
      number,
      'alternative',
      body.leftOut ? body : { now: 'mend', parts: [{ part: 'elbow' }], remark: 'from the quay', ...body },
      { from },
    )
  const entries = [
    built,
    plan(2, { id: 'elbow', price: 500 }, '2020-01-01'),
    plan(3, { id: 'other', leftOut: true }, '2020-02-01'),
    plan(4, { id: 'elbow', price: 700 }, '2021-01-01'),
  ]
  const now = ask(entries)
  expect(now.ownAlternatives).toEqual([
    { id: 'elbow', now: 'mend', parts: [{ part: 'elbow' }], price: 700, entry: trialId(4) },
    { id: 'other', leftOut: true, entry: trialId(3) },
  ])
  expect(now.parts.has('elbow')).toBe(false)
  expect(ask(entries, { asOf: '2020-06-01' }).ownAlternatives[0]?.price).toBe(500)
})

describe('folding', () => {
  const entries = [
    built,
    trialEntry(2, 'terms', { paidPerHour: 60, ownPerHour: 10 }, { from: '2015' }),
    trialEntry(3, 'terms', { paidPerHour: 80 }, { from: '2020-03' }),
    trialEntry(4, 'set', { has: ['gas-alarm'] }, { from: '2016' }),
    trialEntry(5, 'set', { hasNot: ['gas-alarm'] }, { from: '2021' }),
  ]

  test('takes each field from the latest entry that gives it, and says from which', () => {
    const register = ask(entries)
    expect(register.terms).toEqual({ paidPerHour: 80, ownPerHour: 10 })
    expect(register.given['terms.paidPerHour']).toBe(trialId(3))
    expect(register.given['terms.ownPerHour']).toBe(trialId(2))
    expect(register.setFacts).toMatchObject({ ratingKw: 7, has: [], hasNot: ['gas-alarm'] })
  })

  test('to an earlier date leaves out what came later', () => {
    const register = ask(entries, { asOf: '2019-12-31' })
    expect(register.terms.paidPerHour).toBe(60)
    expect(register.protections.find(({ part }) => part === 'gas-alarm')?.fitted).toBe('fitted')
    expect(ask(entries, { asOf: '2014-06-01' }).terms).toEqual({})
  })

  test('follows a correction', () => {
    const wrong = trialEntry(6, 'hours', { meterHours: 9000 }, { from: '2023-06-01' })
    const right = trialEntry(
      7,
      'hours',
      { meterHours: 900 },
      { from: '2023-06-01', corrects: [trialId(6)], noted: '2024-02-01T12:00:00Z' },
    )
    const last = (all: readonly Entry[]) => ask(all).hours.points.find(({ day }) => day === 19509)?.hours
    expect(last([built, wrong])).toBe(9000)
    expect(last([built, wrong, right])).toBe(900)
  })

  test('keeps two sets apart, and knows which are gone', () => {
    const other = { set: 'spare' }
    const two = [
      built,
      trialEntry(2, 'set', { ratingKw: 4, built: '2018' }, { ...other, from: '2018' }),
      trialEntry(3, 'hours', { meterHours: 500 }, { from: '2020-01-01' }),
      trialEntry(4, 'hours', { meterHours: 40 }, { ...other, from: '2020-01-01' }),
      trialEntry(5, 'set', { standing: 'gone' }, { ...other, from: '2023' }),
    ]
    expect(ask(two).setFacts.ratingKw).toBe(7)
    expect(ask(two, { set: 'spare' }).setFacts.ratingKw).toBe(4)
    expect(ask(two, { set: 'spare', asOf: '2020-01-01' }).hours.points.at(-1)?.hours).toBe(40)
    expect(setsOf(two, '2022-01-01')).toEqual(['main', 'spare'])
    expect(setsOf(two, '2024-01-01')).toEqual(['main'])
  })
})

describe('hours', () => {
  test('go on over a change of meter', () => {
    const { hours } = ask(
      [
        built,
        trialEntry(2, 'hours', { meterHours: 1000 }, { from: '2015-01-01' }),
        trialEntry(3, 'meter-changed', { oldMeterHours: 1100, newMeterHours: 5 }, { from: '2016-01-01' }),
        trialEntry(4, 'hours', { meterHours: 205 }, { from: '2018-01-01' }),
      ],
      { asOf: '2018-01-01' },
    )
    expect(hours.points.map((point) => point.hours)).toEqual([0, 1000, 1100, 1300])
  })

  test('run on from the last reading as in the usual year', () => {
    const { hours } = ask([
      built,
      trialEntry(2, 'hours', { meterHours: 1000 }, { from: '2022-01-01' }),
      trialEntry(
        3,
        'use',
        { months: [{ month: 7, hours: 50, starts: 20, needShare: 1, lowLoadShare: 0 }] },
        { from: '2022' },
      ),
    ])
    // two years of 365 days
    expect(hours.points.at(-1)?.hours).toBeCloseTo(1000 + (50 * 730) / 365.25, 9)
    expect(hours.perYear).toBeCloseTo((1000 * 365.25) / 4383, 9)
  })

  test('between readings lie straight between them, and a fall without a new meter is left out', () => {
    const { hours } = ask(
      [
        built,
        trialEntry(2, 'hours', { meterHours: 100 }, { from: '2012-01-01' }),
        trialEntry(3, 'hours', { meterHours: 60 }, { from: '2013-01-01' }),
        trialEntry(4, 'hours', { meterHours: 200 }, { from: '2014-01-01' }),
      ],
      { asOf: '2014-01-01' },
    )
    expect(hours.points).toHaveLength(3)
    const { day } = hours.points[1]!
    expect(hoursAt(hours, day + 731 / 2)).toBeCloseTo(150, 9)
    expect(hoursAt(hours, day + 10_000)).toBeUndefined()
  })
})

describe('parts', () => {
  const hours = [
    trialEntry(10, 'hours', { meterHours: 1000 }, { from: '2020-01-01' }),
    trialEntry(11, 'hours', { meterHours: 1400 }, { from: '2024-01-01' }),
  ]
  const renewal = (number: number, from: string, was: 'failed' | 'sound' | 'defective', meterHours: number) =>
    trialEntry(
      number,
      'work',
      {
        parts: [{ part: 'impeller', did: 'renewed', was, ...(was === 'sound' ? {} : { mode: 'worn' }) }],
        by: 'owner',
        why: was === 'sound' ? 'preventive' : was === 'failed' ? 'failed' : 'found',
        meterHours,
      },
      { from },
    )

  test('are as old as since they were fitted, on each clock', () => {
    const { parts } = ask([built, ...hours, renewal(2, '2020-01-01', 'failed', 1000)])
    const part = parts.get('impeller')!
    expect(part.age).toEqual({ years: expect.closeTo(1461 / 365.25, 9), hours: expect.closeTo(400, 9) })
    // nobody knows when the one before was fitted: its life says nothing
    expect(part.lives).toEqual([])
  })

  test('tell how earlier lives ended', () => {
    const { parts } = ask([
      built,
      trialEntry(
        3,
        'fitted',
        { part: 'impeller', quality: 'original', originalToSet: true },
        { from: '2010' },
      ),
      ...hours,
      renewal(4, '2020-01-01', 'failed', 1000),
      renewal(5, '2022-01-01', 'sound', 1200),
    ])
    const [first, second] = parts.get('impeller')!.lives
    expect(first).toMatchObject({ ended: 'failed', mode: 'worn', entry: trialId(4), age: { hours: 1000 } })
    expect(second).toMatchObject({ ended: 'sound', age: { hours: 200 } })
    expect(parts.get('impeller')!.age).toMatchObject({ hours: 200 })
  })

  test('of which only looks are entered have an unknown age', () => {
    const { parts } = ask([
      built,
      ...hours,
      trialEntry(6, 'finding', { about: [{ part: 'elbow' }], verdict: 'nothing-seen', check: 'close-look' }),
    ])
    expect(parts.get('elbow')).toMatchObject({ age: 'unknown', entries: [trialId(6)] })
    expect(parts.has('impeller')).toBe(false)
  })
})

describe('what stands open', () => {
  const found = trialEntry(
    2,
    'finding',
    { about: [{ part: 'elbow', mode: 'worn' }], verdict: 'defect-seen', check: 'close-look' },
    { from: '2022-05-01' },
  )
  const renewed = trialEntry(
    3,
    'work',
    { parts: [{ part: 'elbow', did: 'renewed' }], by: 'owner', why: 'found' },
    { from: '2022-06-01' },
  )

  test('is a defect until it is mended, with the danger it carries', () => {
    expect(ask([built, found]).openDefects.map(({ entry }) => entry)).toEqual([trialId(2)])
    expect(ask([built, found]).openDangers).toEqual([
      { danger: 'carbon-monoxide', part: 'elbow', mode: 'worn', entry: trialId(2) },
    ])
    expect(ask([built, found, renewed]).openDefects).toEqual([])
    expect(ask([built, found, renewed]).openDangers).toEqual([])
    expect(ask([built, found, renewed], { asOf: '2022-05-15' }).openDefects).toHaveLength(1)
  })

  test('stays open when only made safe', () => {
    const safe = trialEntry(
      4,
      'danger-safe',
      { danger: 'carbon-monoxide', found: trialId(2), how: 'not run' },
      { from: '2022-05-02' },
    )
    const register = ask([built, found, safe])
    expect(register.openDangers[0]?.madeSafeBy).toBe(trialId(4))
    expect(register.openDefects).toHaveLength(1)
  })

  test('is a stop that goes on, until the part is mended', () => {
    const stop = trialEntry(
      5,
      'stop',
      { daysWithoutPower: 3, curedSameDay: false, cause: { part: 'impeller', mode: 'worn' } },
      { from: '2023-12-20', until: '2024' },
    )
    expect(ask([built, stop]).broken).toEqual([{ part: 'impeller', mode: 'worn', entry: trialId(5) }])
    const mended = trialEntry(
      6,
      'work',
      { parts: [{ part: 'impeller', did: 'renewed' }], by: 'owner', why: 'failed' },
      { from: '2023-12-28' },
    )
    expect(ask([built, stop, mended]).broken).toEqual([])
  })

  test('protections tell whether they are there and when they were last tested', () => {
    const tested = trialEntry(
      7,
      'finding',
      { about: [{ part: 'heat-trip' }], verdict: 'nothing-seen', check: 'function-test' },
      { from: '2023-01-02' },
    )
    expect(ask([built, tested]).protections).toEqual([
      { part: 'heat-trip', fitted: 'fitted', lastTestedDay: 19359 },
      { part: 'gas-alarm', fitted: 'not-known' },
    ])
  })
})

describe('money', () => {
  const quote = trialEntry(
    2,
    'quote',
    {
      job: 'elbow',
      amount: 500,
      tax: { included: false, percent: 20 },
      firmness: 'firm',
      subjectToStripDown: false,
      excludes: ['carriage'],
      covers: { parts: [{ part: 'elbow', did: 'renewed' }] },
      validUntil: '2022-02-01',
    },
    { from: '2022-01-10' },
  )
  const work = trialEntry(
    3,
    'work',
    { parts: [{ part: 'elbow', did: 'renewed' }], by: 'workshop', why: 'found', cost: 700 },
    { from: '2022-03-01' },
  )
  const bill = trialEntry(
    4,
    'bill',
    { amount: 720, quote: trialId(2), work: trialId(3), job: 'elbow' },
    { from: '2022-03-20' },
  )
  const own = trialEntry(
    5,
    'work',
    { parts: [{ part: 'impeller', did: 'renewed' }], by: 'owner', why: 'preventive', cost: 40 },
    { from: '2023-04-01' },
  )

  test('is counted once, by year and by system', () => {
    const { spent } = ask([built, quote, work, bill, own])
    expect(spent).toEqual({
      total: 760,
      byYear: { 2022: 720, 2023: 40 },
      bySystem: { exhaust: 720, 'sea-water': 40 },
    })
  })

  test('on offer stays so until it is billed, tax put on', () => {
    expect(ask([built, quote]).openQuotes).toMatchObject([
      { entry: trialId(2), amount: 500, withTax: 600, expired: true, taxUnknown: false },
    ])
    expect(ask([built, quote], { asOf: '2022-01-20' }).openQuotes[0]?.expired).toBe(false)
    expect(ask([built, quote, work, bill]).openQuotes).toEqual([])
  })

  test('shows how far a bill went past its quote', () => {
    expect(ask([built, quote, work, bill]).overruns).toEqual([
      { quote: trialId(2), job: 'elbow', quoted: 600, billed: 720, ratio: 1.2 },
    ])
  })
})
