/**
 * Chance by name: every draw is a function of what it is for, so that lives under different rules share all that they have
 * in common.
 *
 * @module
 */

/** What a draw is for, in whole numbers. */
export type Name = readonly number[]

/** Uniform, strictly between 0 and 1. */
export function uniform(name: Name): number {
  let a = 0x243f6a88
  let b = 0x85a308d3
  for (const word of name) {
    a = mixed(a ^ mixed(word + 0x9e3779b9))
    b = mixed(Math.imul(b, 0x27d4eb2f) + a + 0x165667b1)
  }
  return ((mixed(a + Math.imul(b, 0x9e3779b1)) >>> 0) + 0.5) / 4294967296
}

/** A mixer of 32 bits: shifts and two odd multipliers. */
function mixed(word: number): number {
  let x = word | 0
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b)
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35)
  return x ^ (x >>> 16)
}

export function happens(name: Name, chance: number): boolean {
  return uniform(name) < chance
}

/** Unit mean. */
export function exponential(name: Name): number {
  return -Math.log(uniform(name))
}

/** Standard normal, √(−2 ln u) cos 2πv. */
export function normal(name: Name): number {
  return Math.sqrt(-2 * Math.log(uniform([...name, 1]))) * Math.cos(2 * Math.PI * uniform([...name, 2]))
}

/** Poisson: how many gaps of unit mean fit into the mean. */
export function poisson(name: Name, mean: number): number {
  let count = 0
  for (let sum = exponential([...name, 0]); sum < mean; sum += exponential([...name, count])) count++
  return count
}

/** Even between two ends. */
export function between(name: Name, ends: { readonly low: number; readonly high: number }): number {
  return ends.low + (ends.high - ends.low) * uniform(name)
}
