/**
 * A WebSocket as far as listening needs one (RFC 6455): text comes in, a request goes out, pings are answered.
 *
 * @module
 */

import { createHash, randomBytes } from 'node:crypto'
import { request as plainRequest } from 'node:http'
import { request as secureRequest } from 'node:https'
import type { Duplex } from 'node:stream'

export interface Listening {
  /** Ends when the other side closes, or `close` is called. */
  readonly ended: Promise<void>
  send(text: string): void
  close(): void
}

const longestMessage = 4_000_000
/** Of the protocol: what the key is digested with. Source: RFC 6455, 1.3, quoted. */
const protocolMark = '258EAFA5-E914-47DA-95CA-C5AB0DC85B11'
const openingMs = 10_000
const opcodes = { more: 0, text: 1, close: 8, ping: 9, pong: 10 } as const

/** Opens a socket and hands every message to `onText`. */
export function listen(address: string, onText: (text: string) => void): Promise<Listening> {
  const url = new URL(address)
  const request = url.protocol === 'wss:' ? secureRequest : plainRequest
  const key = randomBytes(16).toString('base64')
  const headers = {
    Connection: 'Upgrade',
    Upgrade: 'websocket',
    'Sec-WebSocket-Version': '13',
    'Sec-WebSocket-Key': key,
  }
  return new Promise((resolve, reject) => {
    const asked = request({
      host: url.hostname,
      port: url.port === '' ? (url.protocol === 'wss:' ? 443 : 80) : Number(url.port),
      path: url.pathname + url.search,
      headers,
      timeout: openingMs,
    })
    asked.on('timeout', () => asked.destroy(new Error('it does not answer')))
    asked.on('error', reject)
    asked.on('response', ({ statusCode }) => {
      reject(new Error(`it answers ${statusCode} in place of a stream`))
      asked.destroy()
    })
    asked.on('upgrade', ({ headers: answered }, socket, head) => {
      const accept = createHash('sha1')
        .update(key + protocolMark)
        .digest('base64')
      if (answered['sec-websocket-accept'] !== accept) {
        socket.destroy()
        reject(new Error('it opens something that is no stream'))
        return
      }
      socket.setTimeout(0)
      resolve(listenOn(socket, head, onText))
    })
    asked.end()
  })
}

function listenOn(socket: Duplex, head: Buffer, onText: (text: string) => void): Listening {
  let held = head
  let message: Buffer[] = []
  const ended = new Promise<void>((resolve) => {
    socket.on('close', resolve)
    socket.on('error', () => socket.destroy())
  })
  const close = () => {
    if (!socket.destroyed) socket.end(frame(opcodes.close, Buffer.alloc(0)))
    setTimeout(() => socket.destroy(), 500).unref()
  }
  const take = (part: Part) => {
    if (part.opcode === opcodes.ping) socket.write(frame(opcodes.pong, part.body))
    if (part.opcode === opcodes.close) close()
    if (part.opcode !== opcodes.text && part.opcode !== opcodes.more) return
    message.push(part.body)
    if (message.reduce((sum, { length }) => sum + length, 0) > longestMessage) socket.destroy()
    if (!part.isLast) return
    const text = Buffer.concat(message).toString('utf8')
    message = []
    onText(text)
  }
  const read = () => {
    for (let part = partIn(held); part !== undefined; part = partIn(held)) {
      held = held.subarray(part.length)
      take(part)
    }
    if (held.length > longestMessage) socket.destroy()
  }
  socket.on('data', (chunk: Buffer) => {
    held = held.length === 0 ? chunk : Buffer.concat([held, chunk])
    read()
  })
  read()
  return { ended, close, send: (text) => void socket.write(frame(opcodes.text, Buffer.from(text, 'utf8'))) }
}

interface Part {
  readonly opcode: number
  readonly isLast: boolean
  readonly body: Buffer
  /** Of the whole frame. [bytes] */
  readonly length: number
}

/** The first frame in what has come; undefined while it is not all there. */
function partIn(bytes: Buffer): Part | undefined {
  if (bytes.length < 2) return undefined
  const short = bytes[1]! & 127
  const head = short === 126 ? 4 : short === 127 ? 10 : 2
  if (bytes.length < head) return undefined
  const size =
    short === 126 ? bytes.readUInt16BE(2) : short === 127 ? Number(bytes.readBigUInt64BE(2)) : short
  if (bytes.length < head + size) return undefined
  return {
    opcode: bytes[0]! & 15,
    isLast: (bytes[0]! & 128) !== 0,
    body: bytes.subarray(head, head + size),
    length: head + size,
  }
}

/** A frame of our own: whole, and masked as those of a client are. */
function frame(opcode: number, body: Buffer): Buffer {
  const mask = randomBytes(4)
  const size =
    body.length < 126
      ? Buffer.from([128 | body.length])
      : Buffer.from([128 | 126, body.length >> 8, body.length & 255])
  const masked = Buffer.from(body.map((byte, at) => byte ^ mask[at % 4]!))
  return Buffer.concat([Buffer.from([128 | opcode]), size, mask, masked])
}
