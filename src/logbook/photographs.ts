/**
 * Which photographs entries name, and which of them were taken away.
 *
 * @module
 */

import type * as z from 'zod'
import type { DeepReadonly, photographSchema } from './atoms.js'
import { type Entry, isKind } from './kinds.js'

export type Photograph = DeepReadonly<z.infer<typeof photographSchema>>

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
