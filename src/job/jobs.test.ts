import fc from 'fast-check'
import { expect, test } from 'vitest'
import { trialEntry, trialId } from '../../test/trial-log.js'
import type { Entry } from '../logbook/kinds.js'
import type { OwedTest } from '../proof/owed.js'
import { isOpen, jobNamedOrLast, jobStates, jobsOf } from './jobs.js'

const job = 'bearing'
const at = (day: string) => ({ from: `2026-05-${day}`, until: `2026-05-${day}` })
const both = [
  { part: 'outboard-bearing', did: 'renewed' },
  { part: 'mounts', did: 'renewed' },
] as const

const quote = trialEntry(
  1,
  'quote',
  {
    job,
    what: 'Bearing and mounts',
    amount: 700,
    tax: { included: false, percent: 20 },
    firmness: 'firm',
    subjectToStripDown: false,
    excludes: [],
    covers: { parts: both },
  },
  at('01'),
)
const decision = trialEntry(2, 'decision', { choice: 'Have it done', job, alternative: 'mend' }, at('02'))
const opened = trialEntry(
  3,
  'work',
  { job, by: 'owner', why: 'found', parts: [{ part: 'outboard-bearing', did: 'opened' }] },
  at('03'),
)
const half = trialEntry(
  4,
  'work',
  { job, by: 'owner', why: 'found', parts: [{ part: 'outboard-bearing', did: 'renewed' }] },
  at('04'),
)
const rest = trialEntry(
  5,
  'work',
  { job, by: 'owner', why: 'found', parts: [{ part: 'mounts', did: 'adjusted' }] },
  at('05'),
)
const bill = (number: number, amount: number) =>
  trialEntry(number, 'bill', { job, amount, tax: { included: true, percent: 20 } }, at('06'))

const stateOf = (entries: readonly Entry[], tests?: readonly OwedTest[]) =>
  jobsOf(entries, 'main', tests)[0]!.state

test('a job goes from offered to done as its entries say', () => {
  expect(stateOf([quote])).toBe('offered')
  expect(stateOf([quote, decision])).toBe('decided')
  expect(stateOf([quote, decision, opened])).toBe('apart')
  expect(stateOf([quote, decision, opened, half])).toBe('apart')
  expect(stateOf([quote, decision, opened, half, rest])).toBe('done')
  expect(jobsOf([quote, decision, half], 'main')[0]).toMatchObject({
    name: job,
    what: 'Have it done',
    alternative: 'mend',
    from: '2026-05-01',
    until: '2026-05-04',
    parts: [
      { part: 'outboard-bearing', did: 'renewed', isDone: true },
      { part: 'mounts', did: 'renewed', isDone: false },
    ],
  })
})

test('a bill for a stage orders it; billed in full, tax and all, it is done though no work was written down', () => {
  expect(stateOf([quote, bill(6, 400)])).toBe('ordered')
  expect(stateOf([quote, bill(6, 400), bill(7, 440)])).toBe('done')
  expect(stateOf([bill(6, 400)])).toBe('done')
})

test('it is proved when its work asks for no test that is still owed', () => {
  const owed: OwedTest = {
    test: 'insulation',
    name: 'Insulation',
    stage: 'energising',
    because: [{ rule: 'r', why: 'w', entry: trialId(5), date: '2026-05-05' }],
    is: 'owed',
    results: [],
    never: false,
    waitsFor: [],
  }
  const all = [quote, half, rest]
  expect(stateOf(all, [owed])).toBe('done')
  expect(stateOf(all, [{ ...owed, is: 'passed' }])).toBe('proved')
  expect(stateOf(all, [{ ...owed, because: [{ ...owed.because[0]!, entry: trialId(9) }] }])).toBe('proved')
})

test('what the latest decision lists is what is to be done, whatever the quote covers', () => {
  const wider = trialEntry(
    8,
    'decision',
    { choice: 'The belt as well', job, parts: [...both, { part: 'drive-belt', did: 'renewed' }] },
    at('03'),
  )
  const [one] = jobsOf([quote, decision, wider], 'main')
  expect(one!.parts.map(({ part }) => part)).toEqual(['outboard-bearing', 'mounts', 'drive-belt'])
  // a later decision that lists nothing leaves the list as it was
  const later = trialEntry(9, 'decision', { choice: 'In May', job }, at('04'))
  expect(jobsOf([quote, wider, later], 'main')[0]).toMatchObject({
    what: 'In May',
    parts: [{}, {}, { part: 'drive-belt' }],
  })
})

test('a quote is declined by a decision to leave it, until there is another or something is done of it', () => {
  const left = trialEntry(10, 'decision', { choice: 'Leave it', job, alternative: 'leave' }, at('02'))
  expect(stateOf([quote, left])).toBe('declined')
  expect(isOpen(jobsOf([quote, left], 'main')[0]!)).toBe(false)
  expect(stateOf([quote, left, { ...quote, id: trialId(11), ...at('03') }])).toBe('decided')
  expect(stateOf([quote, left, opened])).toBe('apart')
})

test('the job last spoken of that is not done is the one taken; entries of another set are none of it', () => {
  const other = { ...quote, id: trialId(11), body: { ...quote.body, job: 'rewind' } }
  const afterwards = { ...decision, id: trialId(12), ...at('09'), body: { choice: 'x', job: 'rewind' } }
  const done = [quote, half, rest]
  expect(jobNamedOrLast(jobsOf([other, ...done], 'main'))?.name).toBe('rewind')
  expect(jobNamedOrLast(jobsOf(done, 'main'))?.name).toBe(job)
  expect(jobNamedOrLast(jobsOf(done, 'main'), 'nothing')).toBeUndefined()
  expect(jobsOf([...done, other, afterwards], 'main').map(({ name }) => name)).toEqual([job, 'rewind'])
  expect(jobsOf([quote], 'other')).toEqual([])
  expect(jobsOf([{ ...quote, set: null }], 'other')).toHaveLength(1)
})

test('a further entry of a job never sets it back, and the order of entries says nothing', () => {
  const all: Entry[] = [quote, decision, opened, half, rest, bill(6, 500), bill(7, 500)]
  const rank = (entries: readonly Entry[]) => jobStates.indexOf(stateOf(entries))
  fc.assert(
    fc.property(fc.shuffledSubarray(all, { minLength: 1 }), fc.constantFrom(...all), (some, more) => {
      expect(stateOf(some.toReversed())).toBe(stateOf(some))
      // A quote says what a bill is a part of, and what is left to do; the first work written down speaks in the place of
      // bills. These alone may say that less is done.
      const isFirstWork = more.kind === 'work' && !some.some(({ kind }) => kind === 'work')
      if (!some.includes(more) && more.kind !== 'quote' && !isFirstWork)
        expect(rank([...some, more])).toBeGreaterThanOrEqual(rank(some))
    }),
    { numRuns: 60 },
  )
})
