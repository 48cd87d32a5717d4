import { describe, expect, test } from 'vitest'
import { shippedCatalogue as catalogue } from '../../test/shipped-limits.js'
import { trialEntry, trialId } from '../../test/trial-log.js'
import { catalogueFor } from '../catalogue/scale.js'
import type { Entry } from '../logbook/kinds.js'
import { registerOf } from '../register/register.js'
import type { SetRegister } from '../register/register-types.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { insulationSymptoms } from './build-insulation.js'
import { buildLifeModel, ownLogSd } from './build-life-model.js'
import { overrunOf } from './build-money.js'
import { amountOf } from './build-repair.js'
import { lifeModelSchema } from './life-model.js'
import { contradictionsIn } from './life-model-contradictions.js'

const fiveAnswers = [
  trialEntry(1, 'set', { ratingKw: 7, excitation: 'brushless-regulator', built: '2004' }, { from: '2004' }),
  trialEntry(2, 'hours', { meterHours: 4000 }, { from: '2024-01-01' }),
  trialEntry(
    3,
    'use',
    { months: [{ month: 7, hours: 120, starts: 60, needShare: 0.9, lowLoadShare: 0.4 }] },
    { from: '2024-01-01' },
  ),
  trialEntry(4, 'letdowns', { times: 3, years: 3 }, { from: '2024-01-01' }),
]

function built(more: readonly Entry[] = [], first: readonly Entry[] = fiveAnswers) {
  const entries = [...first, ...more]
  const register = registerOf({ entries, boat: 'trial', set: 'main', asOf: '2024-01-02', catalogue })
  const ofSet = setCatalogueOf(register, catalogue)
  const { model, restsOn, assumed } = buildLifeModel(register, ofSet.catalogue)
  return { model: lifeModelSchema.parse(model), restsOn, assumed: [...ofSet.assumed, ...assumed], register }
}

const partOf = ({ model }: ReturnType<typeof built>, id: string) =>
  model.parts.find((part) => part.id === id)!

describe('a boat of which little is known', () => {
  test('with five answers has a whole model that says what it took for granted', () => {
    const five = built()
    expect(contradictionsIn(five.model)).toEqual([])
    expect(five.model.parts.every(({ age }) => age === 'unknown')).toBe(true)
    expect(five.model.use.hoursByMonth[6]).toBe(120)
    expect(five.model.past?.track.at(-1)?.hours).toBeCloseTo(4000.3, 1)
    expect(five.model.setFactor.letDowns).toMatchObject([{ count: 3 }])
    expect(five.assumed.join('\n')).toMatch(/a paid hour is taken at/)
    expect(Object.values(five.restsOn).flat()).toEqual([])
  })

  test('with nothing but a name still has one', () => {
    const nothing = built([], [trialEntry(1, 'note', { text: 'a set is aboard' })])
    expect(contradictionsIn(nothing.model)).toEqual([])
    expect(nothing.assumed.length).toBeGreaterThan(built().assumed.length)
  })
})

