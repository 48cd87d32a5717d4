/**
 * What came with the program, as it was judged when the program was built.
 *
 * The judged files carry in their names the digest of what they were made from: once a file of the catalogue or of a
 * demonstration boat is changed, and before anything is built, they are not found, and all is judged anew.
 *
 * @module
 */

import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { CatalogueJson } from '../catalogue/catalogue-json.js'
import type { Kits } from '../catalogue/kit-schema.js'
import type { FaultModel } from '../catalogue/read-fault-model.js'
import type { DemonstrationBoat } from '../store/demonstration-store.js'

/** What comes with the program beside its code. */
export interface Shipped {
  readonly catalogue: CatalogueJson
  readonly faults: FaultModel
  readonly kits: Kits
  readonly demonstration: readonly DemonstrationBoat[]
}

export type Judging = { readonly [K in keyof Shipped]: () => Shipped[K] }

export interface JudgedFiles {
  /** Whether all of it was judged, as its files are now. */
  isThere(): boolean
  read<K extends keyof Shipped>(what: K): Shipped[K]
  /** Judges all of it and keeps what comes of it, in the place of what was kept before. */
  keep(judging: Judging): void
}

const root = join(import.meta.dirname, '../..')
export const catalogueFolder = join(root, 'catalogue')
export const faultsFolder = join(catalogueFolder, 'faults')
export const kitsFolder = join(catalogueFolder, 'kit')
export const demonstrationFolder = join(root, 'demo')

/** Those of this very copy of the program. */
export const judged = judgedFiles({
  folder: join(import.meta.dirname, '../judged'),
  sources: [catalogueFolder, faultsFolder, kitsFolder, demonstrationFolder],
})

/** What is kept judged in a folder, of the files in others. */
export function judgedFiles(of: {
  readonly folder: string
  readonly sources: readonly string[]
}): JudgedFiles {
  const { folder, sources } = of
  let digest: string | undefined
  const pathOf = (what: keyof Shipped): string => {
    digest ??= digestOf(sources)
    return join(folder, `${what}-${digest}.json`)
  }
  return {
    isThere: () => existsSync(folder) && existsSync(pathOf('demonstration')),
    read: <K extends keyof Shipped>(what: K) => JSON.parse(readFileSync(pathOf(what), 'utf8')) as Shipped[K],
    keep: (judging) => {
      rmSync(folder, { recursive: true, force: true })
      mkdirSync(folder, { recursive: true })
      // What is looked for is written last.
      for (const what of ['catalogue', 'faults', 'kits', 'demonstration'] as const) {
        writeFileSync(pathOf(what), JSON.stringify(judging[what]()))
      }
    },
  }
}

/** Names files as they are, by name and content. */
function digestOf(folders: readonly string[]): string {
  const hash = createHash('sha256')
  for (const folder of folders) {
    for (const name of readdirSync(folder).sort()) {
      if (/\.jsonl?$/.test(name)) hash.update(`${name}\n`).update(readFileSync(join(folder, name)))
    }
  }
  return hash.digest('hex').slice(0, 32)
}
