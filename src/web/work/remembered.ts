/**
 * A memory of what was worked out before, for as long as its worker lives.
 *
 * @module
 */

import type { Memory } from '../../alternatives/memory.js'
import type { Posterior } from '../../forecast/posterior-type.js'

/** Posteriors are large: only the last few are kept. */
const mostPosteriors = 6
const mostValues = 40

/** A memory that also tells what it has. */
export interface WorkerMemory extends Memory {
  hasPosterior(key: unknown): boolean
}

export function makeMemory(): WorkerMemory {
  const posteriors = new Map<string, Posterior>()
  const values = new Map<string, unknown>()
  return {
    hasPosterior: (key) => posteriors.has(JSON.stringify(key, leaveOutMoney)),

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
    find(key) {
      const text = JSON.stringify(key)
      return values.has(text) ? { value: values.get(text) } : undefined
    },
    keep(key, value) {
      values.set(JSON.stringify(key), value)
      if (values.size > mostValues) values.delete(values.keys().next().value!)
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
