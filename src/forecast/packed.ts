/**
 * Results with large tables as bytes: the length of a line of JSON, that line, then the tables one after another.
 *
 * Which tables there are is taken from the result itself, so that none can be forgotten.
 *
 * @module
 */

/** How the numbers of a table are held; the longest come first, so that each lies where its length divides the place. */
const kinds = { Float64Array, Float32Array, Int32Array, Uint8Array } as const
type KindName = keyof typeof kinds
type Table = InstanceType<(typeof kinds)[KindName]>

/** Names of fields and places in lists, from the outside in. */
type Path = readonly (string | number)[]

interface Head {
  /** All but the tables. */
  readonly plain: unknown
  readonly tables: readonly { readonly path: Path; readonly kind: KindName; readonly length: number }[]
}

/** Head and tables begin at a multiple of this. */
const step = 8

/** The bytes of records, lists, maps and plain values, with tables in records and lists, in this machine's own order: they are not meant to leave it. */
export function packed(value: object): Uint8Array {
  const found = tablesIn(value, [])
  const tables = Object.keys(kinds).flatMap((kind) => found.filter((one) => one.kind === kind))
  const head: Head = {
    plain: value,
    tables: tables.map(({ path, kind, table }) => ({ path, kind, length: table.length })),
  }
  const text = new TextEncoder().encode(JSON.stringify(head, asJson))
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

/** What `packed` made bytes of; undefined for any other bytes. The tables lie in the bytes' own memory. */
export function unpacked<T extends object>(bytes: Uint8Array): T | undefined {
  const read = headOf(bytes)
  if (read === undefined) return undefined
  let at = read.end
  for (const { path, kind, length } of read.head.tables) {
    const end = at + length * kinds[kind].BYTES_PER_ELEMENT
    if (end > bytes.byteLength) return undefined
    const within = path.slice(0, -1).reduce((value: unknown, name) => fieldsOf(value)[name], read.head.plain)
    fieldsOf(within)[path.at(-1)!] = new kinds[kind](
      bytes.buffer as ArrayBuffer,
      bytes.byteOffset + at,
      length,
    )
    at = end
  }
  return at === bytes.byteLength ? (read.head.plain as T) : undefined
}

/** The one field of a record that stands for a map, and of one that stands for a number that JSON has no word for. */
const entriesOfMap = 'entries of map'
const numberInWords = 'number in words'

/** A table leaves its place empty; a map is its entries. */
function asJson(_: string, value: unknown): unknown {
  if (kindOf(value) !== undefined) return null
  if (Object.is(value, -0)) return { [numberInWords]: '-0' }
  if (typeof value === 'number' && !Number.isFinite(value)) return { [numberInWords]: String(value) }
  return value instanceof Map ? { [entriesOfMap]: [...value] } : value
}

function fromJson(_: string, value: unknown): unknown {
  const { [entriesOfMap]: entries, [numberInWords]: number } = (value ?? {}) as Record<string, unknown>
  if (typeof number === 'string') return Number(number)
  return Array.isArray(entries) ? new Map(entries as [unknown, unknown][]) : value
}

function tablesIn(
  value: unknown,
  path: Path,
): { readonly path: Path; readonly kind: KindName; readonly table: Table }[] {
  const kind = kindOf(value)
  if (kind !== undefined) return [{ path, kind, table: value as Table }]
  if (typeof value !== 'object' || value === null) return []
  const fields: (readonly [string | number, unknown])[] = Array.isArray(value)
    ? value.map((one, i) => [i, one])
    : Object.entries(value)
  return fields.flatMap(([name, one]) => tablesIn(one, [...path, name]))
}

function kindOf(value: unknown): KindName | undefined {
  if (!ArrayBuffer.isView(value)) return undefined
  return (Object.keys(kinds) as KindName[]).find((kind) => value instanceof kinds[kind])
}

function fieldsOf(value: unknown): Record<string | number, unknown> {
  return value as Record<string | number, unknown>
}

function headOf(bytes: Uint8Array): { readonly head: Head; readonly end: number } | undefined {
  try {
    const length = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0, true)
    // a copy: browsers read no text from memory that threads share
    const head = JSON.parse(new TextDecoder().decode(bytes.slice(step, step + length)), fromJson) as Head
    const sound =
      typeof head.plain === 'object' &&
      head.tables.every(({ kind, length: count }) => kind in kinds && Number.isInteger(count) && count >= 0)
    return sound ? { head, end: step + step * Math.ceil(length / step) } : undefined
  } catch {
    return undefined
  }
}
