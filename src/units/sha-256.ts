/**
 * The digest of a file, taken in as it is read: a browser's own digest wants all of it at once, and a secure place.
 *
 * @module
 */

/** A digest under way. */
export interface Digest {
  take(bytes: Uint8Array): void
  /** As 64 hexadecimal figures. */
  end(): string
}

/** First 32 bits of the fractional parts of the cube roots of the first 64 primes. FIPS 180-4 4.2.2; held: recalled, proved by its examples. */
const constants = rootsOf(64, Math.cbrt)
/** Likewise of the square roots of the first eight. FIPS 180-4 5.3.3. */
const beginning = rootsOf(8, Math.sqrt)
const blockBytes = 64

/** SHA-256. Source: FIPS 180-4 section 6.2. */
export function sha256(): Digest {
  const state = Uint32Array.from(beginning)
  const block = new Uint8Array(blockBytes)
  const words = new Uint32Array(64)
  let filled = 0
  let length = 0
  const add = (bytes: Uint8Array) => {
    for (let from = 0; from < bytes.length; ) {
      const piece = bytes.subarray(from, from + blockBytes - filled)
      block.set(piece, filled)
      filled += piece.length
      from += piece.length
      if (filled < blockBytes) return
      mix(state, block, words)
      filled = 0
    }
  }
  return {
    take: (bytes) => {
      length += bytes.length
      add(bytes)
    },
    end: () => {
      // a one, noughts, and the length in bits as the last eight bytes
      const padding = new Uint8Array((filled < 56 ? 56 : 120) - filled + 8)
      padding[0] = 0x80
      const bits = new DataView(padding.buffer)
      bits.setUint32(padding.length - 8, Math.floor(length / 2 ** 29))
      bits.setUint32(padding.length - 4, (length * 8) >>> 0)
      add(padding)
      return Array.from(state, (word) => word.toString(16).padStart(8, '0')).join('')
    },
  }
}

/** One block. FIPS 180-4 6.2.2. */
function mix(state: Uint32Array, block: Uint8Array, words: Uint32Array): void {
  const view = new DataView(block.buffer)
  for (let t = 0; t < 16; t++) words[t] = view.getUint32(4 * t)
  for (let t = 16; t < 64; t++) {
    const [near, far] = [words[t - 2]!, words[t - 15]!]
    const s1 = turned(near, 17) ^ turned(near, 19) ^ (near >>> 10)
    const s0 = turned(far, 7) ^ turned(far, 18) ^ (far >>> 3)
    words[t] = s1 + words[t - 7]! + s0 + words[t - 16]!
  }
  let [a, b, c, d, e, f, g, h] = state as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  for (let t = 0; t < 64; t++) {
    const s1 = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)
    const first = (h + s1 + ((e & f) ^ (~e & g)) + constants[t]! + words[t]!) | 0
    const s0 = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)
    const second = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0
    ;[h, g, f, e, d, c, b, a] = [g, f, e, (d + first) | 0, c, b, a, (first + second) | 0]
  }
  ;[a, b, c, d, e, f, g, h].forEach((word, i) => {
    state[i]! += word
  })
}

function turned(word: number, by: number): number {
  return (word >>> by) | (word << (32 - by))
}

function rootsOf(count: number, root: (prime: number) => number): Uint32Array {
  const primes: number[] = []
  for (let n = 2; primes.length < count; n++) if (primes.every((prime) => n % prime > 0)) primes.push(n)
  return Uint32Array.from(primes, (prime) => Math.floor((root(prime) % 1) * 2 ** 32))
}
