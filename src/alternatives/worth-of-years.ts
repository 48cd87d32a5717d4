/**
 * What it would be worth to know for how many years the boat will be kept, where its owner has given a span.
 *
 * @module
 */

import { curvedInputs } from './inputs.js'
import { mean } from './mean.js'
import type { WorthOfQuantity } from './perfect-information.js'
import { column } from './sample.js'
import { type Asked, paired, trialAt } from './turning-points.js'

/** Weights of a 10, 50 and 90 % point for a mean: Swanson's rule, common practice. */
const weights = [0.3, 0.4, 0.3] as const
const sure = 2

/**
 * Value of knowing the years: min over alternatives of Σ w·E[C at h] − Σ w·min E[C at h], h the span's ends and the years
 * reckoned with. Chosen on one half of the histories of the trials and valued on the other, both ways; the base that the
 * trials are hung on has all histories. None where no span is given, or there is nothing to choose.
 */
export async function worthOfYears(asked: Asked): Promise<WorthOfQuantity | undefined> {
  const { model, samples } = asked
  const span = model.horizonMayBe
  const open = samples.filter((_, a) => model.alternatives[a]!.barred === undefined)
  if (span === undefined || open.length < 2) return undefined
  const years = curvedInputs(model).find(({ id }) => id === 'years-kept')!
  const means = open.map((sample) => {
    const cost = column(sample, 'cost')
    return cost.reduce((sum, value) => sum + value, 0) / cost.length
  })
  const trials = await Promise.all(
    [span.low, model.horizonYears, span.high].map((value) =>
      trialAt(years, value, { ...asked, open, means }),
    ),
  )
  const count = Math.min(...trials.map(({ tried }) => tried[0]!.change.length))
  const changes = trials.map(({ tried }) => tried.map(({ change }) => change.subarray(0, count)))
  const bases = trials[0]!.tried.map(({ base }) => base)
  const baseMeans = bases.map((base) => means[open.indexOf(base)]!)
  const halves = [0, 1].map((own) => {
    const costAt = (h: number, a: number) => baseMeans[a]! + mean(half(changes[h]![a]!, own))
    const all = bases.map((_, a) => a)
    const least = (cost: (a: number) => number) => all.reduce((best, a) => (cost(a) < cost(best) ? a : best))
    const unknowing = least((a) => weights.reduce((sum, weight, h) => sum + weight * costAt(h, a), 0))
    return weights.map((weight, h) => {
      const best = least((a) => costAt(h, a))
      if (best === unknowing) return { value: 0, error: 0 }
      const gain = paired(half(changes[h]![unknowing]!, 1 - own), half(changes[h]![best]!, 1 - own))
      const base = paired(column(bases[unknowing]!, 'cost'), column(bases[best]!, 'cost'))
      return { value: weight * (gain.value + base.value), error: weight * Math.hypot(gain.error, base.error) }
    })
  })
  const worth = halves.flat().reduce((sum, { value }) => sum + value, 0) / 2
  const error = Math.hypot(...halves.flat().map((one) => one.error)) / 2
  return { id: 'years-kept', worth, error, pays: worth > sure * error }
}

function half(values: Float64Array, which: number): Float64Array {
  return values.filter((_, i) => i % 2 === which)
}
