/**
 * The compiled model as it lies in memory: sections with a name each, found once and then read in place.
 *
 * A section is its name (32 bytes, padded with zeros), the count of its numbers (u32), four bytes unused, and the
 * numbers, padded to 8 bytes. A name of length 0 ends them.
 *
 * @module
 */

const nameBytes = 32
const headBytes: usize = 40

let first: usize = 0

/** Says where the sections begin. */
export function openSections(at: usize): void {
  first = at
}

/** Address of a section's numbers. */
function find(name: string): usize {
  let at = first
  while (load<u8>(at) !== 0) {
    if (isNamed(at, name)) return at + headBytes
    at += headBytes + load<u32>(at, 36)
  }
  throw new Error(`the model has no section ${name}`)
}

function isNamed(at: usize, name: string): bool {
  for (let i = 0; i < name.length; i++) {
    if (load<u8>(at + i) !== <u8>name.charCodeAt(i)) return false
  }
  return name.length === nameBytes || load<u8>(at + name.length) === 0
}

export function countOf(name: string): i32 {
  return <i32>load<u32>(find(name) - 8)
}

export function doubles(name: string): StaticArray<f64> {
  return changetype<StaticArray<f64>>(find(name))
}

export function floats(name: string): StaticArray<f32> {
  return changetype<StaticArray<f32>>(find(name))
}

export function integers(name: string): StaticArray<i32> {
  return changetype<StaticArray<i32>>(find(name))
}

export function bytes(name: string): StaticArray<u8> {
  return changetype<StaticArray<u8>>(find(name))
}

/** The only number of a section. */
export function double(name: string): f64 {
  return load<f64>(find(name))
}

export function integer(name: string): i32 {
  return <i32>load<f64>(find(name))
}
