import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gunzipSync } from 'node:zlib'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { shippedFaults } from '../../test/fault-model.js'
import {
  type Asking,
  cookieIn,
  type ServedFolder,
  serveFolder,
  shippedCatalogue,
} from '../../test/served-folder.js'
import { shippedKitFiles } from '../../test/shipped-kits.js'
import { trialEntry } from '../../test/trial-log.js'
import { openStore } from '../store/store.js'
import type {
  AppendAnswer,
  BoatsAnswer,
  ImportAnswer,
  LessonsAnswer,
  PhotographAnswer,
  Refusal,
} from './http-types.js'
import { listen } from './listen.js'

let served: ServedFolder
beforeAll(async () => {
  served = await serveFolder()
})
afterAll(() => served.stop())

const path = '/api/boats/trial/entries'
const hours = (number: number, boat = 'trial') =>
  JSON.stringify(trialEntry(number, 'hours', { meterHours: number }, { boat }))
const appending = (...entries: readonly string[]): Asking => ({
  method: 'POST',
  body: JSON.stringify({ entries }),
})
const codesOf = (asked: { json<T>(): T }) => asked.json<Refusal>().problems.map(({ code }) => code)

test('a page is sent to whoever asks by the exact address, with its guards', async () => {
  const { status, headers, text } = await served.ask('/', { headers: { cookie: undefined } })
  expect(status).toBe(200)
  expect(text).toContain('Trial page')
  expect(headers['content-security-policy']).toContain("default-src 'self'")
  expect(headers['content-security-policy']).not.toContain('unsafe-inline')
  expect(headers['x-content-type-options']).toBe('nosniff')
  expect(headers['access-control-allow-origin']).toBeUndefined()
  expect((await served.ask('/boats/marram/main/set')).text).toContain('Trial page')
  expect((await served.ask('/notes.exe')).status).toBe(404)
  expect((await served.ask('/../port')).text).toContain('Trial page')
})

test.each(['elsewhere.example', '127.0.0.1:80', 'localhost', '127.0.0.1.elsewhere.example'])(
  'whoever comes by the name %s gets nothing, with a cookie or without',
  async (host) => {
    for (const asked of ['/', '/api/boats', '/assets/main-1a2b.js', new URL(served.entrance).pathname]) {
      const { status, headers, text } = await served.ask(asked, { headers: { host } })
      expect(status).toBe(421)
      expect(text).not.toContain('marram')
      expect(headers['x-content-type-options']).toBe('nosniff')
      expect(headers['set-cookie']).toBeUndefined()
    }
  },
)

test('a page of somewhere else gets nothing and writes nothing', async () => {
  for (const site of ['cross-site', 'same-site']) {
    const { status, text } = await served.ask('/api/boats', { headers: { 'sec-fetch-site': site } })
    expect(status).toBe(403)
    expect(text).not.toContain('marram')
  }
  for (const origin of ['http://elsewhere.example', 'null', 'http://127.0.0.1:1', undefined]) {
    const asked = await served.ask(path, { ...appending(hours(900)), headers: { origin } })
    expect([asked.status, codesOf(asked)]).toEqual([403, ['wrong-origin']])
  }
  for (const type of ['text/plain', 'application/x-www-form-urlencoded', undefined]) {
    const asked = await served.ask(path, { ...appending(hours(900)), headers: { 'content-type': type } })
    expect([asked.status, codesOf(asked)]).toEqual([415, ['wrong-type']])
  }
  const before = await served.ask(path, {
    method: 'OPTIONS',
    headers: { origin: 'http://elsewhere.example' },
  })
  expect(before.status).toBe(403)
  expect(before.headers['access-control-allow-origin']).toBeUndefined()
  expect((await served.ask(path)).text).not.toContain('900')
})

test('without the cookie nothing of a log is read or written', async () => {
  for (const cookie of [undefined, served.cookie.replace(/=.*/, '=guess'), 'gensettle-1=x']) {
    for (const asking of [{}, appending(hours(901))]) {
      const asked = await served.ask(path, { ...asking, headers: { cookie } })
      expect([asked.status, codesOf(asked)]).toEqual([401, ['not-let-in']])
    }
  }
})

