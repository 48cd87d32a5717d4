/**
 * What a smaller set saves over the years the boat is kept, and what each rule of the house is worth.
 *
 * @module
 */

import type { WholeSet } from '../catalogue/file-schema.js'
import { fuelLitresPerHour, newSetPrice } from '../catalogue/whole-set.js'
import { type Combinations, overloadsOf } from './combinations.js'
import {
  limitsOf,
  type PairRule,
  type SetLimits,
  smallestByNumber,
  type Traded,
  type TradeOff,
} from './trade-offs.js'

/** What a year with a set rests on. */
export interface WorthTerms {
  readonly wholeSet: WholeSet
  readonly fuelPerLitre: number
  readonly hoursPerYear: number
  readonly yearsKept: number
  /** Real rate of interest. [1/y] */
  readonly interest: number
}

/** A choice with what it saves. */
export interface TradeChoice extends TradeOff {
  /** Against the set that needs no rule, where there is one: price, and fuel that a larger one burns for nothing. */
  readonly saves?: number
  readonly each: readonly RuleWorth[]
}

/** One rule, and the set that would be needed without it. */
export interface RuleWorth extends PairRule {
  readonly neededWithout?: string
  readonly saves?: number
}

/**
 * Price of a new set of a size, and what it burns without load while it runs. `N(P) + a · P · h · c · A`, N the price, a the
 * litres an hour for each rated kilowatt, P [kW], h [h/y], c [money/l], A = (1 − e^(−rT))/r the years kept, discounted. What
 * the load itself burns is the same in every set.
 *
 * Source: the catalogue's price and fuel lines; held: practice.
 */
export function costOfSize(terms: WorthTerms, ratingKW: number): number {
  const { wholeSet, fuelPerLitre, hoursPerYear, yearsKept, interest } = terms
  const years = interest === 0 ? yearsKept : (1 - Math.exp(-interest * yearsKept)) / interest
  const idle = fuelLitresPerHour(wholeSet, { ratingKW, loadKW: 0, condition: 'healthy' })
  return newSetPrice(wholeSet, ratingKW).median + idle * hoursPerYear * fuelPerLitre * years
}

/** The list to choose from: the smallest set for each number of rules, with what it saves and what each rule is worth. */
export function choicesOf(
  of: Combinations,
  known: {
    readonly sets: readonly SetLimits[]
    readonly traded: readonly Traded[]
    readonly terms: WorthTerms
  },
): TradeChoice[] {
  const { sets, traded, terms } = known
  const list = smallestByNumber(traded)
  const free = list.find(({ rules, softStarters }) => rules.length + softStarters.length === 0)
  return list.map((choice) => ({
    ...choice,
    ...(free === undefined
      ? {}
      : { saves: costOfSize(terms, free.ratingKW) - costOfSize(terms, choice.ratingKW) }),
    each: choice.rules.map((rule) => worthOf(of, { sets, terms, choice, rule })),
  }))
}

/** The smallest set that carries all that matters with the other rules alone. */
function worthOf(
  of: Combinations,
  known: {
    readonly sets: readonly SetLimits[]
    readonly terms: WorthTerms
    readonly choice: TradeOff
    readonly rule: PairRule
  },
): RuleWorth {
  const { sets, terms, choice, rule } = known
  const place = (id: string) => of.loads.findIndex((load) => load.id === id)
  const others = [
    ...choice.rules.filter((one) => one !== rule).map(({ loads }) => loads),
    ...of.rules
      .filter(({ atMost }) => atMost === 1)
      .flatMap(({ loads }) => loads.flatMap((a, i) => loads.slice(i + 1).map((b) => [a, b] as const))),
  ].map(([a, b]) => [place(a), place(b)] as const)
  const apart = (a: number, b: number) =>
    others.some(([c, d]) => (a === c && b === d) || (a === d && b === c))
  const needed = [...sets]
    .sort((a, b) => a.ratingKW - b.ratingKW)
    .filter(({ ratingKW }) => ratingKW >= choice.ratingKW)
    .find((set) => overloadsOf(of, limitsOf(set), apart).length === 0)
  if (needed === undefined) return rule
  return {
    ...rule,
    neededWithout: needed.id,
    saves: costOfSize(terms, needed.ratingKW) - costOfSize(terms, choice.ratingKW),
  }
}
