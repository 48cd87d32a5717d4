/**
 * The catalogue's windings and ways of joining their leads, for tests that need nothing else of it.
 *
 * @module
 */

import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { linksSchema } from '../src/catalogue/links-schema.js'
import { partOrigins } from '../src/catalogue/provenance.js'

const file = JSON.parse(readFileSync(join(import.meta.dirname, '../catalogue/links.json'), 'utf8'))

export const links = linksSchema.parse(partOrigins(file.links, file.origins, 'links').values)
