import fc from 'fast-check'
import { expect, test } from 'vitest'
import { packed, unpacked } from './packed.js'

const doubles = fc.array(fc.double(), { maxLength: 9 }).map((list) => Float64Array.from(list))
const table = fc.oneof(
  doubles,
  doubles.map((list) => Float32Array.from(list)),
  fc.array(fc.integer(), { maxLength: 9 }).map((list) => Int32Array.from(list)),
  fc.uint8Array({ maxLength: 9 }),
)
const plain = fc.oneof(fc.jsonValue({ maxDepth: 2 }), fc.double())
const map = fc.array(fc.tuple(fc.string(), plain)).map((entries) => new Map(entries))
const leaf = fc.oneof(table, plain, map)
const result = fc.record({
  one: table,
  list: fc.array(fc.record({ name: fc.string(), of: leaf })),
  rest: leaf,
})

test('records, lists and maps with tables of every kind in them come back from their bytes to the bit', () => {
  fc.assert(
    fc.property(result, (value) => {
      expect(unpacked(packed(value))).toEqual(value)
    }),
  )
})

test('tables come back as they were cut from a longer one, and bytes that are not whole give nothing', () => {
  const whole = Float64Array.from({ length: 20 }, (_, i) => i / 3)
  const bytes = packed({ part: whole.subarray(5, 9), count: 4 })
  expect(unpacked(bytes)).toEqual({ part: whole.slice(5, 9), count: 4 })
  for (const short of [bytes.slice(0, -1), bytes.slice(0, 12), bytes.slice(0, 2), new Uint8Array()]) {
    expect(unpacked(short)).toBeUndefined()
  }
})
