/**
 * A posterior as bytes: a line of JSON with the length of each table, then the tables one after another.
 *
 * @module
 */

import type { Posterior } from '../forecast/posterior-type.js'

/** Tables that may be long, each with how its numbers are held. Those of eight bytes come first. */
const tables = {
  kappaLog: Float64Array,
  kappaWeight: Float64Array,
  theta: Float32Array,
  age: Float32Array,
  since: Float32Array,
  ageHours: Float32Array,
  serviceYears: Float32Array,
  serviceHours: Float32Array,
  state: Uint8Array,
  joint: Uint8Array,
} as const satisfies { readonly [K in keyof Posterior as Posterior[K] extends number ? never : K]: unknown }

type TableName = keyof typeof tables
const names = Object.keys(tables) as readonly TableName[]

interface Head {
  readonly logEvidence: number
  readonly lengths: Readonly<Record<TableName, number>>
}

const headBytes = 1024

/** The bytes of a posterior, in this machine's own order: they are not meant to leave it. */
export function posteriorBytes(posterior: Posterior): Uint8Array {
  const lengths = Object.fromEntries(names.map((name) => [name, posterior[name].length])) as Head['lengths']
  const head = JSON.stringify({ logEvidence: posterior.logEvidence, lengths })
  const size = names.reduce((sum, name) => sum + posterior[name].byteLength, headBytes)
  const bytes = new Uint8Array(size)
  bytes.set(new TextEncoder().encode(head.padEnd(headBytes)))
  let at = headBytes
  for (const name of names) {
    const table = posterior[name]
    bytes.set(new Uint8Array(table.buffer, table.byteOffset, table.byteLength), at)
    at += table.byteLength
  }
  return bytes
}

/** The posterior of bytes that `posteriorBytes` gave; undefined for any others. The tables lie in the bytes' own memory. */
export function posteriorFrom(bytes: Uint8Array): Posterior | undefined {
  const head = headOf(bytes)
  if (head === undefined) return undefined
  const found: Partial<Record<TableName, unknown>> = {}
  let at = bytes.byteOffset + headBytes
  for (const name of names) {
    const Table = tables[name]
    const length = head.lengths[name]
    const end = at + length * Table.BYTES_PER_ELEMENT
    if (!Number.isInteger(length) || end > bytes.byteOffset + bytes.byteLength) return undefined
    found[name] = new Table(bytes.buffer as ArrayBuffer, at, length)
    at = end
  }
  return { ...found, logEvidence: head.logEvidence } as unknown as Posterior
}

function headOf(bytes: Uint8Array): Head | undefined {
  try {
    const head = JSON.parse(new TextDecoder().decode(bytes.subarray(0, headBytes))) as Partial<Head>
    if (typeof head.logEvidence !== 'number' || typeof head.lengths !== 'object') return undefined
    return head as Head
  } catch {
    return undefined
  }
}
