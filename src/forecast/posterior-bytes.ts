/**
 * A posterior as bytes: the length of a line of JSON, that line, then the tables one after another.
 *
 * Which tables there are is taken from the posterior itself, so that none can be forgotten.
 *
 * @module
 */

import type { Posterior } from './posterior-type.js'

/** How the numbers of a table are held; the longest come first, so that each lies where its length divides the place. */
const kinds = { Float64Array, Float32Array, Int32Array, Uint8Array } as const
type KindName = keyof typeof kinds
type Table = InstanceType<(typeof kinds)[KindName]>

interface Head {
  /** What is no table. */
  readonly plain: Readonly<Record<string, unknown>>
  readonly tables: readonly { readonly name: string; readonly kind: KindName; readonly length: number }[]
}

/** Head and tables begin at a multiple of this. */
const step = 8

/** The bytes of a posterior, in this machine's own order: they are not meant to leave it. */
export function posteriorBytes(posterior: Posterior): Uint8Array {
  const fields = Object.entries(posterior)
  const plain = Object.fromEntries(fields.filter(([, value]) => kindOf(value) === undefined))
  const tables = Object.keys(kinds).flatMap((kind) =>
    fields
      .filter(([, value]) => kindOf(value) === kind)
      .map(([name, value]) => ({ name, kind: kind as KindName, table: value as Table })),
  )
  const head: Head = {
    plain,
    tables: tables.map(({ name, kind, table }) => ({ name, kind, length: table.length })),
  }
  const text = new TextEncoder().encode(JSON.stringify(head))
  const begin = step + step * Math.ceil(text.length / step)
  const bytes = new Uint8Array(tables.reduce((sum, { table }) => sum + table.byteLength, begin))
  new DataView(bytes.buffer).setUint32(0, text.length, true)
  bytes.set(text, step)
  let at = begin
  for (const { table } of tables) {
    bytes.set(new Uint8Array(table.buffer, table.byteOffset, table.byteLength), at)
    at += table.byteLength
  }
  return bytes
}

/** The posterior of bytes that `posteriorBytes` gave; undefined for any others. The tables lie in the bytes' own memory. */
export function posteriorFrom(bytes: Uint8Array): Posterior | undefined {
  const read = headOf(bytes)
  if (read === undefined) return undefined
  const found: Record<string, unknown> = { ...read.head.plain }
  let at = read.end
  for (const { name, kind, length } of read.head.tables) {
    const end = at + length * kinds[kind].BYTES_PER_ELEMENT
    if (end > bytes.byteLength) return undefined
    found[name] = new kinds[kind](bytes.buffer as ArrayBuffer, bytes.byteOffset + at, length)
    at = end
  }
  return at === bytes.byteLength ? (found as unknown as Posterior) : undefined
}

function kindOf(value: unknown): string | undefined {
  return Object.entries(kinds).find(([, Kind]) => value instanceof Kind)?.[0]
}

function headOf(bytes: Uint8Array): { readonly head: Head; readonly end: number } | undefined {
  try {
    const length = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0, true)
    // a copy: browsers read no text from memory that threads share
    const head = JSON.parse(new TextDecoder().decode(bytes.slice(step, step + length))) as Head
    const sound =
      typeof head.plain === 'object' &&
      head.tables.every(({ kind, length: count }) => kind in kinds && Number.isInteger(count) && count >= 0)
    return sound ? { head, end: step + step * Math.ceil(length / step) } : undefined
  } catch {
    return undefined
  }
}
