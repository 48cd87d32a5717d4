/**
 * The fault model that came with the program.
 *
 * @module
 */

import { join } from 'node:path'
import { parseFaultModel } from '../catalogue/fault-model.js'
import type { FaultModel } from '../catalogue/read-fault-model.js'
import { readCatalogueFiles } from '../store/catalogue-files.js'
import { shippedCatalogue } from './places.js'

const folder = join(import.meta.dirname, '../../catalogue/faults')
let loaded: FaultModel | undefined

/** The fault model that came with the program. */
export function shippedFaultModel(): FaultModel {
  if (loaded !== undefined) return loaded
  const parsed = parseFaultModel(readCatalogueFiles(folder), shippedCatalogue())
  if (!parsed.ok) {
    throw new TypeError(`fault model must be sound; found ${JSON.stringify(parsed.problems.slice(0, 3))}`)
  }
  loaded = parsed.model
  return loaded
}
