import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { exportToFile, importFromFile } from './boat-file.js'
import { listBoats } from './boats.js'
import { importLog } from './import-log.js'
import { answerForm, answersJsonSchema } from './json-forms.js'
import { addEntry, correctEntry } from './log.js'
import { listEntries } from './log-list.js'
import type { Result } from './result.js'
import { showSet } from './set.js'
import { simulateFile } from './simulate.js'

const folder = () => mkdtempSync(join(tmpdir(), 'gensettle-'))

/** The type of an answer, as it is printed; every field must be as published. */
function typeOf(result: Result): string {
  const json = result.ok ? result.json : { type: 'gensettle/problems', version: 1, problems: result.problems }
  const printed: unknown = JSON.parse(JSON.stringify(json))
  const parsed = answerForm.safeParse(printed)
  expect(parsed.error?.issues ?? []).toEqual([])
  return (printed as { type: string }).type
}

test('what the commands print has the form that is published', async () => {
  const data = folder()
  const flags = { 'rating-kw': ['7'], built: ['2004'] }
  const added = await addEntry({ kind: 'set', bare: [], flags }, { data, boat: 'petrel', set: 'main' })
  expect(typeOf(added)).toBe('gensettle/log-add')
  const hours = await addEntry({ kind: 'hours', bare: ['5240'], flags: {} }, { data })
  const [{ id }] = (hours as unknown as { json: { entries: [{ id: string }] } }).json.entries
  const corrected = await correctEntry(id, { data, bare: [], flags: { 'meter-hours': ['5241'] } })
  expect(typeOf(corrected)).toBe('gensettle/log-correct')
  const table = join(folder(), 'log.csv')
  writeFileSync(
    table,
    'date,hours,what,tea\n2019-04-03,1200,anode renewed,milk\n2019-05-03,1210,mast painted,none\n',
  )
  expect(typeOf(await importLog(table, { data }))).toBe('gensettle/log-import')
  expect(typeOf(await listEntries({ data }))).toBe('gensettle/log-list')
  expect(typeOf(await listEntries({ data, kind: 'tea' }))).toBe('gensettle/problems')
  expect(typeOf(await listBoats({ data }))).toBe('gensettle/boats')
  expect(typeOf(await showSet({ data }))).toBe('gensettle/set')
  const file = join(folder(), 'petrel.boat')
  expect(typeOf(await exportToFile(file, { data }))).toBe('gensettle/export')
  expect(typeOf(await importFromFile(file, { data: folder() }))).toBe('gensettle/import')
})

test.each(['marram', 'quillback', 'teasel'])('the set of %s has it too', async (boat) => {
  expect(typeOf(await showSet({ data: folder(), boat, asOf: '2026-11-25' }))).toBe('gensettle/set')
})

test('so does a model that was played', async () => {
  const file = join(folder(), 'model.json')
  const parts = [{ id: 'pump', modes: [{ id: 'seal', clock: 'years', shape: 2, scale: 2 }] }]
  writeFileSync(file, JSON.stringify({ type: 'gensettle/life-model', version: 1, horizonYears: 5, parts }))
  expect(typeOf(await simulateFile(file, { histories: 50, seed: 1 }))).toBe('gensettle/simulation')
})

test('an answer of another form, or of no type that is known, is none', () => {
  expect(answerForm.safeParse({ type: 'gensettle/tea', version: 1 }).success).toBe(false)
  expect(answerForm.safeParse({ type: 'gensettle/boats', version: 1, boats: [{ boat: 3 }] }).success).toBe(
    false,
  )
})

test('the published schema is the one in force', async () => {
  await expect(`${JSON.stringify(answersJsonSchema(), null, 2)}\n`).toMatchFileSnapshot(
    '../../docs/schema/answers.schema.json',
  )
})
