import { join } from 'node:path'
import { expect, test } from 'vitest'
import { parseCatalogue } from '../catalogue/parse.js'
import { readCatalogueFiles } from '../store/catalogue-files.js'
import { partNamesOf } from './part-names.js'

const parsed = parseCatalogue(readCatalogueFiles(join(import.meta.dirname, '../../catalogue')))
const names = new Map(
  partNamesOf(parsed.ok ? parsed.catalogue.parts : []).map((part) => [part.id, part.names]),
)

test.each([
  ['sea-pump-impeller', 'impeller'],
  ['drive-belt', 'belt'],
  ['oil-and-filter', 'oil'],
])('%s is also called %s', (part, name) => {
  expect(names.get(part)).toContain(name)
})

test('a short name that could mean two parts is taken for neither', () => {
  for (const [part, called] of names) expect(called.slice(1), part).not.toContain('pump')
  const all = [...names.values()].flatMap((called) => [...new Set(called)])
  expect(new Set(all).size).toBe(all.length)
})
