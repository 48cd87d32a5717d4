/**
 * A quote in the words of the life model: its price, how bills go past such quotes, and what it leaves out.
 *
 * @module
 */

import type { Alternative, LifeModel } from '../forecast/life-model.js'
import type { OpenQuote } from '../register/register-types.js'

export type Action = Extract<Alternative['now'], { parts: unknown }>
type Quote = NonNullable<Action['quote']>

/** What an excluded piece of work comes to, in paid hours; practice. */
const excludedHours: Readonly<Record<OpenQuote['excludes'][number], number>> = {
  removal: 6,
  refitting: 8,
  lifting: 4,
  testing: 2,
  carriage: 2,
  travel: 2,
  parts: 4,
  consumables: 1,
  'haul-out': 6,
  disposal: 0.5,
}

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

/** `besides` is money that comes on top, beside the work that the quote itself leaves out. */
export function quoteTerms(model: LifeModel, quote: OpenQuote, besides = 0): Quote {
  const hours = quote.excludes.reduce((sum, work) => sum + excludedHours[work], 0)
  const wider = quote.subjectToStripDown ? stripDown : { median: 1, logSd: 0 }
  const usual = overrunOf[quote.firmness]
  return {
    price: quote.withTax,
    overrun: { median: usual.median * wider.median, logSd: Math.hypot(usual.logSd, wider.logSd) },
    besides: { median: hours * model.labour.paidPerHour + besides, logSd: besidesLogSd },
  }
}
