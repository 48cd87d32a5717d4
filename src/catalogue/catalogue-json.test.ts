import { join } from 'node:path'
import { expect, test } from 'vitest'
import { readCatalogueFiles } from '../store/catalogue-files.js'
import { catalogueFromJson, catalogueToJson } from './catalogue-json.js'
import { parseCatalogue } from './parse.js'

test('nothing of the catalogue is lost in JSON', () => {
  const parsed = parseCatalogue(readCatalogueFiles(join(import.meta.dirname, '../../catalogue')))
  if (!parsed.ok) throw new TypeError('the catalogue must be sound')
  const { catalogue } = parsed
  const again = catalogueFromJson(JSON.parse(JSON.stringify(catalogueToJson(catalogue))))
  expect(again).toStrictEqual(catalogue)
})
