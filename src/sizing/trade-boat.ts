/**
 * The trade-offs of one boat, from the sets that were judged for her.
 *
 * @module
 */

import type { Highs } from 'highs'
import type { Terms } from '../register/register-types.js'
import { combinationsOf } from './combinations.js'
import { judgeSet } from './judge-set.js'
import { yearOf } from './occasions.js'
import type { BoatSize, Needs, SizeQuestion } from './size-boat.js'
import { type Blocked, type SetLimits, tradeOffsOf } from './trade-offs.js'
import { choicesOf, type TradeChoice, type WorthTerms } from './trade-worth.js'

/** A choice, and what is left when it is kept to. */
export interface KeptChoice extends TradeChoice {
  /** Starts in a year that still ask for more than the engine gives. */
  readonly overloadsLeft: number
}

export interface BoatTrades {
  /** The smallest set for each number of rules and soft starters, fewest first. */
  readonly choices: readonly KeptChoice[]
  /** Sets that no such rules make do. */
  readonly blocked: readonly Blocked[]
  readonly yearsKept: number
  readonly assumed: readonly string[]
}

/** Taken where nobody said, as in the life model. Practice. */
const usual = { yearsKept: 10, realInterestPercent: 2 }

/** What smaller sets would ask of the people aboard, and what they would save. Proved by the solver. */
export function tradeBoat(
  highs: Highs,
  of: {
    readonly question: SizeQuestion
    readonly needs: Needs
    readonly sized: BoatSize
    readonly terms: Terms
  },
): BoatTrades {
  const { question, needs, sized, terms } = of
  const { book } = question
  if (needs.loads.length === 0) {
    const yearsKept = terms.yearsKept ?? usual.yearsKept
    return { choices: [], blocked: [], yearsKept, assumed: [] }
  }
  const combinations = combinationsOf(needs.byLoads, { ...needs, twoLegs: sized.twoLegs })
  const sets = sized.sets.map(
    ({ set, engineKW, alternatorKVA }): SetLimits => ({
      id: set.id,
      ratingKW: set.ratingKW,
      engineKW,
      alternatorKVA,
      kVA: set.kVA,
      reactance: set.reactance,
      dip: book.sizing.voltageDip.most,
    }),
  )
  const traded = tradeOffsOf(highs, combinations, sets)
  const yearsKept = terms.yearsKept ?? usual.yearsKept
  const worth: WorthTerms = {
    wholeSet: book.wholeSet,
    fuelPerLitre: terms.fuelPerLitre ?? book.wholeSet.fuel.dockPrice.typical,
    hoursPerYear: sized.hoursPerYear,
    yearsKept,
    interest: Math.log(1 + (terms.realInterestPercent ?? usual.realInterestPercent) / 100),
  }
  return {
    choices: choicesOf(combinations, { sets, traded, terms: worth }).map((choice) => ({
      ...choice,
      overloadsLeft: overloadsLeft({ question, needs, sized }, choice),
    })),
    blocked: traded.flatMap((one) => (one.ok ? [] : [one.blocked])),
    yearsKept,
    assumed:
      terms.yearsKept === undefined ? [`the boat is taken to be kept for ${usual.yearsKept} years`] : [],
  }
}

/** The set judged anew with the rules kept and the soft starters fitted. */
function overloadsLeft(
  of: { readonly question: SizeQuestion; readonly needs: Needs; readonly sized: BoatSize },
  choice: TradeChoice,
): number {
  const { question, needs, sized } = of
  const loads = needs.loads.map((load) =>
    choice.softStarters.includes(load.id)
      ? { ...load, start: { ...load.start!, va: load.start!.softVa!, softStarter: true } }
      : load,
  )
  const added = choice.rules.map((rule, i) => ({ id: `rule-${i}`, loads: rule.loads, atMost: 1 }))
  const rules = [...needs.rules, ...added]
  const { book, facts } = question
  const year = yearOf({ ...needs, loads, rules, loadRules: book.loadRules, twoLegs: sized.twoLegs })
  const { set } = sized.sets.find((one) => one.set.id === choice.id)!
  const legVolts = Math.min(...needs.supply.volts)
  return judgeSet({ book, loads, year, space: facts.space, legVolts }, set).overloadsPerYear
}
