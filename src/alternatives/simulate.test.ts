import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { agreement, closedFormCases, type HistoryView } from '../../test/cases/closed-form.js'
import { workedCases } from '../../test/cases/worked.js'
import { type LifeModelInput, lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import type { Kept, kept } from './kept.js'
import { compile, type Program } from './program.js'
import { column, joinSamples, type Sample } from './sample.js'
import { playSpan } from './simulate.js'

function compiled(input: LifeModelInput): Program {
  const model = lifeModelSchema.parse(input)
  return compile(model, posteriorOf(model, { seed: 11 }))
}

function sampleOf(input: LifeModelInput, count: number, seed = 5): Sample {
  return playSpan(compiled(input), { seed, from: 0, count })[0]!
}

/** Each history as the closed-form cases look at it; failures by mode need one history at a time. */
function views(program: Program, count: number): HistoryView[] {
  const names = program.model.parts.flatMap((part) => part.modes.map((mode) => `${part.id}/${mode.id}`))
  return Array.from({ length: count }, (_, i) => {
    const [sample] = playSpan(program, { seed: 5, from: i, count: 1 })
    const value = (name: (typeof kept)[number]) => column(sample!, name)[0]!
    return {
      presentCost: value('cost'),
      failureCost: value('failures'),
      plannedCost: value('planned'),
      upkeepCost: value('upkeep'),
      powerCost: value('power'),
      daysWithoutPower: value('daysWithout'),
      stops: value('stops') + value('sameDayStops'),
      sameDayStops: value('sameDayStops'),
      replaced: value('replacements'),
      nowCost: value('now'),
      fuelCost: value('fuel'),
      intrusionCost: value('intrusion'),
      replacementCost: value('replacement'),
      giveUpCost: value('giveUp'),
      resaleCost: value('resale'),
      dangers: Object.fromEntries(
        program.dangerKinds.map((kind, d) => [kind, sample!.failuresOfDanger[d]! * program.dangerChance[d]!]),
      ),
      failures: Object.fromEntries(names.map((name, m) => [name, sample!.failuresOfMode[m]!])),
      first:
        value('firstMode') < 0
          ? null
          : { of: names[value('firstMode')]!, atYears: value('firstTime'), cost: value('firstCost') },
    }
  })
}

// Sources stand beside each case in test/cases/.
test.each([...closedFormCases, ...workedCases])(
  '$id agrees with what is known of it within 4 standard errors',
  (given) => {
    const model = lifeModelSchema.parse(given.model)
    const alternatives = model.alternatives.filter(({ id }) => id === (given.alternative ?? 'leave'))
    const seen = views(compiled({ ...model, alternatives }), given.histories)
    for (const expectation of given.expect) {
      const { expected, found, standardError } = agreement(seen, expectation)
      expect(
        Math.abs(found - expected),
        `${JSON.stringify(expectation)}: found ${found} ± ${standardError}`,
      ).toBeLessThanOrEqual(4 * standardError + 1e-9 + 1e-12 * Math.abs(expected))
    }
  },
)

// Poisson with rate 2 a year over 5 years, of which 0.3 stop it and 0.5 leave it running short; by hand.
test('failures stop the set, leave it running short, or neither', () => {
  const model: LifeModelInput = {
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 5,
    parts: [
      { id: 'fan', modes: [{ id: 'slips', clock: 'years', shape: 1, scale: 0.5, stops: 0.3, derates: 0.5 }] },
    ],
  }
  const count = 20_000
  const [sample] = playSpan(compiled(lifeModelSchema.parse(model)), { seed: 9, from: 0, count })
  const mean = (name: Kept) => column(sample!, name).reduce((sum, value) => sum + value, 0) / count
  expect(Math.abs(mean('stops') + mean('sameDayStops') - 3)).toBeLessThan(4 * Math.sqrt(3 / count))
  expect(Math.abs(mean('derates') - 5)).toBeLessThan(4 * Math.sqrt(5 / count))
})

/** A small set with everything in it: knock-on, guard, hidden modes, wear, services, lay-up, limits, candidates. */
const lively: LifeModelInput = {
  type: 'gensettle/life-model',
  version: 1,
  horizonYears: 8,
  realInterestPerYear: 0.02,
  startMonth: 2.5,
  use: {
    hoursByMonth: [0, 0, 0, 40, 60, 70, 80, 80, 60, 30, 0, 0],
    startsByMonth: [0, 0, 0, 20, 30, 35, 40, 40, 30, 15, 0, 0],
    lowLoadShare: 0.3,
  },
  past: {
    track: [
      { yearsAgo: 12, hours: 0, starts: 0 },
      { yearsAgo: 0, hours: 5000, starts: 2500 },
    ],
  },
  setFactor: { boatLogSd: 0.28, setLogSd: 0.28 },
  checks: [
    { id: 'look', everyHours: 60, diligence: 0.6 },
    { id: 'trip-test', everyHours: 350, diligence: 0.3 },
  ],
  labour: { paidPerHour: 60, ownPerHour: 15, perTrip: 80, overrun: { median: 1.1, logSd: 0.3 } },
  access: [
    { id: 'panels', hours: 0.5 },
    { id: 'front', hours: 1, includes: ['panels'] },
  ],
  powerLoss: {
    curve: [
      { days: 0.5, cost: 0 },
      { days: 10, cost: 900 },
    ],
  },
  dangers: { flood: 0.01 },
  intrusion: { testsCatch: 0.5 },
  fuelPerHour: 2,
  upkeepPerYear: 100,
  set: { ageYears: 12, resale: { newPrice: 10_000, least: 300 } },
  candidates: [
    {
      id: 'new',
      price: { median: 9000, logSd: 0.1 },
      install: 3000,
      leadDays: 30,
      installDays: 4,
      guaranteeYears: 2,
      infantFaults: 0.5,
      resale: { newPrice: 10_000 },
    },
  ],
  parts: [
    {
      id: 'pump',
      access: ['front'],
      age: { years: 4, hours: 1700 },
      repair: {
        price: { median: 300, logSd: 0.3 },
        hours: 2,
        trips: 1,
        intrusionChance: 0.05,
        supply: [
          { chance: 0.6, days: 1 },
          { chance: 0.4, days: { median: 12, logSd: 0.5 }, priceFactor: 1.5, quality: 0.8 },
        ],
        lastLikelierPerYear: 0.02,
        wrongPartChance: 0.1,
      },
      service: { everyHours: 800, everyYears: 5, diligence: 0.7, renews: true, price: 60, hours: 1 },
      modes: [
        {
          id: 'wear',
          clock: 'hours',
          shape: 2.2,
          scale: 2500,
          logSd: 0.4,
          soot: 1.5,
          stops: 0.5,
          delay: { clock: 'hours', median: 60, logSd: 0.7 },
          checks: [{ check: 'look', detection: 0.5 }],
          links: [
            { part: 'hose', mode: 'burst', chance: 0.3, guard: { part: 'trip', effectiveness: 0.9 } },
            { part: 'winding', chance: 0.05 },
          ],
        },
      ],
    },
    {
      id: 'hose',
      access: ['panels'],
      age: { years: 9 },
      repair: { price: 80, hours: 1, by: 'owner' },
      modes: [
        { id: 'burst', clock: 'years', shape: 3, scale: 12, stops: 0.8, dangers: ['flood'], logSd: 0.3 },
      ],
    },
    {
      id: 'anode',
      access: ['front'],
      age: { years: 1 },
      repair: { price: 10, hours: 0.3, by: 'owner' },
      service: { everyYears: 1, diligence: 0.6, renews: true, price: 10, hours: 0.3 },
      modes: [
        {
          id: 'spent',
          clock: 'years',
          shape: 2,
          scale: 1.2,
          hidden: true,
          checks: [{ check: 'look', detection: 0.2 }],
          wear: [{ part: 'winding', mode: 'damp', factor: 3 }],
        },
      ],
    },
    {
      id: 'trip',
      age: { years: 6 },
      repair: { price: 60, hours: 1 },
      modes: [
        {
          id: 'asleep',
          clock: 'years',
          shape: 1.2,
          scale: 20,
          hidden: true,
          checks: [{ check: 'trip-test', detection: 0.95 }],
        },
      ],
    },
    {
      id: 'winding',
      access: ['front'],
      age: { years: 12, hours: 5000 },
      repair: {
        price: 1800,
        hours: 12,
        trips: 2,
        workshopDays: { median: 18, logSd: 0.4 },
        intrusionChance: 0.1,
      },
      modes: [
        {
          id: 'damp',
          clock: 'years',
          shape: 1.5,
          scale: 25,
          logSd: 0.4,
          delay: { clock: 'years', median: 0.8, logSd: 0.6 },
          checks: [{ check: 'trip-test', detection: 0.7 }],
        },
      ],
    },
  ],
  alternatives: [
    { id: 'leave' },
    {
      id: 'mend',
      now: {
        parts: [{ part: 'winding', quality: 0.85 }],
        quote: { price: 2500, overrun: { median: 1.1, logSd: 0.2 }, besides: 400 },
        days: 20,
        intrusionChance: 0.1,
      },
    },
    { id: 'replace', now: { replaceWith: 'new' } },
    { id: 'limit', limit: { knots: [1500, 1200, 800], above: { replaceWith: 'new' } } },
    { id: 'none', now: 'give-up' },
  ],
}

test('any split over workers gives the same bits', () => {
  const program = compiled(lively)
  const whole = playSpan(program, { seed: 3, from: 0, count: 300 })
  const cut = joinSamples(
    [
      [0, 120],
      [120, 1],
      [121, 179],
    ].map(([from, count]) => playSpan(compiled(lively), { seed: 3, from: from!, count: count! })),
  )
  expect(cut).toEqual(whole)
})

test('a dearer quote never makes mending better, and costs exactly its overrun more', () => {
  const dearer = structuredClone(lively) as {
    alternatives: { now: { quote: { price: number } } }[]
  } & LifeModelInput
  dearer.alternatives[1]!.now.quote.price += 500
  const before = playSpan(compiled(lively), { seed: 3, from: 0, count: 400 })[1]!
  const after = playSpan(compiled(dearer), { seed: 3, from: 0, count: 400 })[1]!
  const factor = column(before, 'quoteFactor')
  column(after, 'cost').forEach((cost, i) => {
    expect(cost - column(before, 'cost')[i]!).toBeCloseTo(500 * factor[i]!, 6)
  })
})

test('doubling every price, floors and limits too, doubles every cost', () => {
  const doubled = twice(lively)
  const before = playSpan(compiled(lively), { seed: 3, from: 0, count: 300 })
  const after = playSpan(compiled(doubled), { seed: 3, from: 0, count: 300 })
  before.forEach((sample, a) => {
    column(sample, 'cost').forEach((cost, i) => {
      expect(column(after[a]!, 'cost')[i]! / 2).toBeCloseTo(cost, 6)
    })
  })
})

function twice(input: LifeModelInput): LifeModelInput {
  const money = new Set([
    'price',
    'besides',
    'install',
    'paidPerHour',
    'ownPerHour',
    'perTrip',
    'cost',
    'least',
  ])
  const more = new Set(['newPrice', 'fuelPerHour', 'upkeepPerYear', 'knots', 'costNow', 'costPerYear'])
  const scale = (value: unknown, isMoney: boolean): unknown => {
    if (typeof value === 'number') return isMoney ? value * 2 : value
    if (Array.isArray(value)) return value.map((entry) => scale(entry, isMoney && typeof entry === 'number'))
    if (value === null || typeof value !== 'object') return value
    return Object.fromEntries(
      Object.entries(value).map(([key, entry]) => [
        key,
        scale(entry, money.has(key) || more.has(key) || (isMoney && key === 'median')),
      ]),
    )
  }
  return scale(input, false) as LifeModelInput
}

const steady = (chance: number): LifeModelInput => ({
  type: 'gensettle/life-model',
  version: 1,
  horizonYears: 6,
  parts: [
    {
      id: 'cause',
      repair: { price: 100 },
      modes: [
        {
          id: 'fails',
          clock: 'years',
          shape: 1,
          scale: 1.5,
          links: [{ part: 'victim', mode: 'fails', chance }],
        },
      ],
    },
    {
      id: 'victim',
      repair: { price: 900 },
      modes: [{ id: 'fails', clock: 'years', shape: 20, scale: 1e8 }],
    },
  ],
})

test('with the victim’s own failures off, a link of chance p adds p × its cost per event; p = 0 changes nothing', () => {
  const without = sampleOf(steady(0), 4000)
  const withLink = sampleOf(steady(0.25), 4000)
  const events = without.failuresOfMode[0]!
  expect(withLink.failuresOfMode[0]).toBe(events)
  const hits = withLink.failuresOfMode[1]!
  expect(Math.abs(hits - 0.25 * events)).toBeLessThan(4 * Math.sqrt(events * 0.25 * 0.75))
  const added = column(withLink, 'cost').reduce((sum, cost, i) => sum + cost - column(without, 'cost')[i]!, 0)
  expect(added).toBeCloseTo(hits * 900, 4)
  const none = structuredClone(steady(0)) as { parts: { modes: { links?: unknown }[] }[] } & LifeModelInput
  delete none.parts[0]!.modes[0]!.links
  expect(column(sampleOf(none, 500), 'cost')).toEqual(column(sampleOf(steady(0), 500), 'cost'))
})

test('the parts of the cost add up to it, and stops, days and money are never negative', () => {
  const headings = [
    'now',
    'failures',
    'planned',
    'upkeep',
    'fuel',
    'power',
    'intrusion',
    'replacement',
    'giveUp',
    'resale',
  ] as const
  const program = compiled(lively)
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 100_000 }), (from) => {
      for (const sample of playSpan(program, { seed: 9, from, count: 1 })) {
        const sum = headings.reduce((total, heading) => total + column(sample, heading)[0]!, 0)
        expect(column(sample, 'cost')[0]).toBeCloseTo(sum, 6)
        for (const name of [
          'failures',
          'planned',
          'upkeep',
          'fuel',
          'power',
          'daysWithout',
          'stops',
        ] as const) {
          expect(column(sample, name)[0]).toBeGreaterThanOrEqual(-1e-9)
        }
      }
    }),
    { numRuns: 200 },
  )
})

