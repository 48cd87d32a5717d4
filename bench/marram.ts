/**
 * The demonstration boat Marram as the simulator gets it: what the bench is timed on.
 *
 * @module
 */

import { join } from 'node:path'
import { type Prepared, prepareAnswer } from '../src/alternatives/settle.js'
import { parseCatalogue } from '../src/catalogue/parse.js'
import { currentEntries } from '../src/logbook/current.js'
import { setsOf } from '../src/register/register.js'
import { readCatalogueFiles } from '../src/store/catalogue-files.js'
import { openDemonstration } from '../src/store/demonstration.js'

const root = join(import.meta.dirname, '..')
const boat = 'marram'
const asOf = '2026-11-25'

/** Reads the boat's log and lays out its alternatives. */
export function prepareMarram(seed: number): Prepared {
  const parsed = parseCatalogue(readCatalogueFiles(join(root, 'catalogue')))
  const demonstration = openDemonstration(join(root, 'demo'))
  if (!parsed.ok || !demonstration.ok) throw new Error('the catalogue and the demonstration must be readable')
  const read = demonstration.store.read(boat)
  if (!read.ok) throw new Error(`${boat} must be readable; found ${JSON.stringify(read)}`)
  const { entries } = currentEntries(read.entries)
  const set = setsOf(entries, asOf)[0]!
  return prepareAnswer({ entries, boat, set, asOf, catalogue: parsed.catalogue, seed })
}
