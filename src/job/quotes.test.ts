import fc from 'fast-check'
import { expect, test } from 'vitest'
import { shippedCatalogue } from '../../test/shipped-limits.js'
import { trialEntry, trialId } from '../../test/trial-log.js'
import { trialModel } from '../../test/trial-model.js'
import { catalogueFor } from '../catalogue/scale.js'
import { normalCdf, normalQuantile } from '../forecast/special-normal.js'
import { leavable } from '../logbook/bodies-work.js'
import type { Body } from '../logbook/kinds.js'
import { type ComparisonKnown, compareOffers } from './quotes.js'
import { drawsOfQuotes } from './quotes-draws.js'
import { offersOf } from './quotes-offers.js'
import { questionsTo } from './quotes-questions.js'

const catalogue = catalogueFor(shippedCatalogue, {
  ratingKW: 10,
  rpm: 1500,
  excitation: 'brushless-regulator',
})
/** A stator of which nothing fails soon, and a bearing; a day without power is 20. */
const model = trialModel(
  [
    {
      id: 'stator-winding',
      access: ['end'],
      repair: { price: 1900, hours: 4 },
      modes: [{ id: 'm', clock: 'years', shape: 3, scale: 100 }],
    },
    {
      id: 'outboard-bearing',
      access: ['end'],
      repair: { price: 55, hours: 2 },
      modes: [{ id: 'm', clock: 'years', shape: 3, scale: 10 }],
    },
  ],
  {
    currency: 'GBP',
    access: [{ id: 'end', hours: 2, includes: [] }],
    labour: { paidPerHour: 100, perTrip: 80, hoursPerDay: 6 },
    powerLoss: {
      curve: [
        { days: 0, cost: 0 },
        { days: 1, cost: 20 },
      ],
    },
  },
)
const known: ComparisonKnown = { model, catalogue, asOf: '2026-11-25', seed: 1 }

const plain: Body<'quote'> = {
  job: 'rewind',
  amount: 2000,
  tax: { included: true, percent: 20 },
  firmness: 'firm',
  subjectToStripDown: false,
  excludes: [],
  covers: { parts: [{ part: 'stator-winding', did: 'renewed' }] },
}

function offered(list: readonly Partial<Body<'quote'>>[], set: { from?: string; boat?: string } = {}) {
  const entries = list.map((body, i) =>
    trialEntry(
      i + 1,
      'quote',
      { offeredBy: `shop ${i}`, ...plain, ...body },
      {
        set: 'main',
        from: set.from ?? '2026-11-01',
      },
    ),
  )
  return offersOf({
    entries,
    set: 'main',
    job: 'rewind',
    asOf: known.asOf,
    terms: { taxPercent: 20 },
    currency: 'GBP',
  })
}

const compared = (list: readonly Partial<Body<'quote'>>[], more: Partial<ComparisonKnown> = {}) =>
  compareOffers(offered(list).offers, { ...known, ...more })

const money = (lines: readonly { about: string; money: number }[], about: string) =>
  lines.filter((line) => line.about === about).reduce((sum, line) => sum + line.money, 0)

test('an offer is worked out by hand, line by line', () => {
  const { offers } = compared([
    {
      amount: 1500,
      tax: { included: false, percent: 20 },
      firmness: 'estimate',
      subjectToStripDown: true,
      excludes: ['removal', 'refitting', 'travel'],
      daysOut: 10,
      stagePayments: [
        { when: 'order', share: 0.5 },
        { when: 'half-way', share: 0.3 },
      ],
    },
  ])
  const { lines, expected } = offers[0]!
  expect(money(lines, 'price')).toBe(1500)
  expect(money(lines, 'tax')).toBeCloseTo(300, 9)
  // 1.12 × 1.06, with log-sd √(0.2² + 0.15²) = 0.25
  expect(money(lines, 'overrun')).toBeCloseTo(1800 * (1.12 * 1.06 * Math.exp(0.25 ** 2 / 2) - 1), 9)
  // 13 hours at 100 of the catalogue's stator and its ways in, log-sd 0.25, and two visits at 80
  expect(money(lines, 'left-out')).toBeCloseTo(1300 * Math.exp(0.25 ** 2 / 2) + 160, 9)
  // ten days promised are 10 × 1.15, log-sd 0.3, at 20 a day
  expect(money(lines, 'wait')).toBeCloseTo(20 * 11.5 * Math.exp(0.3 ** 2 / 2), 9)
  expect(money(lines, 'guarantee')).toBeCloseTo(0, 12)
  // half is ahead on order; half way 0.8 is paid and 0.5 done: 900 is the most, of which 1.5 in 100 is lost
  expect(money(lines, 'paid-ahead')).toBeCloseTo(0.015 * 900, 9)
  expect(expected).toBeCloseTo(
    lines.reduce((sum, line) => sum + line.money, 0),
    9,
  )
})

