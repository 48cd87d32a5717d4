/**
 * What the work comes to that an offer leaves out of its price: at the catalogue's usual hours and prices and the owner's rates.
 *
 * @module
 */

import type { Part } from '../catalogue/part-schema.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import { handsOnHours, openedWays, openingHours } from '../catalogue/work-hours.js'
import { amountOf } from '../forecast/build-repair.js'
import type { Amount, LifeModel } from '../forecast/life-model.js'
import type { OpenQuote } from '../register/register-types.js'
import { windingParts } from './open-stops.js'
import { sumOfAmounts } from './sum-of-amounts.js'

export type LeavableWork = OpenQuote['excludes'][number]

/** What it is priced by: hours to open and close, usual hours, usual prices, visits, the pieces, or a share of the price. */
export type PricedBy = 'opening' | 'hours' | 'price' | 'visits' | 'pieces' | 'share'

export interface LeftOut {
  readonly work: LeavableWork
  readonly amount: Amount
  readonly by: PricedBy
  /** Of paid work, or visits. */
  readonly hours?: number
  readonly visits?: number
  /** Figures of the catalogue that it rests on: each can be overruled. */
  readonly figures: readonly string[]
}

/** What an offer is for, and its price with tax. */
export type Scope = Pick<OpenQuote, 'covers' | 'withTax'>

export interface PricedIn {
  readonly model: Pick<LifeModel, 'labour'>
  readonly catalogue: SetCatalogue
}

/** What one piece of work comes to where the price leaves it out. */
export function leftOutOf(work: LeavableWork, scope: Scope, known: PricedIn): LeftOut {
  if (work === 'removal' || work === 'refitting') return opening(work, scope, known)
  const { labour } = known.model
  const { offers, wholeSet } = known.catalogue
  const priced = (amount: Amount, figure: string): LeftOut => ({
    work,
    amount,
    by: 'price',
    figures: [figure],
  })
  switch (work) {
    case 'testing':
      return inHours(work, { hours: amountOf(offers.testing.hours), by: 'hours' }, known, [
        'offers.testing.hours.typical',
      ])
    case 'lifting':
      return leavesBoat(scope, known.catalogue)
        ? priced(amountOf(wholeSet.installation.lifting), 'wholeSet.installation.lifting.typical')
        : priced(amountOf(offers.lifting.price), 'offers.lifting.price.typical')
    case 'travel': {
      const visits = goesToShop(scope) ? offers.visits.toShop : offers.visits.aboard
      const figure = `offers.visits.${goesToShop(scope) ? 'toShop' : 'aboard'}`
      return { work, amount: visits * labour.perTrip, by: 'visits', visits, figures: [figure] }
    }
    case 'parts':
      return pieces(scope, known.catalogue)
    case 'haul-out':
      return priced(amountOf(wholeSet.installation.haulOut), 'wholeSet.installation.haulOut.typical')
    default:
      return priced(amountOf(offers[work].price), `offers.${work}.price.typical`)
  }
}

/** Whether something is taken ashore and comes back: windings, and what is reconditioned. */
export function goesToShop({ covers }: Pick<Scope, 'covers'>): boolean {
  return covers.parts.some(isDoneAshore)
}

function isDoneAshore({ part, did }: Scope['covers']['parts'][number]): boolean {
  return did === 'reconditioned' || windingParts.has(part)
}

function leavesBoat({ covers }: Pick<Scope, 'covers'>, catalogue: SetCatalogue): boolean {
  if (covers.newSet !== undefined) return true
  return openedWays(catalogue.access, waysOf(covers, catalogue)).some(({ id }) => id === 'set-out')
}

function partsOf(covers: Scope['covers'], catalogue: SetCatalogue): readonly Part[] {
  return catalogue.parts.filter(({ id }) => covers.parts.some(({ part }) => part === id))
}

function waysOf(covers: Scope['covers'], catalogue: SetCatalogue): readonly string[] {
  const known = new Set(catalogue.access.map(({ id }) => id))
  return [
    ...partsOf(covers, catalogue).flatMap(({ access }) => access.opens),
    ...(covers.access ?? []).filter((id) => known.has(id)),
  ]
}

/** Opening what must be opened, with taking out what goes ashore; or putting back and closing. The two make the whole. */
function opening(work: 'removal' | 'refitting', { covers }: Scope, known: PricedIn): LeftOut {
  const { access, offers, wholeSet } = known.catalogue
  const share = work === 'removal' ? offers.openingShare : 1 - offers.openingShare
  const inShares = (hours: number, figures: readonly string[]) => {
    const { hoursLogSd: logSd } = offers
    const amount: Amount = { median: hours * share, logSd }
    return inHours(work, { hours: amount, by: 'opening' }, known, ['offers.openingShare', ...figures])
  }
  if (covers.newSet !== undefined) {
    const figure = 'wholeSet.installation.likeForLikeHours.typical'
    return inShares(wholeSet.installation.likeForLikeHours.typical, [figure])
  }
  const ashore = partsOf(covers, known.catalogue).filter(({ id }) =>
    covers.parts.some((one) => one.part === id && isDoneAshore(one)),
  )
  const ways = openedWays(access, waysOf(covers, known.catalogue))
  const hours =
    openingHours(access, waysOf(covers, known.catalogue)).paid +
    ashore.reduce((sum, part) => sum + handsOnHours(access, part).paid, 0)
  if (hours === 0) {
    const usual = amountOf(offers[work].hours)
    return inHours(work, { hours: usual, by: 'hours' }, known, [`offers.${work}.hours.typical`])
  }
  return inShares(hours, [
    ...ways.map(({ id }) => `access.${id}.setUpHours.paid`),
    ...ashore.map(({ id }) => `parts.${id}.hours.paid`),
  ])
}

function inHours(
  work: LeavableWork,
  { hours, by }: { readonly hours: Amount; readonly by: PricedBy },
  { model }: PricedIn,
  figures: readonly string[],
): LeftOut {
  const { paidPerHour } = model.labour
  const level = typeof hours === 'number' ? hours : 'median' in hours ? hours.median : hours.exponentialMean
  const amount: Amount =
    typeof hours === 'number'
      ? hours * paidPerHour
      : { median: level * paidPerHour, logSd: 'logSd' in hours ? hours.logSd : 0 }
  return { work, amount, by, hours: level, figures }
}

/** New pieces at their usual prices; of what goes ashore nothing is bought. */
function pieces({ covers, withTax }: Scope, catalogue: SetCatalogue): LeftOut {
  const bought = partsOf(covers, catalogue).filter(({ id }) =>
    covers.parts.some((one) => one.part === id && one.did === 'renewed' && !isDoneAshore(one)),
  )
  if (bought.length === 0) {
    const { share, logSd } = catalogue.offers.pieces
    const amount: Amount = { median: share * withTax, logSd }
    return { work: 'parts', amount, by: 'share', figures: ['offers.pieces.share'] }
  }
  return {
    work: 'parts',
    amount: sumOfAmounts(bought.map(({ price }) => amountOf(price.original))),
    by: 'pieces',
    figures: bought.map(({ id }) => `parts.${id}.price.original.typical`),
  }
}
