import { expect, test } from 'vitest'
import { forms } from '../logbook/kind-forms.js'
import type { OpenQuote } from '../register/register-types.js'
import { decidedJob } from './decided-job.js'

const quote = { job: 'rewind', covers: { parts: [] } } as unknown as OpenQuote
const newSet = {
  job: 'new-set',
  covers: { parts: [], newSet: { ratingKw: 8, used: false } },
} as unknown as OpenQuote
const nothing = { openQuotes: [], ownAlternatives: [], asOf: '2026-11-25' }
const item = (part: string) => ({ part, outcome: 'renewed' as const, quality: 1, agesLess: 1 })
const mend = { id: 'mend', now: { parts: [item('seal'), item('seal')], wait: 0, intrusionChance: 0 } }
const atQuote = {
  ...mend,
  now: { ...mend.now, quote: { price: 9, overrun: { median: 1, logSd: 0 }, besides: 0 } },
}

test('putting parts right begins a job of its own, or that of its quote', () => {
  const parts = [{ part: 'seal', did: 'renewed' }]
  expect(decidedJob(mend, nothing)).toEqual({ job: 'mend-2026-11', parts })
  expect(decidedJob(mend, { ...nothing, openQuotes: [quote] })).toEqual({ job: 'mend-2026-11', parts })
  expect(decidedJob(atQuote, { ...nothing, openQuotes: [quote, newSet] })).toEqual({ job: 'rewind', parts })
  const own = { id: 'mend', entry: '', now: 'mend', job: 'other' } as const
  expect(decidedJob(atQuote, { ...nothing, openQuotes: [quote], ownAlternatives: [own] })).toMatchObject({
    job: 'other',
  })
})

test('leaving it speaks of the one open quote, and of none where there are two', () => {
  const leave = { id: 'leave', now: 'leave' } as const
  expect(decidedJob(leave, { ...nothing, openQuotes: [quote] })).toEqual({ job: 'rewind' })
  expect(decidedJob(leave, { ...nothing, openQuotes: [quote, newSet] })).toEqual({})
  expect(decidedJob({ id: 'x', now: { replaceWith: 'new-same' } }, nothing)).toEqual({ job: 'x-2026-11' })
})

test('the job has a name that a decision may have, however long that of the alternative is', () => {
  const id = `a${'b'.repeat(63)}`
  const body = { choice: 'x', ...decidedJob({ ...mend, id }, nothing) }
  expect(forms.decision.shape.body.safeParse(body).success).toBe(true)
})
