/**
 * The beta distribution.
 *
 * @module
 */

import { requireWithin } from '../units/require.js'
import { lnGamma } from './special-gamma.js'

/** The two parameters of a beta distribution, for a share that lies between 0 and 1; its mean is a / (a + b). */
export interface BetaShape {
  /** Weight a towards 1; 0 or above. Nought puts all chance on the share 0. */
  readonly towardsOne: number
  /** Weight b towards 0; 0 or above. Nought puts all chance on the share 1. */
  readonly towardsZero: number
}

/**
 * Chance that a beta draw is at most `share`, the regularised incomplete beta function Iₓ(a, b).
 *
 * Continued fraction on the side of the mean where it converges fast, one minus it on the other.
 *
 * @throws RangeError if a weight is negative, both are 0 or the share is outside 0 to 1.
 */
export function betaCdf(beta: BetaShape & { readonly share: number }): number {
  const { towardsOne: a, towardsZero: b, share } = beta
  requireBeta(beta)
  requireWithin('share', share, 0, 1, '')
  if (share === 1 || a === 0) return 1
  if (share === 0 || b === 0) return 0
  if (share > (a + 1) / (a + b + 2)) {
    return 1 - leftShare({ towardsOne: b, towardsZero: a }, { lnShare: Math.log1p(-share), rest: share })
  }
  return leftShare(beta, { lnShare: Math.log(share), rest: 1 - share })
}

/**
 * The share below which a beta draw falls with the given chance.
 *
 * For weights near 0 the answer may be smaller than any double and is then 0.
 *
 * @throws RangeError if a weight is negative, both are 0 or the chance is outside 0 to 1.
 *
 * @example
 * betaQuantile({ towardsOne: 1.4, towardsZero: 0.6, chance: 0.5 }) // 0.78…
 */
export function betaQuantile(beta: BetaShape & { readonly chance: number }): number {
  const { towardsOne: a, towardsZero: b, chance } = beta
  requireBeta(beta)
  requireWithin('chance', chance, 0, 1, '')
  if (a === 0 || chance === 0) return a === 0 ? 0 : b === 0 ? 1 : 0
  if (b === 0 || chance === 1) return 1
  if (chance <= 0.5 || chance <= betaCdf({ ...beta, share: 0.5 })) return leftQuantile(beta, chance)
  return 1 - leftQuantile({ towardsOne: b, towardsZero: a }, 1 - chance)
}

/** The quantile by Newton's steps for ln chance in ln share, kept inside a shrinking bracket. */
function leftQuantile(beta: BetaShape, chance: number): number {
  const { towardsOne: a, towardsZero: b } = beta
  const lnBeta = lnGamma(a) + lnGamma(b) - lnGamma(a + b)
  const goal = Math.log(chance)
  let low = -745
  let high = -1e-17
  if (Math.log(betaCdf({ ...beta, share: Math.exp(low) })) >= goal) return 0
  // Where x^a / (a B) alone would make the chance: the answer itself for small shares.
  let y = Math.min(high, Math.max(low, (goal + Math.log(a) + lnBeta) / a))
  for (let step = 0; step < 200; step++) {
    const share = Math.exp(y)
    const cdf = betaCdf({ ...beta, share })
    const miss = Math.log(cdf) - goal
    if (miss > 0) high = y
    else low = y
    const slope = Math.exp(a * y + (b - 1) * Math.log1p(-share) - lnBeta) / cdf
    const newton = y - miss / slope
    const next = newton > low && newton < high ? newton : (low + high) / 2
    if (Math.abs(next - y) < 1e-16 * (1 + Math.abs(y)) || high - low < 1e-16 * (1 + Math.abs(y)))
      return Math.exp(next)
    y = next
  }
  return Math.exp(y)
}

/** Iₓ(a, b) by its continued fraction (modified Lentz), for x left of (a + 1)/(a + b + 2); x given as ln x and 1 − x. */
function leftShare(beta: BetaShape, x: { readonly lnShare: number; readonly rest: number }): number {
  const { towardsOne: a, towardsZero: b } = beta
  const share = Math.exp(x.lnShare)
  const front = Math.exp(lnGamma(a + b) - lnGamma(a) - lnGamma(b) + a * x.lnShare + b * Math.log(x.rest)) / a
  const tiny = 1e-300
  let c = 1
  let d = 1 / nonZero(1 - ((a + b) * share) / (a + 1), tiny)
  let value = d
  for (let m = 1; m < 10_000; m++) {
    const even = (m * (b - m) * share) / ((a + 2 * m - 1) * (a + 2 * m))
    d = 1 / nonZero(1 + even * d, tiny)
    c = nonZero(1 + even / c, tiny)
    value *= c * d
    const odd = (-(a + m) * (a + b + m) * share) / ((a + 2 * m) * (a + 2 * m + 1))
    d = 1 / nonZero(1 + odd * d, tiny)
    c = nonZero(1 + odd / c, tiny)
    value *= c * d
    if (Math.abs(c * d - 1) < 2e-16) break
  }
  return front * value
}

function nonZero(value: number, otherwise: number): number {
  return value === 0 ? otherwise : value
}

function requireBeta({ towardsOne, towardsZero }: BetaShape): void {
  requireWithin('towardsOne', towardsOne, 0, 1e6, '')
  requireWithin('towardsZero', towardsZero, 0, 1e6, '')
  if (towardsOne === 0 && towardsZero === 0) {
    throw new RangeError('towardsOne must be above 0 when towardsZero is 0; found 0')
  }
}
