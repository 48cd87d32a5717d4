/**
 * Money that is paid ahead of the work, and what of it is at risk.
 *
 * @module
 */

import type { CatalogueOffers } from '../catalogue/offer-schema.js'
import { dayNumber, type LogDate, lastDay } from '../logbook/dates.js'
import type { Offer, StagePayment } from './quotes-offers.js'

/** One payment, in the order in which the work comes to it. */
export interface StagePaid {
  readonly when: NonNullable<StagePayment['when']> | LogDate
  readonly money: number
  /** Share of the work that is done then, and money that is then ahead of it. */
  readonly done: number
  readonly ahead: number
}

export interface PaidAhead {
  readonly stages: readonly StagePaid[]
  /** Paid before any work is done. */
  readonly beforeWork: number
  /** The most that is ahead of the work at any time. */
  readonly most: number
  /** What is lost of it on average. */
  readonly lost: number
}

/**
 * What stage payments put at risk. At each stage, `max(0, paid so far − share of the work done · price)`; what is lost on average
 * is the chance of losing it times the most of these. A day stands for the share of the time that has gone by then. What no
 * stage names is paid when all is done.
 */
export function paidAhead(
  { stages, withTax, from }: Pick<Offer, 'stages' | 'withTax' | 'from'>,
  of: { readonly offers: CatalogueOffers; readonly asOf: LogDate; readonly days: number },
): PaidAhead {
  const { done, lostChance } = of.offers.stages
  const shares: Readonly<Record<NonNullable<StagePayment['when']>, number>> = {
    order: done.orderShare,
    start: done.startShare,
    stripped: done.strippedShare,
    'half-way': done.halfWayShare,
    finished: done.finishedShare,
    tested: done.testedShare,
  }
  const begins = Math.max(dayNumber(of.asOf), dayNumber(lastDay(from)))
  const doneBy = (at: LogDate) =>
    of.days > 0 ? Math.min(1, Math.max(0, (dayNumber(lastDay(at)) - begins) / of.days)) : 0
  const inOrder = stages
    .map(({ when, at, share, amount }) => ({
      when: when ?? at!,
      money: amount ?? (share ?? 0) * withTax,
      done: when === undefined ? doneBy(at!) : shares[when],
    }))
    .sort((a, b) => a.done - b.done)
  let paid = 0
  const told = inOrder.map((stage): StagePaid => {
    paid += stage.money
    return { ...stage, ahead: Math.max(0, paid - stage.done * withTax) }
  })
  const most = Math.max(0, ...told.map(({ ahead }) => ahead))
  return {
    stages: told,
    beforeWork: told.reduce((sum, stage) => sum + (stage.done === 0 ? stage.money : 0), 0),
    most,
    lost: lostChance * most,
  }
}
