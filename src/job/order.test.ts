import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Entry } from '../logbook/kinds.js'
import { isLate, nothingOrdered, pieceStates, stateOf, type Tally, talliesOf } from './order.js'

let n = 0
function entryOf(kind: string, body: unknown, from = '2026-11-01'): Entry {
  n += 1
  return {
    ...{ version: 1, boat: 'trial', set: 'main', device: 'saloon', corrects: [] },
    noted: `2026-11-01T10:00:${String(n % 60).padStart(2, '0')}Z`,
    ...{ id: `01HZZZZZZZ${String(n).padStart(16, '0')}`, n, kind, body, from, until: from },
  } as unknown as Entry
}

type Step = 'ordered' | 'received' | 'fits' | 'misfits'
const body = (step: Step, extra: object = {}) => {
  const fits =
    step === 'fits' ? { fits: true } : step === 'misfits' ? { fits: false, differs: 'the key' } : {}
  const state = step === 'fits' || step === 'misfits' ? 'checked' : step
  return { state, lines: [{ part: 'mounts', ...fits }], ...extra }
}
const tally = (entries: readonly Entry[], job?: string) =>
  talliesOf(entries, 'main', { job, usual: () => 1 }).get('mounts') ?? nothingOrdered
const stateAfter = (...steps: Step[]) =>
  stateOf(tally(steps.map((step, i) => entryOf('order', body(step), `2026-11-${10 + i}`))), 1)

test('a piece goes from missing over ordered and received to one that fits', () => {
  expect(stateAfter()).toBe('missing')
  expect(stateAfter('ordered')).toBe('ordered')
  expect(stateAfter('ordered', 'received')).toBe('received')
  expect(stateAfter('ordered', 'received', 'fits')).toBe('fits')
})

test('one that does not fit stays so until another is ordered, comes and is checked', () => {
  expect(stateAfter('ordered', 'received', 'misfits')).toBe('does-not-fit')
  expect(stateAfter('ordered', 'received', 'misfits', 'ordered')).toBe('ordered')
  expect(stateAfter('ordered', 'received', 'misfits', 'ordered', 'received')).toBe('received')
  expect(stateAfter('ordered', 'received', 'misfits', 'ordered', 'received', 'fits')).toBe('fits')
})

test('what lay aboard and was only checked fits; what came unordered waits for its check', () => {
  expect(stateAfter('fits')).toBe('fits')
  expect(stateAfter('received')).toBe('received')
})

test('of two that are needed one is not enough, whether it is on its way, has come, or fits', () => {
  const two = (counts: Partial<Tally>) => stateOf({ ...nothingOrdered, ...counts }, 2)
  expect(two({ ordered: 2, received: 1, fits: 1 })).toBe('ordered')
  expect(two({ ordered: 1, received: 1, fits: 1 })).toBe('missing')
  expect(two({ ordered: 2, received: 2, fits: 1 })).toBe('received')
  expect(two({ ordered: 2, received: 2, fits: 2 })).toBe('fits')
})

test('orders of another job do not count, those of none do, and a renewal uses up what had come', () => {
  const other = entryOf('order', body('ordered', { job: 'other' }))
  const none = entryOf('order', body('ordered'))
  expect(tally([other], 'mine').ordered).toBe(0)
  expect(tally([none], 'mine').ordered).toBe(1)
  expect(tally([other, none]).ordered).toBe(2)
  const work = entryOf('work', { parts: [{ part: 'mounts', did: 'renewed' }] }, '2026-11-02')
  expect(tally([none, work])).toBe(nothingOrdered)
  expect(
    tally([none, entryOf('work', { parts: [{ part: 'mounts', did: 'opened' }] }, '2026-11-02')]).ordered,
  ).toBe(1)
})

test('late is what is still to come and was expected before today', () => {
  const ordered = entryOf(
    'order',
    body('ordered', { expected: '2026-11-20', supplier: 'the shop by the lock' }),
  )
  const came = entryOf('order', body('received'), '2026-11-25')
  expect(isLate(tally([ordered]), '2026-11-20')).toBe(false)
  expect(isLate(tally([ordered]), '2026-11-21')).toBe(true)
  expect(isLate(tally([ordered, came]), '2026-12-21')).toBe(false)
  expect(tally([ordered, came])).toMatchObject({ supplier: 'the shop by the lock', ordered: 1, received: 1 })
})

const steps = fc.array(fc.constantFrom<Step>('ordered', 'received', 'fits', 'misfits'), { maxLength: 8 })

test('whatever the entries, the state is one of ours and does not depend on the order in which they are handed over', () => {
  fc.assert(
    fc.property(steps, fc.integer({ min: 1, max: 3 }), fc.integer(), (taken, needed, seed) => {
      const entries = taken.map((step, i) => entryOf('order', body(step), `2026-11-${10 + i}`))
      const shuffled = [...entries].sort((a, b) => ((a.n * 7919 + seed) % 13) - ((b.n * 7919 + seed) % 13))
      const state = stateOf(tally(entries), needed)
      expect(pieceStates).toContain(state)
      expect(tally(shuffled)).toEqual(tally(entries))
      // enough good ones end it, and from any state there is a way there
      const more = Array.from({ length: needed }, (_, i) =>
        (['ordered', 'received', 'fits'] as const).map((step) =>
          entryOf('order', body(step), `2026-12-${10 + i}`),
        ),
      ).flat()
      expect(stateOf(tally([...entries, ...more]), needed)).toBe('fits')
    }),
    { numRuns: 60 },
  )
})
