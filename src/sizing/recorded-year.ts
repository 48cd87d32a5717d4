/**
 * A year of the boat as a meter recorded it, in the place of what the list of loads says.
 *
 * @module
 */

import type { Occasion } from '../catalogue/load-schema.js'
import type { DemandGrid } from './demand-grid.js'
import { activeOf, stepW } from './demand-grid.js'
import { powerPoints } from './demand-points.js'
import type { Load } from './load-type.js'
import { chancesWhileOn, type MeasuredBody, secondsByStep } from './measured-summary.js'
import { hoursOf, partsOfDay } from './occasion-clock.js'
import type { OnOccasion, Unshed } from './occasions.js'
import type { Starting } from './overload.js'

/** Where no load tells it; practice. */
const usualPowerFactor = 0.9

/**
 * The parts of the day as recorded, whatever the weather was. Hours of a year are those of the list's habits, parted as
 * recorded. A meter tells neither reactive power nor which load started: the power factor, the legs and all starts are those of
 * the list.
 */
export function recordedYear(
  recording: MeasuredBody,
  of: { readonly loads: readonly Load[]; readonly listed: readonly OnOccasion[] },
): OnOccasion[] {
  const hoursPerYear = of.listed.reduce((sum, { hours }) => sum + hours, 0)
  const onS = (hours: readonly number[]) =>
    secondsByStep(recording, hours)
      .slice(1)
      .reduce((sum, each) => sum + each, 0)
  const parts = Object.entries(partsOfDay) as [Occasion, readonly Occasion[]][]
  const totalS = parts.reduce((sum, [part]) => sum + onS(hoursOf(part)), 0)
  return parts.flatMap(([part, within]) => {
    const seconds = onS(hoursOf(part))
    if (seconds === 0) return []
    const listed = of.listed.filter(({ occasion }) => within.includes(occasion))
    return [
      recordedPart(part, {
        hours: (hoursPerYear * seconds) / totalS,
        chances: chancesWhileOn(recording, hoursOf(part)),
        loads: of.loads,
        // an occasion that the list does not know has the list's whole year for its power factor
        listed: listed.length > 0 ? listed : of.listed,
        starting: listed,
      }),
    ]
  })
}

function recordedPart(
  occasion: Occasion,
  of: {
    readonly hours: number
    readonly chances: readonly number[]
    readonly loads: readonly Load[]
    readonly listed: readonly OnOccasion[]
    readonly starting: readonly OnOccasion[]
  },
): OnOccasion {
  const { hours, chances, loads, listed, starting } = of
  const whole = gridOf(chances, varsPerWatt(loads, listed))
  const active = activeOf(whole)
  const unshed = starting.flatMap((one) => one.unshed ?? [])
  return {
    occasion,
    season: 'recorded',
    hours,
    demand: {
      occasion,
      season: 'recorded',
      days: [],
      whole,
      legs: [],
      meanW: active.reduce((sum, chance, step) => sum + chance * step * stepW, 0),
      kept: 1,
    },
    active,
    ...powerPoints(whole),
    legKVA: heaviest(listed)?.legKVA ?? [],
    ...together(starting, loads.length),
    ...(unshed.length === 0
      ? {}
      : { unshed: { loads: unshed[0]!.loads, ...together(unshed, unshed[0]!.loads.length) } }),
  }
}

/** Steps of active power as a grid; each load between two steps counts half to either. */
function gridOf(chances: readonly number[], perWatt: number): DemandGrid {
  const rows = chances.length + 1
  const columns = Math.round((rows - 1) * perWatt) + 1
  const chance = new Float64Array(rows * columns)
  chances.forEach((share, step) => {
    for (const row of [step, step + 1]) chance[row * columns + Math.round(row * perWatt)]! += share / 2
  })
  return { rows, columns, chance }
}

/** Reactive over active power of the list, on the mean. */
function varsPerWatt(loads: readonly Load[], listed: readonly OnOccasion[]): number {
  let [watts, vars] = [0, 0]
  for (const { hours, demand } of listed) {
    for (const { weight, shares } of demand.days) {
      shares.forEach((share, i) => {
        watts += hours * weight * share * loads[i]!.watts
        vars += hours * weight * share * loads[i]!.vars
      })
    }
  }
  return watts > 0 ? vars / watts : Math.tan(Math.acos(usualPowerFactor))
}

function heaviest(listed: readonly OnOccasion[]): OnOccasion | undefined {
  const most = ({ legKVA }: OnOccasion) => Math.max(0, ...legKVA.map(({ p99 }) => p99))
  return listed.reduce<OnOccasion | undefined>(
    (found, one) => (found === undefined || most(one) > most(found) ? one : found),
    undefined,
  )
}

/** Starts of several occasions as those of one: what stands around them weighs by how many there are. */
function together(
  parts: readonly Pick<Unshed, 'startsPerYear' | 'startings'>[],
  count: number,
): Pick<Unshed, 'startsPerYear' | 'startings'> {
  const places = Array.from({ length: count }, (_, i) => i)
  return {
    startsPerYear: places.map((i) => parts.reduce((sum, one) => sum + one.startsPerYear[i]!, 0)),
    startings: places.map((i) =>
      parts.flatMap((one) =>
        one.startings[i]!.map((each): Starting => ({ ...each, weight: each.weight * one.startsPerYear[i]! })),
      ),
    ),
  }
}
