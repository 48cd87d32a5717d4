import { expect, test } from 'vitest'
import { trialEntry } from '../../../test/trial-log.js'
import { parseEntry } from '../../logbook/entry.js'
import { fieldsOf, keysOf } from './fields.js'
import { wrongOf } from './problems.js'

test('what is missing is said at its field and in words, never in names that only the file knows', () => {
  const parsed = parseEntry({ ...trialEntry(1, 'hours', { meterHours: 1 }), kind: 'work', body: {} })
  if (parsed.ok) throw new Error('work without anything must be refused')
  expect(wrongOf(parsed.problems, {}, keysOf(fieldsOf('work')))).toEqual({
    parts: 'At least one is needed.',
    by: 'Choose one.',
    why: 'Choose one.',
  })
})

test('a problem in a row stands at the field of that row', () => {
  const body = { parts: [{ part: 'impeller' }], by: 'owner', why: 'found' }
  const parsed = parseEntry({ ...trialEntry(1, 'hours', { meterHours: 1 }), kind: 'work', body })
  if (parsed.ok) throw new Error('a deed must be named')
  expect(wrongOf(parsed.problems, {}, keysOf(fieldsOf('work')))).toEqual({ 'parts.0.did': 'Choose one.' })
})
