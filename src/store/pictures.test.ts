import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { trialEntry } from '../../test/trial-log.js'
import { exportBoat } from './export-boat.js'
import { keepPicture, mayTellPlace, problemOf, thumbnailOf, withoutPlace } from './pictures.js'
import { openStore, type Store } from './store.js'

let place: string
let store: Store

beforeAll(() => {
  place = mkdtempSync(join(tmpdir(), 'gensettle-'))
  const opened = openStore(join(place, 'data'))
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
  store = opened.store
})
afterAll(() => {
  store.close()
  rmSync(place, { recursive: true, force: true })
})

/** 40 by 20: its left half red, the right one black. */
const redLeft = sharp({ create: { width: 40, height: 20, channels: 3, background: '#000000' } }).composite([
  { input: { create: { width: 20, height: 20, channels: 3, background: '#ff0000' } }, left: 0, top: 0 },
])

/** Such a picture as a camera writes that was held otherwise: its pixels turned, and how they were in its EXIF. */
async function heldAs(orientation: number): Promise<Buffer> {
  const upright = sharp(await redLeft.clone().png().toBuffer())
  // What turns the pixels back is what stands at each number in Exif 2.32, table 6 (recalled).
  const turned = [
    () => upright,
    () => upright.flop(),
    () => upright.rotate(180),
    () => upright.flip(),
    () => upright.flop().rotate(270),
    () => upright.rotate(270),
    () => upright.flop().rotate(90),
    () => upright.rotate(90),
  ][orientation - 1]!()
  const pixels = await turned.png().toBuffer()
  return sharp(pixels).withMetadata({ orientation }).jpeg({ quality: 95 }).toBuffer()
}

const where = {
  IFD0: { Model: 'Trial camera' },
  IFD3: {
    GPSLatitudeRef: 'N',
    GPSLatitude: '51/1 30/1 0/1',
    GPSLongitudeRef: 'W',
    GPSLongitude: '2/1 0/1 0/1',
  },
}
const xmp = `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description xmlns:exif="http://ns.adobe.com/exif/1.0/" exif:GPSLatitude="51,30.0N" exif:GPSLongitude="2,0.0W"/></rdf:RDF></x:xmpmeta>`

/** A segment of IPTC that names a city, put behind the first marker of a JPEG. */
function withCity(jpeg: Buffer, city: string): Buffer {
  const record = Buffer.concat([Buffer.from([0x1c, 2, 90, 0, city.length]), Buffer.from(city)])
  const even = record.length % 2 === 0 ? record : Buffer.concat([record, Buffer.alloc(1)])
  const size = Buffer.alloc(4)
  size.writeUInt32BE(record.length)
  const body = Buffer.concat([Buffer.from('Photoshop 3.0\x008BIM\x04\x04\x00\x00', 'latin1'), size, even])
  const head = Buffer.from([0xff, 0xed, 0, 0])
  head.writeUInt16BE(body.length + 2, 2)
  return Buffer.concat([jpeg.subarray(0, 2), head, body, jpeg.subarray(2)])
}

async function telling(): Promise<Buffer> {
  const jpeg = await redLeft.clone().withExif(where).withXmp(xmp).jpeg({ quality: 95 }).toBuffer()
  return withCity(jpeg, 'Trialhaven')
}

async function keptPicture(bytes: Buffer) {
  const kept = await keepPicture(store, bytes)
  if (!kept.ok) throw new Error(JSON.stringify(kept.problems))
  return { ...kept.photograph, bytes }
}

async function thumbnail(
  of: { readonly sha256: string; readonly bytes: Uint8Array },
  width: 160 | 480 = 160,
) {
  const made = await thumbnailOf({ folder: store.folder, ...of, width })
  if (!made.ok) throw new Error(JSON.stringify(made.problem))
  return made
}

async function reds(bytes: Uint8Array): Promise<readonly number[]> {
  const { data, info } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true })
  const at = (x: number) => data[(Math.floor(info.height / 2) * info.width + x) * info.channels]!
  return [at(Math.floor(info.width / 4)), at(Math.floor((3 * info.width) / 4))]
}