describe('what the log says of a part', () => {
  test('gives it its age, its earlier lives and the entries it rests on', () => {
    const renewed = (number: number, from: string, meterHours: number) =>
      trialEntry(
        number,
        'work',
        {
          parts: [{ part: 'drive-belt', did: 'renewed', was: 'failed', mode: 'wear' }],
          by: 'owner',
          why: 'failed',
          meterHours,
        },
        { from },
      )
    const model = built([renewed(5, '2020-01-02', 3000), renewed(6, '2022-01-02', 3600)])
    const belt = partOf(model, 'drive-belt')
    expect(belt.age).toEqual({ years: expect.closeTo(2, 2), hours: expect.closeTo(400.3, 1) })
    expect(belt.pastLives).toEqual([
      { age: { years: expect.closeTo(2, 2), hours: 600 }, ended: { failed: 'wear' } },
    ])
    expect(model.restsOn['drive-belt']).toEqual([trialId(5), trialId(6)])
  })

  test('counts a renewal by rote as a life only where every mode shows by itself', () => {
    const work = (number: number, from: string) =>
      trialEntry(
        number,
        'work',
        {
          parts: [
            { part: 'anode', did: 'renewed' },
            { part: 'fuel-filters', did: 'renewed' },
          ],
          by: 'owner',
          why: 'preventive',
        },
        { from },
      )
    const model = built([work(5, '2022-01-02'), work(6, '2023-01-02')])
    expect(partOf(model, 'anode').modes.some(({ hidden }) => hidden)).toBe(true)
    expect(partOf(model, 'anode').pastLives).toEqual([])
    expect(partOf(model, 'fuel-filters').pastLives).toMatchObject([{ ended: 'sound' }])
  })

  test('tells when a mode was cleared, and how good the piece in place is', () => {
    const model = built([
      trialEntry(
        5,
        'fitted',
        { part: 'exhaust-elbow', quality: 'aftermarket', meterHours: 2000 },
        { from: '2012-01-02' },
      ),
      trialEntry(
        6,
        'work',
        {
          parts: [{ part: 'exhaust-elbow', did: 'cleaned', mode: 'choke' }],
          by: 'owner',
          why: 'preventive',
          meterHours: 3500,
        },
        { from: '2021-01-02' },
      ),
    ])
    const elbow = partOf(model, 'exhaust-elbow')
    expect(elbow.age).toEqual({ years: expect.closeTo(12, 2), hours: expect.closeTo(2000.3, 1) })
    expect(elbow.quality).toBe(0.85)
    expect(elbow.modes.map(({ id, clearedYearsAgo }) => [id, clearedYearsAgo])).toEqual([
      ['choke', expect.closeTo(3, 2)],
      ...elbow.modes.slice(1).map(({ id }) => [id, undefined]),
    ])
  })

  test('is a look for the mode named, and a symptom where several may be the reason', () => {
    const seen = trialEntry(
      5,
      'finding',
      { about: [{ part: 'mounts', mode: 'sag' }], verdict: 'defect-seen', check: 'close-look' },
      { from: '2023-06-01' },
    )
    const shake = trialEntry(
      6,
      'finding',
      {
        about: [{ part: 'mounts' }, { part: 'outboard-bearing', mode: 'wear' }],
        verdict: 'defect-seen',
        check: 'bearing-listen',
      },
      { from: '2023-06-01' },
    )
    const model = built([seen, shake])
    expect(partOf(model, 'mounts').modes[0]?.observations).toMatchObject([
      { check: 'close-look', seen: true },
    ])
    expect(model.model.symptoms.map(({ modes }) => modes.map(({ mode }) => mode))).toEqual([['sag', 'wear']])
  })

  test('stands broken while a stop goes on', () => {
    const stop = trialEntry(
      5,
      'stop',
      { daysWithoutPower: 3, curedSameDay: false, cause: { part: 'voltage-regulator', mode: 'fail' } },
      { from: '2023-12-20', until: '2024' },
    )
    expect(partOf(built([stop]), 'voltage-regulator').broken).toBe('fail')
    expect(partOf(built(), 'voltage-regulator').broken).toBeUndefined()
  })

  test('counts stops that are entered at their parts, and only the others as letting down', () => {
    const stop = (number: number, from: string) =>
      trialEntry(number, 'stop', { daysWithoutPower: 1, curedSameDay: true }, { from })
    const one = built([stop(5, '2023-05-01')]).model.setFactor.letDowns
    expect(one).toMatchObject([{ count: 2 }])
    // the two left over stand for two years of the three
    expect(one[0]!.fromYearsAgo - one[0]!.toYearsAgo).toBeCloseTo(2, 2)
    const all = [stop(5, '2023-05-01'), stop(6, '2022-05-01'), stop(7, '2021-05-01')]
    expect(built(all).model.setFactor.letDowns).toEqual([])
  })
})

describe('trips', () => {
  const linkOf = (model: ReturnType<typeof built>) =>
    partOf(model, 'sea-pump-impeller')
      .modes.find(({ id }) => id === 'wear')!
      .links.find(({ part }) => part === 'exchanger-tubes')!
  const said = (body: { has?: string[]; hasNot?: string[] }) =>
    built([trialEntry(5, 'set', body, { from: '2023' })])

  test('guard where they are there, not where they are not, and by their chance where nobody says', () => {
    const there = linkOf(said({ has: ['sea-flow-trip'] }))
    const absent = linkOf(said({ hasNot: ['sea-flow-trip'] }))
    const unknown = linkOf(built())
    expect(there.guard?.part).toBe('sea-flow-trip')
    expect(absent.guard).toBeUndefined()
    expect(unknown.guard).toBeUndefined()
    const fitted = catalogue.parts.find(({ id }) => id === 'sea-flow-trip')!.fittedChance!
    expect(unknown.chance).toBeCloseTo(absent.chance * (1 - there.guard!.effectiveness * fitted), 12)
  })
})

describe('terms', () => {
  test('decide who does the work and what a day without power costs', () => {
    const terms = trialEntry(
      5,
      'terms',
      {
        ownerDoes: [],
        ownerAlsoDoes: ['drive-belt'],
        withoutPower: [
          {
            months: [7],
            curve: [
              { days: 1, price: 0 },
              { days: 7, price: 600 },
            ],
          },
          { months: [5], curve: [{ days: 7, price: 150 }] },
        ],
      },
      { from: '2023' },
    )
    const model = built([terms])
    expect(partOf(model, 'drive-belt').repair).toMatchObject({ by: 'owner', trips: 0 })
    expect(partOf(model, 'thermostat').repair).toMatchObject({ by: 'paid', trips: 1 })
    expect(model.model.powerLoss.curve).toEqual([
      { days: 0, cost: 0 },
      { days: 1, cost: 0 },
      { days: 7, cost: 600 },
    ])
    const byMonth = Array(12).fill(0)
    byMonth[6] = 1
    byMonth[4] = 0.25
    expect(model.model.powerLoss.byMonth).toEqual(byMonth)
  })
})

