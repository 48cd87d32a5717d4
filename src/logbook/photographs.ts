/**
 * Which photographs entries name, which of them were taken away, and what kind of picture bytes are.
 *
 * @module
 */

import type * as z from 'zod'
import type { arrowSchema, DeepReadonly, markedPhotographSchema } from './atoms.js'
import { type Entry, isKind } from './kinds.js'

/** The largest photograph that is kept. [bytes] */
export const largestPhotograph = 50_000_000

/** Widths in which small pictures are made. [px] A row of a list; a picture on a phone; one that fills a page. */
export const thumbnailWidths = [160, 480, 1280] as const
export type ThumbnailWidth = (typeof thumbnailWidths)[number]

export type Photograph = DeepReadonly<z.infer<typeof markedPhotographSchema>>
export type Arrow = DeepReadonly<z.infer<typeof arrowSchema>>

/** The photographs an entry names. */
export function photographsOf(entry: Entry): readonly Photograph[] {
  return ('photographs' in entry.body ? entry.body.photographs : undefined) ?? []
}

/** Digests of the photographs that entries name, apart from those of which the entries say that they were removed. */
export function photographsKept(entries: Iterable<Entry>): ReadonlyMap<string, Photograph> {
  const named = new Map<string, Photograph>()
  const removed: string[] = []
  for (const entry of entries) {
    for (const photograph of photographsOf(entry)) named.set(photograph.sha256, photograph)
    if (isKind(entry, 'photograph-removed')) removed.push(entry.body.sha256)
  }
  for (const sha256 of removed) named.delete(sha256)
  return named
}

/** The kind of picture by its first bytes; undefined where it is none that is kept. */
export function photographType(bytes: Uint8Array): Photograph['type'] | undefined {
  const head = String.fromCharCode(...bytes.subarray(0, 12))
  if (head.startsWith('\xff\xd8\xff')) return 'image/jpeg'
  if (head.startsWith('\x89PNG\r\n\x1a\n')) return 'image/png'
  if (head.startsWith('RIFF') && head.endsWith('WEBP')) return 'image/webp'
  if (heicBrand.test(head.slice(4))) return 'image/heic'
  return undefined
}

/**
 * First box of a HEIC file: its brand after "ftyp".
 *
 * Source: ISO/IEC 23008-12, brands of images and sequences coded with HEVC, and the general ones; recalled.
 */
const heicBrand = /^ftyp(hei[cxms]|hev[cxms]|mif1|msf1)$/
