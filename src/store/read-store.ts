/**
 * The owner's logbooks opened to be read only, whichever program has the data folder meanwhile.
 *
 * @module
 */

import { existsSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import type Database from 'libsql'
import { readKept } from '../logbook/kept.js'
import type { Entry } from '../logbook/kinds.js'
import type { Problem } from '../logbook/problems.js'
import { photographPath } from './photographs.js'
import { type CheckedTexts, readTexts } from './rows.js'
import { openTablesToRead } from './tables.js'

/** What can be read of logbooks, the owner's and the demonstration boats' alike. */
export interface ReadableStore {
  /** Names of the boats, in order. */
  boats(): readonly string[]
  /** All entries of a boat, as they came in. */
  read(boat: string): ReadBoat
  /** The texts that the entries of a boat are kept as, in the order in which they came in. */
  lines(boat: string): CheckedTexts
  /** Bytes of a photograph, where they are there. */
  photograph(sha256: string): Uint8Array | undefined
  close(): void
}

export type ReadBoat =
  | { readonly ok: true; readonly entries: readonly Entry[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** The owner's own, as far as it can be read. */
export interface OwnReadableStore extends ReadableStore {
  readonly folder: string
  /** Entries of a boat as they are kept, in order of their ids. */
  texts(boat: string): readonly KeptEntry[]
}

export interface KeptEntry {
  readonly id: string
  readonly text: string
}

export type OpenedToRead =
  | { readonly ok: true; readonly store: OwnReadableStore }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * Opens what there is in a data folder to be read, without taking the folder: another program may be writing in it. A
 * folder that is not there yet holds no boats, and is not made.
 */
export function openToRead(folder: string): OpenedToRead {
  try {
    if (existsSync(folder) && !statSync(folder).isDirectory()) throw new Error('a file, not a folder')
    const path = join(folder, 'logbook.db')
    const database = existsSync(path) ? openTablesToRead(path) : undefined
    return { ok: true, store: database === undefined ? emptyStore(folder) : readableOf(folder, database) }
  } catch (error) {
    return { ok: false, problems: [cannotBeOpened(folder, error)] }
  }
}

export function cannotBeOpened(folder: string, error: unknown): Problem {
  const found = error instanceof Error ? error.message : String(error)
  const allowed = 'a folder that can be written to, with a logbook of this or an older version or none yet'
  return { code: 'cannot-be-opened', path: folder, found, allowed }
}

/** What can be read of open tables. Closing it closes them. */
export function readableOf(folder: string, database: Database.Database): OwnReadableStore {
  const all = <T>(sql: string, ...values: unknown[]) => database.prepare(sql).all(...values) as readonly T[]
  return {
    folder,
    boats: () =>
      all<{ boat: string }>('SELECT DISTINCT boat FROM entries ORDER BY boat').map(({ boat }) => boat),
    read: (boat) => {
      const checked = readTexts(database, boat)
      return checked.ok ? { ok: true, entries: checked.texts.map(readKept) } : checked
    },
    lines: (boat) => readTexts(database, boat),
    texts: (boat) => all<KeptEntry>('SELECT id, text FROM entries WHERE boat = ? ORDER BY id', boat),
    photograph: (sha256) => {
      const path = photographPath(folder, sha256)
      return existsSync(path) ? readFileSync(path) : undefined
    },
    close: () => {
      database.close()
    },
  }
}

function emptyStore(folder: string): OwnReadableStore {
  return {
    folder,
    boats: () => [],
    read: () => ({ ok: true, entries: [] }),
    lines: () => ({ ok: true, texts: [] }),
    texts: () => [],
    photograph: () => undefined,
    close: () => undefined,
  }
}
