/**
 * A quote in the words of the life model: its price, how bills go past such quotes, and what it leaves out.
 *
 * @module
 */

import type { Alternative } from '../forecast/life-model.js'
import type { OpenQuote } from '../register/register-types.js'
import { leftOutOf, type PricedIn } from './left-out.js'
import { sumOfAmounts } from './sum-of-amounts.js'

export type Action = Extract<Alternative['now'], { parts: unknown }>
type Quote = NonNullable<Action['quote']>

/** Bill over quote by what kind of quote it is; practice. */
const overrunOf = { firm: { median: 1.02, logSd: 0.06 }, estimate: { median: 1.12, logSd: 0.2 } } as const
const stripDown = { median: 1.06, logSd: 0.15 } as const
/** Log-sd of what comes on top; practice. */
const besidesLogSd = 0.25

/** Rewound windings live shorter than the maker's: catalogue, repair quality; practice. */
export const rewoundQuality = 0.85
/** Share of its age that reconditioning takes from a part; practice. */
export const reconditionedLess = 0.85
/** Chance that a workshop's job puts a new fault into what it opened; practice. */
export const jobIntrusion = 0.1

/** As much of a quote as its terms hang on. */
type QuoteOfTerms = Pick<OpenQuote, 'withTax' | 'firmness' | 'subjectToStripDown' | 'excludes' | 'covers'>

/** Bill over quote, log-normal: what kind of quote it is, and beyond that what opening the set may show. */
export function overrunOfQuote({ firmness, subjectToStripDown }: QuoteOverrun): {
  readonly own: LogNormal
  readonly stripDown: LogNormal
  readonly both: LogNormal
} {
  const own = overrunOf[firmness]
  const wider = subjectToStripDown ? stripDown : { median: 1, logSd: 0 }
  const both = { median: own.median * wider.median, logSd: Math.hypot(own.logSd, wider.logSd) }
  return { own, stripDown: wider, both }
}

export type QuoteOverrun = Pick<OpenQuote, 'firmness' | 'subjectToStripDown'>
interface LogNormal {
  readonly median: number
  readonly logSd: number
}

/** `besides` is money that comes on top, beside the work that the quote itself leaves out. */
export function quoteTerms(known: PricedIn, quote: QuoteOfTerms, besides = 0): Quote {
  const leftOut = quote.excludes.map((work) => leftOutOf(work, quote, known).amount)
  return {
    price: quote.withTax,
    overrun: overrunOfQuote(quote).both,
    besides: sumOfAmounts([...leftOut, { median: besides, logSd: besidesLogSd }]),
  }
}
