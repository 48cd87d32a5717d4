/**
 * What happens when a load starts on top of the others: how often the set is asked for more than it has, and how often the
 * voltage dips too far.
 *
 * Just after its start a load is on, so everything is conditional on that. Starts fall evenly over the time that a load is
 * switched on.
 *
 * @module
 */

import { type DayDemand, type Demand, type Group, outcomesOfGroup } from './demand.js'
import { activeOf, type DemandGrid, gridOf, type Outcome, stepW } from './demand-grid.js'
import type { Load } from './load-type.js'
import { type MotorStart, reactiveExceeding } from './voltage-dip.js'

/** The set as far as a start cares. */
export interface StartLimits {
  /** What its engine gives. [kW] */
  readonly kW: number
  /** Rating of its alternator as linked. [kVA] */
  readonly kVA: number
  readonly reactance: number
  /** Dip that may not be exceeded, as a share. */
  readonly dip: number
}

/** Chances when one load starts. */
export interface StartChances {
  /** That more active power is asked for than the engine gives. */
  readonly tooMuch: number
  /** That the voltage dips further than it may. */
  readonly dips: number
}

/** What stands around a load when it starts, on one kind of day. Made once; asked for every set. */
export interface Starting {
  readonly weight: number
  /** Active power with it on, by steps. */
  readonly active: Float64Array
  /** What the others draw; made when first asked for. */
  readonly others: () => DemandGrid
}

/** For each load, what stands around its starts on each kind of day; none where it is never on. */
export function startingsOf(demand: Demand, loads: readonly Load[]): readonly (readonly Starting[])[] {
  const made = loads.map((): Starting[] => [])
  for (const day of demand.days) {
    day.groups.forEach((group, at) => {
      const rest = lazily(() => restOf(day, loads, at))
      const restActive = lazily(() => activeWithout(day, loads, at))
      group.members.forEach((member, place) => {
        const withIt = outcomesWith(group, loads, place)
        if (withIt === undefined) return
        made[member]!.push({
          weight: day.weight,
          active: shiftedSum(restActive(), withIt.on),
          others: lazily(() => gridWith(rest(), withIt.others)),
        })
      })
    })
  }
  return made
}

function lazily<T>(make: () => T): () => T {
  let held: { readonly value: T } | undefined
  return () => {
    held ??= { value: make() }
    return held.value
  }
}

/** Outcomes of a group given that one of its loads is on: with its power, and without. */
function outcomesWith(
  group: Group,
  loads: readonly Load[],
  place: number,
): { readonly on: readonly Outcome[]; readonly others: readonly Outcome[] } | undefined {
  const states = group.states.filter(({ on }) => on & (1 << place))
  const sum = states.reduce((total, { chance }) => total + chance, 0)
  if (sum <= 0) return undefined
  const given = states.map(({ on, chance }) => ({ on, chance: chance / sum }))
  const without = given.map(({ on, chance }) => ({ on: on & ~(1 << place), chance }))
  return {
    on: outcomesOfGroup({ ...group, states: given }, loads, 'whole'),
    others: outcomesOfGroup({ ...group, states: without }, loads, 'whole'),
  }
}

/** The distribution of all groups but one. A group of one load is taken out again; others are left out and the rest added anew. */
function restOf(day: DayDemand, loads: readonly Load[], at: number): DemandGrid {
  const group = day.groups[at]!
  const outcomes = outcomesOfGroup(group, loads, 'whole')
  if (group.members.length === 1) return without(day.whole, outcomes)
  const others = day.groups.filter((_, i) => i !== at).map((one) => outcomesOfGroup(one, loads, 'whole'))
  return gridOf(others.filter((one) => one.some(({ p, q }) => p > 0 || q > 0)))
}

/**
 * Takes a group of two outcomes, off and on, out of a sum: `f(x) = (1 − s) r(x) + s r(x − w)` solved for r. From below where
 * s ≤ ½ and from above where s > ½, so that an error made once shrinks on the way.
 */
function without(grid: DemandGrid, [first, second]: readonly Outcome[]): DemandGrid {
  const off = first!.p === 0 && first!.q === 0 ? first! : second!
  const on = off === first ? second! : first!
  if (on.p === 0 && on.q === 0) return grid
  const rows = grid.rows - on.p
  const columns = grid.columns - on.q
  const chance = new Float64Array(rows * columns)
  const low = on.chance <= 0.5
  for (let step = 0; step < rows; step += 1) {
    const i = low ? step : rows - 1 - step
    for (let place = 0; place < columns; place += 1) {
      const j = low ? place : columns - 1 - place
      // Where the neighbour lies outside, it is nothing.
      const [ni, nj] = low ? [i - on.p, j - on.q] : [i + on.p, j + on.q]
      const neighbour = ni >= 0 && nj >= 0 && ni < rows && nj < columns ? chance[ni * columns + nj]! : 0
      const here = low
        ? grid.chance[i * grid.columns + j]!
        : grid.chance[(i + on.p) * grid.columns + j + on.q]!
      const left = low
        ? (here - on.chance * neighbour) / off.chance
        : (here - off.chance * neighbour) / on.chance
      chance[i * columns + j] = Math.max(0, left)
    }
  }
  return { rows, columns, chance }
}

