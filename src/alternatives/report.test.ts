import { expect, test } from 'vitest'
import { type LifeModelInput, lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf } from '../forecast/posterior.js'
import { reportOf } from './report.js'
import { column, type Sample } from './sample.js'
import { moneyIn, sayReport } from './say.js'
import { simulate } from './simulate.js'

const histories = 4000

/** An old pump that fails often, a quote to renew it, and a new set. */
function asked(quote: number, barLeaving = false): LifeModelInput {
  return {
    type: 'gensettle/life-model',
    version: 1,
    currency: 'GBP',
    horizonYears: 8,
    realInterestPerYear: 0.02,
    setFactor: { boatLogSd: 0.28, setLogSd: 0.28 },
    candidates: [{ id: 'new', price: { median: 9000, logSd: 0.1 } }],
    parts: [
      {
        id: 'pump',
        age: { years: 9 },
        repair: { price: 2500 },
        modes: [{ id: 'wear', clock: 'years', shape: 3, scale: 7, logSd: 0.4 }],
      },
      {
        id: 'hose',
        age: { years: 5 },
        repair: { price: 600 },
        modes: [{ id: 'age', clock: 'years', shape: 3, scale: 6 }],
      },
    ],
    alternatives: [
      { id: 'leave', ...(barLeaving ? { barred: 'a winding is wet' } : {}) },
      {
        id: 'mend',
        name: 'Mend at the quote',
        now: { parts: [{ part: 'pump' }], quote: { price: quote, overrun: { median: 1.1, logSd: 0.2 } } },
      },
      { id: 'replace', name: 'Fit a new set', now: { replaceWith: 'new' } },
    ],
  }
}

function answer(input: LifeModelInput) {
  const model = lifeModelSchema.parse(input)
  const samples = simulate(model, posteriorOf(model, { seed: 2 }), { seed: 4, from: 0, count: histories })
  return { model, samples, report: reportOf(model, samples, 4) }
}

const meanOf = (sample: Sample, quantity: 'cost' | 'quoteFactor') =>
  column(sample, quantity).reduce((sum, value) => sum + value, 0) / histories

test('at the walk-away price, mending costs what the best other alternative costs', () => {
  const { price, otherwise } = answer(asked(1500)).report.walkAway!
  const at = answer(asked(price))
  const cost = (id: string) => meanOf(at.samples.find(({ alternative }) => alternative === id)!, 'cost')
  expect(cost('mend')).toBeCloseTo(cost(otherwise), 4)
})

test('the walk-away price does not depend on what the quote is', () => {
  expect(answer(asked(4000)).report.walkAway!.price).toBeCloseTo(answer(asked(500)).report.walkAway!.price, 6)
})

test('another workshop’s quote is something to walk away to, and no part of the quote in hand', () => {
  const withOther = (quote: number) => {
    const input = asked(quote)
    const other = { parts: [{ part: 'pump' }], quote: { price: 900 } }
    return answer({ ...input, alternatives: [...input.alternatives!, { id: 'other', now: other }] })
  }
  const [cheap, dear] = [withOther(1500), withOther(2600)].map(({ report }) => report.walkAway!)
  expect(dear!.price).toBeCloseTo(cheap!.price, 6)
  expect([cheap!.quote, dear!.quote]).toEqual([1500, 2600])
  expect(cheap!.otherwise).toBe('other')
  // The same job at a price that no bill goes past: one walks away above what would come to as much.
  expect(cheap!.price).toBeLessThan(900)
})

test('a cheap quote is taken, a dear one walked away from', () => {
  const { price } = answer(asked(1500)).report.walkAway!
  expect(answer(asked(price * 0.5)).report.verdict.best).toBe('mend')
  expect(answer(asked(price * 1.5)).report.verdict.best).not.toBe('mend')
})

test('the simulation’s width narrows as the root of the histories; the other does not', () => {
  const { model, samples, report } = answer(asked(1500))
  const few = samples.map((sample) => ({
    ...sample,
    columns: sample.columns.map((c) => c.subarray(0, 1000)),
  }))
  const short = reportOf(model, few, 4).walkAway!
  const long = report.walkAway!
  const width = ({ low, high }: { low: number; high: number }) => high - low
  expect(width(short.simulation) / width(long.simulation)).toBeGreaterThan(1.4)
  expect(width(short.simulation) / width(long.simulation)).toBeLessThan(2.9)
  expect(width(short.findingOut) / width(long.findingOut)).toBeGreaterThan(0.7)
  expect(width(short.findingOut) / width(long.findingOut)).toBeLessThan(1.4)
  expect(long.simulation.low).toBeLessThanOrEqual(long.price)
  expect(long.simulation.high).toBeGreaterThanOrEqual(long.price)
})

test('a barred alternative keeps its figures and is never recommended', () => {
  const free = answer(asked(9e6))
  const shut = answer(asked(9e6, true))
  expect(free.report.verdict.best).toBe('leave')
  expect(shut.report.verdict.best).toBe('replace')
  expect(meanOf(shut.samples[0]!, 'cost')).toBe(meanOf(free.samples[0]!, 'cost'))
  expect(sayReport(shut.model, shut.samples, shut.report).barred).toEqual(['leave: a winding is wet'])
})

test('the sentence names the best, the saving and the price to walk away at', () => {
  const { model, samples, report } = answer(asked(200))
  const { verdict, walkAway } = sayReport(model, samples, report)
  expect(verdict).toMatch(/^Mend at the quote\. (Clear|Leaning, not clear): it saves £[\d,]+ over 8 years/)
  expect(walkAway).toMatch(/^Walk away above £[\d,]+, and then: .*The quote of £200 stays under it/)
})

test('a verdict that rests on mending no more than so much says so', () => {
  const sayWith = (limit: object) => {
    const input = asked(200)
    const alternatives = input.alternatives!.map((one) => (one.id === 'mend' ? { ...one, limit } : one))
    const { model, samples, report } = answer({ ...input, alternatives } as LifeModelInput)
    return sayReport(model, samples, report).verdict
  }
  expect(sayWith({ knots: [90_000, 80_000, 70_000], above: { replaceWith: 'new' } })).toContain(
    'A later job above £70,000 to £90,000, by when it comes, is not mended any more: fit new.',
  )
  expect(sayWith({ knots: [90_000, 90_000, 90_000], above: 'give-up' })).toContain(
    'A later job above £90,000 is not mended any more: do without from then on.',
  )
})

test.each([
  ['GBP', 3147.2, '£3,150'],
  ['USD', -84.6, '−\u2060$85'],
  ['NOK', 123_456, '123,000 NOK'],
  ['EUR', 0.2, '€0'],
])('money in %s of %f is written %s', (currency, amount, words) => {
  expect(moneyIn(currency, amount)).toBe(words)
})
