/**
 * Every random number as a pure function of what it is for, so that the n-th life of a part is the same in every
 * alternative (common random numbers): Threefry-2×32 with 20 rounds.
 *
 * Source: Salmon, Moraes, Dror and Shaw, "Parallel random numbers: as easy as 1, 2, 3", SC11 (2011); recalled, and held
 * to the authors' published known answers in the test.
 *
 * @module
 */

import * as purpose from '../purpose'

/** Parity word that makes the third key word; Salmon et al. after Skein 1.3; recalled. */
const parity: u32 = 0x1bd11bda

const lifeBits = 19
const purposeBits = 6
const useBits = 18

/** Stands for "no mode": draws of the set as a whole. */
export const WHOLE_SET = 8191
/** Sets are numbered in the eight bits that are left of a word. */
export const mostSets = 256

/** The two words of the last draw. */
export let word0: u32 = 0
export let word1: u32 = 0

let seed: u32 = 0
let history: u32 = 0
/** The last pair of lives drawn: its counter, and its words. */
let pairCounter0: u32 = 0
let pairCounter1: u32 = 0
let pairIsDrawn: bool = false
let pairWord0: u32 = 0
let pairWord1: u32 = 0

/** Begins another history. */
export function beginDraws(ofSeed: u32, ofHistory: u32): void {
  seed = ofSeed
  history = ofHistory
  pairIsDrawn = false
}

/** First counter word: mode and life. */
export function counterOfLife(mode: i32, life: i32): u32 {
  return (mode << lifeBits) | life
}

/** Second counter word: set, purpose, and which use of the purpose in that life. */
export function counterOfUse(set: i32, forWhat: i32, use: i32): u32 {
  return (set << (purposeBits + useBits)) | (forWhat << useBits) | use
}

/** Puts a draw into `word0` and `word1`. */
export function draw(set: i32, mode: i32, life: i32, forWhat: i32, use: i32): void {
  threefry(seed, history, counterOfLife(mode, life), counterOfUse(set, forWhat, use))
}

/** The word of a mode's life: neighbours share a draw, and a part renews its modes together, so most need none of their own. */
export function lifeWord(set: i32, mode: i32, life: i32): u32 {
  const counter0 = counterOfLife(mode >> 1, life)
  const counter1 = counterOfUse(set, purpose.life, 0)
  if (!pairIsDrawn || counter0 !== pairCounter0 || counter1 !== pairCounter1) {
    threefry(seed, history, counter0, counter1)
    pairCounter0 = counter0
    pairCounter1 = counter1
    pairIsDrawn = true
    pairWord0 = word0
    pairWord1 = word1
  }
  return (mode & 1) === 0 ? pairWord0 : pairWord1
}

/** Uniform in (0, 1) from 32 random bits, never 0 or 1. */
export function uniformFrom(word: u32): f64 {
  return (<f64>word + 0.5) / 4294967296
}

/** Uniform in (0, 1) from the lower 24 of 32 random bits, never 0 or 1; the upper eight are free for a table. */
export function uniformFromLow(word: u32): f64 {
  return (<f64>(word & 0xffffff) + 0.5) / 16777216
}

/** Encrypts the counter under the key: each round is x₀ += x₁, x₁ = (x₁ <<< r) ^ x₀; the key comes in after every fourth. */
export function threefry(key0: u32, key1: u32, counter0: u32, counter1: u32): void {
  const key2 = parity ^ key0 ^ key1
  let a = counter0 + key0
  let b = counter1 + key1

  a += b
  b = rotl(b, 13) ^ a
  a += b
  b = rotl(b, 15) ^ a
  a += b
  b = rotl(b, 26) ^ a
  a += b
  b = rotl(b, 6) ^ a
  a += key1
  b += key2 + 1

  a += b
  b = rotl(b, 17) ^ a
  a += b
  b = rotl(b, 29) ^ a
  a += b
  b = rotl(b, 16) ^ a
  a += b
  b = rotl(b, 24) ^ a
  a += key2
  b += key0 + 2

  a += b
  b = rotl(b, 13) ^ a
  a += b
  b = rotl(b, 15) ^ a
  a += b
  b = rotl(b, 26) ^ a
  a += b
  b = rotl(b, 6) ^ a
  a += key0
  b += key1 + 3

  a += b
  b = rotl(b, 17) ^ a
  a += b
  b = rotl(b, 29) ^ a
  a += b
  b = rotl(b, 16) ^ a
  a += b
  b = rotl(b, 24) ^ a
  a += key1
  b += key2 + 4

  a += b
  b = rotl(b, 13) ^ a
  a += b
  b = rotl(b, 15) ^ a
  a += b
  b = rotl(b, 26) ^ a
  a += b
  b = rotl(b, 6) ^ a
  word0 = a + key2
  word1 = b + key0 + 5
}
