/**
 * The kits that are shipped, for tests.
 *
 * @module
 */

import { join } from 'node:path'
import type { Catalogue } from '../src/catalogue/catalogue.js'
import { parseKits, type ReadKits } from '../src/catalogue/kits.js'
import { shippedCatalogue } from '../src/cli/shipped.js'
import { readCatalogueFiles } from '../src/store/catalogue-files.js'

const folder = join(import.meta.dirname, '../catalogue/kit')

export function shippedKitFiles(): ReadKits & { readonly catalogue: Catalogue } {
  const catalogue = shippedCatalogue()
  const read = parseKits(readCatalogueFiles(folder), catalogue)
  if (!read.ok) throw new Error(JSON.stringify(read.problems.slice(0, 10), null, 1))
  return { ...read, catalogue }
}
