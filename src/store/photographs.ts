/**
 * Photographs on disk, each under the SHA-256 of its bytes. Originals are never touched.
 *
 * @module
 */

import { createHash } from 'node:crypto'
import { existsSync, readdirSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { photographTypes } from '../logbook/atoms.js'
import type { Photograph } from '../logbook/photographs.js'
import type { Problem } from '../logbook/problems.js'
import { makeFolder, renameDurably, syncFolder, writeDurably } from './durable.js'

/** The largest photograph that is kept. [bytes] */
export const largestPhotograph = 50_000_000

export type KeptPhotograph =
  | { readonly ok: true; readonly photograph: Photograph }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** Where a photograph lies, whether it is there or not. */
export function photographPath(folder: string, sha256: string): string {
  return join(folder, 'photographs', sha256.slice(0, 2), sha256)
}

/** Puts bytes on disk, safe against power failure, and gives what an entry says of them. */
export function keepPhotograph(folder: string, bytes: Uint8Array): KeptPhotograph {
  if (bytes.length > largestPhotograph) {
    const allowed = `at most ${largestPhotograph} bytes`
    return refused({ code: 'too-large', path: 'photograph', found: `${bytes.length} bytes`, allowed })
  }
  const type = photographType(bytes)
  if (type === undefined) {
    const found = `bytes beginning ${Buffer.from(bytes.subarray(0, 12)).toString('hex')}`
    return refused({ code: 'no-photograph', path: 'photograph', found, allowed: photographTypes.join(', ') })
  }
  const sha256 = createHash('sha256').update(bytes).digest('hex')
  putPhotograph(folder, { sha256, bytes })
  return { ok: true, photograph: { sha256, type, bytes: bytes.length } }
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

/** Takes the bytes away. */
export function dropPhotograph(folder: string, sha256: string): void {
  const path = photographPath(folder, sha256)
  if (!existsSync(path)) return
  rmSync(path)
  syncFolder(dirname(path))
}

function refused(problem: Problem): KeptPhotograph {
  return { ok: false, problems: [problem] }
}

function makeFolderOf(path: string): void {
  const folder = dirname(path)
  if (existsSync(folder)) return
  makeFolder(folder)
  syncFolder(dirname(folder))
  syncFolder(dirname(dirname(folder)))
}

/** The kind of picture by its first bytes; undefined where it is none that we keep. */
export function photographType(bytes: Uint8Array): Photograph['type'] | undefined {
  const head = Buffer.from(bytes.subarray(0, 12)).toString('latin1')
  if (head.startsWith('\xff\xd8\xff')) return 'image/jpeg'
  if (head.startsWith('\x89PNG\r\n\x1a\n')) return 'image/png'
  if (head.startsWith('RIFF') && head.endsWith('WEBP')) return 'image/webp'
  if (/^ftyp(heic|heix|mif1|hevc)$/.test(head.slice(4))) return 'image/heic'
  return undefined
}
