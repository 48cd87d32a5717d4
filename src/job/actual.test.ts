import { expect, test } from 'vitest'
import { shippedCatalogue as catalogue } from '../../test/shipped-limits.js'
import { trialEntry } from '../../test/trial-log.js'
import type { Entry } from '../logbook/kinds.js'
import { registerOf } from '../register/register.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { excessesOf, jobsTaken, learnedOverrunOf } from './actual.js'
import { estimateOf } from './estimate.js'
import { jobsOf } from './jobs.js'

const of = { boat: 'trial', set: 'main', asOf: '2026-11-25', catalogue }
const at = (day: string) => ({ from: `2026-05-${day}`, until: `2026-05-${day}` })
const known = [
  trialEntry(1, 'boat', { name: 'Trial', currency: 'EUR' }),
  trialEntry(2, 'set', { ratingKw: 10, volts: [230], hertz: 50, rpm: 1500, built: '2010' }),
  trialEntry(3, 'terms', { paidPerHour: 80, ownPerHour: 10, travelPerTrip: 60, ownerDoes: ['minor'] }),
]
const parts = [{ part: 'stator-winding', did: 'renewed' }] as const
const quote = trialEntry(
  4,
  'quote',
  {
    job: 'rewind',
    amount: 2000,
    tax: { included: false, percent: 25 },
    firmness: 'firm',
    subjectToStripDown: false,
    excludes: [],
    covers: { parts },
  },
  at('01'),
)
const work = trialEntry(
  5,
  'work',
  { job: 'rewind', by: 'both', why: 'failed', parts, workHours: { owner: 4, paid: 9 } },
  at('10'),
)
const bill = (number: number, amount: number) =>
  trialEntry(number, 'bill', { job: 'rewind', amount, tax: { included: true, percent: 25 } }, at('12'))
const belt = trialEntry(
  8,
  'work',
  {
    job: 'belt',
    by: 'owner',
    why: 'found',
    cost: 90,
    workHours: { owner: 3 },
    parts: [{ part: 'drive-belt', did: 'renewed' }],
  },
  at('11'),
)

function takenFrom(more: readonly Entry[]) {
  const entries = [...known, ...more]
  const register = registerOf({ ...of, entries })
  const forSet = setCatalogueOf(register, catalogue).catalogue
  return { taken: jobsTaken(jobsOf(entries, 'main'), { register, catalogue: forSet }), register, forSet }
}

test('a quoted job: its quote with tax against all of its bills, and hours used against usual ones', () => {
  const { taken, register, forSet } = takenFrom([quote, work, bill(6, 1500), bill(7, 1500)])
  const { hours } = estimateOf(parts, { register, catalogue: forSet })
  // 2,000 and a quarter of tax; a firm quote usually comes to 1.02 times itself
  expect(taken).toEqual([
    {
      job: 'rewind',
      kind: 'alternator',
      hours: { expected: hours.owner + hours.paid, used: 13 },
      money: { expected: 2500, from: 'quote', quote: quote.id, usual: expect.closeTo(2550, 9), came: 3000 },
    },
  ])
  expect(excessesOf(taken)).toEqual([{ kind: 'alternator', log: expect.closeTo(Math.log(3000 / 2550), 12) }])
})

test('a job without a quote: usual prices against what it cost, own hours at their price on both sides', () => {
  const { taken, register, forSet } = takenFrom([belt])
  const { money } = estimateOf([{ part: 'drive-belt', did: 'renewed' }], { register, catalogue: forSet })
  expect(taken).toMatchObject([
    {
      job: 'belt',
      kind: 'drive',
      money: { expected: money, from: 'catalogue', usual: money * 1.15, came: 120 },
    },
  ])
})

test('a job that is not done takes nothing yet, and one of which no money was written down teaches nothing', () => {
  expect(takenFrom([quote, bill(6, 1500)]).taken).toEqual([])
  const { taken } = takenFrom([work])
  expect(taken).toMatchObject([{ job: 'rewind', hours: { used: 13 } }])
  expect(excessesOf(taken)).toEqual([])
})

test('jobs are heard only where the owner asks for it, and only as of the day', () => {
  const entries = [...known, quote, work, bill(6, 3000)]
  const asks = trialEntry(9, 'terms', { learnFromJobs: true }, at('20'))
  const takesBack = trialEntry(10, 'terms', { learnFromJobs: false }, at('25'))
  expect(learnedOverrunOf({ ...of, entries })).toBeUndefined()
  expect(learnedOverrunOf({ ...of, entries: [...entries, asks, takesBack] })).toBeUndefined()
  const learned = learnedOverrunOf({ ...of, entries: [...entries, asks] })!
  expect(learned.jobs).toBe(1)
  expect(learned.further.median).toBeGreaterThan(1.15)
  expect(learned.quoteFactor.bySystem.alternator).toBeGreaterThan(learned.quoteFactor.other)
  expect(learnedOverrunOf({ ...of, entries: [...entries, asks], asOf: '2026-05-15' })).toBeUndefined()
})