test.each([1, 2, 3, 4, 5, 6, 7, 8])(
  'held as %i it is shown upright, small and large',
  async (orientation) => {
    const bytes = await heldAs(orientation)
    expect((await sharp(bytes).metadata()).orientation ?? 1).toBe(orientation)
    const kept = await keptPicture(bytes)
    expect(store.photograph(kept.sha256)).toEqual(bytes)
    const copy = await withoutPlace(bytes)
    for (const made of [await thumbnail(kept), copy]) {
      if (!made.ok) throw new Error('not made')
      const { width, height } = await sharp(made.bytes).metadata()
      expect([width, height]).toEqual([40, 20])
      const [left, right] = await reds(made.bytes)
      expect(left).toBeGreaterThan(200)
      expect(right).toBeLessThan(60)
    }
  },
)

test('what is made from a photograph tells no place, and the original is untouched', async () => {
  const bytes = await telling()
  const before = await sharp(bytes).metadata()
  expect([before.exif, before.xmp, before.iptc].map((one) => one !== undefined)).toEqual([true, true, true])
  const kept = await keptPicture(bytes)
  expect(store.photograph(kept.sha256)).toEqual(bytes)
  const copy = await withoutPlace(bytes)
  for (const made of [await thumbnail(kept), await thumbnail(kept, 480), copy]) {
    if (!made.ok) throw new Error('not made')
    const { exif, xmp: left, iptc } = await sharp(made.bytes).metadata()
    expect([exif, left, iptc]).toEqual([undefined, undefined, undefined])
    const text = Buffer.from(made.bytes).toString('latin1')
    for (const word of ['GPS', 'Trialhaven', 'Trial camera', 'adobe']) expect(text).not.toContain(word)
  }
})

test('a place is told by any of the three, and by none of them in a bare picture', async () => {
  const bare = redLeft.clone().jpeg()
  const told = {
    bare: await bare.clone().toBuffer(),
    camera: await bare
      .clone()
      .withExif({ IFD0: { Model: 'Trial' } })
      .toBuffer(),
    gps: await bare.clone().withExif(where).toBuffer(),
    xmp: await bare.clone().withXmp(xmp).toBuffer(),
    iptc: withCity(await bare.clone().toBuffer(), 'Trialhaven'),
    broken: Buffer.from('\xff\xd8\xff nothing', 'latin1'),
  }
  const found: Record<string, boolean> = {}
  for (const [name, bytes] of Object.entries(told)) {
    const path = join(place, name)
    writeFileSync(path, bytes)
    found[name] = await mayTellPlace(path)
  }
  expect(found).toEqual({ bare: false, camera: false, gps: true, xmp: true, iptc: true, broken: true })
})

test('a boat file is the owner’s own copy, byte for byte; one for others leaves out what tells a place', async () => {
  const plain = await keptPicture(await redLeft.clone().png().toBuffer())
  const place1 = await keptPicture(await telling())
  const named = [plain, place1].map(({ sha256, type, bytes }) => ({ sha256, type, bytes: bytes.length }))
  expect(store.append([trialEntry(1, 'note', { text: 'seen', photographs: named })]).ok).toBe(true)
  const own = join(place, 'own.gensettle')
  expect(await exportBoat(store, 'trial', own)).toMatchObject({ photographs: 2, tellPlace: 1, leftOut: 0 })
  expect(readFileSync(own).includes(place1.bytes)).toBe(true)
  const others = join(place, 'others.gensettle')
  expect(await exportBoat(store, 'trial', others, { withoutPlaces: true })).toMatchObject({
    photographs: 1,
    absent: 0,
    tellPlace: 0,
    leftOut: 1,
  })
  const bytes = readFileSync(others).toString('latin1')
  for (const word of ['GPS', 'Trialhaven']) expect(bytes).not.toContain(word)
})

