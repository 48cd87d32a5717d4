/**
 * The catalogue for the set that a register tells of.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import { overrule } from '../catalogue/overrule.js'
import type { Problem } from '../catalogue/problem.js'
import { catalogueFor, type SetCatalogue } from '../catalogue/scale.js'
import type { Money, SetKind } from '../catalogue/set-kind.js'
import type { SetRegister } from './register-types.js'

export interface CatalogueOfSet {
  readonly catalogue: SetCatalogue
  /** What was taken for granted because nobody said. */
  readonly assumed: readonly string[]
  /** Overrulings that the catalogue refuses; where there are any, none is applied. */
  readonly problems: readonly Problem[]
}

/** What a United States dollar cost, mean of 2024, to two or three figures. Recalled, to be checked. */
const perUsd2024: Readonly<Record<string, number>> = {
  USD: 1,
  EUR: 0.924,
  GBP: 0.783,
  CHF: 0.88,
  CAD: 1.37,
  AUD: 1.52,
  NZD: 1.65,
  SEK: 10.6,
  NOK: 10.7,
  DKK: 6.89,
  PLN: 3.98,
  JPY: 151,
}

/** Taken where nobody said. Practice. */
const usualRatingKw = 8

/** The catalogue brought to the register's set, with the figures that its keeper knows better. */
export function setCatalogueOf(register: SetRegister, catalogue: Catalogue): CatalogueOfSet {
  const { kind, assumed } = kindOf(register, catalogue)
  const scaled = catalogueFor(catalogue, kind)
  if (register.overrulings.length === 0) return { catalogue: scaled, assumed, problems: [] }
  const overruled = overrule(scaled, register.overrulings)
  return overruled.ok
    ? { catalogue: overruled.catalogue, assumed, problems: [] }
    : { catalogue: scaled, assumed, problems: overruled.problems }
}

function kindOf(
  register: SetRegister,
  catalogue: Catalogue,
): { readonly kind: SetKind; readonly assumed: readonly string[] } {
  const { setFacts, boatFacts } = register
  const assumed: string[] = []
  const usual = <T>(said: T | undefined, taken: T, what: string): T => {
    if (said === undefined) assumed.push(what)
    return said ?? taken
  }
  const usualRpm = setFacts.hertz !== undefined && setFacts.hertz > 55 ? 1800 : 1500
  const { bearings, governor, fuelSolenoid } = setFacts
  const kind: SetKind = {
    ratingKW: usual(setFacts.ratingKw, usualRatingKw, `the set is taken to be of ${usualRatingKw} kW`),
    rpm: usual(setFacts.rpm, usualRpm, `the set is taken to run at ${usualRpm} rpm`),
    excitation: usual(
      setFacts.excitation,
      'brushless-regulator',
      'the alternator is taken to be brushless with a regulator',
    ),
    water: usual(boatFacts.water, 'salt', 'the boat is taken to lie in salt water'),
    ...(bearings === undefined ? {} : { bearings: bearings === 2 ? 'two' : 'one' }),
    ...(governor === undefined ? {} : { governor }),
    ...(fuelSolenoid === undefined ? {} : { fuelSolenoid }),
    fitted: fittedOf(register, catalogue),
    money: moneyOf(register, catalogue, assumed),
  }
  return { kind, assumed }
}

/** Of the parts that some sets have and some have not: what was said, or follows from an entry about the part itself. */
function fittedOf(register: SetRegister, catalogue: Catalogue): Record<string, boolean> {
  const { has = [], hasNot = [] } = register.setFacts
  const fitted: Record<string, boolean> = {}
  for (const { id, fits } of catalogue.parts) {
    const place = register.parts.get(id)
    if (fits?.whenFitted && place !== undefined && place.age !== 'unknown') fitted[id] = !place.removed
  }
  for (const part of has) fitted[part] = true
  for (const part of hasNot) fitted[part] = false
  return fitted
}

function moneyOf(register: SetRegister, catalogue: Catalogue, assumed: string[]): Money {
  const { currency = catalogue.wholeSet.money.currency, priceFactor = 1 } = register.boatFacts
  const { priceYear } = catalogue.wholeSet.money
  const rate = perUsd2024[currency]
  if (register.boatFacts.currency === undefined) assumed.push(`money is taken to be ${currency}`)
  if (rate === undefined) {
    assumed.push(`no rate of exchange for ${currency} is known: the price factor has to bring prices to it`)
  } else if (rate !== 1) {
    assumed.push(`prices of the catalogue are brought to ${currency} at ${rate} to the dollar, as in 2024`)
  }
  return { currency, currencyPerUsd: rate ?? 1, localFactor: priceFactor, priceYear }
}
