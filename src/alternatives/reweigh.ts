/**
 * Prices moved after the histories were played: kept histories are re-weighed, never played again.
 *
 * Linear, and so the same as playing again to rounding: the price of a quote, what an hour of the owner's own or of a
 * paid hand costs, what a visit of a workshop costs, and the price of being without power as a whole. Not linear, and
 * left as they were: the dearest year, what a repair limit chose beforehand at the old rates, what a quote leaves out.
 * Years kept, interest and lives change what happens, and need histories of their own.
 *
 * @module
 */

import type { Alternative, LifeModel } from '../forecast/life-model.js'
import type { Kept } from './kept.js'
import { kept } from './kept.js'
import { mean } from './mean.js'
import { column, type Sample } from './sample.js'

/** New prices; what is left out stays. */
export interface PriceChange {
  /** The quote in hand, tax in. */
  readonly quote?: number
  readonly ownPerHour?: number
  readonly paidPerHour?: number
  readonly perTrip?: number
  /** Every price of being without power, as a multiple of what it was. */
  readonly powerFactor?: number
}

export interface Reweighed {
  readonly model: LifeModel
  readonly samples: readonly Sample[]
}

/**
 * The model with its prices moved, and the histories at these prices.
 *
 * Cost' = cost + Δown·ownHours + Δpaid·paidHours + Δtrip·trips + (f − 1)·power + Δquote·quoteFactor, in each history, all
 * but the changes kept as discounted sums.
 */
export function reweigh(model: LifeModel, samples: readonly Sample[], change: PriceChange): Reweighed {
  const changed = withPrices(model, change)
  return {
    model: changed,
    samples: samples.map((sample) => reweighOne(model, changed, { sample, change })),
  }
}

/** The model at the new prices. */
export function withPrices(model: LifeModel, change: PriceChange): LifeModel {
  const { labour, powerLoss } = model
  const { quote, powerFactor = 1 } = change
  return {
    ...model,
    labour: {
      ...labour,
      ownPerHour: change.ownPerHour ?? labour.ownPerHour,
      paidPerHour: change.paidPerHour ?? labour.paidPerHour,
      perTrip: change.perTrip ?? labour.perTrip,
    },
    powerLoss: {
      ...powerLoss,
      curve: powerLoss.curve.map(({ days, cost }) => ({ days, cost: cost * powerFactor })),
    },
    alternatives:
      quote === undefined
        ? model.alternatives
        : model.alternatives.map((alternative) => quotedAt(alternative, quote)),
  }
}

/** What an alternative's own quote is, where it has one. */
export function quoteOf({ now }: Pick<Alternative, 'now'>): number | undefined {
  return typeof now === 'object' && 'parts' in now ? now.quote?.price : undefined
}

function quotedAt(alternative: Alternative, price: number): Alternative {
  const { now } = alternative
  if (typeof now !== 'object' || !('parts' in now) || now.quote === undefined) return alternative
  return { ...alternative, now: { ...now, quote: { ...now.quote, price } } }
}

function reweighOne(
  before: LifeModel,
  after: LifeModel,
  of: { readonly sample: Sample; readonly change: PriceChange },
): Sample {
  const { sample, change } = of
  const powerFactor = change.powerFactor ?? 1
  const quote = quoteChange(before, after, sample.alternative)
  const shifts: readonly [factor: number, values: Float64Array][] = [
    [after.labour.ownPerHour - before.labour.ownPerHour, column(sample, 'ownHours')],
    [after.labour.paidPerHour - before.labour.paidPerHour, column(sample, 'paidHours')],
    [after.labour.perTrip - before.labour.perTrip, column(sample, 'trips')],
    [powerFactor - 1, column(sample, 'power')],
    [quote, column(sample, 'quoteFactor')],
  ]
  const moved = shifts.filter(([factor]) => factor !== 0)
  if (moved.length === 0) return sample
  const columns = sample.columns.slice()
  const put = (quantity: Kept, values: Float64Array) => {
    columns[kept.indexOf(quantity)] = values
  }
  const cost = column(sample, 'cost').slice()
  for (const [factor, values] of moved) {
    for (let i = 0; i < cost.length; i++) cost[i]! += factor * values[i]!
  }
  put('cost', cost)
  if (powerFactor !== 1) {
    put(
      'power',
      column(sample, 'power').map((value) => value * powerFactor),
    )
  }
  if (quote !== 0) {
    const factors = column(sample, 'quoteFactor')
    put(
      'now',
      column(sample, 'now').map((value, i) => value + quote * factors[i]!),
    )
  }
  return { ...sample, columns }
}

function quoteChange(before: LifeModel, after: LifeModel, id: string): number {
  const price = (model: LifeModel) => {
    const alternative = model.alternatives.find((each) => each.id === id)
    return alternative === undefined ? 0 : (quoteOf(alternative) ?? 0)
  }
  return price(after) - price(before)
}

/** Expected cost of an alternative as a price moves: `at + slope · price`. */
export interface CostLine {
  readonly id: string
  readonly at: number
  readonly slope: number
}

/** Prices that can be moved along a track. */
export type MovedPrice = 'quote' | 'ownPerHour' | 'powerFactor'

/** Expected costs as straight lines of one price; alternatives that are barred are left out, since they cannot be chosen. */
export function costLines(model: LifeModel, samples: readonly Sample[], price: MovedPrice): CostLine[] {
  const quantity = ({ quote: 'quoteFactor', ownPerHour: 'ownHours', powerFactor: 'power' } as const)[price]
  return samples.flatMap((sample) => {
    const alternative = model.alternatives.find(({ id }) => id === sample.alternative)
    if (alternative === undefined || alternative.barred !== undefined) return []
    const slope = mean(column(sample, quantity))
    const now = { quote: quoteOf(alternative) ?? 0, ownPerHour: model.labour.ownPerHour, powerFactor: 1 }[
      price
    ]
    const own = price === 'quote' && quoteOf(alternative) === undefined ? 0 : slope
    return [{ id: sample.alternative, at: mean(column(sample, 'cost')) - own * now, slope: own }]
  })
}

/** Where the cheapest changes hands as the price rises. */
export interface Handover {
  readonly at: number
  readonly to: string
}

/** The lower envelope of straight lines over a span: which is cheapest at its beginning, and where another takes over. */
export function cheapestAlong(
  lines: readonly CostLine[],
  span: { readonly low: number; readonly high: number },
): { readonly first: string | undefined; readonly changes: readonly Handover[] } {
  let here = cheapestAt(lines, span.low)
  const first = here?.id
  const changes: Handover[] = []
  let at = span.low
  while (here !== undefined) {
    const own: CostLine = here
    let next: { readonly line: CostLine; readonly at: number } | undefined
    for (const line of lines) {
      if (line.slope >= own.slope) continue
      const crossing = (line.at - own.at) / (own.slope - line.slope)
      if (crossing < at || crossing > span.high) continue
      const sooner = next === undefined || crossing < next.at
      if (sooner || (crossing === next!.at && line.slope < next!.line.slope)) next = { line, at: crossing }
    }
    if (next === undefined) return { first, changes }
    changes.push({ at: next.at, to: next.line.id })
    at = next.at
    here = next.line
  }
  return { first, changes }
}

function cheapestAt(lines: readonly CostLine[], price: number): CostLine | undefined {
  const cost = (line: CostLine) => line.at + line.slope * price
  return lines.reduce<CostLine | undefined>(
    (best, line) =>
      best === undefined || cost(line) < cost(best) || (cost(line) === cost(best) && line.slope < best.slope)
        ? line
        : best,
    undefined,
  )
}
