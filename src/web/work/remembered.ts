/**
 * A memory of what was worked out before, for as long as its worker lives.
 *
 * @module
 */

import type { Memory } from '../../alternatives/memory.js'
import type { Posterior } from '../../forecast/posterior-type.js'

/** Posteriors are large: only the last few are kept. */
const mostPosteriors = 6

export function makeMemory(): Memory {
  const posteriors = new Map<string, Posterior>()
  const values = new Map<string, Promise<unknown>>()
  return {
    posterior(key, make) {
      const text = JSON.stringify(key, leaveOutMoney)
      const found = posteriors.get(text)
      if (found !== undefined) {
        posteriors.delete(text)
        posteriors.set(text, found)
        return found
      }
      const made = make()
      posteriors.set(text, made)
      if (posteriors.size > mostPosteriors) posteriors.delete(posteriors.keys().next().value!)
      return made
    },
    value<T>(key: unknown, make: () => Promise<T>): Promise<T> {
      const text = JSON.stringify(key)
      const found = values.get(text) as Promise<T> | undefined
      if (found !== undefined) return found
      const made = make()
      values.set(text, made)
      made.catch(() => values.delete(text))
      return made
    },
  }
}

/** Nothing of this moves what is believed of the parts: money, and the years that are looked ahead. */
const money = new Set([
  'horizonYears',
  'realInterestPerYear',
  'labour',
  'powerLoss',
  'giveUp',
  'fuelPerHour',
  'upkeepPerYear',
  'mostPayableInOneYear',
  'title',
])

function leaveOutMoney(field: string, value: unknown): unknown {
  return money.has(field) ? undefined : value
}
