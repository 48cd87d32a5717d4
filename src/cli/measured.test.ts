import { createHash } from 'node:crypto'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { answerForm } from './json-forms.js'
import { addEntry } from './log.js'
import { measure } from './measured.js'
import type { Result } from './result.js'

const folder = () => mkdtempSync(join(tmpdir(), 'gensettle-'))

function answerOf(result: Result) {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  const printed = JSON.parse(JSON.stringify(result.json)) as Record<string, unknown>
  expect(answerForm.safeParse(printed).error?.issues ?? []).toEqual([])
  return printed as {
    entries: { body: Record<string, unknown>; from: string; until: string }[]
    [field: string]: unknown
  }
}

async function boatWithSet(): Promise<string> {
  const data = folder()
  await addEntry(
    { kind: 'set', bare: [], flags: { 'rating-kw': ['7'] } },
    { data, boat: 'petrel', set: 'main' },
  )
  return data
}

const usual = { of: 'set', seconds: 1 } as const

test('a table is folded, kept with the digest of its file, and never row by row', async () => {
  const data = await boatWithSet()
  const file = join(folder(), 'week.csv')
  const rows = [...Array(3000).keys()].map(
    (n) =>
      `${new Date(Date.UTC(2024, 6, 1) + 60_000 * n).toISOString().slice(0, 19)},${n % 720 < 120 ? 2200 : 0}`,
  )
  const text = ['time,Power (W)', ...rows, 'tea,12'].join('\n')
  writeFileSync(file, text)
  const answer = answerOf(await measure(file, { ...usual, data }))
  const [entry] = answer.entries
  expect(entry).toMatchObject({ from: '2024-07-01', until: '2024-07-03' })
  expect(entry!.body).toMatchObject({
    of: 'set',
    rows: 3001,
    badRows: 1,
    starts: 5,
    mostKw: 2.2,
    file: { name: 'week.csv', sha256: createHash('sha256').update(text).digest('hex'), bytes: text.length },
    columns: ['time from "time"', 'power from "Power (W)", W'],
  })
  expect(JSON.stringify(entry).length).toBeLessThan(3000)
  expect(answer.day).toMatchObject({ lowLoadShare: 0, starts: 5 / 3 })
  const checked = await measure(file, { ...usual, data: folder(), check: true })
  expect(checked.ok && checked.text).toContain('line 3002: found "tea,12"')
})

test('what is wrong with a recording is told, and nothing is written', async () => {
  const data = await boatWithSet()
  const file = join(folder(), 'amps.csv')
  writeFileSync(file, 'time,Amps\n2024-07-01 10:00,5\n')
  expect(await measure(file, { ...usual, data })).toMatchObject({
    ok: false,
    problems: [{ code: 'volts-open' }],
  })
  expect(await measure(file, { ...usual, data, column: ['tea=Amps'] })).toMatchObject({
    ok: false,
    problems: [{ path: '--column' }],
  })
  expect(await measure(join(folder(), 'none.csv'), { ...usual, data })).toMatchObject({
    ok: false,
    problems: [{ code: 'no-such-file' }],
  })
  expect((await measure(file, { ...usual, data, volts: 230, column: ['current=Amps'] })).ok).toBe(true)
})

test('a recorded stream of Signal K, and a table written as wide characters', async () => {
  const data = await boatWithSet()
  const stream = join(folder(), 'stream.log')
  const value = { path: 'electrical.ac.genset.phase.A.realPower', value: 2300 }
  const lines = [...Array(30).keys()].map((n) => {
    const delta = {
      updates: [{ timestamp: new Date(Date.UTC(2024, 6, 1, 10, 0, n)).toISOString(), values: [value] }],
    }
    return `1719828000000;I;${JSON.stringify(delta)}`
  })
  writeFileSync(stream, `${lines.join('\n')}\n`)
  expect(answerOf(await measure(stream, { ...usual, data }))).toMatchObject({ coveredS: 30, mostKw: 2.3 })
  const wide = join(folder(), 'wide.csv')
  writeFileSync(
    wide,
    Buffer.from('\ufefftime\tkW\r\n2024-07-01 10:00\t1.5\r\n2024-07-01 10:01\t2.5\r\n', 'utf16le'),
  )
  expect(answerOf(await measure(wide, { ...usual, data }))).toMatchObject({ rows: 2, mostKw: 2.5 })
})

/** A server that speaks as much of Signal K as is listened to. */
async function signalKServer(): Promise<{ address: string; asked: string[]; close: () => void }> {
  const asked: string[] = []
  const server = createServer((_, response) => {
    const { port } = server.address() as AddressInfo
    const endpoints = { v1: { version: '1.7.0', 'signalk-ws': `ws://127.0.0.1:${port}/signalk/v1/stream` } }
    response.setHeader('content-type', 'application/json')
    response.end(JSON.stringify({ endpoints }))
  })
  server.on('upgrade', (request, socket) => {
    const key = `${request.headers['sec-websocket-key']}258EAFA5-E914-47DA-95CA-C5AB0DC85B11`
    const accept = createHash('sha1').update(key).digest('base64')
    socket.write(
      `HTTP/1.1 101 Switching Protocols\r\nUpgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Accept: ${accept}\r\n\r\n`,
    )
    socket.on('data', (bytes: Buffer) => {
      if ((bytes[0]! & 15) !== 1) return
      const head = (bytes[1]! & 127) === 126 ? 4 : 2
      const mask = bytes.subarray(head, head + 4)
      const body = bytes.subarray(head + 4).map((byte, at) => byte ^ mask[at % 4]!)
      asked.push(`${request.url} ${Buffer.from(body).toString('utf8')}`)
      const say = (text: string) => {
        const payload = Buffer.from(text)
        const length = Buffer.alloc(2)
        length.writeUInt16BE(payload.length)
        return payload.length < 126
          ? Buffer.concat([Buffer.from([129, payload.length]), payload])
          : Buffer.concat([Buffer.from([129, 126]), length, payload])
      }
      socket.write(say('{"name":"test","version":"1.7.0"}'))
      socket.write(Buffer.from([137, 0]))
      for (let n = 0; n < 5; n++) {
        const values = [{ path: 'electrical.ac.genset.phase.single.realPower', value: 1000 + n }]
        const frame = say(
          JSON.stringify({
            updates: [{ timestamp: new Date(Date.UTC(2024, 6, 1, 10, 0, n)).toISOString(), values }],
          }),
        )
        // cut in two, as a network may
        socket.write(frame.subarray(0, 30))
        socket.write(frame.subarray(30))
      }
      setTimeout(() => socket.end(Buffer.from([136, 0])), 50)
    })
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    asked,
    close: () => server.close(),
  }
}

test('a Signal K server is asked for its stream and listened to', async () => {
  const data = await boatWithSet()
  const server = await signalKServer()
  try {
    const answer = answerOf(await measure(server.address, { ...usual, data, seconds: 20 }))
    expect(answer).toMatchObject({ coveredS: 5, mostKw: 1.004 })
    expect(answer.entries[0]!.body).toMatchObject({ source: `${server.address} electrical.ac.*` })
    expect(server.asked).toHaveLength(1)
    expect(server.asked[0]).toMatch(/^\/signalk\/v1\/stream\?subscribe=none .*"path":"electrical\.ac\.\*"/)
  } finally {
    server.close()
  }
  expect(await measure('http://127.0.0.1:9', { ...usual, data })).toMatchObject({
    ok: false,
    problems: [{ code: 'no-server' }],
  })
})
