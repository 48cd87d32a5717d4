/**
 * The gamma function and its incomplete forms, as accurate as doubles allow.
 *
 * @module
 */

import { requireWithin } from '../units/require.js'

/** Where an incomplete gamma function is asked for. */
export interface GammaPoint {
  /** First parameter a; above 0 and at most 1e6. */
  readonly shape: number
  /** Where the integral is cut, x; 0 or above, infinity allowed. */
  readonly at: number
}

/** Riemann's ζ(k) − 1 for k = 2, 3, …; derived, with thirty digits of working. */
const zetaLessOne = [
  0.6449340668482264, 0.2020569031595943, 0.08232323371113819, 0.03692775514336993, 0.01734306198444914,
  0.008349277381922827, 0.00407735619794434, 0.0020083928260822143, 0.0009945751278180853,
  0.0004941886041194645, 0.0002460865533080483, 0.00012271334757848915, 0.00006124813505870483,
  0.00003058823630702049, 0.00001528225940865187, 0.000007637197637899763, 3.81729326499984e-6,
  0.000001908212716553939, 9.539620338727962e-7, 4.769329867878064e-7, 2.38450502727733e-7,
  1.1921992596531106e-7, 5.960818905125948e-8, 2.980350351465228e-8, 1.4901554828365043e-8,
  7.45071178983543e-9, 3.725334024788457e-9,
]
/** 1 − γ, with Euler's constant γ; derived. */
const oneLessEuler = 0.42278433509846713

/** ln Γ(2 + z) for |z| ≤ 1/2: `z (1 − γ) + Σ_{k≥2} (ζ(k) − 1) (−z)^k / k`. */
function lnGammaNearTwo(z: number): number {
  let sum = 0
  for (let index = zetaLessOne.length - 1; index >= 0; index--) {
    sum = zetaLessOne[index]! / (index + 2) - z * sum
  }
  return z * (oneLessEuler + z * sum)
}

/** ln Γ*(x) = ln Γ(x) − (x − 1/2) ln x + x − ln √(2π), Stirling's remainder, for x ≥ 10. */
function stirlingRemainder(x: number): number {
  const s = 1 / (x * x)
  const series =
    1 / 12 +
    s *
      (-1 / 360 +
        s *
          (1 / 1260 +
            s * (-1 / 1680 + s * (1 / 1188 + s * (-691 / 360360 + s * (1 / 156 - (s * 3617) / 122400))))))
  return series / x
}

const lnRootTwoPi = 0.9189385332046727

/**
 * ln Γ(x) for x above 0.
 *
 * Relative error under 1e-14, also beside the zeros at 1 and 2: the power series about 2 with factors taken off
 * up to x = 12, Stirling's series above it.
 *
 * @throws RangeError unless x is above 0.
 */
export function lnGamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`x must be above 0; found ${x}`)
  if (x >= 12) return (x - 0.5) * Math.log(x) - x + lnRootTwoPi + stirlingRemainder(x)
  if (x < 0.5) return lnGammaNearTwo(x) - Math.log(x) - Math.log1p(x)
  if (x < 1.5) return lnGammaNearTwo(x - 1) - Math.log1p(x - 1)
  let product = 1
  let rest = x
  while (rest > 2.5) {
    rest -= 1
    product *= rest
  }
  return Math.log(product) + lnGammaNearTwo(rest - 2)
}

/**
 * Γ(x) for x above 0; infinity above about 171.6. Exact at whole numbers to 12, relative error under 1e-13 elsewhere.
 *
 * @throws RangeError unless x is above 0.
 */
export function gamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`x must be above 0; found ${x}`)
  if (x > 12) return Math.exp(lnGamma(x))
  if (x < 0.5) return Math.exp(lnGammaNearTwo(x)) / (x * (1 + x))
  if (x < 1.5) return Math.exp(lnGammaNearTwo(x - 1)) / x
  let product = 1
  let rest = x
  while (rest > 2.5) {
    rest -= 1
    product *= rest
  }
  return product * Math.exp(lnGammaNearTwo(rest - 2))
}

/**
 * Regularised lower incomplete gamma function P(a, x) = ∫₀ˣ t^(a−1) e^(−t) dt / Γ(a).
 *
 * Power series left of the middle of the distribution, 1 − Q right of it.
 *
 * @throws RangeError if the shape is outside 0 to 1e6 or the cut below 0.
 */
export function lowerGammaShare(point: GammaPoint): number {
  requirePoint(point)
  return leftOfMiddle(point) ? lowerBySeries(point) : 1 - upperGammaShare(point)
}

