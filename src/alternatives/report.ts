/**
 * What the samples say to the owner: the walk-away price in two widths, and the verdict.
 *
 * @module
 */

import type { Alternative, LifeModel } from '../forecast/life-model.js'
import { quoteLearnables } from './learnables.js'
import { fitterOf } from './least-squares.js'
import { mean } from './mean.js'
import { column, type Sample } from './sample.js'

/** A span from the 10th to the 90th hundredth, or of 90 % confidence, as said where it stands. */
export interface Span {
  readonly low: number
  readonly high: number
}

/** The quote above which another alternative is better. The first quote of the list is the one in hand; others are alternatives to it. */
export interface WalkAwayPrice {
  /** Best estimate; below zero: not even free. */
  readonly price: number
  /** 90 % of what other histories would have given. */
  readonly simulation: Span
  /** 10 to 90 % of what finding out before signing could make of it. */
  readonly findingOut: Span
  /** The quote as it stands, tax in. */
  readonly quote: number
  /** The alternative that one walks away to. */
  readonly otherwise: string
}

export type Clearness = 'clear' | 'leaning' | 'too-close'

export interface Verdict {
  readonly best: string
  readonly next: string | null
  /** Expected saving of the best against the next. */
  readonly saving: number
  readonly savingError: number
  /** Chance, over what can still be learnt, that it is best. */
  readonly chanceBest: number
  readonly clearness: Clearness
}

export interface Report {
  readonly histories: number
  readonly verdict: Verdict
  readonly walkAway: WalkAwayPrice | null
}

const batches = 200
const resamples = 1000

/**
 * Verdict and walk-away price.
 *
 * X* = (min over alternatives without the job of E[C] − min over those with it of E[C less quote]) / E[overrun factor].
 * Barred alternatives are left out: they cannot be chosen. The simulation's width is a bootstrap over batches of
 * histories, pair by pair because of the minimum; the other is the spread of the same difference as a regression on what can be
 * learnt (set factor, states of parts, overrun, price of the new set) sees it.
 */
export function reportOf(model: LifeModel, samples: readonly Sample[], seed: number): Report {
  const open = samples.filter((_, a) => model.alternatives[a]!.barred === undefined)
  const chosen = open.length > 0 ? open : samples
  const learnt = fittedCosts(model, chosen, seed)
  return {
    histories: column(samples[0]!, 'cost').length,
    verdict: verdictOf(chosen, learnt),
    walkAway: walkAwayOf(model, chosen, learnt),
  }
}

/** Mean of the differences of paired histories, with its standard error. */
function pairedDifference(
  a: Float64Array,
  b: Float64Array,
): { readonly mean: number; readonly error: number } {
  const n = a.length
  let sum = 0
  for (let i = 0; i < n; i++) sum += a[i]! - b[i]!
  const centre = sum / n
  let squares = 0
  for (let i = 0; i < n; i++) squares += (a[i]! - b[i]! - centre) ** 2
  return { mean: centre, error: Math.sqrt(squares / (n - 1) / n) }
}

/** Cost of each alternative as a function of what can be learnt, at each history's own values of it. */
interface Learnt {
  readonly cost: readonly Float64Array[]
  /** The same with the quote left out; equal to `cost` where there is none. */
  readonly withoutQuote: readonly Float64Array[]
}

function fittedCosts(model: LifeModel, samples: readonly Sample[], seed: number): Learnt {
  const fittedTo = fitterOf(quoteLearnables(model, samples[0]!, seed))
  const cost = samples.map((sample) => column(sample, 'cost'))
  const withoutQuote = samples.map((sample) => lessQuote(model, sample))
  const fitted = cost.map(fittedTo)
  return {
    cost: fitted,
    withoutQuote: withoutQuote.map((values, a) => (values === cost[a] ? fitted[a]! : fittedTo(values))),
  }
}

/** The present cost with the quote's own money taken out. */
function lessQuote(model: LifeModel, sample: Sample): Float64Array {
  const cost = column(sample, 'cost')
  const price = quoteOf(model, sample)?.price
  if (price === undefined) return cost
  const factor = column(sample, 'quoteFactor')
  return cost.map((value, i) => value - price * factor[i]!)
}

function quoteOf(model: LifeModel, sample: Sample): { readonly price: number } | undefined {
  const now: Alternative['now'] | undefined = model.alternatives.find(
    ({ id }) => id === sample.alternative,
  )?.now
  return typeof now === 'object' && 'parts' in now ? now.quote : undefined
}

