/**
 * A year of the boat by occasion and season: what is drawn, for how long, and what stands around each start.
 *
 * @module
 */

import { type LoadRules, type Occasion, occasions, type Season, seasons } from '../catalogue/load-schema.js'
import { type Demand, demandOf, switchedOn } from './demand.js'
import { activeOf } from './demand-grid.js'
import { type Points, powerPoints } from './demand-points.js'
import type { Habits, HouseRule, Load, Weathers } from './load-type.js'
import { type Starting, startingsOf } from './overload.js'

/** One occasion in one season. */
export interface OnOccasion {
  readonly occasion: Occasion
  readonly season: Weathers
  /** With the set running. [h/y] */
  readonly hours: number
  readonly demand: Demand
  /** Chances of the steps of active power. */
  readonly active: Float64Array
  /** Of the whole, and the apparent power of each leg. */
  readonly kW: Points
  readonly kVA: Points
  readonly legKVA: readonly Points[]
  /** Starts of each load in a year, by its place in the list. [1/y] */
  readonly startsPerYear: readonly number[]
  readonly startings: readonly (readonly Starting[])[]
  /** The same without the loads that may be shed; left out: none may. */
  readonly unshed?: Unshed
}

/** What cannot be switched off when all cannot be carried. */
export interface Unshed {
  readonly loads: readonly Load[]
  readonly startsPerYear: readonly number[]
  readonly startings: readonly (readonly Starting[])[]
}

export interface Aboard {
  readonly loads: readonly Load[]
  readonly rules: readonly HouseRule[]
  readonly habits: Habits
  readonly loadRules: LoadRules
  readonly twoLegs: boolean
}

/** Every occasion and season in which the set runs at all. */
export function yearOf(aboard: Aboard): OnOccasion[] {
  return occasions.flatMap((occasion) =>
    seasons.flatMap((season) => {
      const hours = aboard.habits.setHours[occasion] * aboard.habits.days[season]
      return hours > 0 ? [onOccasion(aboard, { occasion, season, hours })] : []
    }),
  )
}

function onOccasion(
  aboard: Aboard,
  of: { readonly occasion: Occasion; readonly season: Season; readonly hours: number },
): OnOccasion {
  const { loads, twoLegs } = aboard
  const demand = demandOf({ ...aboard, ...of, twoLegs })
  const kept = loads.filter(({ shed }) => shed === undefined)
  return {
    ...of,
    demand,
    active: activeOf(demand.whole),
    ...powerPoints(demand.whole),
    legKVA: demand.legs.map((grid) => powerPoints(grid).kVA),
    startsPerYear: startsOf(aboard, loads, of),
    startings: startingsOf(demand, loads),
    ...(kept.length === loads.length ? {} : { unshed: unshedOf(aboard, kept, of) }),
  }
}

/** Legs are looked at for the whole list alone. */
function unshedOf(
  aboard: Aboard,
  loads: readonly Load[],
  of: { readonly occasion: Occasion; readonly season: Season; readonly hours: number },
): Unshed {
  const demand = demandOf({ ...aboard, ...of, loads, twoLegs: false })
  return { loads, startsPerYear: startsOf(aboard, loads, of), startings: startingsOf(demand, loads) }
}

function startsOf(
  { loadRules }: Aboard,
  loads: readonly Load[],
  of: { readonly occasion: Occasion; readonly season: Season; readonly hours: number },
): number[] {
  return loads.map(
    (load) => of.hours * switchedOn(load, loadRules, of.occasion) * load.startsPerHour[of.season],
  )
}
