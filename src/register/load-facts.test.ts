import { expect, test } from 'vitest'
import { trialEntry } from '../../test/trial-log.js'
import { loadFactsOf } from './load-facts.js'

const of = { boat: 'trial', set: 'main', asOf: '2024-06-01' }

test('a load is as the latest entries give each of its fields, until it is taken away', () => {
  const entries = [
    trialEntry(1, 'load', { id: 'oven', is: 'oven', hours: { cooking: 1 } }, { from: '2023-01-01' }),
    trialEntry(2, 'load', { id: 'oven', runW: 2300, hours: { evening: 0.5 } }, { from: '2023-02-01' }),
    trialEntry(3, 'load', { id: 'kettle', is: 'kettle' }, { from: '2023-02-01' }),
    trialEntry(4, 'load', { id: 'kettle', removed: true }, { from: '2023-03-01' }),
    trialEntry(5, 'load', { id: 'later', is: 'iron' }, { from: '2025-03-01' }),
  ]
  expect(loadFactsOf(entries, of).loads).toEqual([
    { id: 'oven', is: 'oven', runW: 2300, hours: { cooking: 1, evening: 0.5 }, entry: entries[1]!.id },
  ])
  expect(loadFactsOf(entries.slice(0, 3), of).loads.map(({ id }) => id)).toEqual(['oven', 'kettle'])
})

test('when it runs and where it stands are told piece by piece, for each set apart', () => {
  const entries = [
    trialEntry(1, 'habits', { setHours: { day: 1, evening: 2 } }, { from: '2023-01-01' }),
    trialEntry(2, 'habits', { setHours: { evening: 3 }, days: { warm: 90 } }, { from: '2023-02-01' }),
    trialEntry(3, 'space', { engineSpaceC: 50 }, { set: 'other' }),
    trialEntry(4, 'space', { wayOut: [{ widthMm: 600, heightMm: 700 }] }),
    trialEntry(5, 'candidate', { id: 'smaller', ratingKw: 5 }),
    trialEntry(6, 'house-rule', { id: 'baking', loads: ['oven', 'heater'] }),
  ]
  const facts = loadFactsOf(entries, of)
  expect(facts.habits).toEqual({ setHours: { day: 1, evening: 3 }, days: { warm: 90 } })
  expect(facts.space).toEqual({ wayOut: [{ widthMm: 600, heightMm: 700 }] })
  expect(facts.candidates.map(({ id }) => id)).toEqual(['smaller'])
  expect(facts.rules[0]!.loads).toEqual(['oven', 'heater'])
})
