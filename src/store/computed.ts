/**
 * What was worked out from the logbook, kept beside it until what it rests on changes.
 *
 * Nothing here is of worth in itself: a file that is missing or damaged is worked out again, and exports and backups leave
 * the folder out.
 *
 * @module
 */

import { createHash, randomBytes } from 'node:crypto'
import { readdirSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { canonicalText } from '../logbook/canonical.js'
import { makeFolder } from './durable.js'

/** Worked-out things by key. */
export interface Computed {
  /** Bytes kept under a key; undefined where there are none, or none that can be read. */
  read(key: string): Uint8Array | undefined
  /** Keeps bytes under a key. Where that cannot be done nothing is kept, and nothing said. */
  keep(key: string, bytes: Uint8Array): void
}

const folderName = 'computed'
/** End of the name of a file that is not whole yet. */
const underWay = '.part'
/**
 * So much is kept at most; what was read or written longest ago goes first.
 * A set takes five files, 70 MB together; a look back at past dates some dozens that are small.
 */
const usualBounds = { files: 400, bytes: 300e6 }
/** A file under way that is older than this was left by a program that ended. [ms] */
const leftAfter = 3_600_000

/** How much is kept. */
export interface Bounds {
  readonly files: number
  readonly bytes: number
}

/** What something rests on, in short: the SHA-256 digest of its canonical text. */
export function digestOf(restsOn: unknown): string {
  return createHash('sha256').update(canonicalText(restsOn)).digest('hex')
}

/** The key of what rests on something of this digest, as worked out by a program. */
export function keyOf(digest: string, program: string): string {
  return digestOf([program, digest])
}

/** The worked-out things in a data folder. */
export function computedIn(dataFolder: string, bounds: Bounds = usualBounds): Computed {
  const folder = join(dataFolder, folderName)
  return {
    read: (key) => {
      const path = join(folder, key)
      try {
        const bytes = unsealed(readFileSync(path))
        if (bytes === undefined) rmSync(path, { force: true })
        else touch(path)
        return bytes
      } catch {
        return undefined
      }
    },
    keep: (key, bytes) => {
      const beside = join(folder, `${key}.${randomBytes(4).toString('hex')}${underWay}`)
      try {
        makeFolder(folder)
        writeFileSync(beside, sealed(bytes), { mode: 0o600 })
        renameSync(beside, join(folder, key))
        dropOldest(folder, bounds)
      } catch {
        rmSync(beside, { force: true })
      }
    },
  }
}

function touch(path: string): void {
  try {
    utimesSync(path, new Date(), new Date())
  } catch {
    // It only stays longer or shorter than it might.
  }
}

function dropOldest(folder: string, { files: mostFiles, bytes: mostBytes }: Bounds): void {
  const files = readdirSync(folder).flatMap((name) => {
    const path = join(folder, name)
    const found = statSync(path, { throwIfNoEntry: false })
    return found === undefined ? [] : [{ path, at: found.mtimeMs, bytes: found.size }]
  })
  let [count, bytes] = [0, 0]
  for (const file of files.sort((a, b) => b.at - a.at)) {
    if (file.path.endsWith(underWay)) {
      if (Date.now() - file.at > leftAfter) rmSync(file.path, { force: true })
      continue
    }
    count += 1
    bytes += file.bytes
    if (count > mostFiles || bytes > mostBytes) rmSync(file.path, { force: true })
  }
}

const sealBytes = 8

/** The bytes behind their length and a sum over them: a file cut off or with holes is told from a whole one. */
function sealed(bytes: Uint8Array): Uint8Array {
  const whole = new Uint8Array(sealBytes + bytes.length)
  const head = new DataView(whole.buffer)
  head.setUint32(0, bytes.length, true)
  head.setUint32(4, sumOf(bytes), true)
  whole.set(bytes, sealBytes)
  return whole
}

function unsealed(whole: Uint8Array): Uint8Array | undefined {
  if (whole.length < sealBytes) return undefined
  const head = new DataView(whole.buffer, whole.byteOffset, whole.byteLength)
  // Into memory of its own, so that numbers of several bytes lie where they must.
  const bytes = new Uint8Array(whole.subarray(sealBytes))
  if (head.getUint32(0, true) !== bytes.length || head.getUint32(4, true) !== sumOf(bytes)) return undefined
  return bytes
}

/** A sum over words of four bytes in which each place counts otherwise; quick, and no guard against malice. */
function sumOf(bytes: Uint8Array): number {
  const words = new Uint32Array(bytes.buffer, bytes.byteOffset, bytes.length >> 2)
  let sum = bytes.length
  for (let i = 0; i < words.length; i++) sum = (Math.imul(sum, 0x01000193) ^ words[i]!) | 0
  for (let i = words.length << 2; i < bytes.length; i++) sum = (Math.imul(sum, 0x01000193) ^ bytes[i]!) | 0
  return sum >>> 0
}