test('an address lets one browser in, once; another can be asked for by one that is in', async () => {
  expect(cookieIn(await served.ask(new URL(served.entrance).pathname))).toBe('')
  expect(cookieIn(await served.ask('/enter/guess'))).toBe('')
  const asked = await served.ask('/api/code', { method: 'POST', body: '{}' })
  const { pathname } = new URL(asked.json<{ address: string }>().address)
  const entered = await served.ask(pathname, { headers: { cookie: undefined } })
  expect(entered.headers['set-cookie']).toMatch(/; HttpOnly; SameSite=Strict$/)
  expect((await served.ask('/api/health', { headers: { cookie: cookieIn(entered) } })).status).toBe(200)
  expect(cookieIn(await served.ask(pathname))).toBe('')
})

test('the data folder keeps no cookie, and a browser stays let in when the program starts again', async () => {
  const first = await serveFolder()
  const kept = readFileSync(join(first.folder, 'browsers.json'), 'utf8')
  expect(kept).not.toContain(first.cookie.split('=')[1])
  await first.stop()
  const again = await serveFolder({ folder: first.folder })
  expect(again.address).toBe(first.address)
  expect((await again.ask('/api/health', { headers: { cookie: first.cookie } })).status).toBe(200)
  await again.stop()
  writeFileSync(join(first.folder, 'browsers.json'), '{"type":')
  const third = await serveFolder({ folder: first.folder })
  expect((await third.ask('/api/health', { headers: { cookie: first.cookie } })).status).toBe(401)
  expect((await third.ask('/api/health')).status).toBe(200)
  await third.stop()
})

test('entries are taken one by one: the wrong one keeps no other back, and sending again is safe', async () => {
  const wrong = hours(2).replace('"meterHours":2', '"meterHours":"many"')
  const asked = await served.ask(path, appending(hours(1), wrong, hours(3), hours(4, 'other')))
  expect(asked.status).toBe(200)
  expect(asked.json<AppendAnswer>().results).toMatchObject([
    { result: 'written' },
    { result: 'refused', problems: [{ path: 'body.meterHours' }] },
    { result: 'written' },
    { result: 'refused', problems: [{ code: 'other-boat' }] },
  ])
  const again = await served.ask(
    path,
    appending(hours(1), hours(3).replace('"meterHours":3', '"meterHours":4')),
  )
  expect(again.json<AppendAnswer>().results).toMatchObject([
    { result: 'already-there' },
    { result: 'refused', problems: [{ code: 'same-id-other-text' }] },
  ])
  const lines = (await served.ask(path)).text.trimEnd().split('\n')
  expect(lines.map((line) => JSON.parse(line).body.meterHours)).toEqual([1, 3])
})

test('only what is new is sent, and nothing where nothing is', async () => {
  const first = await served.ask(path)
  const last = JSON.parse(first.text.trimEnd().split('\n').at(-1)!).id as string
  const count = first.text.trimEnd().split('\n').length
  await served.ask(path, appending(hours(5)))
  const more = await served.ask(`${path}?after=${count}&last=${last}`)
  expect(more.headers['gensettle-after']).toBe(String(count))
  expect(more.text.trimEnd().split('\n')).toHaveLength(1)
  const whole = await served.ask(`${path}?after=${count}&last=01HZZZZZZZ0000000000000999`)
  expect(whole.headers['gensettle-after']).toBe('0')
  const tag = whole.headers.etag!
  const unchanged = await served.ask(path, { headers: { 'if-none-match': tag } })
  expect([unchanged.status, unchanged.bytes.length]).toEqual([304, 0])
})

test('what is long is compressed, and files whose names change with them are kept for good', async () => {
  const packed = await served.ask('/assets/main-1a2b.js', { headers: { 'accept-encoding': 'gzip' } })
  expect(packed.headers['content-encoding']).toBe('gzip')
  expect(packed.bytes.length).toBeLessThan(500)
  expect(gunzipSync(packed.bytes).toString()).toContain('so it goes')
  expect(packed.headers['cache-control']).toContain('immutable')
  expect((await served.ask('/')).headers['cache-control']).toBe('no-cache')
})

