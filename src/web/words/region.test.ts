import { expect, test } from 'vitest'
import { inRegion } from './region.js'

test('an American boat is spoken to of ground, GFCI and gasoline; a British one of earth, RCD and petrol', () => {
  const said = 'Fault to earth: the RCD trips, the frame is earthed, shore lead out; a litre of petrol.'
  expect(inRegion(said, 'british')).toBe(said)
  expect(inRegion(said, undefined)).toBe(said)
  expect(inRegion(said, 'american')).toBe(
    'Fault to ground: the GFCI or ELCI trips, the frame is grounded, shore cord out; a liter of gasoline.',
  )
})

test('words that only hold such a term stay as they are', () => {
  const said = 'unearthed, parameter, kilometres of hearth'
  expect(inRegion(said, 'american')).toBe(said)
})
