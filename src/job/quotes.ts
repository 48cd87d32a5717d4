/**
 * Offers for one job side by side: on one scope, ranked by expected cost, against the price to walk away from.
 *
 * @module
 */

import { meanOf } from '../alternatives/sum-of-amounts.js'
import type { Problem } from '../catalogue/problem.js'
import type { Amount } from '../forecast/life-model.js'
import { type Drawn, drawTogether } from './quotes-draws.js'
import type { Offer } from './quotes-offers.js'
import { type OnScope, onScope, type ScopeKnown, scopeOf } from './quotes-scope.js'
import { meanPriceOf, priceOfOutage, usualWait } from './quotes-wait.js'

/** The quote above which something else is better, as it was kept or reckoned, and the terms of that quote. */
export interface WalkAway {
  readonly price: number
  /** What finding out could make of it. */
  readonly low: number
  readonly high: number
  readonly overrun: Amount
  readonly besides: Amount
}

/** The same for all that the job costs on the one scope. */
export interface WalkAwayCost {
  readonly cost: number
  readonly low: number
  readonly high: number
}

export interface RankedOffer extends OnScope, Drawn {
  /** Money left to the cost at which to walk away; left out where that is not known. */
  readonly room?: number
  /** Of this offer, in its own terms: the price above which to walk away, as it was offered, tax in or out. */
  readonly walkAwayPrice?: number
}

export interface Comparison {
  readonly scope: Offer['covers']
  /** The least expected cost first. */
  readonly offers: readonly RankedOffer[]
  readonly walkAway?: WalkAwayCost
  /** Offers that are for something else than the rest. */
  readonly problems: readonly Problem[]
}

export interface ComparisonKnown extends Omit<ScopeKnown, 'scope'> {
  readonly seed: number
  readonly walkAway?: WalkAway | undefined
}

/** Offers side by side. */
export function compareOffers(all: readonly Offer[], known: ComparisonKnown): Comparison {
  const { seed, walkAway, model } = known
  const { offers, problems } = ofOneKind(all)
  const scope = scopeOf(offers)
  const list = offers
    .map((offer) => onScope(offer, { ...known, scope }))
    .sort((a, b) => a.expected - b.expected || (a.offer.entry < b.offer.entry ? -1 : 1))
  const drawn = drawTogether(list, seed)
  const limit = walkAway === undefined ? undefined : walkAwayCost(walkAway, { model, scope })
  return {
    scope,
    offers: list.map((one, k) => ({
      ...one,
      ...drawn[k]!,
      ...(limit === undefined
        ? {}
        : { room: limit.cost - one.expected, walkAwayPrice: walkAwayPriceOf(one, limit.cost) }),
    })),
    ...(limit === undefined ? {} : { walkAway: limit }),
    problems,
  }
}

/**
 * What the job may cost in all before something else is better: `X·E[F] + E[b] + E[w]`, X the quote above which to walk away, F and b
 * the overrun and what came on top of the quote that it was reckoned with, w the price of the days that it was reckoned with.
 */
function walkAwayCost(
  { price, low, high, overrun, besides }: WalkAway,
  { model, scope }: Pick<ScopeKnown, 'model' | 'scope'>,
): WalkAwayCost {
  const days = meanPriceOf(priceOfOutage(model, 0), usualWait(scope, model).work)
  const whole = (quote: number) => quote * meanOf(overrun) + meanOf(besides) + days
  return { cost: whole(price), low: whole(low), high: whole(high) }
}

/** The price as offered at which an offer would cost so much. */
function walkAwayPriceOf({ offer, expected, price, overrun }: OnScope, cost: number): number {
  const perUnit = (price * meanOf(overrun.both)) / offer.amount
  return offer.amount > 0 ? offer.amount + (cost - expected) / perUnit : cost - expected
}

/** Work on this set and another set in its place cannot be brought to one scope: what the latest offer is for is kept. */
function ofOneKind(all: readonly Offer[]): {
  readonly offers: readonly Offer[]
  readonly problems: Problem[]
} {
  const isSet = ({ covers }: Offer) => covers.newSet !== undefined
  const last = all
    .toSorted((a, b) => (a.from < b.from || (a.from === b.from && a.entry < b.entry) ? -1 : 1))
    .at(-1)
  const offers = all.filter((offer) => last !== undefined && isSet(offer) === isSet(last))
  const problems = all
    .filter((offer) => !offers.includes(offer))
    .map(({ entry, covers }) => ({
      code: 'for-something-else',
      path: `quote ${entry}: covers`,
      found: covers.newSet === undefined ? 'work on this set' : 'another set',
      allowed: 'what the other offers of the job are for; give it a job of its own',
    }))
  return { offers, problems }
}
