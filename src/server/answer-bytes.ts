/**
 * Answers with bytes: not sent again where the browser has them, and compressed where it pays.
 *
 * @module
 */

import { promisify } from 'node:util'
import { constants, gzip } from 'node:zlib'
import type { Context } from 'hono'

const packed = promisify(gzip)

export interface Bytes {
  readonly bytes: Uint8Array
  readonly type: string
  /** Changes with the bytes; without quotation marks. */
  readonly tag: string
  readonly cache: string
  /** Bytes that stay in memory: compressed once, and kept so. */
  readonly stays?: true
}

export async function answerBytes(c: Context, of: Bytes): Promise<Response> {
  // Weak, since the compressed answer bears it too.
  const tag = `W/"${of.tag}"`
  c.header('ETag', tag)
  c.header('Cache-Control', of.cache)
  c.header('Vary', 'Accept-Encoding')
  if (c.req.header('if-none-match') === tag) return c.body(null, 304)
  c.header('Content-Type', of.type)
  if (!mayPack(c, of)) return c.body(of.bytes as Uint8Array<ArrayBuffer>)
  c.header('Content-Encoding', 'gzip')
  return c.body((await pack(of)) as Uint8Array<ArrayBuffer>)
}

const kept = new WeakMap<Uint8Array, Promise<Uint8Array>>()

/** Quick rather than small where it is done each time: it goes no further than this machine. */
function pack({ bytes, stays }: Bytes): Promise<Uint8Array> {
  if (!stays) return packed(bytes, { level: constants.Z_BEST_SPEED })
  const before = kept.get(bytes) ?? packed(bytes)
  kept.set(bytes, before)
  return before
}

const leastPacked = 1_000

function mayPack(c: Context, { bytes, type }: Bytes): boolean {
  const wanted = /\bgzip\b/.test(c.req.header('accept-encoding') ?? '')
  return wanted && bytes.length >= leastPacked && /^text\/|json|javascript|svg|wasm/.test(type)
}
