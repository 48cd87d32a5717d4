/**
 * What a smaller set saves over the years the boat is kept, and what each rule of the house and soft starter is worth.
 *
 * @module
 */

import type { WholeSet } from '../catalogue/file-schema.js'
import { fuelLitresPerHour, newSetPrice } from '../catalogue/whole-set.js'
import { type Combinations, overloadsOf, rulesKept } from './combinations.js'
import { deepStartsOf, type Kept } from './soft-starts.js'
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
  /** Against the set that needs no rule, where there is one: price, and fuel that a larger one burns for nothing, less the soft starters. */
  readonly saves?: number
  readonly each: readonly RuleWorth[]
  readonly eachStarter: readonly StarterWorth[]
}

/** The set that would be needed without one of the things asked, and what that costs more. */
interface Worth {
  readonly neededWithout?: string
  readonly saves?: number
}

export type RuleWorth = PairRule & Worth

/** A soft starter, with its price fitted. */
export interface StarterWorth extends Worth {
  readonly load: string
  readonly price: number
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

/** The list to choose from: the smallest set for each number of rules and soft starters, with what it saves and what each is worth. */
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
  const price = terms.wholeSet.softStarter.price.typical
  return list.map((choice) => {
    const { rules, softStarters } = choice
    const worth = (left: Pick<TradeOff, 'rules' | 'softStarters'>, spent: number) =>
      worthOf(of, { sets, terms, choice, left, spent })
    const saved =
      free === undefined ? undefined : costOfSize(terms, free.ratingKW) - costOfSize(terms, choice.ratingKW)
    return {
      ...choice,
      ...(saved === undefined ? {} : { saves: saved - price * softStarters.length }),
      each: rules.map((rule) => ({
        ...rule,
        ...worth({ rules: rules.filter((one) => one !== rule), softStarters }, 0),
      })),
      eachStarter: softStarters.map((load) => ({
        load,
        price,
        ...worth({ rules, softStarters: softStarters.filter((one) => one !== load) }, price),
      })),
    }
  })
}

/** The smallest set that carries all that matters with what is left alone, and what it costs more than what was spent. */
function worthOf(
  of: Combinations,
  known: {
    readonly sets: readonly SetLimits[]
    readonly terms: WorthTerms
    readonly choice: TradeOff
    readonly left: Pick<TradeOff, 'rules' | 'softStarters'>
    readonly spent: number
  },
): Worth {
  const { sets, terms, choice, left, spent } = known
  const kept = keptBy(of, left)
  const needed = [...sets]
    .sort((a, b) => a.ratingKW - b.ratingKW)
    .filter(({ ratingKW }) => ratingKW >= choice.ratingKW)
    .find(
      (set) =>
        overloadsOf(of, limitsOf(set), kept.apart).length === 0 && deepStartsOf(of, set, kept).length === 0,
    )
  if (needed === undefined) return {}
  const saves = costOfSize(terms, needed.ratingKW) - costOfSize(terms, choice.ratingKW) - spent
  return { neededWithout: needed.id, saves }
}

/** What rules and soft starters keep from coming about, with the rules of the house. */
function keptBy(of: Combinations, { rules, softStarters }: Pick<TradeOff, 'rules' | 'softStarters'>): Kept {
  const place = (id: string) => of.loads.findIndex((load) => load.id === id)
  const pairs = [
    ...rules.map(({ loads }) => loads),
    ...of.rules
      .filter(({ atMost }) => atMost === 1)
      .flatMap(({ loads }) => loads.flatMap((a, i) => loads.slice(i + 1).map((b) => [a, b] as const))),
  ].map(([a, b]) => [place(a), place(b)] as const)
  return {
    apart: (a, b) => pairs.some(([c, d]) => (a === c && b === d) || (a === d && b === c)),
    isSoft: (i) => of.loads[i]!.start?.softStarter === true || softStarters.includes(of.loads[i]!.id),
    mayJoin: rulesKept(of),
  }
}
