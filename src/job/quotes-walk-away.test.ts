import { expect, test } from 'vitest'
import { shippedCatalogue } from '../../test/shipped-limits.js'
import { trialEntry, trialId } from '../../test/trial-log.js'
import { trialModel } from '../../test/trial-model.js'
import { keepAnswer } from '../alternatives/kept-answer.js'
import { reportOf } from '../alternatives/report.js'
import { simulate } from '../alternatives/simulate.js'
import { catalogueFor } from '../catalogue/scale.js'
import { posteriorOf } from '../forecast/posterior.js'
import type { Body } from '../logbook/kinds.js'
import { offersOf } from './quotes-offers.js'
import { keptWalkAway, withInHand } from './quotes-walk-away.js'

const catalogue = catalogueFor(shippedCatalogue, {
  ratingKW: 10,
  rpm: 1500,
  excitation: 'brushless-regulator',
})
const overrun = { median: 1.1, logSd: 0.2 }
const besides = { median: 90, logSd: 0.25 }
const model = trialModel(
  [
    {
      id: 'pump',
      age: { years: 6 },
      repair: { price: 400 },
      modes: [{ id: 'seal', clock: 'years', shape: 2.5, scale: 8 }],
    },
  ],
  {
    alternatives: [
      { id: 'leave', name: 'Leave it' },
      { id: 'mend', now: { parts: [{ part: 'pump' }], quote: { price: 500, overrun, besides } } },
    ],
  },
)

function kept() {
  const samples = simulate(model, posteriorOf(model, { seed: 1 }), { seed: 1, from: 0, count: 200 })
  const report = reportOf(model, samples, 1)
  const made = keepAnswer({ model, samples, report }, { seed: 1, by: { program: '0.1.0', engine: 'node' } })
  if (!made.ok) throw new Error(JSON.stringify(made.problems))
  return { answer: made.kept, walkAway: report.walkAway! }
}

const quote: Body<'quote'> = {
  job: 'pump',
  amount: 500,
  firmness: 'firm',
  subjectToStripDown: false,
  excludes: ['travel'],
  covers: { parts: [{ part: 'pump', did: 'renewed' }] },
}
const at = { set: 'main', from: '2026-11-02' }
const asked = { set: 'main', job: 'pump', asOf: '2026-11-25' }
const given = trialEntry(1, 'quote', quote, at)
const known = {
  model,
  catalogue,
  offers: offersOf({ entries: [given], ...asked, terms: {}, currency: 'GBP' }).offers,
}
const decided = (number: number, body: object) =>
  trialEntry(number, 'decision', { choice: 'mend it', job: 'pump', ...body }, at)

test('what a decision kept comes with the terms of the quote that it was reckoned with', () => {
  const { answer, walkAway } = kept()
  const { found, problems } = keptWalkAway(
    { entries: [given, decided(2, { kept: answer })], ...asked },
    known,
  )
  expect(problems).toEqual([])
  expect(found).toEqual({
    price: walkAway.price,
    low: walkAway.findingOut.low,
    high: walkAway.findingOut.high,
    overrun,
    besides,
    otherwise: 'Leave it',
    from: 'kept',
    entry: trialId(2),
  })
})

test('a figure that was entered is in the terms of the latest offer; of other jobs and days ahead nothing is taken', () => {
  const entries = [given, decided(2, { walkAwayPrice: 640 })]
  expect(keptWalkAway({ entries, ...asked }, known).found).toMatchObject({
    price: 640,
    overrun: { median: 1.02 },
    from: 'entered',
    entry: trialId(2),
  })
  expect(keptWalkAway({ entries, ...asked, job: 'elbow' }, known)).toEqual({ problems: [] })
  expect(keptWalkAway({ entries, ...asked, asOf: '2026-11-01' }, known)).toEqual({ problems: [] })
  expect(keptWalkAway({ entries: [given, decided(2, {})], ...asked }, known)).toEqual({ problems: [] })
})

test('a kept answer that cannot be read is named', () => {
  const { answer } = kept()
  const broken = decided(2, { kept: { ...answer, model: 'AAAA' } })
  const { found, problems } = keptWalkAway({ entries: [given, broken], ...asked }, known)
  expect(found).toBeUndefined()
  expect(problems.map(({ code }) => code)).toEqual(['broken-model', 'unreadable-answer'])
})

test('a job is put in hand by leaving out the quotes of other jobs, where a later one is in hand', () => {
  const other = trialEntry(3, 'quote', { ...quote, job: 'elbow' }, { ...at, from: '2026-11-10' })
  expect(withInHand([given, other], 'elbow')).toEqual([given, other])
  expect(withInHand([given, other], 'pump')).toEqual([given])
})
