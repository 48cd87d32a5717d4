/**
 * What the alternatives come to, as the screen shows it: small, plain, and made away from the page.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import { type Compared, comparedRows } from './compared.js'
import { type Report, reportOf } from './report.js'
import {
  cheapestAlong,
  costLines,
  type Handover,
  type MovedPrice,
  type PriceChange,
  quoteOf,
  reweigh,
} from './reweigh.js'
import type { Sample } from './sample.js'

/** One alternative in the picture and in the table behind it. */
export type Row = Compared

/** A price that can be moved, and where the advice would change hands as it moves. */
export interface Track {
  readonly value: number
  readonly least: number
  readonly most: number
  /** The cheapest at the beginning of the track. */
  readonly first: string | undefined
  readonly changes: readonly Handover[]
}

export interface AnswerView {
  readonly histories: number
  readonly report: Report
  /** Cheapest first; those barred stand among them. */
  readonly rows: readonly Row[]
  readonly quote?: Track
  readonly ownPerHour: Track
  /** The last slope of the price of being without power: what one more day costs. */
  readonly perDay: Track
  readonly horizonYears: number
  readonly currency: string
}

/** The answer at the prices asked for. */
export function answerView(
  model: LifeModel,
  samples: readonly Sample[],
  how: { readonly seed: number; readonly change: PriceChange },
): AnswerView {
  const moved = reweigh(model, samples, how.change)
  const report = reportOf(moved.model, moved.samples, how.seed)
  const quote = moved.model.alternatives.map(quoteOf).find((price) => price !== undefined)
  return {
    histories: report.histories,
    report,
    rows: comparedRows(moved.model, moved.samples, report.verdict.best),
    ...(quote === undefined
      ? {}
      : { quote: trackOf({ model, samples: moved, price: 'quote', value: quote, report }) }),
    ownPerHour: trackOf({
      model,
      samples: moved,
      price: 'ownPerHour',
      value: moved.model.labour.ownPerHour,
      report,
    }),
    perDay: trackOf({ model, samples: moved, price: 'powerFactor', value: dayPrice(moved.model), report }),
    horizonYears: model.horizonYears,
    currency: model.currency,
  }
}

/** What one more day without power costs at the long end of its curve. */
export function dayPrice({ powerLoss }: Pick<LifeModel, 'powerLoss'>): number {
  const { curve } = powerLoss
  const last = curve.at(-1)!
  const before = curve.at(-2) ?? { days: 0, cost: 0 }
  return last.days > before.days ? (last.cost - before.cost) / (last.days - before.days) : 0
}

function trackOf(of: {
  readonly model: LifeModel
  readonly samples: { readonly model: LifeModel; readonly samples: readonly Sample[] }
  readonly price: MovedPrice
  readonly value: number
  readonly report: Report
}): Track {
  const { model, price, value, report } = of
  const span = price === 'quote' ? quoteSpan(model, report) : spanOf(model, price)
  const lines = costLines(of.samples.model, of.samples.samples, price)
  // The price of a day moves as a whole: its lines are reckoned in multiples of what it is now.
  const unit = price === 'powerFactor' ? value : 1
  if (unit === 0) return { value, ...span, first: report.verdict.best, changes: [] }
  const { first, changes } = cheapestAlong(lines, { low: span.least / unit, high: span.most / unit })
  return { value, ...span, first, changes: changes.map(({ at, to }) => ({ at: at * unit, to })) }
}

interface TrackSpan {
  readonly least: number
  readonly most: number
}

/** Tracks keep their ends while their pointer moves: they follow from the log's own prices. */
function spanOf(model: LifeModel, price: 'ownPerHour' | 'powerFactor'): TrackSpan {
  const own = price === 'ownPerHour' ? model.labour.ownPerHour : dayPrice(model)
  const least = price === 'ownPerHour' ? model.labour.paidPerHour : model.labour.paidPerHour * 2
  return { least: 0, most: roundUp(Math.max(own * 3, least)) }
}

function quoteSpan(model: LifeModel, report: Report): TrackSpan {
  const quote = model.alternatives.map(quoteOf).find((price) => price !== undefined) ?? 0
  const { walkAway } = report
  const furthest = Math.max(quote * 1.5, (walkAway?.findingOut.high ?? 0) * 1.15)
  return { least: 0, most: roundUp(furthest) }
}

/** To two figures, the second of them even or five. */
export function roundUp(value: number): number {
  if (!(value > 0)) return 1
  const step = 10 ** Math.floor(Math.log10(value)) / 2
  return Math.ceil(value / step) * step
}
