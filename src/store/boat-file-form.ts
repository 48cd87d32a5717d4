/**
 * The boat file: one archive with everything of one boat, to be carried to another machine.
 *
 * A ZIP archive that holds `header.json`, `entries.jsonl` (canonical texts in order of their ids, one a line) and
 * `photographs/` with one file for each, named by its digest. Nothing else, and no name but these.
 *
 * @module
 */

import * as z from 'zod'
import { listOf, nameSchema, sha256Schema, wholeWithin } from '../logbook/atoms.js'
import { largestPhotograph } from '../logbook/photographs.js'

/** What a boat file may hold. Above it the whole file is refused. */
export const limits = {
  entries: 200_000,
  photographs: 10_000,
  headerBytes: 2_000_000,
  entriesBytes: 100_000_000,
  photographBytes: largestPhotograph,
  /** All members unpacked. A ZIP archive without its 64-bit extension ends at 4 GB. */
  totalBytes: 3_000_000_000,
  /** Bytes unpacked for each byte packed; lines of entries reach about 20. */
  ratio: 120,
} as const

export const headerName = 'header.json'
export const entriesName = 'entries.jsonl'
export const memberNamePattern = /^(?:header\.json|entries\.jsonl|photographs\/[0-9a-f]{64})$/

export function photographName(sha256: string): string {
  return `photographs/${sha256}`
}

export const headerSchema = z.strictObject({
  type: z.literal('gensettle-boat', { error: 'gensettle-boat' }),
  version: z.literal(1, { error: '1: another version of the program wrote this file' }),
  boat: nameSchema,
  entries: wholeWithin(0, limits.entries),
  entriesSha256: sha256Schema,
  photographs: wholeWithin(0, limits.photographs),
  /** Photographs that entries name and whose bytes were lost before the file was written. */
  absent: listOf(sha256Schema, 0, limits.photographs),
})

export type BoatFileHeader = z.infer<typeof headerSchema>

/** How far long work has come. [bytes] */
export interface Progress {
  readonly done: number
  readonly total: number
}

/** Told to long work: where it has come to, and that it is to stop. */
export interface LongWork {
  readonly onProgress?: (progress: Progress) => void
  readonly signal?: AbortSignal
}
