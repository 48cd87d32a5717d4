/**
 * Uncertain amounts, and the draws from them.
 *
 * @module
 */

import { EXPONENTIAL, FIXED } from '../codes'
import { uniformFrom } from './draws'
import { bytes, doubles } from './sections'

/** Many amounts in columns. */
export class Amounts {
  kind: StaticArray<u8>
  level: StaticArray<f64>
  spread: StaticArray<f64>

  constructor(name: string) {
    this.kind = bytes(`${name}.kind`)
    this.level = doubles(`${name}.level`)
    this.spread = doubles(`${name}.spread`)
  }
}

let normal = changetype<StaticArray<f64>>(0)

export function readNormal(): void {
  normal = doubles('normal')
}

/** Standard normal from 32 random bits: the mean of one of 4,096 equally likely slices. */
export function normalFrom(word: u32): f64 {
  return normal[word >>> 20]
}

export function drawAmount(amounts: Amounts, i: i32, word: u32): f64 {
  const level = amounts.level[i]
  const kind = amounts.kind[i]
  if (kind === FIXED) return level
  if (kind === EXPONENTIAL) return -level * Math.log(uniformFrom(word))
  return level * Math.exp(amounts.spread[i] * normalFrom(word))
}

export function meanAmount(amounts: Amounts, i: i32): f64 {
  const level = amounts.level[i]
  const spread = amounts.spread[i]
  return spread === 0 ? level : level * Math.exp(0.5 * spread * spread)
}