/** Active power of all groups but one. */
function activeWithout(day: DayDemand, loads: readonly Load[], at: number): Float64Array {
  const flat = (outcomes: readonly Outcome[]) => outcomes.map(({ p, chance }) => ({ p, q: 0, chance }))
  const outcomes = flat(outcomesOfGroup(day.groups[at]!, loads, 'whole'))
  if (day.groups[at]!.members.length === 1) {
    const active = activeOf(day.whole)
    return without({ rows: active.length, columns: 1, chance: active }, outcomes).chance
  }
  const others = day.groups
    .filter((_, i) => i !== at)
    .map((one) => flat(outcomesOfGroup(one, loads, 'whole')))
  return gridOf(others.filter((one) => one.some(({ p }) => p > 0))).chance
}

function shiftedSum(active: Float64Array, outcomes: readonly Outcome[]): Float64Array {
  const sums = new Float64Array(active.length + Math.max(...outcomes.map(({ p }) => p)))
  for (const { p, chance } of outcomes) {
    for (let i = 0; i < active.length; i += 1) sums[i + p]! += chance * active[i]!
  }
  return sums
}

function gridWith(grid: DemandGrid, outcomes: readonly Outcome[]): DemandGrid {
  const [only] = outcomes
  if (outcomes.every(({ p, q }) => p === only!.p && q === only!.q) && only!.p === 0 && only!.q === 0)
    return grid
  const rows = grid.rows + Math.max(...outcomes.map(({ p }) => p))
  const columns = grid.columns + Math.max(...outcomes.map(({ q }) => q))
  const chance = new Float64Array(rows * columns)
  for (const one of outcomes) {
    for (let i = 0; i < grid.rows; i += 1) {
      for (let j = 0; j < grid.columns; j += 1) {
        chance[(i + one.p) * columns + j + one.q]! += one.chance * grid.chance[i * grid.columns + j]!
      }
    }
  }
  return { rows, columns, chance }
}

/** The chances when a load starts on a set. */
export function startChances(load: Load, startings: readonly Starting[], limits: StartLimits): StartChances {
  const weight = startings.reduce((sum, one) => sum + one.weight, 0)
  if (weight <= 0) return { tooMuch: 0, dips: 0 }
  const mean = (of: (one: Starting) => number) =>
    startings.reduce((sum, one) => sum + one.weight * of(one), 0) / weight
  const motor = startOn(load, limits)
  return {
    tooMuch: mean(({ active }) => chanceAbove(active, limits.kW)),
    dips: motor === undefined ? 0 : mean((one) => dipChance(motor, one, limits)),
  }
}

/** The start of a load on the alternator of a set; undefined where nothing is to start. */
export function startOn(load: Load, limits: Pick<StartLimits, 'kVA' | 'reactance'>): MotorStart | undefined {
  if (load.start === undefined) return undefined
  const { va, powerFactor } = load.start
  return {
    startKVA: va / 1000,
    startPowerFactor: powerFactor,
    setKVA: limits.kVA,
    reactance: limits.reactance,
  }
}

function chanceAbove(active: Float64Array, kW: number): number {
  let sum = 0
  for (let i = active.length - 1; i >= 0 && i * stepW > kW * 1000 + 1e-6; i -= 1) sum += active[i]!
  return Math.min(1, sum)
}

/** Only where the dip can exceed the limit at all is it asked what the others draw. */
function dipChance(motor: MotorStart, { active, others }: Starting, { dip }: StartLimits): number {
  const spans = Array.from(active, (_, i) => {
    const span = reactiveExceeding(motor, { runningKW: (i * stepW) / 1000, dip })
    if (span === undefined || span.below <= 0) return undefined
    return {
      from: Math.max(0, Math.floor((span.above * 1000) / stepW) + 1),
      to: Math.ceil((span.below * 1000) / stepW) - 1,
    }
  })
  if (spans.every((span) => span === undefined)) return 0
  const { rows, columns, chance } = others()
  let sum = 0
  for (let i = 0; i < rows; i += 1) {
    const span = spans[i]
    if (span === undefined) continue
    for (let j = span.from; j <= Math.min(columns - 1, span.to); j += 1) sum += chance[i * columns + j]!
  }
  return Math.min(1, sum)
}
