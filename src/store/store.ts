/**
 * The owner's logbooks on disk: entries are added and read, never changed.
 *
 * @module
 */

import { randomBytes } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import type Database from 'libsql'
import { parseEntry } from '../logbook/entry.js'
import { readKept } from '../logbook/kept.js'
import { type Entry, isKind } from '../logbook/kinds.js'
import { mergeCopies } from '../logbook/merge.js'
import { photographsOf } from '../logbook/photographs.js'
import type { Problem } from '../logbook/problems.js'
import { makeFolder, renameDurably, syncFile } from './durable.js'
import { type Lock, lockFolder } from './lock.js'
import {
  dropPhotograph,
  type KeptPhotograph,
  keepPhotograph,
  photographPath,
  photographsIn,
  putPhotograph,
} from './photographs.js'
import { cannotBeOpened, type OwnReadableStore, readableOf } from './read-store.js'
import { insertRows } from './rows.js'
import { openTables } from './tables.js'

export type { ReadableStore } from './read-store.js'

/** The owner's store. */
export interface Store extends OwnReadableStore {
  /** Name under which this data folder writes its entries. */
  readonly device: string
  /** Writes all entries or none; when it returns they are on disk. Each is JSON text or a value. */
  append(entries: readonly unknown[], options?: AppendOptions): Appended
  /** The text kept under an id. */
  textOf(id: string): string | undefined
  /** The highest count that a device has given an entry of a boat; 0 before the first. */
  lastCount(boat: string, device: string): number
  keepPhotograph(bytes: Uint8Array): KeptPhotograph
  /** A folder of its own with everything in it; it can be opened as a data folder. */
  backUp(to: string): BackedUp
  /** Tells whoever starts second where this program can be reached. */
  announce(address: string): void
}

export interface AppendOptions {
  /** Photographs that entries may name though their bytes are lost. */
  readonly absent?: ReadonlySet<string>
}

export type Appended =
  | { readonly ok: true; readonly added: number; readonly alreadyHeld: number }
  | { readonly ok: false; readonly problems: readonly Problem[] }

export type BackedUp = { readonly ok: true } | { readonly ok: false; readonly problems: readonly Problem[] }

export type Opened =
  | { readonly ok: true; readonly store: Store }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Opens the store in a data folder, making both where they are new. One program at a time; to read only, `openToRead`. */
export function openStore(folder: string): Opened {
  let lock: Lock | undefined
  try {
    makeFolder(folder)
    const locked = lockFolder(folder)
    if (!locked.ok) return locked
    lock = locked.lock
    const database = openTables(join(folder, 'logbook.db'), { newDevice })
    dropLeftovers(folder)
    return { ok: true, store: storeOf({ folder, database, lock }) }
  } catch (error) {
    lock?.release()
    return { ok: false, problems: [cannotBeOpened(folder, error)] }
  }
}

/** Beginning of the name of a folder in which an import gathers what it has not yet adopted. */
export const leftoverPrefix = 'incoming-'

interface Parts {
  readonly folder: string
  readonly database: Database.Database
  readonly lock: Lock
}

function storeOf({ folder, database, lock }: Parts): Store {
  const all = <T>(sql: string, ...values: unknown[]) => database.prepare(sql).all(...values) as readonly T[]
  const one = <T>(sql: string, ...values: unknown[]) => all<T>(sql, ...values)[0]
  const { device } = one<{ device: string }>('SELECT device FROM folder') ?? { device: 'unnamed' }
  const textOf = database.prepare('SELECT text FROM entries WHERE id = ?')
  const store: Store = {
    ...readableOf(folder, database),
    device,
    textOf: (id) => (textOf.all(id) as readonly { readonly text: string }[])[0]?.text,
    lastCount: (boat, of) =>
      one<{ n: number | null }>('SELECT max(n) AS n FROM entries WHERE boat = ? AND device = ?', boat, of)
        ?.n ?? 0,
    append: (entries, options) => append(store, database, entries, options),
    keepPhotograph: (bytes) => keepPhotograph(folder, bytes),
    backUp: (to) => backUp(folder, database, to),
    announce: lock.announce,
    close: () => {
      database.close()
      lock.release()
    },
  }
  return store
}

function append(
  store: Store,
  database: Database.Database,
  incoming: readonly unknown[],
  { absent = new Set() }: AppendOptions = {},
): Appended {
  const problems: Problem[] = []
  const parsed = incoming.flatMap((input, index) => {
    const result = parseEntry(input)
    if (result.ok) return [{ ...result, id: result.entry.id }]
    const at = incoming.length === 1 ? '' : `entry ${index + 1} `
    problems.push(
      ...result.problems.map((problem) => ({ ...problem, path: `${at}${problem.path}`.trimEnd() })),
    )
    return []
  })
  const merged = mergeCopies(store.textOf, parsed)
  if (!merged.ok) problems.push(...merged.problems)
  const removed = new Set(parsed.flatMap(({ entry }) => removedBy(entry)))
  for (const { entry } of merged.ok ? merged.added : []) {
    for (const { sha256 } of photographsOf(entry)) {
      if (absent.has(sha256) || removed.has(sha256) || existsSync(photographPath(store.folder, sha256)))
        continue
      const allowed = 'a photograph that was put in the store before'
      problems.push({ code: 'photograph-missing', path: entry.id, found: sha256, allowed })
    }
  }
  if (problems.length > 0 || !merged.ok) return { ok: false, problems }

  insertRows(database, merged.added)
  for (const sha256 of removed) dropIfNowhereElse(store, database, sha256)
  return { ok: true, added: merged.added.length, alreadyHeld: merged.alreadyHeld }
}

function removedBy(entry: Entry): readonly string[] {
  return isKind(entry, 'photograph-removed') ? [entry.body.sha256] : []
}

/** Two boats may share a photograph: its bytes go when each of them that names it has removed it. */
function dropIfNowhereElse(store: Store, database: Database.Database, sha256: string): void {
  const naming = database.prepare('SELECT text FROM entries WHERE instr(text, ?) > 0').all(sha256)
  const entries = (naming as readonly { readonly text: string }[]).map(({ text }) => readKept(text))
  const removing = new Set(
    entries.filter((entry) => isKind(entry, 'photograph-removed')).map(({ boat }) => boat),
  )
  if (entries.every(({ boat }) => removing.has(boat))) dropPhotograph(store.folder, sha256)
}

function backUp(folder: string, database: Database.Database, to: string): BackedUp {
  if (existsSync(to)) {
    const allowed = 'a folder that is not there yet'
    return { ok: false, problems: [{ code: 'already-there', path: 'to', found: to, allowed }] }
  }
  const beside = `${to}.part`
  rmSync(beside, { recursive: true, force: true })
  makeFolder(beside)
  const copy = join(beside, 'logbook.db')
  database.prepare('VACUUM INTO ?').run(copy)
  syncFile(copy)
  for (const sha256 of photographsIn(folder)) {
    const bytes = readFileSync(photographPath(folder, sha256))
    putPhotograph(beside, { sha256, bytes })
  }
  renameDurably(beside, to)
  return { ok: true }
}

/** What an import had gathered when it was cut off. */
function dropLeftovers(folder: string): void {
  for (const name of readdirSync(folder)) {
    if (name.startsWith(leftoverPrefix)) rmSync(join(folder, name), { recursive: true, force: true })
  }
}

function newDevice(): string {
  return `device-${randomBytes(5).toString('hex')}`
}
