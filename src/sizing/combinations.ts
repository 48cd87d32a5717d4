/**
 * Combinations of loads that ask a set for more than it has, found one by one.
 *
 * A combination counts where all of it can be expected on together for long enough in a year to matter; one that comes
 * about for a few minutes in a year is let be.
 *
 * @module
 */

import type { HouseRule, Load } from './load-type.js'
import type { OnOccasion } from './occasions.js'

/** What a set has of one thing: engine power, alternator power, or power of a leg. */
export type Resource = 'engine' | 'alternator' | 'leg-one' | 'leg-two'

/** What each load takes of a resource. */
interface Draw {
  readonly p: number
  readonly q: number
  readonly weight: number
}

/** One occasion and season on one kind of day. */
interface Moment {
  readonly hours: number
  readonly shares: readonly number[]
}

export interface Combinations {
  readonly loads: readonly Load[]
  readonly rules: readonly HouseRule[]
  readonly moments: readonly Moment[]
  readonly draws: Readonly<Partial<Record<Resource, readonly Draw[]>>>
}

/** A combination that goes beyond what there is, each load of it needed for that. */
export interface Overload {
  readonly resource: Resource
  /** Places in the list, rising. */
  readonly members: readonly number[]
  /** What it asks for. [kW or kVA] */
  readonly asks: number
}

/** Together for less than so long in a year, a combination is let be. [h] Practice. */
export const letBeHours = 0.02

export function combinationsOf(
  year: readonly OnOccasion[],
  of: { readonly loads: readonly Load[]; readonly rules: readonly HouseRule[]; readonly twoLegs: boolean },
): Combinations {
  const { loads, rules, twoLegs } = of
  const moments = year.flatMap(({ hours, demand }) =>
    demand.days.map(({ weight, shares }) => ({ hours: hours * weight, shares })),
  )
  const legFactor = (load: Load, leg: 'one' | 'two') => (load.leg === leg ? 1 : load.leg === 'both' ? 0.5 : 0)
  const draws = (factor: (load: Load) => number, reactive: boolean): Draw[] =>
    loads.map((load) => {
      const p = (factor(load) * load.watts) / 1000
      const q = reactive ? (factor(load) * load.vars) / 1000 : 0
      return { p, q, weight: Math.hypot(p, q) }
    })
  return {
    loads,
    rules,
    moments: moments.filter(({ hours }) => hours > letBeHours),
    draws: {
      engine: draws(() => 1, false),
      alternator: draws(() => 1, true),
      ...(twoLegs
        ? {
            'leg-one': draws((load) => legFactor(load, 'one'), true),
            'leg-two': draws((load) => legFactor(load, 'two'), true),
          }
        : {}),
    },
  }
}

/** What a combination asks for of a resource. */
export function asksOf(draws: readonly Draw[], members: readonly number[]): number {
  let [p, q] = [0, 0]
  for (const i of members) {
    p += draws[i]!.p
    q += draws[i]!.q
  }
  return Math.hypot(p, q)
}

/** Hours in a year with all of these loads on, were they independent. */
export function hoursTogether(
  { moments }: Pick<Combinations, 'moments'>,
  members: readonly number[],
): number {
  return moments.reduce(
    (sum, { hours, shares }) => sum + members.reduce((product, i) => product * shares[i]!, hours),
    0,
  )
}

/** Whether two loads are kept apart. */
export type Apart = (a: number, b: number) => boolean

/**
 * One combination beyond the limits for each moment and resource that has any, without those that rules keep apart. None:
 * proved, for every combination that counts was looked at or bounded.
 */
export function overloadsOf(
  of: Combinations,
  limits: Readonly<Partial<Record<Resource, number>>>,
  apart: Apart,
): Overload[] {
  const found = new Map<string, Overload>()
  const allowed = rulesKept(of)
  for (const [resource, draws] of Object.entries(of.draws) as [Resource, readonly Draw[]][]) {
    const limit = limits[resource]
    if (limit === undefined) continue
    for (const moment of of.moments) {
      const members = beyond({ draws, moment, limit, apart, allowed })
      if (members === undefined) continue
      const least = leastOf(draws, members, limit)
      found.set(`${resource} ${least.join(' ')}`, { resource, members: least, asks: asksOf(draws, least) })
    }
  }
  return [...found.values()]
}

/** Whether a load may join those chosen under the rules that let more than one be on. Rules of one are told by `apart`. */
export function rulesKept({
  loads,
  rules,
}: Combinations): (chosen: readonly number[], joining: number) => boolean {
  const several = rules
    .filter(({ atMost }) => atMost > 1)
    .map(({ loads: of, atMost }) => ({
      members: new Set(of.map((id) => loads.findIndex((load) => load.id === id))),
      atMost,
    }))
  return (chosen, joining) =>
    several.every(
      ({ members, atMost }) => !members.has(joining) || chosen.filter((i) => members.has(i)).length < atMost,
    )
}

/** Rounding of sums of powers. [kW] */
const slack = 1e-9

/**
 * A combination of which the draw exceeds a limit: branch and bound over the loads in falling order of draw for chance given
 * up, bounded by what the rest of the chance would still buy (the relaxed knapsack).
 */
function beyond(of: {
  readonly draws: readonly Draw[]
  readonly moment: Moment
  readonly limit: number
  readonly apart: Apart
  readonly allowed: (chosen: readonly number[], joining: number) => boolean
}): number[] | undefined {
  const { draws, moment, limit, apart, allowed } = of
  const items = moment.shares
    .map((share, i) => ({ i, cost: -Math.log(share), ...draws[i]! }))
    .filter(({ cost, weight }) => Number.isFinite(cost) && weight > 0)
    .sort((a, b) => b.weight * (a.cost + 1e-12) - a.weight * (b.cost + 1e-12))
  const chosen: number[] = []

  function bound(from: number, budget: number): number {
    let [sum, left] = [0, budget]
    for (let k = from; k < items.length; k += 1) {
      const { weight, cost } = items[k]!
      if (cost <= left) {
        sum += weight
        left -= cost
      } else return sum + (weight * left) / cost
    }
    return sum
  }

  function search(
    k: number,
    state: { readonly p: number; readonly q: number; readonly sum: number; readonly budget: number },
  ): boolean {
    if (Math.hypot(state.p, state.q) > limit + slack) return true
    if (k === items.length || state.sum + bound(k, state.budget) <= limit + slack) return false
    const { i, cost, p, q, weight } = items[k]!
    if (cost <= state.budget && chosen.every((other) => !apart(i, other)) && allowed(chosen, i)) {
      chosen.push(i)
      if (
        search(k + 1, {
          p: state.p + p,
          q: state.q + q,
          sum: state.sum + weight,
          budget: state.budget - cost,
        })
      )
        return true
      chosen.pop()
    }
    return search(k + 1, state)
  }

  const budget = Math.log(moment.hours / letBeHours)
  return search(0, { p: 0, q: 0, sum: 0, budget }) ? [...chosen] : undefined
}

/** The same without what is not needed for it, the smallest left out first. */
function leastOf(draws: readonly Draw[], members: readonly number[], limit: number): number[] {
  let kept = [...members].sort((a, b) => draws[b]!.weight - draws[a]!.weight)
  for (const i of [...kept].reverse()) {
    const without = kept.filter((one) => one !== i)
    if (asksOf(draws, without) > limit + slack) kept = without
  }
  return kept.sort((a, b) => a - b)
}
