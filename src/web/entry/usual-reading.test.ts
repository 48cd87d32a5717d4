import { expect, test } from 'vitest'
import { withUsualReading } from './usual-reading.js'

test('a test fills in what it usually gives, and nothing over what was typed', () => {
  const filled = withUsualReading({}, { test: 'insulation-test', part: 'stator-winding' })
  expect(filled).toMatchObject({ part: 'stator-winding', 'values.0.unit': 'Mohm', 'conditions.1.unit': 'V' })
  const other = withUsualReading(filled, { ...filled, test: 'oil-gauge' })
  expect(other).toMatchObject({ 'values.0.unit': 'kPa', 'conditions.0.name': 'oil' })
  expect(other['conditions.1.name']).toBeUndefined()
  const typed = { ...filled, 'values.0.value': '0.4', test: 'oil-gauge' }
  expect(withUsualReading(filled, typed)).toEqual(typed)
})
