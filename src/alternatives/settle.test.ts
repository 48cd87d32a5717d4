import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { parseCatalogue } from '../catalogue/parse.js'
import { readBoatLines } from '../logbook/boat-lines.js'
import { currentEntries } from '../logbook/current.js'
import { readCatalogueFiles } from '../store/catalogue-files.js'
import type { Play } from './policy.js'
import { compile } from './program.js'
import { prepareAnswer, prepareRoughly, readSet, withAlternativesOf, withFirstLimitBy } from './settle.js'
import { playSpan } from './simulate.js'

const root = join(import.meta.dirname, '../..')
const seed = 1

function questionOf(boat: string, set: string) {
  const parsed = parseCatalogue(readCatalogueFiles(join(root, 'catalogue')))
  const lines = readBoatLines(readFileSync(join(root, 'demo', `${boat}.jsonl`), 'utf8'))
  if (!parsed.ok || !lines.ok) throw new Error('the catalogue and the demonstration must be readable')
  const { entries } = currentEntries(lines.entries.map(({ entry }) => entry))
  return { entries, boat, set, asOf: lines.header.date, catalogue: parsed.catalogue, seed }
}

const meanLnKappa = (of: { readonly kappaLog: Float64Array; readonly kappaWeight: Float64Array }) =>
  of.kappaLog.reduce((sum, log, n) => sum + log * of.kappaWeight[n]!, 0)

test('first figures are of the same set, without a used one and without limits; the rest follows from what was read', async () => {
  const question = questionOf('quillback', 'port')
  const read = readSet(question)
  const rough = prepareRoughly(read, seed)
  const full = prepareAnswer(question)

  const usedIds = full.model.candidates.filter(({ used }) => used !== undefined).map(({ id }) => id)
  const without = full.model.alternatives.filter(
    ({ now }) => !(typeof now === 'object' && 'replaceWith' in now && usedIds.includes(now.replaceWith)),
  )
  expect(without.length).toBeLessThan(full.model.alternatives.length)
  expect(rough.model.alternatives.map(({ id }) => id)).toEqual(without.map(({ id }) => id))
  expect(rough.model.alternatives.every(({ limit }) => limit === undefined)).toBe(true)
  expect(rough.register).toEqual(full.register)
  // 512 lives of a part, not 2,048, and what the record says of κ is the less sure: practice.
  expect(Math.abs(meanLnKappa(rough.posterior) - meanLnKappa(full.posterior))).toBeLessThan(0.2)

  const { posterior, used } = full
  const play: Play = async (alternatives, which) =>
    playSpan({ ...compile(full.model, posterior, used), alternatives }, which)
  const prepared = withAlternativesOf(read, { posterior, used })
  expect((await withFirstLimitBy(prepared, { seed, play })).model).toEqual(full.model)
})
