/**
 * The files that came with the program, and the day it is.
 *
 * @module
 */

import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Reckoner } from '../alternatives/kept-answer.js'
import { programVersion } from '../alternatives/program-version.js'
import { checkIdsOf } from '../catalogue/check-ids.js'
import { passableOf } from '../catalogue/passable.js'
import type { LogDate } from '../logbook/dates.js'
import type { KnownThings } from '../logbook/oddity.js'
import { shippedCatalogue } from './shipped.js'

export { programVersion, shippedCatalogue }

const root = join(import.meta.dirname, '../..')
/** The pages as the build made them. */
export const pagesFolder = join(root, 'dist/web')

/** The program that reckons here, and what runs it. */
export function reckoner(): Reckoner {
  const { node = '', v8 = '' } = process.versions
  return {
    program: programVersion,
    reckoning: programDigest(),
    engine: `node ${node}, v8 ${v8}, ${process.platform} ${process.arch}`,
  }
}

/** Folders of the program that a worked-out answer depends on. */
const reckoningFolders = ['units', 'catalogue', 'logbook', 'register', 'proof', 'forecast', 'alternatives']
let digest: string | undefined

/** Names this very program, to the last change in how it reckons: what another one worked out is not taken for its own. */
export function programDigest(): string {
  if (digest !== undefined) return digest
  const hash = createHash('sha256')
  for (const folder of reckoningFolders) {
    const path = join(import.meta.dirname, '..', folder)
    for (const name of readdirSync(path).sort()) {
      if (/\.[jt]s$/.test(name)) hash.update(name).update(readFileSync(join(path, name)))
    }
  }
  digest = hash.digest('hex')
  return digest
}

/** Today where this machine is, exact to the day. */
export function today(now = new Date()): LogDate {
  const two = (n: number) => String(n).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}

/** What entries are asked about against. */
export function knownThings(): KnownThings {
  const catalogue = shippedCatalogue()
  return {
    today: today(),
    parts: new Map(catalogue.parts.map((part) => [part.id, new Set(part.modes.map(({ id }) => id))])),
    checks: checkIdsOf(catalogue),
    passable: passableOf(catalogue),
  }
}
