/**
 * The catalogue brought to one set: its parts, its size and speed, its water, its money.
 *
 * @module
 */

import { requireWithin } from '../units/require.js'
import type { Catalogue } from './catalogue.js'
import type { Access, WholeSet } from './file-schema.js'
import type { CatalogueOffers } from './offer-schema.js'
import type { Mode, Part } from './part-schema.js'
import { mapFigures } from './path.js'
import { fitsKind, isTwoPole, type Money, type SetKind, usualKind } from './set-kind.js'

/** The catalogue for one set. Every price is in the set's money. */
export interface SetCatalogue extends Catalogue {
  readonly kind: SetKind
  /** The catalogue it was made from. */
  readonly base: Catalogue
  /** Paths of figures that the keeper of the boat has set, with their reason. */
  readonly overruled: ReadonlyMap<string, string>
}

/** What figures are multiplied by. */
export interface ScaleFactors {
  /** Prices of parts and of work on them, money included. */
  readonly partPrice: number
  /** Hours of work. */
  readonly labour: number
  /** Prices that do not grow with the set. */
  readonly money: number
  /** Scale of modes on running hours. */
  readonly hourLife: number
  /** Scale of modes driven by salt. */
  readonly saltLife: number
}

/**
 * Factors for a kind of set.
 *
 * - prices of parts `(P/10)^0.35 · c · f`, other prices `c · f`
 * - hours of work `(P/10)^0.2`
 * - modes on running hours at 3,000 or 3,600 rpm × 0.55; salt-driven modes in fresh water × 1.8
 *
 * with P the rating [kW], c the exchange rate and f the local factor. Answers for 0.5 kW to 100 kW; meant for 3 kW to 30 kW. Exponents and factors
 * stand in the catalogue (practice).
 *
 * @throws RangeError if rating, speed or money is out of its span.
 */
export function scaleFactors(catalogue: Catalogue, kind: SetKind): ScaleFactors {
  const { rating } = catalogue.wholeSet
  const { water } = { ...usualKind, ...kind }
  requireWithin('ratingKW', kind.ratingKW, 0.5, 100, 'kW')
  const size = kind.ratingKW / rating.referenceKW
  const money = moneyFactor(kind.money)
  return {
    partPrice: size ** rating.partPriceExponent * money,
    labour: size ** rating.labourExponent,
    money,
    hourLife: isTwoPole(kind) ? catalogue.care.twoPoleFactor : 1,
    saltLife: water === 'fresh' ? catalogue.care.freshWaterFactor : 1,
  }
}

/**
 * The catalogue for one kind of set: parts it has, figures scaled, prices in its money.
 * Links to parts that it has not are left out, and a link's trip that it has not saves nothing.
 *
 * @throws RangeError if rating, speed or money is out of its span.
 */
export function catalogueFor(catalogue: Catalogue, kind: SetKind): SetCatalogue {
  const factors = scaleFactors(catalogue, kind)
  const present = catalogue.parts
    .filter((part) => fitsKind(part.fits, kind))
    .map((part) => ({ part, fittedChance: chanceFitted(part, kind) }))
    .filter(({ fittedChance }) => fittedChance > 0)
  const ids = new Set(present.map(({ part }) => part.id))
  const modeIds = new Set(
    present.flatMap(({ part }) =>
      part.modes.filter((mode) => fitsKind(mode.fits, kind)).map((mode) => `${part.id}.${mode.id}`),
    ),
  )
  const parts = present.map(({ part, fittedChance }) => ({
    ...scalePart(part, factors, fittedChance),
    modes: part.modes
      .filter((mode) => fitsKind(mode.fits, kind))
      .map((mode) => keepKnown(scaleMode(mode, factors), ids, modeIds)),
  }))
  return {
    ...catalogue,
    parts,
    access: catalogue.access.map((way) => scaleAccess(way, kind, factors)),
    checks: catalogue.checks.map((check) =>
      check.fee === undefined ? check : { ...check, fee: times(check.fee, factors.money) },
    ),
    wholeSet: scaleWholeSet(catalogue.wholeSet, kind.money, factors),
    offers: scaleOffers(catalogue.offers, factors),
    kind,
    base: catalogue,
    overruled: new Map(),
  }
}

function moneyFactor(money: Money | undefined): number {
  if (money === undefined) return 1
  requireWithin('currencyPerUsd', money.currencyPerUsd, 1e-6, 1e6, 'per USD')
  requireWithin('localFactor', money.localFactor, 0.05, 20, '')
  return money.currencyPerUsd * money.localFactor
}

/** Chance that the set has a part: as the keeper says, else as the catalogue says, else no unless every set has it. */
function chanceFitted(part: Part, kind: SetKind): number {
  const said = kind.fitted?.[part.id]
  if (said !== undefined) return said ? 1 : 0
  return part.fittedChance ?? (part.fits?.whenFitted ? 0 : 1)
}