test('living without a set is priced as the owner says, and otherwise told among what was taken for granted', () => {
  const usual = built()
  expect(usual.assumed.join('; ')).toMatch(/stands in for a set .* fall short on 40 of 100 days/)
  const said = { doWithoutPrice: 5000, doWithoutPerYear: 300, doWithoutShortPercent: 10 }
  const { model, assumed } = built([trialEntry(5, 'terms', said, { from: '2023' })])
  expect(assumed.join('; ')).not.toMatch(/stands in for a set|fall short/)
  expect(model.giveUp).toMatchObject({ costNow: 5000, costPerYear: 300 })
  expect(model.giveUp.daysWithoutPerYear).toBeCloseTo(usual.model.giveUp.daysWithoutPerYear / 4, 9)
})

describe('formulas', () => {
  test('a mode keeps of its spread what the factors of boat and set leave', () => {
    expect(ownLogSd(0.5)).toBeCloseTo(Math.sqrt(0.25 - 0.1568), 12)
    expect(ownLogSd(0.3)).toBe(0.1)
  })

  test('a price has its typical value as median and its ends as 10 % and 90 % points', () => {
    expect(amountOf({ low: 50, typical: 100, high: 200 })).toEqual({
      median: 100,
      logSd: expect.closeTo(Math.log(4) / 2.5632, 12),
    })
    expect(amountOf({ low: 0, typical: 0, high: 0 })).toBe(0)
  })

  test('insulation read hot is judged by the harsher of the two laws', () => {
    const own = catalogueFor(catalogue, { ratingKW: 7, rpm: 1500, excitation: 'brushless-regulator' })
    const symptoms = (mohm: number, windingC: number) =>
      insulationSymptoms(
        {
          asOfDay: 100,
          parts: new Map(),
          readings: [
            {
              entry: 'r',
              day: 90,
              test: 'insulation-test',
              part: 'stator-winding',
              values: [{ name: 'winding-to-frame', value: mohm, unit: 'Mohm' }],
              conditions: [{ name: 'winding', value: windingC, unit: 'C' }],
            },
          ],
        } as unknown as SetRegister,
        own,
      ).length
    // derived: 2 megohm at 60 °C are 8 where resin softens and 4.5 where it is set; low is below 5
    expect(symptoms(2, 60)).toBe(1)
    expect(symptoms(2.3, 60)).toBe(0)
    // 18 megohm at 20 °C are 4.5 where it softens
    expect(symptoms(18, 20)).toBe(1)
  })

  test('overrun without bills is the prior, and many bills overrule it', () => {
    expect(overrunOf([])).toEqual({ median: expect.closeTo(1.15, 12), logSd: expect.closeTo(0.25, 12) })
    const many = overrunOf(Array(400).fill(1.4))
    expect(many.median).toBeCloseTo(1.4, 2)
    expect(many.logSd).toBeCloseTo(0.2, 2)
    // one bill, by hand: weights 1/0.0225 and 1/0.04
    const one = (Math.log(1.15) / 0.0225 + Math.log(1.4) / 0.04) / (1 / 0.0225 + 1 / 0.04)
    expect(overrunOf([1.4]).median).toBeCloseTo(Math.exp(one), 12)
  })

  test('doubling prices doubles what the model holds of them', () => {
    const money = (localFactor: number) => ({
      currency: 'EUR',
      currencyPerUsd: 1,
      localFactor,
      priceYear: 2024,
    })
    const priced = (factor: number) => {
      const kind = {
        ratingKW: 7,
        rpm: 1500,
        excitation: 'brushless-regulator',
        money: money(factor),
      } as const
      const { register } = built()
      return lifeModelSchema.parse(buildLifeModel(register, catalogueFor(catalogue, kind)).model)
    }
    const [once, twice] = [priced(1), priced(2)]
    const prices = (model: typeof once) => [
      model.labour.paidPerHour,
      model.labour.perTrip,
      model.fuelPerHour,
      model.set.resale!.newPrice,
      model.set.salvageAtReplacement,
      model.giveUp.costPerYear,
      model.powerLoss.curve.at(-1)!.cost,
      ...model.parts.map(({ service }) => service?.price ?? 0),
      ...[
        ...model.parts.map(({ repair }) => repair.price),
        ...model.candidates.map(({ install }) => install),
      ].map((price) => (typeof price === 'object' && 'median' in price ? price.median : 0)),
    ]
    const doubled = prices(twice)
    prices(once).forEach((price, i) => {
      expect(doubled[i]).toBeCloseTo(2 * price, 6)
    })
  })
})