/**
 * Regularised upper incomplete gamma function Q(a, x) = ∫ₓ^∞ t^(a−1) e^(−t) dt / Γ(a).
 *
 * Keeps its relative accuracy in the tail, where 1 − P would have none.
 *
 * @throws RangeError if the shape is outside 0 to 1e6 or the cut below 0.
 */
export function upperGammaShare(point: GammaPoint): number {
  requirePoint(point)
  const { at } = point
  if (at === 0) return 1
  if (at === Infinity) return 0
  if (leftOfMiddle(point)) return 1 - lowerBySeries(point)
  if (at <= nearZero) return upperNearZero(point)
  return powerOverGamma(point) * upperFraction(point)
}

/**
 * e^x Γ(a, x), the upper incomplete gamma function with its exponential taken out, so that it neither overflows nor
 * vanishes however large x is; about x^(a−1) for large x.
 *
 * @throws RangeError if the shape is outside 0 to 1e6 or the cut below 0 or infinite.
 */
export function scaledUpperGamma(point: GammaPoint): number {
  requirePoint(point)
  const { shape, at } = point
  requireWithin('at', at, 0, Number.MAX_VALUE, '')
  if (at > nearZero && !leftOfMiddle(point)) return at ** shape * upperFraction(point)
  return Math.exp(at) * gamma(shape) * upperGammaShare(point)
}

/** Below this the continued fraction of Q converges too slowly and the series about 0 is used. */
const nearZero = 1.1

function requirePoint({ shape, at }: GammaPoint): void {
  requireWithin('shape', shape, Number.MIN_VALUE, 1e6, '')
  requireWithin('at', at, 0, Infinity, '')
}

/** Whether P is the smaller of the two, roughly; the median of a gamma life lies between a − 1/3 and a. */
function leftOfMiddle({ shape, at }: GammaPoint): boolean {
  return at < shape && !(shape < 1 && at > 0.25 * shape)
}

/** x^a e^(−x) / Γ(a), written about x = a for large shapes, where the plain form loses digits. */
function powerOverGamma({ shape, at }: GammaPoint): number {
  if (shape < 10) return Math.exp(shape * Math.log(at) - at) / gamma(shape)
  const m = (at - shape) / shape
  const less = m < -0.5 || m > 1 ? Math.log(at / shape) - m : log1pLess(m)
  const lift = shape * less - stirlingRemainder(shape)
  return Math.exp(lift) * Math.sqrt(shape / (2 * Math.PI))
}

/** ln(1 + m) − m without cancellation, for m from −1/2 to 1. */
function log1pLess(m: number): number {
  const r = m / (2 + m)
  const square = r * r
  let term = r * square
  let sum = 0
  for (let k = 3; Math.abs(term) > 1e-18 * Math.abs(sum) && k < 80; k += 2) {
    sum += term / k
    term *= square
  }
  return 2 * sum - r * m
}

/** P(a, x) = x^a e^(−x) / Γ(a) · Σ xⁿ / (a (a+1) … (a+n)). */
function lowerBySeries(point: GammaPoint): number {
  const { shape, at } = point
  if (at === 0) return 0
  let term = 1 / shape
  let sum = term
  for (let n = 1; term > 1e-17 * sum; n++) {
    term *= at / (shape + n)
    sum += term
  }
  return powerOverGamma(point) * sum
}

/** Γ(a, x) e^x x^(−a) by Legendre's continued fraction (modified Lentz), for x above {@link nearZero} and near or above a. */
function upperFraction({ shape, at }: GammaPoint): number {
  const tiny = 1e-300
  let b = at + 1 - shape
  let c = 1 / tiny
  let d = b === 0 ? 1 / tiny : 1 / b
  let value = d
  for (let n = 1; n < 100_000; n++) {
    const a = n * (shape - n)
    b += 2
    d = a * d + b
    if (d === 0) d = tiny
    d = 1 / d
    c = b + a / c
    if (c === 0) c = tiny
    const factor = c * d
    value *= factor
    if (Math.abs(factor - 1) < 2e-16) break
  }
  return value
}

/** Q(a, x) for small a and x, where neither 1 − P nor the continued fraction will do: 1 − x^a/Γ(1+a) · (1 + a Σ (−x)ⁿ/(n! (a+n))). */
function upperNearZero({ shape, at }: GammaPoint): number {
  const lift = shape * Math.log(at) - lnGamma(1 + shape)
  let power = 1
  let sum = 0
  for (let n = 1; n < 60; n++) {
    power *= -at / n
    const term = power / (shape + n)
    sum += term
    if (Math.abs(term) < 1e-18 * Math.abs(sum)) break
  }
  return -Math.expm1(lift) - Math.exp(lift) * shape * sum
}
