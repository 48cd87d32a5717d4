/**
 * Uncertain amounts added up, and what can be said of one without drawing.
 *
 * @module
 */

import type { Amount } from '../forecast/life-model.js'
import { normalCdf } from '../forecast/special-normal.js'

/** Mean of an amount: `m·exp(s²/2)` of a log-normal with median m and log standard deviation s. */
export function meanOf(amount: Amount): number {
  if (typeof amount === 'number') return amount
  return 'median' in amount ? amount.median * Math.exp(amount.logSd ** 2 / 2) : amount.exponentialMean
}

/** Its variance: `M²·(exp(s²) − 1)` of a log-normal with mean M; `M²` of an exponential. */
export function varianceOf(amount: Amount): number {
  if (typeof amount === 'number') return 0
  const mean = meanOf(amount)
  return 'median' in amount ? mean ** 2 * Math.expm1(amount.logSd ** 2) : mean ** 2
}

/**
 * The sum of independent amounts as one log-normal with their mean M and variance V: `s² = ln(1 + V/M²)`, median `M·exp(−s²/2)`.
 * Mean and variance are exact, and a single amount stays as it is; the shape is near where no log standard deviation is much over 0.5.
 *
 * Source: Fenton, "The sum of log-normal probability distributions in scatter transmission systems", IRE Transactions on
 * Communications Systems 8 (1960), moments matched; recalled.
 */
export function sumOfAmounts(amounts: readonly Amount[]): Amount {
  const some = amounts.filter((amount) => meanOf(amount) > 0)
  if (some.length <= 1) return some[0] ?? amounts[0] ?? 0
  const mean = amounts.reduce<number>((sum, amount) => sum + meanOf(amount), 0)
  const variance = amounts.reduce<number>((sum, amount) => sum + varianceOf(amount), 0)
  if (!(mean > 0) || variance === 0) return mean
  const square = Math.log1p(variance / mean ** 2)
  return { median: mean * Math.exp(-square / 2), logSd: Math.sqrt(square) }
}

/**
 * E[max(D − k, 0)] of an amount D that is fixed or log-normal: with median m and log standard deviation s, `M·Φ(d) − k·Φ(d − s)`,
 * `d = (ln(m/k) + s²)/s` and M the mean; k from 0.
 *
 * Source: the expectation in Black and Scholes, Journal of Political Economy 81 (1973), before discounting; recalled.
 */
export function meanBeyond(amount: Amount, k: number): number {
  if (typeof amount === 'number') return Math.max(0, amount - k)
  if (!('median' in amount)) return amount.exponentialMean * Math.exp(-k / (amount.exponentialMean || 1))
  const { median, logSd } = amount
  if (k <= 0) return meanOf(amount) - k
  if (median === 0 || logSd === 0) return Math.max(0, median - k)
  const d = (Math.log(median / k) + logSd ** 2) / logSd
  return meanOf(amount) * normalCdf(d) - k * normalCdf(d - logSd)
}
