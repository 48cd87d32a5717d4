/**
 * The kits that are shipped, for tests.
 *
 * @module
 */

import { join } from 'node:path'
import type { Catalogue } from '../src/catalogue/catalogue.js'
import { parseKits, type ReadKits } from '../src/catalogue/kits.js'
import { parseCatalogue } from '../src/catalogue/parse.js'
import { readCatalogueFiles } from '../src/store/catalogue-files.js'

const folder = join(import.meta.dirname, '../catalogue')

export function shippedKitFiles(): ReadKits & { readonly catalogue: Catalogue } {
  const catalogue = parseCatalogue(readCatalogueFiles(folder))
  if (!catalogue.ok) throw new Error(JSON.stringify(catalogue.problems.slice(0, 3)))
  const read = parseKits(readCatalogueFiles(join(folder, 'kit')), catalogue.catalogue)
  if (!read.ok) throw new Error(JSON.stringify(read.problems.slice(0, 10), null, 1))
  return { ...read, catalogue: catalogue.catalogue }
}
