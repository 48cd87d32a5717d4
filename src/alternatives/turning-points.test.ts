import { describe, expect, test } from 'vitest'
import { type LifeModel, lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { curvedInputs, straightInputs } from './inputs.js'
import { compile } from './program.js'
import { reportOf } from './report.js'
import { reweigh } from './reweigh.js'
import { column, type Sample } from './sample.js'
import { playSpan } from './simulate.js'
import { type Asked, type InputTurns, turningPoints } from './turning-points.js'
import { twoWayMap } from './two-way-map.js'
import { worthOfYears } from './worth-of-years.js'

const pump = (id: string, scale: number) => ({
  id,
  age: { years: 6 },
  repair: { price: 400, hours: 3, trips: 1, intrusionChance: 0.02, supply: [{ chance: 1, days: 8 }] },
  service: { everyYears: 2, diligence: 0.6, renews: true, price: 60, hours: 1 },
  modes: [
    {
      id: 'worn',
      clock: 'years' as const,
      shape: 2.5,
      scale,
      logSd: 0.2,
      delay: { clock: 'years' as const, median: 0.5, logSd: 0.4 },
      checks: [{ check: 'look', detection: 0.6 }],
    },
  ],
})

const model: LifeModel = lifeModelSchema.parse({
  type: 'gensettle/life-model',
  version: 1,
  horizonYears: 8,
  realInterestPerYear: 0.02,
  setFactor: { boatLogSd: 0.2, setLogSd: 0.2 },
  use: { hoursByMonth: Array(12).fill(20) },
  checks: [{ id: 'look', everyHours: 100, diligence: 0.5 }],
  labour: { paidPerHour: 60, ownPerHour: 15, perTrip: 80 },
  powerLoss: {
    curve: [
      { days: 0, cost: 0 },
      { days: 10, cost: 900 },
    ],
  },
  fuelPerHour: 3,
  giveUp: { costNow: 800, costPerYear: 1100 },
  candidates: [{ id: 'new', price: { median: 6500, logSd: 0.1 }, install: 500, leadDays: 20 }],
  parts: [pump('pump', 4), pump('riser', 5), pump('belt', 3)],
  alternatives: [
    { id: 'leave', now: 'leave' },
    {
      id: 'mend',
      now: {
        parts: [{ part: 'pump' }, { part: 'riser' }],
        quote: { price: 600, overrun: { median: 1.1, logSd: 0.1 } },
      },
    },
    { id: 'replace', now: { replaceWith: 'new' } },
    { id: 'give-up', now: 'give-up' },
  ],
})
const posterior = posteriorOf(model, { seed: 2 })
const seed = 6
const samplesOf = (of: LifeModel, count: number, from = 0): Sample[] =>
  playSpan(compile(of, posterior), { seed, from, count })
const samples = samplesOf(model, 6_000)
const asked: Asked = {
  model,
  samples,
  seed,
  play: async (of, span) => playSpan(compile(of, posterior), span),
}

const meanCost = (list: readonly Sample[], id: string): number => {
  const costs = column(list.find(({ alternative }) => alternative === id)!, 'cost')
  return costs.reduce((sum, cost) => sum + cost, 0) / costs.length
}

test('every input that is tried stays within what a life model may hold, at both its ends', () => {
  for (const input of curvedInputs(model)) {
    expect(input.low).toBeLessThan(input.high)
    for (const value of [input.low, input.now, input.high]) {
      expect(lifeModelSchema.safeParse(input.with(model, value)).success, `${input.id} at ${value}`).toBe(
        true,
      )
    }
  }
})

test('an input at its value now changes nothing', () => {
  const base = samplesOf(model, 200)
  for (const input of curvedInputs(model)) {
    const again = samplesOf(input.with(model, input.now), 200)
    again.forEach((sample, a) => {
      column(sample, 'cost').forEach((cost, i) => {
        expect(cost, input.id).toBeCloseTo(column(base[a]!, 'cost')[i]!, 6)
      })
    })
  }
})

const turning = (await turningPoints(asked))!

describe('what would change the answer', () => {
  const of = (id: InputTurns['id']) => turning.inputs.find((input) => input.id === id)!

  test('a quote is overtaken at the price to walk away from', () => {
    const report = reportOf(model, samples, seed)
    expect(turning.best).toBe('mend')
    expect(of('quote').above!.at).toBeCloseTo(report.walkAway!.price, 6)
    expect(of('quote').above!.to).toBe(report.walkAway!.otherwise)
  })

  test('at a straight input’s turn the two cost the same, weighed by itself', () => {
    const { below, above } = of('quote')
    for (const turn of [below, above]) {
      if (turn === undefined) continue
      const moved = reweigh(model, samples, { quote: turn.at }).samples
      expect(meanCost(moved, turn.to)).toBeCloseTo(meanCost(moved, 'mend'), 6)
    }
    const price = of('doing-without').below!
    const cheaper = {
      ...model,
      giveUp: { costNow: 800 * price.at, costPerYear: 1100 * price.at, daysWithoutPerYear: 0 },
    }
    const moved = samplesOf(cheaper, 6_000)
    expect(meanCost(moved, price.to)).toBeCloseTo(meanCost(moved, 'mend'), 3)
  })

  test('at the turn of an input that must be played the two cost the same, on other histories', () => {
    const turned = turning.inputs.filter(
      ({ id, below, above }) => curvedInputs(model).some((one) => one.id === id) && (below ?? above),
    )
    expect(turned.length).toBeGreaterThan(0)
    for (const { id, below, above } of turned) {
      const input = curvedInputs(model).find((one) => one.id === id)!
      for (const turn of [below, above]) {
        if (turn === undefined) continue
        const fresh = samplesOf(input.with(model, turn.at), 12_000, 50_000)
        const [own, other] = ['mend', turn.to].map((name) =>
          column(fresh.find(({ alternative }) => alternative === name)!, 'cost'),
        )
        const gaps = own!.map((cost, i) => cost - other![i]!)
        const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length
        const sd = Math.sqrt(gaps.reduce((sum, gap) => sum + (gap - mean) ** 2, 0) / gaps.length)
        // The turn was sought with 500 histories, hung on the 6,000 of the base.
        expect(Math.abs(mean), `${id} at ${turn.at}`).toBeLessThan(4 * sd * Math.sqrt(1 / 12_000 + 1 / 500))
      }
    }
  })

  test('where an input overtakes nothing, the best is ahead at both ends; where it does, it is behind at that end', () => {
    for (const { id, lead, below, above } of turning.inputs) {
      expect(lead.low.value < 0, id).toBe(below !== undefined)
      expect(lead.high.value < 0, id).toBe(above !== undefined)
    }
  })
})

test('a barred alternative that would be best is named, with what it would save', async () => {
  const barred = {
    ...model,
    alternatives: model.alternatives.map((one) =>
      one.id === 'mend' ? { ...one, barred: 'a stop line' } : one,
    ),
  }
  const without = (await turningPoints({ ...asked, model: barred }))!
  expect(without.barred.map(({ id }) => id)).toEqual(['mend'])
  expect(without.barred[0]!.saving).toBeCloseTo(
    meanCost(samples, without.best) - meanCost(samples, 'mend'),
    9,
  )
})

describe('what it would be worth to know the years', () => {
  const spanned = { ...model, horizonMayBe: { low: 3, high: 16 } }

  test('nothing is said where no span is given, and nothing is worth where one is best at all of them', async () => {
    expect(await worthOfYears(asked)).toBeUndefined()
    const free = { ...spanned, giveUp: { costNow: 1, costPerYear: 1, daysWithoutPerYear: 0 } }
    const never = await worthOfYears({ ...asked, model: free, samples: samplesOf(free, 2_000) })
    expect(never).toMatchObject({ worth: 0, error: 0, pays: false })
  })

  test('it agrees with the three played in full', async () => {
    // Doing without is dear now and cheap a year: best for many years, not for few.
    const hinged = { ...spanned, giveUp: { costNow: 2500, costPerYear: 750, daysWithoutPerYear: 0 } }
    const worth = (await worthOfYears({
      ...asked,
      model: hinged,
      samples: samplesOf(hinged, 6_000),
      histories: 3_000,
    }))!
    const points = [3, 8, 16].map((horizonYears) =>
      samplesOf({ ...hinged, horizonYears }, 12_000, 90_000).map(
        ({ columns: [cost] }) => cost!.reduce((sum, one) => sum + one, 0) / cost!.length,
      ),
    )
    const weighed = points[0]!.map(
      (_, a) => 0.3 * points[0]![a]! + 0.4 * points[1]![a]! + 0.3 * points[2]![a]!,
    )
    const knowing =
      0.3 * Math.min(...points[0]!) + 0.4 * Math.min(...points[1]!) + 0.3 * Math.min(...points[2]!)
    const expected = Math.min(...weighed) - knowing
    expect(expected).toBeGreaterThan(0)
    expect(Math.abs(worth.worth - expected)).toBeLessThan(4 * worth.error + 25)
  })
})

describe('two inputs at once', () => {
  const straight = (id: string) => straightInputs(model).find((one) => one.id === id)!
  const quote = straight('quote')

  test('a straight map says at each point what weighing by itself says', async () => {
    const map = (await twoWayMap(asked, { across: quote, down: straight('day-without-power') }))!
    for (const { down, first, changes } of map.rows) {
      for (const across of [quote.low + 1, quote.now, quote.high - 1]) {
        const moved = reweigh(model, samples, { quote: across, powerFactor: down }).samples
        const means = moved.map(({ alternative }) => ({ alternative, mean: meanCost(moved, alternative) }))
        const least = means.reduce((best, one) => (one.mean < best.mean ? one : best))
        const told = changes.filter(({ at }) => at <= across).at(-1)?.to ?? first
        expect(told, `${across} and ${down}`).toBe(least.alternative)
      }
    }
  })

  test('a map of the years kept holds the walk-away price of each number of years', async () => {
    const years = curvedInputs(model).find(({ id }) => id === 'years-kept')!
    const map = (await twoWayMap(asked, { across: quote, down: years }))!
    expect(map.rows.map(({ down }) => down)).toContain(8)
    for (const { down, changes } of map.rows) {
      const leaving = changes.find((_, i) => (changes[i - 1]?.to ?? 'mend') === 'mend')
      if (leaving === undefined) continue
      const report = reportOf(years.with(model, down), samplesOf(years.with(model, down), 6_000), seed)
      const { price, simulation } = report.walkAway!
      expect(Math.abs(leaving.at - price)).toBeLessThan(2 * (simulation.high - simulation.low) + 40)
    }
  })
})
