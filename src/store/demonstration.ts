/**
 * The demonstration boats: files beside the program, read, judged, and opened to be read and nothing else.
 *
 * They never enter the owner's store, and there is no way to write to them or to export them.
 *
 * @module
 */

import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { readBoatLines } from '../logbook/boat-lines.js'
import type { Problem } from '../logbook/problems.js'
import { type DemonstrationBoat, demonstrationStore } from './demonstration-store.js'
import type { ReadableStore } from './read-store.js'

export type OpenedDemonstration =
  | { readonly ok: true; readonly store: ReadableStore }
  | { readonly ok: false; readonly problems: readonly Problem[] }

export type ReadDemonstration =
  | { readonly ok: true; readonly boats: readonly DemonstrationBoat[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Opens every `*.jsonl` file of a folder as one boat each. */
export function openDemonstration(folder: string): OpenedDemonstration {
  const read = readDemonstration(folder)
  return read.ok ? { ok: true, store: demonstrationStore(folder, read.boats) } : read
}

/** Reads every `*.jsonl` file of a folder as one boat each, and says everything that is wrong at once. */
export function readDemonstration(folder: string): ReadDemonstration {
  const boats: DemonstrationBoat[] = []
  const problems: Problem[] = []
  for (const name of readdirSync(folder)
    .filter((file) => file.endsWith('.jsonl'))
    .sort()) {
    const read = readBoatLines(readFileSync(join(folder, name), 'utf8'))
    if (!read.ok) {
      problems.push(
        ...read.problems.map((problem) => ({ ...problem, path: `${name} ${problem.path}`.trimEnd() })),
      )
    } else if (boats.some(({ boat }) => boat === read.header.boat)) {
      problems.push({
        code: 'boat-twice',
        path: name,
        found: read.header.boat,
        allowed: 'one file for each boat',
      })
    } else {
      boats.push({ boat: read.header.boat, texts: read.entries.map(({ text }) => text) })
    }
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, boats }
}
