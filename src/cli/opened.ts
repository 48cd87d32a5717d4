/**
 * The store opened for the length of one command, and the boat and set that a command is about.
 *
 * @module
 */

import type { Memory } from '../alternatives/memory.js'
import type { Problem } from '../catalogue/problem.js'
import { currentEntries } from '../logbook/current.js'
import type { Entry } from '../logbook/kinds.js'
import { computedIn, keyOf } from '../store/computed.js'
import { dataFolder } from '../store/data-folder.js'
import { type KeptFigures, keepFigures, memoryIn } from '../store/posterior-memory.js'
import { type OwnReadableStore, openToRead, type ReadableStore } from '../store/read-store.js'
import type { Store } from '../store/store.js'
import { programDigest } from './places.js'
import { type Result, refuse } from './result.js'
import { shippedDemonstration } from './shipped.js'

export interface DataOption {
  readonly data?: string
}

/** Opens the owner's store to be read, whoever else has it, and closes it however `work` ends. */
export async function withReading(
  { data }: DataOption,
  work: (store: OwnReadableStore) => Result | Promise<Result>,
): Promise<Result> {
  const opened = openToRead(dataFolder(data))
  if (!opened.ok) return opened
  try {
    return await work(opened.store)
  } finally {
    opened.store.close()
  }
}

/** Takes the owner's store for writing, hands it to `work`, and closes it however that ends. */
export async function withStore(
  { data }: DataOption,
  work: (store: Store) => Result | Promise<Result>,
): Promise<Result> {
  // What judges and writes is not loaded to read.
  const { openStore } = await import('../store/store.js')
  const opened = openStore(dataFolder(data))
  if (!opened.ok) return opened
  try {
    return await work(opened.store)
  } finally {
    opened.store.close()
  }
}

/** The memory of what was worked out, in a data folder. */
export function memoryOf(folder: string): Memory {
  return memoryIn(computedIn(folder), programDigest())
}

/** Keeps figures of answers in a data folder, for the pages. */
export function figuresKeptIn(folder: string): (kept: KeptFigures) => void {
  const computed = computedIn(folder)
  return (kept) => keepFigures(computed, programDigest(), kept)
}

/** The bytes of what the memory of a data folder holds, by the digest of what it rests on. */
export function computedOf(folder: string): (digest: string) => Uint8Array | undefined {
  const computed = computedIn(folder)
  return (digest) => computed.read(keyOf(digest, programDigest()))
}

/** A boat that can be read: whose store she is in. */
export interface NamedBoat {
  readonly name: string
  readonly demonstration: boolean
  readonly store: ReadableStore
}

/** The owner's boats, then those that came with the program. */
export function allBoats(own: ReadableStore): readonly NamedBoat[] {
  return [...boatsIn(own, false), ...boatsIn(shippedDemonstration(), true)]
}

/** The boats of a store. */
export function boatsIn(store: ReadableStore, demonstration: boolean): readonly NamedBoat[] {
  return store.boats().map((name) => ({ name, demonstration, store }))
}

type Found<T> = ({ readonly ok: true } & T) | { readonly ok: false; readonly problems: readonly Problem[] }

/** The boat named with --boat; without it the owner's only one. */
export function chosenBoat(
  boats: readonly NamedBoat[],
  asked: string | undefined,
): Found<{ readonly boat: NamedBoat }> {
  const own = boats.filter(({ demonstration }) => !demonstration)
  const names = boats.map(({ name }) => name)
  const named = boats.find(({ name }) => name === asked)
  if (named !== undefined) return { ok: true, boat: named }
  if (asked === undefined && own.length === 1) return { ok: true, boat: own[0]! }
  const allowed =
    names.length === 0
      ? 'a boat; none is entered yet: begin with "gensettle log add"'
      : `one of: ${names.join(', ')}`
  return refuse({
    code: asked === undefined ? 'missing' : 'unknown-boat',
    path: '--boat',
    found: asked ?? 'nothing',
    allowed,
  })
}

/** The set named with --set; without it the boat's only one that is not gone. */
export function chosenSet(
  sets: readonly string[],
  asked: string | undefined,
): Found<{ readonly set: string }> {
  if (asked !== undefined && sets.includes(asked)) return { ok: true, set: asked }
  if (asked === undefined && sets.length === 1) return { ok: true, set: sets[0]! }
  const allowed =
    sets.length === 0
      ? 'a set; none is entered yet: begin with "gensettle log add set"'
      : `one of: ${sets.join(', ')}`
  return refuse({
    code: asked === undefined ? 'missing' : 'unknown-set',
    path: '--set',
    found: asked ?? 'nothing',
    allowed,
  })
}

/** The entries of a boat in their current form, with what the log's corrections leave open. */
export function readCurrent(
  boat: NamedBoat,
): Found<ReturnType<typeof currentEntries> & { all: readonly Entry[] }> {
  const read = boat.store.read(boat.name)
  if (!read.ok) return read
  return { ok: true, ...currentEntries(read.entries), all: read.entries }
}
