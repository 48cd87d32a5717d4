/**
 * Chance for the slow simulator: its own generator and its own ways of drawing, shared with nothing in the product.
 *
 * @module
 */

import type { Amount } from '../../src/forecast/life-model.js'

/** A stream of random numbers. */
export interface Chance {
  /** Uniform, strictly between 0 and 1. */
  uniform(): number
}

/** The stream of one history: a 128-bit xorshift generator, started by a scrambler, its output multiplied once. */
export function chanceOf(seed: number, history: number): Chance {
  let a = scramble(scramble(seed >>> 0) ^ (history >>> 0))
  let b = scramble(a)
  let c = scramble(b)
  let d = scramble(c) | 1
  return {
    uniform() {
      // Marsaglia, 2003; recalled.
      const t = a ^ (a << 11)
      a = b
      b = c
      c = d
      d = d ^ (d >>> 19) ^ t ^ (t >>> 8)
      return ((Math.imul(d, 0x9e3779b1) >>> 0) + 0.5) / 4294967296
    },
  }
}

/** A mixer of 32 bits. */
function scramble(word: number): number {
  let x = (word + 0x9e3779b9) | 0
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b)
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35)
  return (x ^ (x >>> 16)) >>> 0
}

export function happens(chance: Chance, probability: number): boolean {
  return chance.uniform() < probability
}

export function exponential(chance: Chance): number {
  return -Math.log(chance.uniform())
}

/** Standard normal: √(−2 ln u) cos 2πv. */
export function normal(chance: Chance): number {
  return Math.sqrt(-2 * Math.log(chance.uniform())) * Math.cos(2 * Math.PI * chance.uniform())
}

export function lognormal(chance: Chance, law: { median: number; logSd: number }): number {
  return law.median * Math.exp(law.logSd * normal(chance))
}

export function weibull(chance: Chance, law: { shape: number; scale: number }): number {
  return law.scale * exponential(chance) ** (1 / law.shape)
}

export function pick<T>(chance: Chance, things: readonly T[]): T {
  return things[Math.min(things.length - 1, Math.floor(chance.uniform() * things.length))]!
}

/** Poisson: the number of unit-exponential gaps that fit into the mean. */
export function poisson(chance: Chance, mean: number): number {
  let count = 0
  for (let sum = exponential(chance); sum < mean; sum += exponential(chance)) count += 1
  return count
}

export function drawAmount(chance: Chance, amount: Amount): number {
  if (typeof amount === 'number') return amount
  if ('exponentialMean' in amount) return amount.exponentialMean * exponential(chance)
  return lognormal(chance, amount)
}

export function meanAmount(amount: Amount): number {
  if (typeof amount === 'number') return amount
  if ('exponentialMean' in amount) return amount.exponentialMean
  return amount.median * Math.exp(amount.logSd ** 2 / 2)
}

/** Γ(x) for x > 0: the product down to 1 … 2 and Lanczos’ sum (g = 7, nine terms; recalled). */
export function gammaOf(x: number): number {
  const terms = [
    0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
    12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
  ]
  let sum = terms[0]!
  for (let k = 1; k < terms.length; k++) sum += terms[k]! / (x - 1 + k)
  const t = x + 6.5
  return Math.sqrt(2 * Math.PI) * t ** (x - 0.5) * Math.exp(-t) * sum
}

/** Φ(−z): half the complementary error function, relative error under 2e-7 (Chebyshev fit; recalled). */
export function normalTail(z: number): number {
  const x = z / Math.SQRT2
  const t = 1 / (1 + Math.abs(x) / 2)
  const fit = [
    -1.26551223, 1.00002368, 0.37409196, 0.09678418, -0.18628806, 0.27886807, -1.13520398, 1.48851587,
    -0.82215223, 0.17087277,
  ]
  let power = 0
  for (let k = fit.length - 1; k >= 0; k--) power = power * t + fit[k]!
  const half = (t * Math.exp(-x * x + power)) / 2
  return x >= 0 ? half : 1 - half
}

/**
 * The share at which a Beta(2m, 2(1 − m)) law reaches the cumulative chance u; m itself where m is 0 or 1.
 * Halves the interval on the cumulative chance.
 */
export function detectionAt(mean: number, u: number): number {
  if (mean <= 0 || mean >= 1) return mean
  const a = 2 * mean
  const b = 2 * (1 - mean)
  let low = 0
  let high = 1
  for (let step = 0; step < 50; step++) {
    const middle = (low + high) / 2
    if (betaChance({ a, b, x: middle }) < u) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** Cumulative chance of a beta law with a + b = 2, so that 1/B(a, b) = Γ(2)/(Γ(a)Γ(b)); series in x, mirrored above the middle. */
function betaChance({ a, b, x }: { a: number; b: number; x: number }): number {
  if (x > 0.5) return 1 - betaChance({ a: b, b: a, x: 1 - x })
  // ∫₀ˣ y^(a−1) (1 − y)^(b−1) dy = x^a Σ (1 − b)ₙ xⁿ / (n! (a + n))
  let factor = 1
  let sum = 1 / a
  for (let n = 1; n < 60; n++) {
    factor *= ((n - b) * x) / n
    sum += factor / (a + n)
  }
  return (x ** a * sum) / (gammaOf(a) * gammaOf(b))
}
