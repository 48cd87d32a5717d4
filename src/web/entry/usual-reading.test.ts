import { expect, test } from 'vitest'
import { withoutUntouched, withUsualReading } from './usual-reading.js'

test('a test fills in what it usually gives, and nothing over what was typed', () => {
  const filled = withUsualReading({}, { test: 'insulation-test', part: 'stator-winding' })
  expect(filled).toMatchObject({ part: 'stator-winding', 'values.0.unit': 'Mohm', 'conditions.1.unit': 'V' })
  const other = withUsualReading(filled, { ...filled, test: 'oil-gauge' })
  expect(other).toMatchObject({ 'values.0.unit': 'kPa', 'conditions.0.name': 'oil' })
  expect(other['conditions.1.name']).toBeUndefined()
  const typed = { ...filled, 'values.0.value': '0.4', test: 'oil-gauge' }
  expect(withUsualReading(filled, typed)).toEqual(typed)
})

test('a condition that was filled in beforehand and given no value is none; one of the keeper’s own stays', () => {
  const filled = withUsualReading({}, { test: 'insulation-test' })
  const typed = { ...filled, 'values.0.value': '2', 'conditions.0.value': '18' }
  const own = { ...typed, 'conditions.2.name': 'damp' }
  expect(withoutUntouched(own)).toEqual({
    test: 'insulation-test',
    'values.0.name': 'winding to frame',
    'values.0.unit': 'Mohm',
    'values.0.value': '2',
    'conditions.0.name': 'winding',
    'conditions.0.unit': 'C',
    'conditions.0.value': '18',
    'conditions.2.name': 'damp',
  })
})
