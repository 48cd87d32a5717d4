/**
 * Looking into photographs: whether bytes are a whole picture, small ones made from it, and copies that tell no place.
 *
 * @module
 */

import sharp, { type Sharp } from 'sharp'
import { type Photograph, photographType, type ThumbnailWidth } from '../logbook/photographs.js'
import type { Problem } from '../logbook/problems.js'
import { type KeptPhotograph, plainProblemOf } from './photographs.js'
import type { Store } from './store.js'
import { thumbnailKey, thumbnailsIn } from './thumbnails.js'

// What the library keeps of pictures gone by is bounded, and so is what one of them takes of the machine.
sharp.cache({ memory: 50, files: 0, items: 50 })
sharp.concurrency(2)

/** More than any camera of a phone makes in its usual settings; a few kilobytes can claim to be far more. [px] */
export const mostPixels = 120_000_000

/** Damage stops it; oddities that every decoder steps over do not. */
const strictly = { failOn: 'error', limitInputPixels: mostPixels, sequentialRead: true } as const
/** What was kept before is shown as far as it can be. */
const kindly = { ...strictly, failOn: 'none' } as const

/** A picture made from another one. */
export type Made =
  | { readonly ok: true; readonly bytes: Uint8Array; readonly type: Photograph['type'] }
  | { readonly ok: false; readonly problem: Problem }

/** Keeps bytes as they are, once they are known to be a whole picture. Of a wrong one nothing is kept. */
export async function keepPicture(
  store: Pick<Store, 'keepPhotograph'>,
  bytes: Uint8Array,
): Promise<KeptPhotograph> {
  const problem = await problemOf(bytes)
  return problem === undefined ? store.keepPhotograph(bytes) : { ok: false, problems: [problem] }
}

/** What is wrong with bytes that should be a photograph; undefined where they are one, whole. */
export async function problemOf(bytes: Uint8Array): Promise<Problem | undefined> {
  const plain = plainProblemOf(bytes)
  if (plain !== undefined) return plain
  if (photographType(bytes) === 'image/heic') return hasWholeBoxes(bytes) ? undefined : damaged
  try {
    const { width, height } = await sharp(bytes, { ...strictly, limitInputPixels: false }).metadata()
    if (width * height > mostPixels) return tooManyPixels(`${width} × ${height} pixels`)
    // Every byte of the picture is gone through; what comes out is of no use.
    await sharp(bytes, strictly).resize({ width: 8, height: 8, fit: 'fill' }).raw().toBuffer()
    return undefined
  } catch {
    return damaged
  }
}

const damaged: Problem = {
  code: 'damaged',
  path: 'photograph',
  found: 'a picture that is cut off or damaged',
  allowed: 'a whole one; take it or copy it again',
}

function tooManyPixels(found: string): Problem {
  const allowed = `at most ${mostPixels / 1e6} million pixels`
  return { code: 'too-many-pixels', path: 'photograph', found, allowed }
}

/**
 * Whether the boxes of an ISO media file fill it to its last byte: one that is cut off ends within a box.
 *
 * Source: ISO/IEC 14496-12, 4.2, object structure; recalled.
 */
function hasWholeBoxes(bytes: Uint8Array): boolean {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length)
  let at = 0
  while (at + 8 <= bytes.length) {
    const size = view.getUint32(at)
    if (size === 0) return true
    const length = size === 1 && at + 16 <= bytes.length ? Number(view.getBigUint64(at + 8)) : size
    if (length < 8) return false
    at += length
  }
  return at === bytes.length
}

/** What is told of a HEIC picture that something other than its bytes is wanted of. */
const heic: Problem = {
  code: 'heic',
  path: 'photograph',
  found: 'a HEIC picture',
  allowed:
    'JPEG, PNG or WebP. It is kept as it came, and programs that know HEIC open it; for the next ones set the phone to JPEG (“most compatible”), or attach this one converted as well',
}

/**
 * A small picture, upright, without anything but the picture. Kept once it is made; taking it away loses nothing.
 *
 * @param of the photograph, and the data folder that what is made from it is kept in.
 */
export async function thumbnailOf(of: {
  readonly folder: string
  readonly sha256: string
  readonly bytes: Uint8Array
  readonly width: ThumbnailWidth
}): Promise<Made> {
  const { folder, sha256, bytes, width } = of
  const kept = thumbnailsIn(folder)
  const key = thumbnailKey(sha256, width)
  const before = kept.read(key)
  if (before !== undefined) return { ok: true, bytes: before, type: 'image/webp' }
  const made = await madeFrom(bytes, 'image/webp', (picture) =>
    picture.resize({ width, height: width, fit: 'inside', withoutEnlargement: true }).webp({
      quality: 76,
      effort: 2,
    }),
  )
  if (made.ok) kept.keep(key, made.bytes)
  return made
}

/** The picture as large as it is, upright and encoded anew: nothing of where, when or by whom it was taken is left. */
export function withoutPlace(bytes: Uint8Array): Promise<Made> {
  const type = photographType(bytes)
  if (type === 'image/png') return madeFrom(bytes, type, (picture) => picture.png())
  return madeFrom(bytes, 'image/jpeg', (picture) =>
    picture.flatten({ background: '#ffffff' }).jpeg({ quality: 90 }),
  )
}

async function madeFrom(
  bytes: Uint8Array,
  type: Photograph['type'],
  make: (picture: Sharp) => Sharp,
): Promise<Made> {
  if (photographType(bytes) === 'image/heic') return { ok: false, problem: heic }
  try {
    // Nothing but the picture goes into what the library writes, unless it is asked to.
    return { ok: true, bytes: await make(sharp(bytes, kindly).autoOrient()).toBuffer(), type }
  } catch {
    const found = 'a picture that cannot be read'
    const problem = { code: 'damaged', path: 'photograph', found, allowed: 'its bytes, as they are' }
    return { ok: false, problem }
  }
}

/**
 * Whether a photograph tells where it was taken, or may: a GPS directory in its EXIF, or XMP, IPTC or comments, in which a
 * place can stand in many ways. Of what cannot be read it is taken to tell.
 */
export async function mayTellPlace(path: string): Promise<boolean> {
  try {
    const { format, exif, xmp, iptc, comments } = await sharp(path, kindly).metadata()
    if (format === 'heif' || xmp !== undefined || iptc !== undefined || (comments?.length ?? 0) > 0)
      return true
    return exif !== undefined && namesGps(exif)
  } catch {
    return true
  }
}

/**
 * Whether the first directory of EXIF points to one of GPS (tag 0x8825).
 *
 * Source: CIPA DC-008 (Exif 2.32), 4.6.3; recalled.
 */
function namesGps(exif: Buffer): boolean {
  const start = exif.toString('latin1', 0, 6) === 'Exif\0\0' ? 6 : 0
  const tiff = exif.subarray(start)
  const little = tiff.toString('latin1', 0, 2) === 'II'
  const short = (at: number) => (little ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at))
  const first = little ? tiff.readUInt32LE(4) : tiff.readUInt32BE(4)
  return Array.from({ length: short(first) }, (_, i) => short(first + 2 + 12 * i)).includes(0x8825)
}
