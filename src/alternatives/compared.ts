/**
 * Alternatives beside one another: each with what it costs more than the best, history by history.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import { column, type Sample } from './sample.js'
import { type Estimate, type OfMode, type Summary, summarise } from './summary.js'

export interface Compared extends Omit<Summary, 'alternative' | 'firstFailure' | 'failures'> {
  readonly id: string
  readonly name: string
  /** Why it cannot be chosen. */
  readonly barred?: string
  /** Dearer than the best by so much, history by history. */
  readonly against: Estimate
  /** Dangerous events of every kind, a year. */
  readonly dangers: number
  /** Chance that one year costs more than can be paid; left out where nobody said what can be. */
  readonly overMost?: Estimate
  /** What fails oftenest, a few modes of it. */
  readonly oftenest: readonly (OfMode & { readonly perYear: number })[]
}

/** Modes that are named as failing oftenest. */
const mostModes = 3

/** Cheapest first; those barred stand among them. */
export function comparedRows(model: LifeModel, samples: readonly Sample[], best: string): Compared[] {
  const bestCost = column(samples.find(({ alternative }) => alternative === best)!, 'cost')
  const most = model.mostPayableInOneYear
  return samples
    .map((sample): Compared => {
      const { alternative, firstFailure: _, failures, ...summary } = summarise(model, sample)
      const { name, barred } = model.alternatives.find(({ id }) => id === alternative)!
      return {
        ...summary,
        id: alternative,
        name: name ?? alternative,
        ...(barred === undefined ? {} : { barred }),
        against: pairedDifference(column(sample, 'cost'), bestCost),
        dangers: Object.values(summary.dangersPerYear).reduce((sum, each) => sum + each, 0),
        ...(most === undefined ? {} : { overMost: shareAbove(column(sample, 'largestYear'), most) }),
        oftenest: failures
          .filter(({ perYear }) => perYear > 0)
          .sort((a, b) => b.perYear - a.perYear)
          .slice(0, mostModes),
      }
    })
    .sort((a, b) => a.cost.mean - b.cost.mean)
}

function pairedDifference(a: Float64Array, b: Float64Array): Estimate {
  let sum = 0
  let squares = 0
  const n = a.length
  for (let i = 0; i < n; i++) sum += a[i]! - b[i]!
  const mean = sum / n
  for (let i = 0; i < n; i++) squares += (a[i]! - b[i]! - mean) ** 2
  return { mean, standardError: n > 1 ? Math.sqrt(squares / (n - 1) / n) : 0 }
}

function shareAbove(values: Float64Array, most: number): Estimate {
  let count = 0
  for (const value of values) if (value > most) count++
  const share = count / values.length
  return { mean: share, standardError: Math.sqrt((share * (1 - share)) / values.length) }
}
