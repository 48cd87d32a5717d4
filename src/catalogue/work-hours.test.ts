import { expect, test } from 'vitest'
import { handsOnHours, openedWays, openingHours } from './work-hours.js'

const ways = [
  { id: 'panels', name: 'Panels', setUpHours: { owner: 0.5, paid: 0.25 }, includes: [] },
  { id: 'front', name: 'Front', setUpHours: { owner: 1, paid: 0.75 }, includes: ['panels'] },
  { id: 'side', name: 'Side', setUpHours: { owner: 2, paid: 1.5 }, includes: ['panels'] },
]

test('what two ways share is opened once', () => {
  expect(openingHours(ways, ['front', 'side'])).toEqual({ owner: 3.5, paid: 2.5 })
  expect(openingHours(ways, ['front', 'front', 'panels'])).toEqual({ owner: 1.5, paid: 1 })
  expect(openingHours(ways, [])).toEqual({ owner: 0, paid: 0 })
  expect(openedWays(ways, ['side']).map(({ id }) => id)).toEqual(['side', 'panels'])
})

test('hands on is what is left of a job after opening, never less than nothing', () => {
  const access = { opens: ['front'], alsoReachedFrom: [] }
  expect(handsOnHours(ways, { access, hours: { owner: 2, paid: 2 } })).toEqual({ owner: 0.5, paid: 1 })
  expect(handsOnHours(ways, { access, hours: { owner: 1, paid: 1 } })).toEqual({ owner: 0, paid: 0 })
})

test('a way that is not in the catalogue is refused and named', () => {
  expect(() => openingHours(ways, ['roof'])).toThrow('way in must be one of the catalogue; found roof')
})
