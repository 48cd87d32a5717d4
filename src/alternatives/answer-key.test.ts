import { expect, test } from 'vitest'
import { keyOf } from './answer-key.js'

const asked = { boat: 'petrel', set: 'main', asOf: '2026-10-20', seed: 1 }
const entries = ['A', 'B', 'C'].map((id) => ({ id }))

test('the same log asked the same is under the same key', () => {
  expect(keyOf(asked, entries)).toBe(keyOf({ ...asked }, [...entries]))
})

test('another entry, order, day, seed, set, number of years or lesson is another key', () => {
  const keys = [
    keyOf(asked, entries),
    keyOf(asked, [...entries, { id: 'D' }]),
    keyOf(asked, [{ id: 'AB' }, { id: 'C' }, { id: '' }]),
    keyOf(asked, entries.toReversed()),
    keyOf({ ...asked, asOf: '2026-10-21' }, entries),
    keyOf({ ...asked, seed: 2 }, entries),
    keyOf({ ...asked, set: 'spare' }, entries),
    keyOf({ ...asked, yearsKept: 3 }, entries),
    keyOf({ ...asked, lessons: '3' }, entries),
  ]
  expect(new Set(keys).size).toBe(keys.length)
})
