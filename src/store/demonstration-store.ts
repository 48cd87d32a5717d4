/**
 * The demonstration boats' entries, judged already, as a store that is only read.
 *
 * @module
 */

import { existsSync, readFileSync } from 'node:fs'
import { readKept } from '../logbook/kept.js'
import type { Entry } from '../logbook/kinds.js'
import { photographPath } from './photographs.js'
import type { ReadableStore } from './read-store.js'

/** A boat of the demonstration: her entries as they are kept, in the order in which they came in. */
export interface DemonstrationBoat {
  readonly boat: string
  readonly texts: readonly string[]
}

/** What can be read of the demonstration boats; their photographs lie in `folder`. An entry is read when its boat is asked for. */
export function demonstrationStore(folder: string, boats: readonly DemonstrationBoat[]): ReadableStore {
  const textsOf = new Map(boats.map(({ boat, texts }) => [boat, texts]))
  const read = new Map<string, readonly Entry[]>()
  const entriesOf = (boat: string): readonly Entry[] => {
    const entries = read.get(boat) ?? (textsOf.get(boat) ?? []).map(readKept)
    read.set(boat, entries)
    return entries
  }
  return {
    boats: () => [...textsOf.keys()].sort(),
    read: (boat) => ({ ok: true, entries: entriesOf(boat) }),
    lines: (boat) => ({ ok: true, texts: textsOf.get(boat) ?? [] }),
    photograph: (sha256) => {
      const path = photographPath(folder, sha256)
      return existsSync(path) ? readFileSync(path) : undefined
    },
    close: () => undefined,
  }
}
