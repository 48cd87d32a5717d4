/**
 * Writing a boat file.
 *
 * @module
 */

import { createHash } from 'node:crypto'
import { createReadStream, existsSync, statSync } from 'node:fs'
import { type FileHandle, open, rm } from 'node:fs/promises'
import { Zip, ZipDeflate, ZipPassThrough } from 'fflate'
import { readKept } from '../logbook/kept.js'
import { photographsKept, photographsOf } from '../logbook/photographs.js'
import type { Problem } from '../logbook/problems.js'
import {
  type BoatFileHeader,
  entriesName,
  headerName,
  type LongWork,
  limits,
  photographName,
} from './boat-file-form.js'
import { renameDurably } from './durable.js'
import { photographPath } from './photographs.js'
import { mayTellPlace } from './pictures.js'
import type { OwnReadableStore } from './read-store.js'

export type Exported =
  | {
      readonly ok: true
      readonly entries: number
      readonly photographs: number
      readonly absent: number
      /** Of the photographs in the file, those that tell, or may tell, where they were taken. */
      readonly tellPlace: number
      /** Left out because they would have. */
      readonly leftOut: number
    }
  | { readonly ok: false; readonly problems: readonly Problem[] }

export interface ExportOptions extends LongWork {
  /** For others: photographs that tell where they were taken, or may, stay at home. */
  readonly withoutPlaces?: boolean
}

/**
 * Writes everything of a boat into one file. The same boat gives the same bytes.
 *
 * Photographs go in as they are, byte for byte, with whatever their files tell of place and time: the file is the owner's own
 * copy, and a photograph is known by the digest of its bytes. So one that is made anew is another photograph; a file for
 * others leaves out those that tell a place, and they are handed over as copies.
 */
export async function exportBoat(
  store: OwnReadableStore,
  boat: string,
  path: string,
  { onProgress, signal, withoutPlaces = false }: ExportOptions = {},
): Promise<Exported> {
  const kept = store.texts(boat)
  const lines = new TextEncoder().encode(kept.map(({ text }) => `${text}\n`).join(''))
  const photographs = await photographsAt(
    store,
    kept.map(({ text }) => text),
    { withoutPlaces },
  )
  const total = lines.length + photographs.bytes
  const problems = problemsBefore({ path, boat, entries: kept.length, total, linesBytes: lines.length })
  if (problems.length > 0) return { ok: false, problems }

  const header: BoatFileHeader = {
    type: 'gensettle-boat',
    version: 1,
    boat,
    entries: kept.length,
    entriesSha256: createHash('sha256').update(lines).digest('hex'),
    photographs: photographs.present.length,
    absent: [...photographs.absent],
  }
  const beside = `${path}.part`
  const file = await open(beside, 'w', 0o600)
  try {
    const archive = archiveInto(file)
    await archive.add(new ZipDeflate(headerName), [new TextEncoder().encode(JSON.stringify(header))])
    await archive.add(new ZipDeflate(entriesName), [lines])
    let done = lines.length
    for (const sha256 of photographs.present) {
      const pieces = countedPieces(createReadStream(photographPath(store.folder, sha256)), (bytes) => {
        signal?.throwIfAborted()
        done += bytes
        onProgress?.({ done, total })
      })
      await archive.add(new ZipPassThrough(photographName(sha256)), pieces)
    }
    await archive.end()
    await file.sync()
  } catch (error) {
    await file.close()
    await rm(beside, { force: true })
    if (signal?.aborted) return { ok: false, problems: [stopped] }
    throw error
  }
  await file.close()
  renameDurably(beside, path)
  return {
    ok: true,
    entries: kept.length,
    photographs: photographs.present.length,
    absent: header.absent.length - photographs.leftOut,
    tellPlace: photographs.tellPlace,
    leftOut: photographs.leftOut,
  }
}

/** What is told when long work was stopped from outside. */
export const stopped: Problem = {
  code: 'stopped',
  path: '',
  found: 'work that was stopped before its end',
  allowed: 'nothing was written; begin again',
}

/** Photographs that the entries name: those that go into the file, and those whose bytes are lost, removed or left out. */
async function photographsAt(
  store: OwnReadableStore,
  texts: readonly string[],
  { withoutPlaces }: { readonly withoutPlaces: boolean },
) {
  const entries = texts.map(readKept)
  const wanted = photographsKept(entries)
  const named = new Set(entries.flatMap(photographsOf).map(({ sha256 }) => sha256))
  const there = [...wanted.keys()].filter((sha256) => existsSync(photographPath(store.folder, sha256))).sort()
  const telling = new Set<string>()
  for (const sha256 of there) {
    if (await mayTellPlace(photographPath(store.folder, sha256))) telling.add(sha256)
  }
  const present = withoutPlaces ? there.filter((sha256) => !telling.has(sha256)) : there
  const inFile = new Set(present)
  const bytes = present.reduce((sum, sha256) => sum + statSync(photographPath(store.folder, sha256)).size, 0)
  return {
    present,
    absent: [...named].filter((sha256) => !inFile.has(sha256)).sort(),
    bytes,
    tellPlace: withoutPlaces ? 0 : telling.size,
    leftOut: there.length - present.length,
  }
}

function problemsBefore(plan: {
  readonly path: string
  readonly boat: string
  readonly entries: number
  readonly linesBytes: number
  readonly total: number
}): Problem[] {
  const problems: Problem[] = []
  const say = (code: string, path: string, found: string, allowed: string) =>
    problems.push({ code, path, found, allowed })
  if (plan.entries === 0) say('no-such-boat', 'boat', plan.boat, 'a boat with entries in this logbook')
  if (existsSync(plan.path)) say('already-there', 'file', plan.path, 'a file that is not there yet')
  if (plan.entries > limits.entries)
    say('too-many', 'entries', `${plan.entries}`, `at most ${limits.entries}`)
  if (plan.linesBytes > limits.entriesBytes || plan.total > limits.totalBytes) {
    say('too-large', 'file', `${plan.total} bytes`, `at most ${limits.totalBytes}`)
  }
  return problems
}

/** An archive that is written to a file as it grows, never held whole. */
function archiveInto(file: FileHandle) {
  let waiting: Uint8Array[] = []
  let failure: Error | undefined
  const zip = new Zip((error, piece) => {
    if (error) failure = error
    else waiting.push(piece)
  })
  const flush = async () => {
    if (failure) throw failure
    for (const piece of waiting) await file.writeFile(piece)
    waiting = []
  }
  return {
    add: async (
      member: ZipDeflate | ZipPassThrough,
      pieces: Iterable<Uint8Array> | AsyncIterable<Uint8Array>,
    ) => {
      member.mtime = beginningOfZipTime
      zip.add(member)
      for await (const piece of pieces) {
        member.push(piece)
        await flush()
      }
      member.push(new Uint8Array(), true)
      await flush()
    },
    end: async () => {
      zip.end()
      await flush()
    },
  }
}

/** Every member bears the same time, so that the same boat gives the same bytes. */
const beginningOfZipTime = new Date(1980, 0, 1)

async function* countedPieces(pieces: AsyncIterable<Uint8Array>, count: (bytes: number) => void) {
  for await (const piece of pieces) {
    count(piece.length)
    yield piece
  }
}