test('a small picture is kept until the photograph goes, and made again where it is lost', async () => {
  const kept = await keptPicture(
    await sharp(await telling())
      .resize(900, 450)
      .jpeg()
      .toBuffer(),
  )
  const first = await thumbnail(kept)
  expect((await sharp(first.bytes).metadata()).width).toBe(160)
  const folder = join(store.folder, 'thumbnails', 'computed')
  const files = () => readdirSync(folder).filter((name) => name.startsWith(kept.sha256))
  expect(files()).toHaveLength(1)
  // one that is not the photograph's own shows that it is taken from where it is kept
  const again = await thumbnail({ ...kept, bytes: Buffer.alloc(0) })
  expect(Buffer.from(again.bytes)).toEqual(first.bytes)
  rmSync(join(store.folder, 'thumbnails'), { recursive: true })
  expect(await thumbnail(kept)).toEqual(first)
  const photographs = [{ sha256: kept.sha256, type: kept.type, bytes: kept.bytes.length }]
  const removal = { sha256: kept.sha256, because: 'shows a guest' }
  expect(
    store.append([
      trialEntry(5, 'note', { text: 'x', photographs }),
      trialEntry(6, 'photograph-removed', removal),
    ]).ok,
  ).toBe(true)
  expect(files()).toEqual([])
})

test('what is no whole picture is told, and nothing of it is kept', async () => {
  const jpeg = await sharp({
    create: {
      width: 320,
      height: 240,
      channels: 3,
      background: '#808080',
      noise: { type: 'gaussian', mean: 128, sigma: 60 },
    },
  })
    .jpeg()
    .toBuffer()
  const noisy = sharp(jpeg)
  const png = await noisy.clone().png().toBuffer()
  const webp = await noisy.clone().webp().toBuffer()
  const scribbled = Buffer.from(png)
  scribbled.fill(0x55, 4000, 6000)
  const small = await redLeft.clone().png().toBuffer()
  const bomb = claiming(small, 30_000)
  const cases: readonly (readonly [string, Buffer, string])[] = [
    ['nothing', Buffer.alloc(0), 'empty'],
    ['a text', Buffer.from('<svg onload=x>'), 'no-photograph'],
    ['over 50 MB', Buffer.alloc(50_000_001, 0xff), 'too-large'],
    ['a JPEG cut off', jpeg.subarray(0, jpeg.length / 2), 'damaged'],
    ['a JPEG that is only its head', jpeg.subarray(0, 30), 'damaged'],
    ['a PNG cut off', png.subarray(0, png.length / 2), 'damaged'],
    ['a PNG scribbled over', scribbled, 'damaged'],
    ['a WebP cut off', webp.subarray(0, webp.length / 2), 'damaged'],
    ['a HEIC cut off', heic(400).subarray(0, 300), 'damaged'],
    ['a bomb', bomb, 'too-many-pixels'],
  ]
  const before = readdirSync(join(store.folder, 'photographs'), { recursive: true }).length
  for (const [name, bytes, code] of cases) {
    const kept = await keepPicture(store, bytes)
    expect([name, kept.ok ? 'kept' : kept.problems[0]?.code]).toEqual([name, code])
  }
  expect(readdirSync(join(store.folder, 'photographs'), { recursive: true })).toHaveLength(before)
})

/** A PNG that claims to be so many pixels each way, with the sum (ISO 3309) over its head that it must have. */
function claiming(png: Buffer, edge: number): Buffer {
  const bytes = Buffer.from(png)
  bytes.writeUInt32BE(edge, 16)
  bytes.writeUInt32BE(edge, 20)
  let sum = 0xffffffff
  for (const byte of bytes.subarray(12, 29)) {
    sum ^= byte
    for (let bit = 0; bit < 8; bit++) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0)
  }
  bytes.writeUInt32BE(~sum >>> 0, 29)
  return bytes
}

/** The boxes of a HEIC file around bytes that are no picture. */
function heic(length: number): Buffer {
  const bytes = Buffer.alloc(length)
  bytes.writeUInt32BE(24)
  bytes.write('ftypheic\0\0\0\0mif1heic', 4, 'latin1')
  bytes.writeUInt32BE(length - 24, 24)
  bytes.write('mdat', 28, 'latin1')
  return bytes
}

test('HEIC is kept as it came, and told apart wherever a picture is made from it', async () => {
  expect(await problemOf(heic(400))).toBeUndefined()
  const kept = await keptPicture(heic(400))
  expect(kept.type).toBe('image/heic')
  for (const made of [
    await thumbnailOf({ folder: store.folder, ...kept, width: 160 }),
    await withoutPlace(kept.bytes),
  ]) {
    expect(made).toMatchObject({ ok: false, problem: { code: 'heic' } })
    expect(made.ok ? '' : made.problem.allowed).toMatch(/kept as it came.*set the phone to JPEG/)
  }
})
