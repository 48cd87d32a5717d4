/**
 * Other sets that could take this one's place, and living without one.
 *
 * @module
 */

import type { SetCatalogue } from '../catalogue/scale.js'
import { fuelLitresPerHour, hatchTooSmallChance, newSetPrice, resaleValue } from '../catalogue/whole-set.js'
import type { CandidateFact } from '../register/load-facts.js'
import type { SetRegister } from '../register/register-types.js'
import { moneyIn } from '../units/money.js'
import type { LifeModelInput } from './life-model.js'

type CandidateInput = NonNullable<LifeModelInput['candidates']>[number]
type ResaleInput = NonNullable<NonNullable<LifeModelInput['set']>['resale']>
type GiveUpInput = NonNullable<LifeModelInput['giveUp']>

type Terms = SetRegister['terms']

export interface ReplacementKnown {
  readonly catalogue: SetCatalogue
  readonly paidPerHour: number
  readonly fuelPerLitre: number
  readonly lowLoadShare: number
  /** Of the present set. */
  readonly ageYears: number
  readonly daysNeeded: number
  /** Sets that were offered, as the log tells them. */
  readonly offered: readonly CandidateFact[]
}

/** Mean load of a set that runs, as a share of its rating. Practice. */
const usualLoadShare = 0.45
/** Faults built into a new set or its fitting, and into a used one, that show early. Practice. */
const infantFaults = { new: 0.3, used: 0.5 }
const guaranteeYears = 2
/** Delivery of a new and of a used set, and days of fitting. [d] Practice. */
const leadDays = { new: { median: 28, logSd: 0.5 }, used: { median: 30, logSd: 0.7 } }
const installDays = { median: 7, logSd: 0.4 }
/** Spread of what fitting costs. Practice. */
const installLogSd = 0.35
/** A used set as they are offered. Practice. */
const used = { years: 8, hoursPerYear: 150, hoursPerStart: 1.7 }
/** What stands in for a set (inverter, batteries, shore power, gas): share of a new set's price, a year's share of that, and the share of days on which it does not carry what is wanted (cooking, cooling, hot water). Practice. */
const instead = { shareOfNewSet: 0.45, perYear: 0.08, logSd: 0.4, daysStillWithout: 0.4 }

/** The most sets that a life model may have to choose from. */
const mostCandidates = 20

/** Sizes of the sets that are always among the candidates, as multiples of the present one's. Practice. */
const usualSizes = { 'new-smaller': 0.7, 'new-same': 1, 'new-larger': 1.4, 'used-same': 1 } as const

/** Ratings of the candidates by their ids. [kW] An offered set of no told rating counts as of the present one's. */
export function candidateRatings(
  presentKW: number,
  offered: readonly CandidateFact[],
): ReadonlyMap<string, number> {
  return new Map([
    ...Object.entries(usualSizes).map(([id, size]) => [id, within(size * presentKW)] as const),
    ...offered.map(({ id, ratingKw = presentKW }) => [id, within(ratingKw)] as const),
  ])
}

/** Sets of 0.7, 1 and 1.4 times the rating, new, one like the present one, used, and those that were offered. */
export function candidatesOf(known: ReplacementKnown): CandidateInput[] {
  const { ratingKW } = known.catalogue.kind
  const usual = [
    ...(['new-smaller', 'new-same', 'new-larger'] as const).map((id) =>
      newSet(id, usualSizes[id] * ratingKW, known),
    ),
    usedSet(known),
  ]
  const offered = known.offered.map((fact) => offeredSet(fact, known))
  const ids = new Set(offered.map(({ id }) => id))
  return [...usual.filter(({ id }) => !ids.has(id)), ...offered].slice(0, mostCandidates)
}

export function resaleOf(catalogue: SetCatalogue, ratingKW: number): ResaleInput {
  const { resale } = catalogue.wholeSet
  return {
    newPrice: newSetPrice(catalogue.wholeSet, within(ratingKW)).median,
    share: resale.shareOfNew,
    fallPerYear: resale.lossPerYear,
    least: resale.floor,
    deadShare: resale.notRunningShare,
  }
}

/** What the old set fetches when another takes its place: as not running. */
export function salvageOf({ catalogue, ageYears }: ReplacementKnown): number {
  const { ratingKW } = catalogue.kind
  return resaleValue(catalogue.wholeSet, { ratingKW, age: Math.min(100, ageYears), running: false }).median
}

/** Living without a set, as the owner says or as it usually goes. */
export function giveUpOf(
  { catalogue, daysNeeded }: ReplacementKnown,
  terms: Terms,
  assumed: string[],
): GiveUpInput {
  const usual = instead.shareOfNewSet * newSetPrice(catalogue.wholeSet, catalogue.kind.ratingKW).median
  const price = terms.doWithoutPrice ?? usual
  const perYear = terms.doWithoutPerYear ?? instead.perYear * price
  const roughly = (amount: number) => moneyIn(catalogue.wholeSet.money.currency, roundly(amount))
  const short = terms.doWithoutShortPercent ?? 100 * instead.daysStillWithout
  if (terms.doWithoutPrice === undefined) {
    assumed.push(
      `what stands in for a set is taken to cost ${roughly(price)}, and ${roughly(perYear)} a year`,
    )
  }
  if (terms.doWithoutShortPercent === undefined) {
    assumed.push(`without a set, power is taken to fall short on ${short} of 100 days that want it`)
  }
  return {
    costNow: terms.doWithoutPrice === undefined ? { median: price, logSd: instead.logSd } : price,
    costPerYear: perYear,
    daysWithoutPerYear: Math.min(366, (short / 100) * daysNeeded),
  }
}

