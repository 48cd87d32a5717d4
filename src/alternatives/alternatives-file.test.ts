import { expect, test } from 'vitest'
import { lifeModelSchema } from '../forecast/life-model.js'
import { alternativesFile, alternativesJsonSchema, readAlternativesFile } from './alternatives-file.js'

const model = lifeModelSchema.parse({
  type: 'gensettle/life-model',
  version: 1,
  horizonYears: 8,
  parts: [{ id: 'elbow', modes: [{ id: 'leak', clock: 'years', shape: 2, scale: 10 }] }],
  candidates: [{ id: 'new-same', price: 9000 }],
  alternatives: [
    { id: 'leave', limit: { knots: [900, 500, 100], above: { replaceWith: 'new-same' } }, barred: 'wet' },
    { id: 'mend', now: { parts: [{ part: 'elbow' }], price: { median: 300, logSd: 0.2 } } },
  ],
})
const of = { boat: 'trial', set: 'main', asOf: '2024-05-01' }

test('what was written is read back', () => {
  const text = JSON.stringify(alternativesFile(model, of))
  expect(readAlternativesFile(JSON.parse(text), model)).toEqual({
    ok: true,
    alternatives: model.alternatives,
  })
})

test('what has a usual value may be left out', () => {
  const file = { type: 'gensettle/alternatives-list', version: 1, alternatives: [{ id: 'wait' }] }
  expect(readAlternativesFile(file, model)).toEqual({
    ok: true,
    alternatives: [{ id: 'wait', now: 'leave' }],
  })
})

test('everything that is wrong is told at once', () => {
  const file = {
    type: 'list',
    version: 1,
    colour: 'red',
    alternatives: [
      { id: 'a', now: { parts: [{ part: 'mast' }] } },
      { id: 'a', now: { replaceWith: 'none' } },
      { id: 'b', now: 'wait' },
    ],
  }
  const read = readAlternativesFile(file, model)
  const faults = read.ok ? [] : read.problems.map(({ path }) => path)
  expect(faults.slice(0, 2).sort()).toEqual(['colour', 'type'])
  expect(faults.some((path) => path.includes('parts') && path.startsWith('alternatives'))).toBe(true)
  expect(faults.some((path) => path.includes('replaceWith'))).toBe(true)
  expect(faults.some((path) => path.includes('b') && path.includes('now'))).toBe(true)
})

test.each([
  [null],
  [[]],
  ['x'],
  [{}],
  [{ type: 'gensettle/alternatives-list', version: 1, alternatives: [] }],
])('%j is no list of alternatives', (value) => {
  const read = readAlternativesFile(value, model)
  expect(read.ok ? 0 : read.problems.length).toBeGreaterThan(0)
})

test('the published schema is the one in force', async () => {
  await expect(`${JSON.stringify(alternativesJsonSchema(), null, 2)}\n`).toMatchFileSnapshot(
    '../../docs/schema/alternatives.schema.json',
  )
})
