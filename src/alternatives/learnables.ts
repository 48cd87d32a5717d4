/**
 * What could still be learnt before signing, as columns to regress costs on.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import { normalFrom } from './amounts.js'
import { setWords } from './kernel.js'
import * as purpose from './purpose.js'
import { column, type Sample } from './sample.js'
import { quantileOf } from './summary.js'

/**
 * The set factor, what is at risk in the parts of the job and in the others, the overrun and the price of a new set:
 * each brought to mean 0 and deviation 1, with squares and products, bends in what is at risk, and a constant first. The luck of a set not yet
 * bought is not among them.
 */
export function quoteLearnables(model: LifeModel, sample: Sample, seed: number): Float64Array[] {
  const n = column(sample, 'cost').length
  const overrun = new Float64Array(n)
  const price = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    overrun[i] = normalFrom(setWords({ seed, history: i, set: 0, forWhat: purpose.quote })[0])
    price[i] = normalFrom(setWords({ seed, history: i, set: 1, forWhat: purpose.replacement })[0])
  }
  const atRisk = [column(sample, 'riskOfJob'), column(sample, 'riskOfOthers')]
  const raw = [column(sample, 'kappaLog'), ...atRisk]
  if (model.alternatives.some(({ now }) => typeof now === 'object' && 'parts' in now && now.quote))
    raw.push(overrun)
  if (model.candidates.length > 0) raw.push(price)
  const columns = raw.flatMap(standardised)
  const products = columns.flatMap((a, i) =>
    columns.slice(i).map((b) => Float64Array.from(a, (value, j) => value * b[j]!)),
  )
  return [new Float64Array(n).fill(1), ...columns, ...products, ...atRisk.flatMap(bent)]
}

/** Where what is at risk bends: a part that is defective costs more than one that may become so. */
const bends = [0.5, 0.8, 0.95]

/** What a column is above each of its bends. */
function bent(values: Float64Array): Float64Array[] {
  const sorted = values.slice().sort()
  const places = new Set(bends.map((share) => quantileOf(sorted, share)))
  return [...places].flatMap((place) => standardised(values.map((value) => Math.max(0, value - place))))
}

/** None if the column does not vary. */
function standardised(values: Float64Array): Float64Array[] {
  const n = values.length
  const centre = values.reduce((sum, value) => sum + value, 0) / n
  const deviation = Math.sqrt(values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / n)
  return deviation > 1e-9 * (1 + Math.abs(centre))
    ? [values.map((value) => (value - centre) / deviation)]
    : []
}
