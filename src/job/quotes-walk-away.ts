/**
 * The price to walk away from that offers for a job are held against: kept with a decision, or reckoned.
 *
 * @module
 */

import { keptModel } from '../alternatives/kept-answer.js'
import { overrunOfQuote, quoteTerms } from '../alternatives/quoted-job.js'
import type { WalkAwayPrice } from '../alternatives/report.js'
import type { Problem } from '../catalogue/problem.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import type { LifeModel } from '../forecast/life-model.js'
import { byDate } from '../logbook/current.js'
import { firstDay, type LogDate } from '../logbook/dates.js'
import { type Entry, isKind } from '../logbook/kinds.js'
import type { WalkAway } from './quotes.js'
import type { Offer } from './quotes-offers.js'

/** Where it is from, and what one walks away to. */
export interface WalkAwayFound extends WalkAway {
  readonly from: 'kept' | 'entered' | 'reckoned'
  /** The decision that it was kept with. */
  readonly entry?: string
  /** Name of the alternative, where it is known. */
  readonly otherwise?: string
}

/** Out of an answer: with the terms of the quote that it was reckoned with. */
export function walkAwayOf(
  {
    price,
    findingOut,
    quote,
    otherwise,
  }: Pick<WalkAwayPrice, 'price' | 'findingOut' | 'quote' | 'otherwise'>,
  { alternatives }: Pick<LifeModel, 'alternatives'>,
): Omit<WalkAwayFound, 'from'> | undefined {
  const terms = alternatives
    .map(({ now }) => (typeof now === 'object' && 'parts' in now ? now.quote : undefined))
    .find((one) => one?.price === quote)
  if (terms === undefined) return undefined
  const name = alternatives.find(({ id }) => id === otherwise)?.name
  return {
    price,
    low: findingOut.low,
    high: findingOut.high,
    overrun: terms.overrun,
    besides: terms.besides,
    otherwise: name ?? otherwise,
  }
}

export interface KeptQuestion {
  readonly entries: readonly Entry[]
  readonly set: string
  readonly job: string
  readonly asOf: LogDate
}

/**
 * The latest one that a decision on the job kept with its answer, else one that was entered with it: then in the terms of the
 * latest offer. Undefined: none was kept.
 */
export function keptWalkAway(
  { entries, set, job, asOf }: KeptQuestion,
  known: { readonly model: LifeModel; readonly catalogue: SetCatalogue; readonly offers: readonly Offer[] },
): { readonly found?: WalkAwayFound; readonly problems: readonly Problem[] } {
  const decision = byDate(entries).findLast(
    (entry): entry is Extract<Entry, { kind: 'decision' }> =>
      isKind(entry, 'decision') &&
      entry.body.job === job &&
      (entry.set === set || entry.set === null) &&
      firstDay(entry.from) <= asOf &&
      (entry.body.kept?.result.walkAway !== undefined || entry.body.walkAwayPrice !== undefined),
  )
  if (decision === undefined) return { problems: [] }
  const { kept, walkAwayPrice } = decision.body
  const walkAway = kept?.result.walkAway
  if (kept !== undefined && walkAway !== undefined) {
    const read = keptModel(kept)
    const found = read.ok ? walkAwayOf(walkAway, read.model) : undefined
    if (found !== undefined) return { found: { ...found, from: 'kept', entry: decision.id }, problems: [] }
    const allowed = 'an answer whose quote can be read again; the price to walk away from is reckoned anew'
    const problem = {
      code: 'unreadable-answer',
      path: `decision ${decision.id}: kept`,
      found: 'none',
      allowed,
    }
    return { problems: read.ok ? [problem] : [...read.problems, problem] }
  }
  const offer = known.offers.at(-1)
  if (offer === undefined || walkAwayPrice === undefined) return { problems: [] }
  const found: WalkAwayFound = {
    price: walkAwayPrice,
    low: walkAwayPrice,
    high: walkAwayPrice,
    overrun: overrunOfQuote(offer).both,
    besides: quoteTerms(known, offer).besides,
    from: 'entered',
    entry: decision.id,
  }
  return { found, problems: [] }
}

/** The entries with the job as the one in hand: where later quotes are for other jobs, without those. */
export function withInHand(entries: readonly Entry[], job: string): readonly Entry[] {
  const quotes = byDate(entries).filter((entry) => isKind(entry, 'quote'))
  if (quotes.at(-1)?.body.job === job) return entries
  return entries.filter((entry) => !isKind(entry, 'quote') || entry.body.job === job)
}