test('a part that keeps the simulation busy is named instead of running for ever', () => {
  const busy: LifeModelInput = {
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 100,
    parts: [{ id: 'fuse', modes: [{ id: 'blows', clock: 'hours', shape: 1, scale: 0.5 }] }],
  }
  expect(() => sampleOf(busy, 1)).toThrow('part "fuse" keeps the simulation busy')
})

test('another model of the same set, played in the place of the first, gives what it gives by itself; and so does the first again', () => {
  const model = lifeModelSchema.parse(workedCases[0]!.model)
  const posterior = posteriorOf(model, { seed: 11 })
  const longer = {
    ...model,
    horizonYears: model.horizonYears * 2.5,
    labour: { ...model.labour, paidPerHour: model.labour.paidPerHour + 40 },
    alternatives: [...model.alternatives, { id: 'again', now: 'leave' as const }],
  }
  const span = { seed: 5, from: 3, count: 60 }
  const alone = [model, longer].map((of) => playSpan(compile(of, { ...posterior }), span))
  const [first, other] = [compile(model, posterior), compile(longer, posterior)]
  expect(playSpan(first, span)).toEqual(alone[0])
  expect(playSpan(other, span)).toEqual(alone[1])
  expect(playSpan(first, span)).toEqual(alone[0])
  expect(playSpan(other, { ...span, from: 62, count: 1 })[0]!.columns[0]![0]).toBe(
    alone[1]![0]!.columns[0]![59],
  )
})