test('a guarantee takes off what it would put right', () => {
  const { offers } = compared([{ guaranteeMonths: 24, daysOut: 1 }])
  const line = offers[0]!.lines.find(({ about }) => about === 'guarantee')!
  // Weibull of 3 and 100 years, shortened to 0.85; a mend is 1,900 and 4 + 2 hours at 100. What the work put in shows at once:
  // one in ten, for the model's tests catch none.
  const fails = 1 - Math.exp(-((2 / 85) ** 3))
  expect(line.money).toBeCloseTo(-0.7 * (fails + 0.1) * 2500, 4)
})

test('of two offers without anything shared, the chance of being the cheapest is the normal’s', () => {
  const body = { daysOut: 0, guaranteeMonths: 0 }
  const { offers } = compared([
    { ...body, amount: 1900, firmness: 'estimate' },
    { ...body, amount: 2100, firmness: 'firm' },
  ])
  // ln X − ln Y is normal: mean ln(1900·1.12/(2100·1.02)), log-sd √(0.2² + 0.06²)
  const z = -Math.log((1900 * 1.12) / (2100 * 1.02)) / Math.hypot(0.2, 0.06)
  const estimate = offers.find(({ offer }) => offer.firmness === 'estimate')!
  expect(Math.abs(estimate.cheapest - normalCdf(z))).toBeLessThan((3.5 * 0.5) / Math.sqrt(drawsOfQuotes))
  expect(offers[0]!.cheapest + offers[1]!.cheapest).toBeCloseTo(1, 9)
})

test('what opening shows is the same for all that hang on it: only their own luck parts them', () => {
  const body = { subjectToStripDown: true, daysOut: 0 }
  const { offers } = compared([body, { ...body, amount: 2400 }])
  // were it drawn apart, ln 1.2 would be 0.8 of their log-sd, 0.23, and the first the cheapest in 79 of 100
  const chance = normalCdf(Math.log(1.2) / Math.hypot(0.06, 0.06))
  expect(Math.abs(offers[0]!.cheapest - chance)).toBeLessThan((3.5 * 0.5) / Math.sqrt(drawsOfQuotes))
})

test('draws agree with the closed form of the mean, and the spread holds the middle', () => {
  const { offers } = compared([
    { firmness: 'estimate', subjectToStripDown: true, excludes: ['removal', 'carriage'], daysOut: 20 },
  ])
  const [{ expected, spread }] = offers as [(typeof offers)[number]]
  expect(spread.low).toBeLessThan(spread.middle)
  expect(spread.middle).toBeLessThan(spread.high)
  expect(Math.abs(spread.middle - expected)).toBeLessThan(0.1 * expected)
})

test('a part that another covers is put on top, and the time that has run out makes an offer dearer', () => {
  const bearing = { part: 'outboard-bearing', did: 'renewed' } as const
  const { offers, scope } = compared([
    { covers: { parts: [...plain.covers.parts, bearing] } },
    { validUntil: '2026-11-10' },
  ])
  expect(scope.parts.map(({ part }) => part)).toEqual(['outboard-bearing', 'stator-winding'])
  const short = offers.find(({ offer }) => offer.expired)!
  expect(money(short.lines, 'not-covered')).toBeCloseTo(55 + 2 * 100, 9)
  expect(money(short.lines, 'lapsed')).toBeCloseTo(2000 * 0.05, 9)
})

const anyOffer = fc.record(
  {
    amount: fc.integer({ min: 100, max: 9000 }),
    firmness: fc.constantFrom('firm', 'estimate'),
    subjectToStripDown: fc.boolean(),
    excludes: fc.subarray([...leavable]),
    guaranteeMonths: fc.integer({ min: 0, max: 36 }),
    daysOut: fc.integer({ min: 0, max: 90 }),
    validUntil: fc.constantFrom('2026-11-10', '2026-12-31'),
  },
  { requiredKeys: ['amount', 'excludes'] },
) as fc.Arbitrary<Partial<Body<'quote'>>>

test('a further exclusion never lowers what an offer comes to', () => {
  fc.assert(
    fc.property(anyOffer, fc.constantFrom(...leavable), (body, work) => {
      const before = compared([body]).offers[0]!.expected
      const excludes = [...new Set([...body.excludes!, work])]
      expect(compared([{ ...body, excludes }]).offers[0]!.expected).toBeGreaterThanOrEqual(before - 1e-9)
    }),
    { numRuns: 12 },
  )
})