test('demonstration boats are read and never written or given away', async () => {
  const { boats } = (await served.ask('/api/boats')).json<BoatsAnswer>()
  expect(boats).toContainEqual({ boat: 'marram', demonstration: true })
  const read = await served.ask('/api/boats/marram/entries')
  expect(read.headers['gensettle-demonstration']).toBe('yes')
  expect(read.text).toContain('"boat":"marram"')
  const asked = await served.ask('/api/boats/marram/entries', appending(hours(1, 'marram')))
  expect([asked.status, codesOf(asked)]).toEqual([403, ['read-only']])
  expect((await served.ask('/api/boats/marram/file')).status).toBe(404)
})

test('bodies that are no list of entries, and bodies that are too large, are refused', async () => {
  for (const body of ['', '{', '[]', '{"entries":[]}', '{"entries":[1]}', '{"entries":["x"],"more":1}']) {
    expect((await served.ask(path, { method: 'POST', body })).status).toBe(400)
  }
  const large = await served.ask(path, { method: 'POST', body: 'x'.repeat(20_000_001) })
  expect([large.status, codesOf(large)]).toEqual([413, ['too-large']])
})

test('a photograph goes in and comes out as it was; what is none is refused', async () => {
  const bytes = await picture({ width: 600, height: 300 }).withExif(aPlace).jpeg().toBuffer()
  const { photograph } = (await upload(bytes, 'image/jpeg')).json<PhotographAnswer>()
  expect(photograph).toMatchObject({ type: 'image/jpeg', bytes: bytes.length })
  const back = await served.ask(`/api/photographs/${photograph.sha256}`)
  expect(back.bytes.equals(bytes)).toBe(true)
  expect(back.headers['content-type']).toBe('image/jpeg')
  expect(codesOf(await upload(Buffer.from('<script>alert(1)</script>'), 'image/png'))).toEqual([
    'no-photograph',
  ])
  expect(codesOf(await upload(bytes.subarray(0, 900), 'image/jpeg'))).toEqual(['damaged'])
  expect(codesOf(await upload(Buffer.alloc(0), 'image/jpeg'))).toEqual(['empty'])
  const none = await served.ask(`/api/photographs/${'0'.repeat(64)}`)
  expect(none.status).toBe(404)
  expect((await served.ask('/api/photographs/..%2Fport')).status).toBe(404)
})

test('small pictures and copies come without place, and are not sent twice', async () => {
  const bytes = await picture({ width: 600, height: 300 }).withExif(aPlace).png().toBuffer()
  const { photograph } = (await upload(bytes, 'image/png')).json<PhotographAnswer>()
  const at = `/api/photographs/${photograph.sha256}`
  for (const [path, type, width] of [
    ['160', 'image/webp', 160],
    ['480', 'image/webp', 480],
    ['1280', 'image/webp', 600],
    ['copy', 'image/png', 600],
  ] as const) {
    const made = await served.ask(`${at}/${path}`)
    expect([path, made.status, made.headers['content-type']]).toEqual([path, 200, type])
    const told = await sharp(made.bytes).metadata()
    expect([told.width, told.exif]).toEqual([width, undefined])
    const again = await served.ask(`${at}/${path}`, {
      headers: { 'if-none-match': String(made.headers.etag) },
    })
    expect([again.status, again.bytes.length]).toEqual([304, 0])
  }
  expect(codesOf(await served.ask(`${at}/161`))).toEqual(['unknown-width'])
  expect(codesOf(await served.ask(`/api/photographs/${'0'.repeat(64)}/160`))).toEqual(['unknown-photograph'])
})

function picture({ width, height }: { readonly width: number; readonly height: number }) {
  return sharp({ create: { width, height, channels: 3, background: '#336699' } })
}

