import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { parseEntry } from './entry.js'
import type { Entry } from './kinds.js'
import { orderOddities } from './oddities-order.js'

let n = 0
function entryOf(kind: string, body: unknown, from = '2026-11-01'): Entry {
  n += 1
  return {
    ...{ version: 1, boat: 'trial', set: 'main', noted: `${from}T10:00:00Z`, device: 'saloon', corrects: [] },
    ...{ id: `01HZZZZZZZ${String(n).padStart(16, '0')}`, n, kind, body, from, until: from },
  } as unknown as Entry
}

const problemsOf = (kind: string, body: unknown) => {
  const parsed = parseEntry(entryOf(kind, body))
  return parsed.ok ? [] : parsed.problems.map(({ code, path }) => `${code} ${path}`)
}

const pump = { part: 'sea-pump-body' }

test('an order without a part, or without any line, is refused and says which', () => {
  expect(problemsOf('order', { state: 'ordered', lines: [] })).toEqual(['out-of-range body.lines'])
  expect(problemsOf('order', { state: 'ordered' })).toEqual(['missing body.lines'])
  expect(problemsOf('order', { state: 'ordered', lines: [{ count: 2 }, pump] })).toEqual([
    'missing body.lines.0.part',
  ])
})

test('whether it fits is said when it is checked, never before, and what differs only where it does not', () => {
  const lines = [pump, { ...pump, fits: false }, { ...pump, fits: true, differs: 'the key' }]
  expect(problemsOf('order', { state: 'checked', lines })).toEqual([
    'missing body.lines.0.fits',
    'missing body.lines.1.differs',
    'contradiction body.lines.2.differs',
  ])
  expect(problemsOf('order', { state: 'received', lines: [{ ...pump, fits: true }] })).toEqual([
    'contradiction body.lines.0.fits',
  ])
  expect(
    problemsOf('order', { state: 'checked', lines: [{ ...pump, fits: false, differs: 'the key' }] }),
  ).toEqual([])
})

test('particulars say a number or an answer, and answer each question once', () => {
  expect(problemsOf('particulars', pump)).toEqual(['says-nothing body'])
  const answer = { question: 'turning-direction', answer: 'clockwise' }
  expect(problemsOf('particulars', { ...pump, answers: [answer, answer] })).toEqual([
    'named-twice body.answers',
  ])
  expect(problemsOf('particulars', { ...pump, answers: [answer], number: 'P-40' })).toEqual([])
})

test('what came unordered, was checked before it came, or is due before it was ordered is asked about', () => {
  const codes = (...entries: Entry[]) => orderOddities(entries).map(({ code }) => code)
  expect(codes(entryOf('order', { state: 'received', lines: [pump] }))).toEqual(['received-before-ordered'])
  expect(codes(entryOf('order', { state: 'checked', lines: [{ ...pump, fits: true }] }))).toEqual([
    'checked-before-received',
  ])
  expect(codes(entryOf('order', { state: 'ordered', lines: [pump], expected: '2026-10' }))).toEqual([
    'expected-before-ordered',
  ])
  expect(codes(entryOf('order', { state: 'ordered', lines: [pump], expected: '2026-11' }))).toEqual([])
})

test('a piece that goes through its states in turn is never asked about, whatever else is ordered beside it', () => {
  const states = ['ordered', 'received', 'checked'] as const
  fc.assert(
    fc.property(fc.array(fc.constantFrom('anode', 'drive-belt', 'mounts'), { maxLength: 12 }), (order) => {
      const reached = new Map<string, number>()
      const entries = order.map((part) => {
        const at = (reached.get(part) ?? -1) + 1
        reached.set(part, at)
        const state = states[Math.min(at, 2)]!
        return entryOf('order', { state, lines: [{ part, ...(state === 'checked' ? { fits: true } : {}) }] })
      })
      expect(orderOddities(entries)).toEqual([])
    }),
    { numRuns: 50 },
  )
})
