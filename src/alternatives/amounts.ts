/**
 * Uncertain amounts as flat numbers, and tables that draw from them.
 *
 * @module
 */

import type { Amount } from '../forecast/life-model.js'
import { normalDensity, normalQuantile } from '../forecast/special-normal.js'
import { EXPONENTIAL, FIXED, LOGNORMAL } from './codes.js'

/** Many amounts in columns: what level and spread mean depends on the kind. */
export interface Amounts {
  readonly kind: Uint8Array
  readonly level: Float64Array
  readonly spread: Float64Array
}

export function amountsOf(list: readonly Amount[]): Amounts {
  const kind = new Uint8Array(list.length)
  const level = new Float64Array(list.length)
  const spread = new Float64Array(list.length)
  list.forEach((amount, i) => {
    if (typeof amount === 'number') {
      level[i] = amount
    } else if ('median' in amount) {
      kind[i] = amount.logSd > 0 ? LOGNORMAL : FIXED
      level[i] = amount.median
      spread[i] = amount.logSd
    } else {
      kind[i] = EXPONENTIAL
      level[i] = amount.exponentialMean
    }
  })
  return { kind, level, spread }
}

const normalSteps = 4096
/**
 * Mean of a standard normal within each of 4,096 equally likely slices, so that the mean of the table is exactly 0.
 * Its variance is 0.9998 of 1: a lognormal of log-sd 0.7 comes out 0.005 % low in the mean.
 */
export const normalTable = makeNormalTable()

function makeNormalTable(): Float64Array {
  const table = new Float64Array(normalSteps)
  let below = 0
  for (let i = 0; i < normalSteps; i++) {
    const above = i === normalSteps - 1 ? 0 : normalDensity(normalQuantile((i + 1) / normalSteps))
    table[i] = (below - above) * normalSteps
    below = above
  }
  return table
}

/** Standard normal from 32 random bits. */
export function normalFrom(word: number): number {
  return normalTable[word >>> 20]!
}

export function meanAmount(amounts: Amounts, i: number): number {
  const level = amounts.level[i]!
  return amounts.kind[i] === LOGNORMAL ? level * Math.exp(amounts.spread[i]! ** 2 / 2) : level
}