test('tax in is tax out with the tax on it', () => {
  fc.assert(
    fc.property(anyOffer, fc.integer({ min: 1, max: 40 }), (body, percent) => {
      const out = compared([{ ...body, tax: { included: false, percent } }]).offers[0]!
      const amount = body.amount! * (1 + percent / 100)
      const within = compared([{ ...body, amount, tax: { included: true, percent } }]).offers[0]!
      expect(out.expected).toBeCloseTo(within.expected, 6)
    }),
    { numRuns: 8 },
  )
})

test('the order of the entries changes nothing', () => {
  fc.assert(
    fc.property(fc.array(anyOffer, { minLength: 2, maxLength: 4 }), (list) => {
      const { offers } = offered(list)
      const said = (of: ReturnType<typeof compareOffers>) =>
        of.offers.map(({ offer, expected, cheapest }) => [offer.entry, expected, cheapest])
      expect(said(compareOffers(offers.toReversed(), known))).toEqual(said(compareOffers(offers, known)))
    }),
    { numRuns: 5 },
  )
})

const walkAway = { price: 2500, low: 2000, high: 3000, overrun: { median: 1.02, logSd: 0.06 }, besides: 300 }

test('an offer in its own terms at its own price to walk away from costs just what the job may', () => {
  const body = {
    amount: 1800,
    tax: { included: false, percent: 20 },
    excludes: ['testing'] as const,
    daysOut: 4,
  }
  const first = compared([body], { walkAway }).offers[0]!
  // the stator's 4 hours and the 2 that open it are a day at 6 hours, at 20
  expect(first.expected + first.room!).toBeCloseTo(2500 * 1.02 * Math.exp(0.06 ** 2 / 2) + 300 + 20, 6)
  const there = compared([{ ...body, amount: first.walkAwayPrice! }], { walkAway }).offers[0]!
  expect(there.room).toBeCloseTo(0, 6)
})

test('of each who offers the latest counts, and what cannot be used is named, all at once', () => {
  const { offers, problems } = offered([
    { offeredBy: 'the yard', amount: 900 },
    { offeredBy: 'The yard ', amount: 800 },
    { currency: 'EUR' },
    { readyBy: '2026-10-01', validUntil: '2026-09', stagePayments: [{ at: '2026-10-30', share: 1 }] },
    { covers: { parts: [], newSet: { ratingKw: 7, used: false } } },
  ])
  expect(offers.map(({ entry, inPlaceOf }) => [entry, inPlaceOf])).toEqual([
    [trialId(2), [trialId(1)]],
    [trialId(4), []],
    [trialId(5), []],
  ])
  expect(problems.map(({ code, path }) => `${code} ${path.split(': ')[1]}`)).toEqual([
    'other-money currency',
    'before-the-quote validUntil',
    'before-the-quote readyBy',
    'before-the-quote stagePayments.0.at',
  ])
  expect(offers[1]).not.toHaveProperty('days')
  expect(offers[1]!.stages).toEqual([])
  const side = compareOffers(offers, known)
  expect(side.offers.map(({ offer }) => offer.entry)).toEqual([trialId(5)])
  expect(side.problems.map(({ code }) => code)).toEqual(['for-something-else', 'for-something-else'])
})

test('a question is worth what choosing with its answer saves', () => {
  const body = {
    daysOut: 5,
    guaranteeMonths: 12,
    includes: [...leavable],
    stagePayments: [{ when: 'tested', share: 1 }],
  }
  const quotes = [
    { ...body, amount: 1900, tax: undefined },
    { ...body, amount: 2000 },
  ] as Partial<Body<'quote'>>[]
  const comparison = compared(quotes)
  const [best, next] = comparison.offers
  const questions = questionsTo(best!, { comparison, known })
  expect(questions.map(({ about }) => about)).toEqual(['tax'])
  // an even chance that 380 of tax comes on top: then the other is taken, which saves the difference
  const dearer = 380 * 1.02 * Math.exp(0.06 ** 2 / 2)
  expect(questions[0]).toMatchObject({ changesOrder: true, passesWalkAway: false })
  expect(questions[0]!.swing).toBeCloseTo(dearer, 9)
  expect(questions[0]!.worth).toBeCloseTo(0.5 * (dearer - (next!.expected - best!.expected)), 9)
  // the other has said all
  expect(questionsTo(next!, { comparison, known })).toEqual([])
})

test('what changes nothing by itself is asked where all of it together does', () => {
  const body = { daysOut: 5, guaranteeMonths: 12, stagePayments: [{ when: 'tested', share: 1 }] as const }
  const comparison = compared([
    { ...body, amount: 1900, includes: ['removal', 'refitting', 'lifting', 'travel', 'parts', 'haul-out'] },
    { ...body, amount: 2220, includes: [...leavable] },
  ])
  const questions = questionsTo(comparison.offers[0]!, { comparison, known })
  expect(questions).toMatchObject([
    {
      about: 'left-out-together',
      works: ['testing', 'carriage', 'consumables', 'disposal'],
      changesOrder: true,
    },
  ])
  expect(questions[0]!.worth).toBeGreaterThan(0)
})

