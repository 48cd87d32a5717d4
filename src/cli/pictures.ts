/**
 * `gensettle pictures`: the photographs of a boat as files to be handed on.
 *
 * @module
 */

import { existsSync, mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Problem } from '../catalogue/problem.js'
import { currentEntries } from '../logbook/current.js'
import type { Entry } from '../logbook/kinds.js'
import { photographsKept, photographsOf, photographType } from '../logbook/photographs.js'
import { type Made, withoutPlace } from '../store/pictures.js'
import type { ReadableStore } from '../store/store.js'
import { plainError } from './new-file.js'
import { type DataOption, withReading } from './opened.js'
import { progressOf } from './progress.js'
import { type Result, refuse } from './result.js'

export interface PicturesOptions extends DataOption {
  readonly boat?: string
  readonly job?: string
  readonly withPlaces?: boolean
}

interface Written {
  readonly file: string
  readonly entry: string
  /** Of the photograph that it was made from. */
  readonly sha256: string
}

/** Writes every photograph into a new folder: upright and made anew, unless they are asked for as they are. */
export function copyPictures(folder: string, options: PicturesOptions): Promise<Result> {
  return withReading(options, async (store) => {
    const places = options.withPlaces === true
    const boats = store.boats()
    const boat = options.boat ?? (boats.length === 1 ? boats[0] : undefined)
    const problems: Problem[] = []
    if (boat === undefined || !boats.includes(boat)) {
      const allowed =
        boats.length === 0 ? 'a boat of your own; none is entered yet' : `one of: ${boats.join(', ')}`
      problems.push({ code: 'unknown-boat', path: '--boat', found: boat ?? 'nothing', allowed })
    }
    if (existsSync(folder)) {
      const allowed = 'a folder that is not there yet'
      problems.push({ code: 'already-there', path: 'folder', found: folder, allowed })
    }
    if (boat === undefined || problems.length > 0) return refuse(...problems)
    const read = store.read(boat)
    if (!read.ok) return read
    const wanted = wantedIn(currentEntries(read.entries).entries, options.job)
    if (wanted.length === 0) {
      const allowed = 'a boat, and a job where one is named, with photographs'
      return refuse({
        code: 'none',
        path: options.job === undefined ? '--boat' : '--job',
        found: 'no photograph',
        allowed,
      })
    }
    try {
      mkdirSync(folder, { mode: 0o700 })
    } catch (error) {
      const allowed = 'a folder that can be made'
      return refuse({ code: 'cannot-write', path: 'folder', found: plainError(error), allowed })
    }
    const { written, failed } = await writeAll(store, { folder, wanted, places })
    return {
      ok: true,
      json: { type: 'gensettle/pictures', version: 1, boat, folder, places, written, problems: failed },
      text: [
        `${written.length} photographs written to ${folder}, ${places ? 'as they are, with whatever they tell of place and time' : 'upright and without place, time or camera'}.`,
        ...failed.map(({ path, found, allowed }) => `${path}: ${found}; allowed is ${allowed}`),
      ].join('\n'),
    }
  })
}

interface Wanted {
  readonly entry: Entry
  readonly sha256: string
  /** Without its ending. */
  readonly name: string
}

/** Photographs by day, kind and place in their entry: names that tell them apart, and sort as they were taken. */
function wantedIn(entries: readonly Entry[], job: string | undefined): Wanted[] {
  const of = entries.filter(({ body }) => job === undefined || ('job' in body && body.job === job))
  const kept = photographsKept(entries)
  return of.flatMap((entry) =>
    photographsOf(entry).flatMap(({ sha256 }, i) => {
      const name = `${entry.from}-${entry.kind}-${entry.id.slice(-6).toLowerCase()}-${i + 1}`
      return kept.has(sha256) ? [{ entry, sha256, name }] : []
    }),
  )
}

async function writeAll(
  store: ReadableStore,
  of: { readonly folder: string; readonly wanted: readonly Wanted[]; readonly places: boolean },
): Promise<{ readonly written: readonly Written[]; readonly failed: readonly Problem[] }> {
  const written: Written[] = []
  const failed: Problem[] = []
  const bar = progressOf('pictures')
  try {
    for (const { entry, sha256, name } of of.wanted) {
      bar.show(written.length + failed.length, of.wanted.length)
      const bytes = store.photograph(sha256)
      const made = bytes === undefined ? gone : of.places ? asItIs(bytes) : await withoutPlace(bytes)
      if (!made.ok) {
        failed.push({ ...made.problem, path: name })
        continue
      }
      const file = join(of.folder, `${name}.${endings[made.type]}`)
      writeFileSync(file, made.bytes, { flag: 'wx', mode: 0o600 })
      written.push({ file, entry: entry.id, sha256 })
    }
  } finally {
    bar.end()
  }
  return { written, failed }
}

const gone: Made = {
  ok: false,
  problem: {
    code: 'photograph-missing',
    path: 'photograph',
    found: 'nothing',
    allowed: 'its bytes, which were lost or taken away',
  },
}

function asItIs(bytes: Uint8Array): Made {
  return { ok: true, bytes, type: photographType(bytes) ?? 'image/jpeg' }
}

const endings = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
  'image/heic': 'heic',
} as const
