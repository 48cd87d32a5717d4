import { join } from 'node:path'
import { expect, test } from 'vitest'
import { parseCatalogue } from '../../catalogue/parse.js'
import { buildLifeModel } from '../../forecast/build-life-model.js'
import { parseEntry } from '../../logbook/entry.js'
import type { Entry } from '../../logbook/kinds.js'
import { registerOf } from '../../register/register.js'
import { setCatalogueOf } from '../../register/set-kind-of.js'
import { readCatalogueFiles } from '../../store/catalogue-files.js'
import { type FiveAnswers, newBoatFrom, noAnswers, usualHours } from './new-boat-drafts.js'

const answers: FiveAnswers = {
  ...noAnswers,
  name: 'Sea Petrel',
  rating: '7',
  built: '2004',
  hours: '5,240',
  letdowns: '2',
}
const at = { today: '2026-11-25', taken: ['marram'] }

function entriesOf(given: FiveAnswers): readonly Entry[] {
  const made = newBoatFrom(given, at)
  if (!made.ok) throw new Error(JSON.stringify(made.wanting))
  return made.drafts.map((draft, index) => {
    const id = `01HZZZZZZZ${String(index + 1).padStart(16, '0')}`
    const envelope = {
      version: 1,
      id,
      noted: '2026-11-25T10:00:00Z',
      device: 'saloon',
      n: index + 1,
      corrects: [],
    }
    const parsed = parseEntry({ until: draft.from, ...draft, ...envelope })
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems))
    return parsed.entry
  })
}

test('five answers are entries that can be kept, and enough for a forecast', () => {
  const parsed = parseCatalogue(readCatalogueFiles(join(import.meta.dirname, '../../../catalogue')))
  if (!parsed.ok) throw new Error('catalogue')
  const entries = entriesOf(answers)
  expect(entries.map(({ kind }) => kind)).toEqual(['boat', 'set', 'hours', 'use', 'letdowns'])
  const { catalogue } = parsed
  const register = registerOf({ entries, boat: 'sea-petrel', set: 'main', asOf: at.today, catalogue })
  const ofSet = setCatalogueOf(register, catalogue)
  expect(ofSet.problems).toEqual([])
  expect(buildLifeModel(register, ofSet.catalogue).model.parts.length).toBeGreaterThan(20)
})

test('every way of using the boat and every kind of electricity can be kept', () => {
  for (const use of ['weekends', 'season', 'year', 'charter'] as const) {
    for (const electricity of ['fifty', 'sixty', 'three'] as const) {
      expect(entriesOf({ ...answers, use, electricity, months: [7] })).toHaveLength(5)
    }
  }
})

test('what is wanting is told all at once', () => {
  const none = newBoatFrom(noAnswers, at)
  expect(none.ok ? [] : Object.keys(none.wanting).sort()).toEqual([
    'built',
    'hours',
    'letdowns',
    'name',
    'rating',
  ])
  const odd = newBoatFrom(
    { ...answers, name: 'Marram', rating: '700', built: '2032', letdowns: '1.5', months: [] },
    at,
  )
  expect(odd.ok ? [] : Object.keys(odd.wanting).sort()).toEqual([
    'built',
    'letdowns',
    'months',
    'name',
    'rating',
  ])
})

test('hours in a usual year come from hours and years', () => {
  expect(usualHours(answers, at.today)).toBe(238)
  expect(usualHours({ ...answers, hours: '' }, at.today)).toBe(50)
})
