import { expect, test } from 'vitest'
import { trialModel } from '../../test/trial-model.js'
import type { OwnSetting } from '../alternatives/own-alternatives.js'
import type { OpenQuote } from '../register/register-types.js'
import { alternativeOfJob, keepsTheSet } from './job-action.js'
import type { JobPart } from './jobs.js'

const part = (id: string, price: number) => ({
  id,
  repair: { price, hours: 1, by: 'paid' as const },
  modes: [{ id: 'm', clock: 'years' as const, shape: 2, scale: 10 }],
})
const model = trialModel([part('bearing', 200), part('mounts', 90)], {
  labour: { paidPerHour: 50 },
  alternatives: [
    { id: 'give-up', now: 'give-up' },
    { id: 'leave', now: 'leave', limit: { knots: [900, 900, 900], above: 'give-up' } },
  ],
})
const setting = (openQuotes: readonly OpenQuote[]) =>
  ({ model, openQuotes, catalogue: {} }) as unknown as OwnSetting
const asked = (parts: readonly Partial<JobPart>[]) => ({
  name: 'bearing-2026',
  parts: parts.map((one) => ({ part: 'bearing', did: 'renewed' as const, isDone: false, ...one })),
})

test('what is left to do of a job is put right now, with the limit that holds from then on', () => {
  const job = asked([{ isDone: true }, { part: 'mounts', did: 'adjusted' }, { part: 'not-of-this-set' }])
  expect(alternativeOfJob(setting([]), job)).toMatchObject({
    id: 'bearing-2026',
    now: { parts: [{ part: 'mounts', outcome: 'cleared' }] },
    limit: { knots: [900, 900, 900] },
  })
})

test('at its open quote, what the quote does not cover at the usual price beside it', () => {
  const quote = {
    job: 'bearing-2026',
    withTax: 700,
    firmness: 'firm',
    subjectToStripDown: false,
    excludes: [],
    covers: { parts: [{ part: 'bearing', did: 'renewed' }] },
  } as unknown as OpenQuote
  const { now } = alternativeOfJob(setting([quote]), asked([{}, { part: 'mounts' }]))
  // 90 for the piece and one paid hour
  expect(now).toMatchObject({ quote: { price: 700, besides: { median: 140 } } })
  expect(alternativeOfJob(setting([quote]), asked([{}])).now).toMatchObject({
    quote: { besides: { median: 0 } },
  })
})

test('a job without a part that the model has leaves the set as it is, and looking opens nothing', () => {
  expect(alternativeOfJob(setting([]), asked([{ did: 'opened' }]))).toMatchObject({ id: 'leave' })
  expect(model.alternatives.map(keepsTheSet)).toEqual([false, true])
})