function verdictOf(samples: readonly Sample[], learnt: Learnt): Verdict {
  const order = samples
    .map((sample, a) => ({ a, mean: mean(column(sample, 'cost')) }))
    .sort((x, y) => x.mean - y.mean)
  const best = order[0]!.a
  const next = order[1]?.a
  const chanceBest = shareBest(learnt.cost, best)
  if (next === undefined) {
    const only = samples[best]!.alternative
    return { best: only, next: null, saving: 0, savingError: 0, chanceBest, clearness: 'clear' }
  }
  const saving = pairedDifference(column(samples[next]!, 'cost'), column(samples[best]!, 'cost'))
  const clearness: Clearness =
    chanceBest >= 0.9 && saving.mean > 4 * saving.error
      ? 'clear'
      : chanceBest >= 0.7
        ? 'leaning'
        : 'too-close'
  return {
    best: samples[best]!.alternative,
    next: samples[next]!.alternative,
    saving: saving.mean,
    savingError: saving.error,
    chanceBest,
    clearness,
  }
}

function shareBest(costs: readonly Float64Array[], best: number): number {
  const n = costs[0]!.length
  let count = 0
  for (let i = 0; i < n; i++) {
    const own = costs[best]![i]!
    if (costs.every((values, a) => a === best || values[i]! >= own)) count++
  }
  return count / n
}

function walkAwayOf(model: LifeModel, samples: readonly Sample[], learnt: Learnt): WalkAwayPrice | null {
  const quotes = samples.map((sample) => quoteOf(model, sample)?.price)
  const inHand = quotes.find((price) => price !== undefined)
  const withJob = samples.flatMap((_, a) => (quotes[a] !== undefined && quotes[a] === inHand ? [a] : []))
  const without = samples.flatMap((_, a) => (withJob.includes(a) ? [] : [a]))
  if (inHand === undefined || without.length === 0) return null
  const factor = column(samples[withJob[0]!]!, 'quoteFactor')
  const bare = withJob.map((a) => batchMeans(lessQuote(model, samples[a]!)))
  const others = without.map((a) => batchMeans(column(samples[a]!, 'cost')))
  const factors = batchMeans(factor)
  const meanFactor = mean(factor)
  const spread = Float64Array.from(factor, (_, i) => {
    const other = Math.min(...without.map((a) => learnt.cost[a]![i]!))
    const mend = Math.min(...withJob.map((a) => learnt.withoutQuote[a]![i]!))
    return (other - mend) / meanFactor
  }).sort()
  const means = without.map((a) => mean(column(samples[a]!, 'cost')))
  return {
    price: (leastMean(others) - leastMean(bare)) / mean(factors),
    simulation: simulationWidth({ others, bare, factors }),
    findingOut: { low: quantile(spread, 0.1), high: quantile(spread, 0.9) },
    quote: inHand,
    otherwise: samples[without[means.indexOf(Math.min(...means))]!]!.alternative,
  }
}

/** Means of successive batches of histories: enough for a bootstrap, and quick. */
function batchMeans(values: Float64Array): Float64Array {
  const count = Math.min(batches, values.length)
  return Float64Array.from({ length: count }, (_, b) => {
    const from = Math.floor((b * values.length) / count)
    const to = Math.floor(((b + 1) * values.length) / count)
    return mean(values.subarray(from, to))
  })
}

function leastMean(rows: readonly Float64Array[]): number {
  return Math.min(...rows.map(mean))
}

/**
 * 90 % of what other histories would have given for min over others − min over the job's, by batches drawn with replacement.
 * The least of several means that nearly tie is drawn lower still by drawing again; so the ends are taken for each pair of
 * an alternative with the job and one without, and of these the least over the others and the greatest over the job's.
 */
function simulationWidth(of: {
  readonly others: readonly Float64Array[]
  readonly bare: readonly Float64Array[]
  readonly factors: Float64Array
}): Span {
  const { others, bare, factors } = of
  const count = factors.length
  const pick = new Int32Array(count)
  // Which batches are drawn is fixed, so it is repeatable.
  let state = 0x2545f491
  const drawn = others.map(() => bare.map(() => new Float64Array(resamples)))
  for (let r = 0; r < resamples; r++) {
    for (let i = 0; i < count; i++) {
      state ^= state << 13
      state ^= state >>> 17
      state ^= state << 5
      pick[i] = Math.floor(((state >>> 0) / 4294967296) * count)
    }
    const factor = pickedMean(factors, pick)
    const jobs = bare.map((row) => pickedMean(row, pick))
    others.forEach((row, k) => {
      const other = pickedMean(row, pick)
      jobs.forEach((job, b) => {
        drawn[k]![b]![r] = (other - job) / factor
      })
    })
  }
  const end = (share: number) =>
    Math.min(...drawn.map((pairs) => Math.max(...pairs.map((values) => quantile(values.sort(), share)))))
  return { low: end(0.05), high: end(0.95) }
}

function pickedMean(values: Float64Array, pick: ArrayLike<number>): number {
  let sum = 0
  for (let i = 0; i < pick.length; i++) sum += values[pick[i]!]!
  return sum / pick.length
}

function quantile(sorted: Float64Array, share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!
}