test('the price to walk away from makes a question of a single offer', () => {
  const comparison = compared([{ amount: 2400, firmness: 'estimate', daysOut: 5 }], {
    walkAway: { ...walkAway, price: 2300 },
  })
  const questions = questionsTo(comparison.offers[0]!, { comparison, known })
  expect(questions.every(({ changesOrder }) => !changesOrder)).toBe(true)
  expect(questions.length).toBeGreaterThan(0)
  expect(questions.every(({ passesWalkAway }) => passesWalkAway)).toBe(true)
  const worths = questions.map(({ worth }) => worth)
  expect(worths).toEqual(worths.toSorted((a, b) => b - a))
})

test('what the owner’s jobs came to moves the bill over price, where it is heard', () => {
  const learned = {
    jobs: 3,
    further: { median: 1.3, logSd: 0.2 },
    quoteFactor: { bySystem: { 'whole-set': 1.1 }, other: 1.2 },
  }
  const before = compared([{ daysOut: 1 }]).offers[0]!
  const heard = compared([{ daysOut: 1 }], { learned }).offers[0]!
  expect(heard.expected - before.expected).toBeCloseTo(2000 * 0.1 * 1.02 * Math.exp(0.06 ** 2 / 2), 9)
})

test('of three, the chance of being the cheapest is what a sum over even steps of chance finds', () => {
  const body = { daysOut: 0, guaranteeMonths: 0 }
  const three = [
    { amount: 1900, firmness: 'estimate', median: 1900 * 1.12, logSd: 0.2 },
    { amount: 2100, firmness: 'firm', median: 2100 * 1.02, logSd: 0.06 },
    { amount: 2000, firmness: 'estimate', median: 2000 * 1.12, logSd: 0.2 },
  ] as const
  const { offers } = compared(three.map(({ amount, firmness }) => ({ ...body, amount, firmness })))
  const steps = 2000
  three.forEach(({ amount, median, logSd }, k) => {
    // P(X < all others) = E[Π P(other > X)], over the quantiles of X
    const chance = Array.from({ length: steps }, (_, i) => {
      const x = median * Math.exp(logSd * normalQuantile((i + 0.5) / steps))
      return three.reduce(
        (all, other, o) => (o === k ? all : all * normalCdf(-Math.log(x / other.median) / other.logSd)),
        1 / steps,
      )
    }).reduce((sum, share) => sum + share, 0)
    const found = offers.find(({ offer }) => offer.amount === amount)!.cheapest
    expect(Math.abs(found - chance)).toBeLessThan((3.5 * 0.5) / Math.sqrt(drawsOfQuotes))
  })
})

test('a longer guarantee, a shorter wait and a later payment never make an offer dearer', () => {
  const cost = (body: Partial<Body<'quote'>>) => compared([body]).offers[0]!.expected
  const stages = ['tested', 'finished', 'half-way', 'stripped', 'start', 'order'] as const
  fc.assert(
    fc.property(anyOffer, fc.nat(24), fc.nat(30), fc.nat(4), (body, months, days, stage) => {
      const { guaranteeMonths = 0, daysOut = 0 } = body
      const before = cost({ ...body, guaranteeMonths, daysOut })
      expect(cost({ ...body, daysOut, guaranteeMonths: guaranteeMonths + months })).toBeLessThanOrEqual(
        before + 1e-9,
      )
      expect(cost({ ...body, guaranteeMonths, daysOut: daysOut + days })).toBeGreaterThanOrEqual(
        before - 1e-9,
      )
      const paid = (at: number) => cost({ ...body, stagePayments: [{ when: stages[at]!, share: 0.6 }] })
      expect(paid(stage)).toBeLessThanOrEqual(paid(stage + 1) + 1e-9)
    }),
    { numRuns: 6 },
  )
})

test('a payment on a day counts by the share of the time that has gone by then', () => {
  const { offers } = compared([
    {
      days: 40,
      daysOut: 40,
      stagePayments: [
        { at: '2026-11-25', amount: 500 },
        { at: '2026-12-18', share: 0.6 },
      ],
    },
  ])
  const { stages, beforeWork, most } = offers[0]!.ahead
  // 40 days promised are 46 on the median, and e^0.045 of that on average
  const days = 46 * Math.exp(0.3 ** 2 / 2)
  expect(stages.map(({ done }) => done)).toEqual([0, expect.closeTo(23 / days, 9)])
  expect(beforeWork).toBe(500)
  expect(most).toBeCloseTo(Math.max(500, 1700 - (2000 * 23) / days), 6)
})
