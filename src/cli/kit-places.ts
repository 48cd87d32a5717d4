/**
 * The kits that came with the program.
 *
 * @module
 */

import { join } from 'node:path'
import type { Kits } from '../catalogue/kit-schema.js'
import { parseKits } from '../catalogue/kits.js'
import { readCatalogueFiles } from '../store/catalogue-files.js'
import { shippedCatalogue } from './places.js'

const folder = join(import.meta.dirname, '../../catalogue/kit')
let loaded: Kits | undefined

/** What goes with each part, and the standard sizes. */
export function shippedKits(): Kits {
  if (loaded !== undefined) return loaded
  const parsed = parseKits(readCatalogueFiles(folder), shippedCatalogue())
  if (!parsed.ok)
    throw new TypeError(`kits must be sound; found ${JSON.stringify(parsed.problems.slice(0, 3))}`)
  loaded = parsed.kits
  return loaded
}