function times<T>(figures: T, factor: number): T {
  return mapFigures(figures, (value) => value * factor)
}

function scalePart({ fittedChance: _, ...part }: Part, factors: ScaleFactors, fittedChance: number): Part {
  return {
    ...part,
    ...(fittedChance < 1 ? { fittedChance } : {}),
    price: times(part.price, factors.partPrice),
    ...(part.shopCharge === undefined ? {} : { shopCharge: times(part.shopCharge, factors.partPrice) }),
    hours: times(part.hours, factors.labour),
    service: { ...part.service, hours: times(part.service.hours, factors.labour) },
  }
}

function scaleMode(mode: Mode, factors: ScaleFactors): Mode {
  const speed = mode.clock === 'hours' ? factors.hourLife : 1
  const water = mode.salt ? factors.saltLife : 1
  return { ...mode, scale: mode.scale * speed * water }
}

function keepKnown(mode: Mode, ids: ReadonlySet<string>, modeIds: ReadonlySet<string>): Mode {
  return {
    ...mode,
    links: mode.links
      .filter((link) =>
        link.brings === undefined ? ids.has(link.to) : modeIds.has(`${link.to}.${link.brings}`),
      )
      .map(({ trip, tripSaves, ...link }) => ({
        ...link,
        ...(trip !== undefined && ids.has(trip) ? { trip, tripSaves } : {}),
      })),
    wearLinks: mode.wearLinks.filter((link) => modeIds.has(`${link.to}.${link.mode}`)),
  }
}

function scaleAccess(way: Access, kind: SetKind, factors: ScaleFactors): Access {
  const mustLift = way.id === 'alternator-apart' && kind.rotorDrawsInPlace === false
  return {
    ...way,
    setUpHours: times(way.setUpHours, factors.labour),
    includes: mustLift ? [...way.includes, 'set-out'] : way.includes,
  }
}

function scaleWholeSet(whole: WholeSet, money: Money | undefined, factors: ScaleFactors): WholeSet {
  const { installation, overhaul, resale, salvage, windings } = whole
  return {
    ...whole,
    money: money === undefined ? whole.money : { currency: money.currency, priceYear: money.priceYear },
    newSet: { ...whole.newSet, priceAt1KW: whole.newSet.priceAt1KW * factors.money },
    softStarter: { price: times(whole.softStarter.price, factors.money) },
    installation: {
      ...installation,
      likeForLikeHours: times(installation.likeForLikeHours, factors.labour),
      newPlaceHours: times(installation.newPlaceHours, factors.labour),
      ownerHours: times(installation.ownerHours, factors.labour),
      materials: times(installation.materials, factors.partPrice),
      lifting: times(installation.lifting, factors.money),
      haulOut: times(installation.haulOut, factors.money),
      cutAccess: times(installation.cutAccess, factors.money),
    },
    labour: times(whole.labour, factors.money),
    resale: {
      ...resale,
      floor: resale.floor * factors.money,
      notRunningFloor: resale.notRunningFloor * factors.money,
      boatGainsByRunningOldSet: resale.boatGainsByRunningOldSet * factors.money,
    },
    salvage: {
      ...salvage,
      scrapPerKg: salvage.scrapPerKg * factors.money,
      parts: times(salvage.parts, factors.partPrice),
    },
    windings: { ...windings, price: times(windings.price, factors.partPrice) },
    overhaul: {
      topEnd: scaleJob(overhaul.topEnd, factors),
      major: scaleJob(overhaul.major, factors),
      exchangeEngine: scaleJob(overhaul.exchangeEngine, factors),
    },
    fuel: {
      ...whole.fuel,
      dockPrice: times(whole.fuel.dockPrice, factors.money),
      remotePrice: times(whole.fuel.remotePrice, factors.money),
    },
  }
}

function scaleOffers(offers: CatalogueOffers, factors: ScaleFactors): CatalogueOffers {
  const { removal, refitting, testing, lifting, carriage, consumables, disposal } = offers
  return {
    ...offers,
    removal: times(removal, factors.labour),
    refitting: times(refitting, factors.labour),
    testing: times(testing, factors.labour),
    lifting: times(lifting, factors.money),
    carriage: times(carriage, factors.money),
    consumables: times(consumables, factors.partPrice),
    disposal: times(disposal, factors.money),
  }
}

function scaleJob<T extends WholeSet['overhaul']['exchangeEngine']>(job: T, factors: ScaleFactors): T {
  return {
    ...job,
    price: times(job.price, factors.partPrice),
    labourHours: times(job.labourHours, factors.labour),
  }
}