/** Fuel for an hour at the usual load of the present set. */
export function fuelPerHourOf(
  known: Pick<ReplacementKnown, 'catalogue' | 'fuelPerLitre'>,
  set: { readonly ratingKW: number; readonly condition: 'aged' | 'healthy' },
): number {
  const { catalogue, fuelPerLitre } = known
  const loadKW = Math.min(usualLoadShare * catalogue.kind.ratingKW, set.ratingKW)
  return fuelPerLitre * fuelLitresPerHour(catalogue.wholeSet, { ...set, loadKW })
}

function newSet(id: string, wantedKW: number, known: ReplacementKnown): CandidateInput {
  const ratingKW = within(wantedKW)
  const { wholeSet, kind } = known.catalogue
  const size = ratingKW / kind.ratingKW
  const price = newSetPrice(wholeSet, ratingKW)
  return {
    id,
    name: `a new set of ${Math.round(10 * ratingKW) / 10} kW`,
    price,
    install: { median: installationOf(known, size > 1 ? 'newPlace' : 'likeForLike'), logSd: installLogSd },
    leadDays: leadDays.new,
    installDays,
    guaranteeYears,
    partPriceFactor: size ** wholeSet.rating.partPriceExponent,
    labourFactor: size ** wholeSet.rating.labourExponent,
    lowLoadShare: lowLoadAt(known.lowLoadShare, size),
    fuelPerHour: fuelPerHourOf(known, { ratingKW, condition: 'healthy' }),
    infantFaults: infantFaults.new,
    resale: resaleOf(known.catalogue, ratingKW),
  }
}

/** A set that was offered: what is told of it, and the rest as of a new or a used one of its size. */
function offeredSet(fact: CandidateFact, known: ReplacementKnown): CandidateInput {
  const ratingKW = within(fact.ratingKw ?? known.catalogue.kind.ratingKW)
  const usual = newSet(fact.id, ratingKW, known)
  const { used: second } = fact
  return {
    ...usual,
    ...(second === undefined ? {} : ofUsed(second, ratingKW, known)),
    name: fact.name ?? usual.name!,
    ...(fact.price === undefined ? {} : { price: fact.price }),
    ...(fact.fitting === undefined ? {} : { install: fact.fitting }),
    ...(fact.deliveryDays === undefined ? {} : { leadDays: fact.deliveryDays }),
    ...(fact.fittingDays === undefined ? {} : { installDays: fact.fittingDays }),
    ...(fact.guaranteeYears === undefined ? {} : { guaranteeYears: fact.guaranteeYears }),
  }
}

/** What a set with a past has otherwise than a new one. */
function ofUsed(
  { years, hours }: NonNullable<CandidateFact['used']>,
  ratingKW: number,
  known: ReplacementKnown,
): Partial<CandidateInput> {
  return {
    price: resaleValue(known.catalogue.wholeSet, { ratingKW, age: years, hours, running: true }),
    leadDays: leadDays.used,
    guaranteeYears: 0,
    infantFaults: infantFaults.used,
    fuelPerHour: fuelPerHourOf(known, { ratingKW, condition: 'aged' }),
    used: { years: Math.max(0.1, years), hours, starts: Math.round(hours / used.hoursPerStart) },
  }
}

function usedSet(known: ReplacementKnown): CandidateInput {
  const { ratingKW } = known.catalogue.kind
  const hours = used.years * used.hoursPerYear
  const { wholeSet } = known.catalogue
  return {
    id: 'used-same',
    name: `a used set of ${ratingKW} kW, ${used.years} years old`,
    price: resaleValue(wholeSet, { ratingKW, age: used.years, hours, running: true }),
    install: { median: installationOf(known, 'newPlace'), logSd: installLogSd },
    leadDays: leadDays.used,
    installDays,
    infantFaults: infantFaults.used,
    fuelPerHour: fuelPerHourOf(known, { ratingKW, condition: 'aged' }),
    used: { years: used.years, hours, starts: Math.round(hours / used.hoursPerStart) },
    resale: resaleOf(known.catalogue, ratingKW),
  }
}

function installationOf(
  { catalogue, paidPerHour, ageYears }: ReplacementKnown,
  place: 'likeForLike' | 'newPlace',
): number {
  const { installation } = catalogue.wholeSet
  const hours = place === 'likeForLike' ? installation.likeForLikeHours : installation.newPlaceHours
  const cut = hatchTooSmallChance(catalogue.wholeSet, Math.min(100, ageYears))
  const { materials, lifting, cutAccess } = installation
  return hours.typical * paidPerHour + materials.typical + lifting.typical + cut * cutAccess.typical
}

/** Share of hours at low load on a set of another size: a smaller one sees fewer. `s^(1/size)`. Practice. */
function lowLoadAt(share: number, size: number): number {
  return share > 0 ? share ** (1 / size) : 0
}

function within(ratingKW: number): number {
  return Math.min(100, Math.max(0.5, ratingKW))
}

/** Two figures of an amount: no more is known of it. */
function roundly(amount: number): number {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, amount))) - 1)
  return Math.round(amount / step) * step
}
