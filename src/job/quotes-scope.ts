/**
 * One offer brought to the scope of all offers for its job: what it comes to, line by line.
 *
 * @module
 */

import { type LeftOut, leftOutOf } from '../alternatives/left-out.js'
import { overrunOfQuote } from '../alternatives/quoted-job.js'
import { usualPrice } from '../alternatives/renewal.js'
import { meanOf } from '../alternatives/sum-of-amounts.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import { type LearnedOverrun, systemOf } from '../forecast/learned-overrun.js'
import type { Amount, LifeModel } from '../forecast/life-model.js'
import type { LogDate } from '../logbook/dates.js'
import { type GuaranteeWorth, worthOfGuarantee } from './quotes-guarantee.js'
import type { Offer } from './quotes-offers.js'
import { type PaidAhead, paidAhead } from './quotes-stages.js'
import { meanPriceOf, type PriceOfDays, priceOfOutage, type Wait, waitOf } from './quotes-wait.js'

/** What an offer is reckoned with. */
export interface ScopeKnown {
  readonly model: LifeModel
  readonly catalogue: SetCatalogue
  /** 'YYYY-MM-DD' */
  readonly asOf: LogDate
  /** What all offers for the job cover together. */
  readonly scope: Offer['covers']
  /** What the owner's own jobs came to, where that is to be heard. */
  readonly learned?: LearnedOverrun | undefined
}

/** One line of what an offer comes to. Money is its mean; less than nothing: it takes off. */
export type OfferLine =
  | { readonly about: 'price'; readonly money: number }
  | { readonly about: 'tax'; readonly money: number; readonly percent: number; readonly unknown: boolean }
  | { readonly about: 'lapsed'; readonly money: number; readonly validUntil: LogDate }
  | {
      readonly about: 'overrun'
      readonly money: number
      readonly firm: boolean
      readonly stripDown: boolean
      readonly factor: number
    }
  | { readonly about: 'left-out'; readonly money: number; readonly leftOut: LeftOut }
  | { readonly about: 'not-covered'; readonly money: number; readonly part: string }
  | { readonly about: 'wait'; readonly money: number; readonly wait: Wait }
  | {
      readonly about: 'guarantee'
      readonly money: number
      readonly months: number
      readonly worth: GuaranteeWorth
    }
  | { readonly about: 'paid-ahead'; readonly money: number; readonly ahead: PaidAhead }

/** An offer on the one scope: its lines, their sum, and what in it is uncertain. */
export interface OnScope {
  readonly offer: Offer
  readonly lines: readonly OfferLine[]
  /** Expected cost: the sum of the lines. */
  readonly expected: number
  /** Money that no draw moves. */
  readonly fixed: number
  /** Price with tax, as it is asked at today, and the bill over it. */
  readonly price: number
  readonly overrun: ReturnType<typeof overrunOfQuote>
  /** What comes on top, by what it is for: the same work costs the same whoever leaves it out. */
  readonly besides: readonly { readonly of: string; readonly amount: Amount }[]
  readonly wait: Wait
  readonly priceOfDays: PriceOfDays
  readonly ahead: PaidAhead
}

/** Brings an offer to the scope. What it says nothing of is taken as in its price, and a guarantee as none. */
export function onScope(offer: Offer, known: ScopeKnown): OnScope {
  const { model, catalogue, asOf, scope } = known
  const { offers } = catalogue
  const price = offer.withTax * (offer.expired ? offers.lapsed.priceFactor : 1)
  const overrun = overrunHeard(offer, known)
  const factor = meanOf(overrun.both)
  const leftOut = offer.excludes.map((work) =>
    leftOutOf(work, { covers: scope, withTax: offer.withTax }, { model, catalogue }),
  )
  const notCovered = notCoveredBy(offer, known)
  const wait = waitOf({ ...offer, covers: scope }, { model, offers })
  const priceOfDays = priceOfOutage(model, wait.beginsIn)
  const months = offer.guaranteeMonths ?? 0
  const worth = worthOfGuarantee({ months, covers: scope, withTax: offer.withTax }, { model, offers })
  const days = meanOf(wait.days) + wait.beginsIn
  const ahead = paidAhead(offer, { offers, asOf, days })
  const { firmness, subjectToStripDown: stripDown } = offer
  const lines: OfferLine[] = [
    { about: 'price', money: offer.amount },
    {
      about: 'tax',
      money: offer.withTax - offer.amount,
      percent: offer.taxPercent,
      unknown: offer.taxUnknown,
    },
    ...(offer.expired
      ? [{ about: 'lapsed', money: price - offer.withTax, validUntil: offer.validUntil! } as const]
      : []),
    { about: 'overrun', money: price * (factor - 1), firm: firmness === 'firm', stripDown, factor },
    ...leftOut.map((one) => ({ about: 'left-out', money: meanOf(one.amount), leftOut: one }) as const),
    ...notCovered.map(({ part, amount }) => ({ about: 'not-covered', money: meanOf(amount), part }) as const),
    { about: 'wait', money: meanPriceOf(priceOfDays, wait.days), wait },
    { about: 'guarantee', money: -worth.money, months, worth },
    { about: 'paid-ahead', money: ahead.lost, ahead },
  ]
  return {
    offer,
    lines,
    expected: lines.reduce((sum, { money }) => sum + money, 0),
    fixed: ahead.lost - worth.money,
    price,
    overrun,
    besides: [
      ...leftOut.map(({ work, amount }) => ({ of: `work ${work}`, amount })),
      ...notCovered.map(({ part, amount }) => ({ of: `part ${part}`, amount })),
    ],
    wait,
    priceOfDays,
    ahead,
  }
}

/** Bill over price of such an offer, moved by what the owner's own jobs came to. */
function overrunHeard(
  offer: Offer,
  { model, scope, learned }: ScopeKnown,
): ReturnType<typeof overrunOfQuote> {
  const { own, stripDown, both } = overrunOfQuote(offer)
  if (learned === undefined || learned.jobs === 0) return { own, stripDown, both }
  const systems = new Map(model.parts.map(({ id, system }) => [id, system]))
  const { bySystem, other } = learned.quoteFactor
  const factor = bySystem[systemOf(scope.parts.map(({ part }) => systems.get(part)))] ?? other
  return {
    own: { ...own, median: own.median * factor },
    stripDown,
    both: { ...both, median: both.median * factor },
  }
}

/** Parts of the scope that an offer does not cover, at their usual price with the usual overrun. */
function notCoveredBy(
  { covers }: Offer,
  { model, scope }: ScopeKnown,
): { readonly part: string; readonly amount: Amount }[] {
  const { median, logSd } = model.labour.overrun
  const own = new Set(covers.parts.map(({ part }) => part))
  return model.parts
    .filter(({ id }) => !own.has(id) && scope.parts.some(({ part }) => part === id))
    .map(({ id, repair }) => ({ part: id, amount: { median: usualPrice(model, repair) * median, logSd } }))
}

/** What several offers cover together: each part once. */
export function scopeOf(offers: readonly Pick<Offer, 'covers'>[]): Offer['covers'] {
  const parts = new Map<string, Offer['covers']['parts'][number]>()
  for (const { covers } of offers)
    for (const one of covers.parts) if (!parts.has(one.part)) parts.set(one.part, one)
  const access = [...new Set(offers.flatMap(({ covers }) => covers.access ?? []))].sort()
  const newSet = offers.find(({ covers }) => covers.newSet !== undefined)?.covers.newSet
  return {
    parts: [...parts.values()].sort((a, b) => (a.part < b.part ? -1 : 1)),
    access,
    ...(newSet === undefined ? {} : { newSet }),
  }
}