const aPlace = { IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' } }

function upload(body: Buffer, type: string) {
  return served.ask('/api/photographs', { method: 'POST', body, headers: { 'content-type': type } })
}

test('a boat file goes out and comes in: the same entries, byte for byte', async () => {
  const out = await served.ask('/api/boats/trial/file')
  expect(out.headers['content-disposition']).toBe('attachment; filename="trial.gensettle"')
  const other = await serveFolder()
  const sending = { method: 'POST', body: out.bytes, headers: { 'content-type': 'application/x-gensettle' } }
  const brought = await other.ask('/api/boat-file', sending)
  expect(brought.json<ImportAnswer>()).toMatchObject({ boat: 'trial', alreadyHeld: 0 })
  const lines = (text: string) => text.trimEnd().split('\n').sort()
  expect(lines((await other.ask(path)).text)).toEqual(lines((await served.ask(path)).text))
  expect((await other.ask('/api/boat-file', sending)).json<ImportAnswer>()).toMatchObject({ added: 0 })
  await other.stop()
})

test('a boat file that was cut off, or is none, is refused whole, and nothing is left lying', async () => {
  const { bytes } = await served.ask('/api/boats/trial/file')
  const other = await serveFolder()
  for (const body of [
    bytes.subarray(0, bytes.length - 40),
    bytes.subarray(40),
    Buffer.from('PK'),
    Buffer.alloc(0),
  ]) {
    const headers = { 'content-type': 'application/x-gensettle' }
    const asked = await other.ask('/api/boat-file', { method: 'POST', body, headers })
    expect(asked.status).toBe(422)
    expect(codesOf(asked).length).toBeGreaterThan(0)
  }
  expect((await other.ask('/api/boats')).json<BoatsAnswer>().boats.every((one) => one.demonstration)).toBe(
    true,
  )
  expect(readdirSync(other.folder).filter((name) => name.startsWith('incoming-'))).toEqual([])
  await other.stop()
})

test('whether boats hear one another is kept, told with how much there is to hear, and nothing else is taken', async () => {
  const asked = async () => (await served.ask('/api/lessons')).json<LessonsAnswer>()
  const post = (body: string) => served.ask('/api/lessons', { method: 'POST', body })
  expect(await asked()).toEqual({ heard: false, entries: 0 })
  expect((await post('{"heard":"yes"}')).status).toBe(400)
  expect((await post('nothing')).status).toBe(400)
  const on = (await post('{"heard":true}')).json<LessonsAnswer>()
  expect(on.heard).toBe(true)
  expect(on.entries).toBeGreaterThan(0)
  expect(await asked()).toEqual(on)
  expect((await post('{"heard":false}')).json()).toEqual({ heard: false, entries: 0 })
})

test('a stop lets go of the folder', async () => {
  const other = await serveFolder()
  await other.stop()
  const opened = openStore(other.folder)
  expect(opened.ok).toBe(true)
  if (opened.ok) opened.store.close()
})

function folderWithStore() {
  const opened = openStore(mkdtempSync(join(tmpdir(), 'gensettle-')))
  if (!opened.ok) throw new Error('must open')
  const { store } = opened
  const demonstration = {
    boats: () => [],
    lines: () => ({ ok: true, texts: [] }) as const,
    photograph: () => undefined,
  }
  return {
    store,
    demonstration,
    catalogue: shippedCatalogue(),
    faults: shippedFaults().model,
    kits: shippedKitFiles().kits,
    pages: new Map(),
    onError: () => undefined,
    computed: () => undefined,
  }
}

test('a port that is taken is told, and nothing else is chosen', async () => {
  const what = folderWithStore()
  const other = createServer()
  await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve))
  const { port } = other.address() as AddressInfo
  writeFileSync(join(what.store.folder, 'port'), `${port}\n`)
  expect(await listen(what)).toMatchObject({ ok: false, problems: [{ code: 'port-taken' }] })
  expect(readFileSync(join(what.store.folder, 'port'), 'utf8')).toBe(`${port}\n`)
  other.close()
  what.store.close()
})

test('a kept port that is none is told', async () => {
  const what = folderWithStore()
  writeFileSync(join(what.store.folder, 'port'), 'eighty')
  expect(await listen(what)).toMatchObject({ ok: false, problems: [{ code: 'wrong-port', found: 'eighty' }] })
  expect(existsSync(join(what.store.folder, 'port'))).toBe(true)
  what.store.close()
})
