/**
 * Photographs on disk, each under the SHA-256 of its bytes. Originals are never touched.
 *
 * @module
 */

import { createHash } from 'node:crypto'
import { existsSync, readdirSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { photographTypes } from '../logbook/photograph-types.js'
import { largestPhotograph, type Photograph, photographType } from '../logbook/photographs.js'
import type { Problem } from '../logbook/problems.js'
import { makeFolder, renameDurably, syncFolder, writeDurably } from './durable.js'
import { dropThumbnails } from './thumbnails.js'

export type KeptPhotograph =
  | { readonly ok: true; readonly photograph: Photograph }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Where a photograph lies, whether it is there or not. */
export function photographPath(folder: string, sha256: string): string {
  return join(folder, 'photographs', sha256.slice(0, 2), sha256)
}

/** Puts bytes on disk, safe against power failure, and gives what an entry says of them. */
export function keepPhotograph(folder: string, bytes: Uint8Array): KeptPhotograph {
  const problem = plainProblemOf(bytes)
  if (problem !== undefined) return { ok: false, problems: [problem] }
  const sha256 = createHash('sha256').update(bytes).digest('hex')
  putPhotograph(folder, { sha256, bytes })
  return { ok: true, photograph: { sha256, type: photographType(bytes)!, bytes: bytes.length } }
}

/** What is wrong with bytes that should be a photograph, as far as their number and the first of them tell. */
export function plainProblemOf(bytes: Uint8Array): Problem | undefined {
  const say = (code: string, found: string, allowed: string) => ({ code, path: 'photograph', found, allowed })
  if (bytes.length === 0) return say('empty', 'a file of 0 bytes', 'a picture; take it or copy it again')
  if (bytes.length > largestPhotograph)
    return say('too-large', `${bytes.length} bytes`, `at most ${largestPhotograph} bytes`)
  if (photographType(bytes) !== undefined) return undefined
  const found = `bytes beginning ${Buffer.from(bytes.subarray(0, 12)).toString('hex')}`
  return say('no-photograph', found, photographTypes.join(', '))
}

/** Puts bytes of a known digest on disk, where they are not there yet. */
export function putPhotograph(folder: string, photograph: { sha256: string; bytes: Uint8Array }): void {
  const path = photographPath(folder, photograph.sha256)
  if (existsSync(path)) return
  makeFolderOf(path)
  writeDurably(path, photograph.bytes)
}

/** Digests of all photographs that are there, in order. */
export function photographsIn(folder: string): readonly string[] {
  const root = join(folder, 'photographs')
  if (!existsSync(root)) return []
  return readdirSync(root, { recursive: true, encoding: 'utf8' })
    .map((path) => basename(path))
    .filter((name) => /^[0-9a-f]{64}$/.test(name))
    .sort()
}

/** Takes over a file whose bytes are on disk and whose digest was checked. */
export function adoptPhotograph(folder: string, file: string, sha256: string): void {
  const path = photographPath(folder, sha256)
  makeFolderOf(path)
  renameDurably(file, path)
}

/** Takes the bytes away, and all that was made from them. */
export function dropPhotograph(folder: string, sha256: string): void {
  dropThumbnails(folder, sha256)
  const path = photographPath(folder, sha256)
  if (!existsSync(path)) return
  rmSync(path)
  syncFolder(dirname(path))
}

function makeFolderOf(path: string): void {
  const folder = dirname(path)
  if (existsSync(folder)) return
  makeFolder(folder)
  syncFolder(dirname(folder))
  syncFolder(dirname(dirname(folder)))
}
