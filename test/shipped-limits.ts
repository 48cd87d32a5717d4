import { join } from 'node:path'
import { parseCatalogue } from '../src/catalogue/parse.js'
import { limitsOf } from '../src/proof/limits.js'
import { readCatalogueFiles } from '../src/store/catalogue-files.js'

function shipped() {
  const parsed = parseCatalogue(readCatalogueFiles(join(import.meta.dirname, '../catalogue')))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems, null, 1))
  return parsed.catalogue
}

export const shippedCatalogue = shipped()
export const shippedLimits = limitsOf(shippedCatalogue)
