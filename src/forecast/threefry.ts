/**
 * Random numbers that are a pure function of a key and a counter: no state, so any draw can be had in any order.
 *
 * @module
 */

/** Parity word that makes the third key word. Source: Salmon, Moraes, Dror and Shaw, SC11 (2011), after Skein 1.3; recalled. */
const parity = 0x1bd11bda

/** Values that a word can take. */
const words = 2 ** 32

/**
 * Threefry-2×32 with 20 rounds: encrypts the counter (`counter0`, `counter1`) under the key (`key0`, `key1`)
 * and puts two words of 32 random bits into `out[0]` and `out[1]`.
 *
 * Each round is `x0 += x1; x1 = (x1 <<< r) ^ x0`, with rotations r = 13 15 26 6, 17 29 16 24 in turn; the key is
 * added in before the first round and after every fourth.
 *
 * The four words stand side by side, against the habit of this code, because this is the innermost loop of the
 * simulator: a record for each draw would cost more than the draw. Any number is taken modulo 2³².
 *
 * Source: Salmon, Moraes, Dror and Shaw, "Parallel random numbers: as easy as 1, 2, 3", SC11 (2011); recalled,
 * and held to the authors' published known answers in the test.
 */
export function threefry2x32(
  key0: number,
  key1: number,
  counter0: number,
  counter1: number,
  out: Uint32Array,
): void {
  const key2 = parity ^ key0 ^ key1
  let a = (counter0 + key0) | 0
  let b = (counter1 + key1) | 0

  a = (a + b) | 0
  b = ((b << 13) | (b >>> 19)) ^ a
  a = (a + b) | 0
  b = ((b << 15) | (b >>> 17)) ^ a
  a = (a + b) | 0
  b = ((b << 26) | (b >>> 6)) ^ a
  a = (a + b) | 0
  b = ((b << 6) | (b >>> 26)) ^ a
  a = (a + key1) | 0
  b = (b + key2 + 1) | 0

  a = (a + b) | 0
  b = ((b << 17) | (b >>> 15)) ^ a
  a = (a + b) | 0
  b = ((b << 29) | (b >>> 3)) ^ a
  a = (a + b) | 0
  b = ((b << 16) | (b >>> 16)) ^ a
  a = (a + b) | 0
  b = ((b << 24) | (b >>> 8)) ^ a
  a = (a + key2) | 0
  b = (b + key0 + 2) | 0

  a = (a + b) | 0
  b = ((b << 13) | (b >>> 19)) ^ a
  a = (a + b) | 0
  b = ((b << 15) | (b >>> 17)) ^ a
  a = (a + b) | 0
  b = ((b << 26) | (b >>> 6)) ^ a
  a = (a + b) | 0
  b = ((b << 6) | (b >>> 26)) ^ a
  a = (a + key0) | 0
  b = (b + key1 + 3) | 0

  a = (a + b) | 0
  b = ((b << 17) | (b >>> 15)) ^ a
  a = (a + b) | 0
  b = ((b << 29) | (b >>> 3)) ^ a
  a = (a + b) | 0
  b = ((b << 16) | (b >>> 16)) ^ a
  a = (a + b) | 0
  b = ((b << 24) | (b >>> 8)) ^ a
  a = (a + key1) | 0
  b = (b + key2 + 4) | 0

  a = (a + b) | 0
  b = ((b << 13) | (b >>> 19)) ^ a
  a = (a + b) | 0
  b = ((b << 15) | (b >>> 17)) ^ a
  a = (a + b) | 0
  b = ((b << 26) | (b >>> 6)) ^ a
  a = (a + b) | 0
  b = ((b << 6) | (b >>> 26)) ^ a
  out[0] = a + key2
  out[1] = b + key0 + 5
}

/** The one-word form keeps its second word here; nothing reads it. */
const scratch = new Uint32Array(2)

/**
 * A uniform draw, open at both ends, from the first word of {@link threefry2x32} under the same four words.
 *
 * For places that need one number and no array of their own. Two draws that are needed together are cheaper by
 * one call of {@link threefry2x32} and two of {@link uniformOfWord}.
 */
export function threefryUniform(key0: number, key1: number, counter0: number, counter1: number): number {
  threefry2x32(key0, key1, counter0, counter1, scratch)
  return uniformOfWord(scratch[0]!)
}

/**
 * A word of 32 random bits as a number strictly between 0 and 1: `(word + 1/2) / 2³²`.
 *
 * Never 0 or 1, so that `ln u`, `ln(1 − u)` and the normal quantile are finite for every word.
 */
export function uniformOfWord(word: number): number {
  return (word + 0.5) / words
}
