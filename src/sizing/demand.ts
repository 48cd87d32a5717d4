/**
 * What the loads draw together, on one occasion in one season: the joint distribution of active and reactive power, of the
 * whole set and of each leg.
 *
 * The weather of the day is shared and not seen: on hard days every air conditioner and heater is on for longer. Given the
 * weather, loads are independent but for the rules of the house.
 *
 * @module
 */

import type { LoadRules, Occasion, Season } from '../catalogue/load-schema.js'
import { type Conflict, conflictsOf, type State, statesOf } from './conflicts.js'
import { type DemandGrid, gridOf, mixed, type Outcome, stepsOf } from './demand-grid.js'
import type { HouseRule, Load, Weathers } from './load-type.js'

export interface DemandQuestion {
  readonly loads: readonly Load[]
  readonly rules: readonly HouseRule[]
  readonly loadRules: LoadRules
  readonly occasion: Occasion
  readonly season: Season
  readonly twoLegs: boolean
}

/** What one group of loads adds to the whole and to each leg; the same states, so the same chances, in each. */
export interface Group {
  readonly members: readonly number[]
  readonly states: readonly State[]
}

/** The loads on one kind of day: independent groups, and the whole. */
export interface DayDemand {
  readonly weight: number
  /** Share of the time that each load is on. */
  readonly shares: readonly number[]
  readonly groups: readonly Group[]
  readonly whole: DemandGrid
}

export interface Demand {
  readonly occasion: Occasion
  readonly season: Weathers
  readonly days: readonly DayDemand[]
  readonly whole: DemandGrid
  /** Empty on a set of one voltage. */
  readonly legs: readonly DemandGrid[]
  /** Mean, before rounding to the grid. [W] */
  readonly meanW: number
  /** Share of the wanted time that the rules leave room for. */
  readonly kept: number
}

type Weather = 'easy' | 'hard'

/**
 * Share of an occasion that a load is switched on. Where it has hours on this occasion, those by the occasion's length;
 * else, where the occasion falls within another, those of that one; else none. At most one.
 */
export function switchedOn(load: Load, loadRules: LoadRules, occasion: Occasion): number {
  const here = loadRules.occasions.find(({ id }) => id === occasion)!
  const own = load.hours[occasion]
  if (own !== undefined) return Math.min(1, own / here.hours)
  return here.within === undefined ? 0 : switchedOn(load, loadRules, here.within)
}

/** Share of the time that each load is on, on one occasion in a season and a weather. */
export function onShares(
  of: Pick<DemandQuestion, 'loads' | 'loadRules' | 'occasion' | 'season'> & { readonly weather: Weather },
): number[] {
  return of.loads.map(
    (load) => switchedOn(load, of.loadRules, of.occasion) * load.duty[of.season][of.weather],
  )
}

/** The joint distribution. Time grows with loads times cells: some milliseconds for thirty loads. */
export function demandOf(question: DemandQuestion): Demand {
  const { loads, rules, occasion, season, loadRules } = question
  const conflicts = conflictsOf(
    loads.map(({ id }) => id),
    rules,
  )
  const { hardShare } = loadRules.weather
  const weights: Readonly<Record<Weather, number>> = { easy: 1 - hardShare, hard: hardShare }
  const alike = loads.every(({ duty }) => duty[season].easy === duty[season].hard)
  const kinds: readonly (readonly [Weather, number])[] = alike
    ? [['hard', 1]]
    : [
        ['easy', weights.easy],
        ['hard', weights.hard],
      ]
  let kept = 1
  const days = kinds.map(([weather, weight]): DayDemand => {
    const shares = onShares({ ...question, weather })
    const made = groupsOf(conflicts, shares)
    kept = Math.min(kept, made.kept)
    return {
      weight,
      shares: made.shares,
      groups: made.groups,
      whole: gridOf(outcomesOf(made.groups, loads, 'whole')),
    }
  })
  const leg = (which: 'one' | 'two') =>
    mixed(days.map(({ groups, weight }) => ({ grid: gridOf(outcomesOf(groups, loads, which)), weight })))
  return {
    occasion,
    season,
    days,
    whole: mixed(days.map(({ whole, weight }) => ({ grid: whole, weight }))),
    legs: question.twoLegs ? [leg('one'), leg('two')] : [],
    meanW: days.reduce(
      (sum, { weight, shares }) =>
        sum + weight * shares.reduce((total, share, i) => total + share * loads[i]!.watts, 0),
      0,
    ),
    kept,
  }
}

/** Each load that no rule binds as a group of its own, and the groups that rules bind. Loads never on are left out. */
function groupsOf(
  conflicts: readonly Conflict[],
  shares: readonly number[],
): { readonly groups: readonly Group[]; readonly shares: readonly number[]; readonly kept: number } {
  const bound = new Set(conflicts.flatMap(({ members }) => members))
  const groups: Group[] = []
  const had = [...shares]
  let kept = 1
  for (const conflict of conflicts) {
    const wanted = conflict.members.filter((i) => shares[i]! > 0)
    if (wanted.length === 0) continue
    const made = statesOf(conflict, shares)
    kept = Math.min(kept, made.kept)
    for (const i of conflict.members) had[i] = shares[i]! * made.kept
    groups.push({ members: conflict.members, states: made.states.filter(({ chance }) => chance > 0) })
  }
  shares.forEach((share, i) => {
    if (bound.has(i) || share === 0) return
    const states = [
      { on: 0, chance: 1 - share },
      { on: 1, chance: share },
    ]
    groups.push({ members: [i], states })
  })
  return { groups, shares: had, kept }
}

/** Power of the states of each group: in the whole, or on one leg, where what hangs across both counts half. */
export function outcomesOf(
  groups: readonly Group[],
  loads: readonly Load[],
  part: 'whole' | 'one' | 'two',
): Outcome[][] {
  return groups
    .map((group) => outcomesOfGroup(group, loads, part))
    .filter((outcomes) => outcomes.some(({ p, q }) => p > 0 || q > 0))
}

/** Each load is rounded to the grid by itself, so that every sum is exact. */
export function outcomesOfGroup(
  { members, states }: Group,
  loads: readonly Load[],
  part: 'whole' | 'one' | 'two',
): Outcome[] {
  const steps = members.map((i) => {
    const { watts, vars, leg } = loads[i]!
    const factor = part === 'whole' || leg === part ? 1 : leg === 'both' ? 0.5 : 0
    return { p: stepsOf(factor * watts), q: stepsOf(factor * vars) }
  })
  return states.map(({ on, chance }) => {
    let [p, q] = [0, 0]
    steps.forEach((one, k) => {
      if ((on & (1 << k)) === 0) return
      p += one.p
      q += one.q
    })
    return { p, q, chance }
  })
}
