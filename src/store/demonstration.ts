/**
 * The demonstration boats: files beside the program, opened to be read and nothing else.
 *
 * They never enter the owner's store, and there is no way to write to them or to export them.
 *
 * @module
 */

import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type ReadEntry, readBoatLines } from '../logbook/boat-lines.js'
import type { Problem } from '../logbook/problems.js'
import { photographPath } from './photographs.js'
import type { ReadableStore } from './store.js'

export type OpenedDemonstration =
  | { readonly ok: true; readonly store: ReadableStore }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Opens every `*.jsonl` file of a folder as one boat each. */
export function openDemonstration(folder: string): OpenedDemonstration {
  const boats = new Map<string, readonly ReadEntry[]>()
  const problems: Problem[] = []
  for (const name of readdirSync(folder)
    .filter((file) => file.endsWith('.jsonl'))
    .sort()) {
    const read = readBoatLines(readFileSync(join(folder, name), 'utf8'))
    if (!read.ok) {
      problems.push(
        ...read.problems.map((problem) => ({ ...problem, path: `${name} ${problem.path}`.trimEnd() })),
      )
    } else if (boats.has(read.header.boat)) {
      problems.push({
        code: 'boat-twice',
        path: name,
        found: read.header.boat,
        allowed: 'one file for each boat',
      })
    } else {
      boats.set(read.header.boat, read.entries)
    }
  }
  if (problems.length > 0) return { ok: false, problems }
  return {
    ok: true,
    store: {
      boats: () => [...boats.keys()].sort(),
      read: (boat) => ({ ok: true, entries: (boats.get(boat) ?? []).map(({ entry }) => entry) }),
      lines: (boat) => ({ ok: true, texts: (boats.get(boat) ?? []).map(({ text }) => text) }),
      photograph: (sha256) => {
        const path = photographPath(folder, sha256)
        return existsSync(path) ? readFileSync(path) : undefined
      },
      close: () => undefined,
    },
  }
}
