/**
 * One set on one occasion, over its seasons: load, legs, and starts on top of what runs.
 *
 * @module
 */

import { shareAbove, shareBelow } from './demand-points.js'
import type { Derated, Judged, OfSet, SetOnOccasion } from './judged-set.js'
import type { Load, Weathers } from './load-type.js'
import type { OnOccasion, Unshed } from './occasions.js'
import { type StartLimits, startChances } from './overload.js'
import { measured, type SizeCheck } from './size-check.js'

/** How a set meets an occasion. */
export function judgeOccasion(
  on: Judged,
  of: OfSet & { readonly limits: StartLimits },
  seasons: readonly OnOccasion[],
): SetOnOccasion {
  const { derated, set, limits } = of
  const { sizing } = on.book
  const hours = seasons.reduce((sum, one) => sum + one.hours, 0)
  const share = (value: (one: OnOccasion) => number) =>
    seasons.reduce((sum, one) => sum + (one.hours / hours) * value(one), 0)
  const starts = seasons.map((one) => startsOn(on.loads, one, limits))
  const total = (field: 'starts' | 'tooMuch' | 'dips' | 'either') =>
    starts.reduce((sum, one) => sum + one[field], 0)
  const worstKW = worst(seasons, (one) => one.kW.p99)
  const worstKVA = worst(seasons, (one) => one.kVA.p99)
  const at = (season: Weathers) => ({ occasion: seasons[0]!.occasion, season })
  const checks: SizeCheck[] = [
    {
      ...measured('engine-load', worstKW.value, sizing.load.p99ShareOfRating * derated.engineKW, 'kW'),
      ...at(worstKW.season),
      limitPath: 'sizing.load.p99ShareOfRating',
    },
    {
      ...measured('alternator-load', worstKVA.value, derated.alternatorKVA, 'kVA'),
      ...at(worstKVA.season),
    },
    ...legChecks(on, derated, seasons),
    ...startOverload(of, { seasons, perYear: total('tooMuch') }),
  ]
  return {
    occasion: seasons[0]!.occasion,
    hours,
    p99KW: worstKW.value,
    p99KVA: worstKVA.value,
    overShare: share(({ active }) => shareAbove(active, derated.engineKW)),
    lowShare: share(({ active }) => shareBelow(active, sizing.load.lowBelow * set.ratingKW)),
    overloadsPerYear: total('tooMuch'),
    dipsPerYear: total('dips'),
    ...unshedOn(seasons, limits),
    ...(total('starts') > 0 ? { chanceAtStart: total('either') / total('starts') } : {}),
    checks,
  }
}

function worst<T extends OnOccasion>(
  seasons: readonly T[],
  value: (one: T) => number,
): { readonly value: number; readonly season: Weathers; readonly one: T } {
  return seasons
    .map((one) => ({ value: value(one), season: one.season, one }))
    .reduce((most, next) => (next.value > most.value ? next : most))
}

/** The current of each leg against half of the alternator. */
function legChecks(on: Judged, derated: Derated, seasons: readonly OnOccasion[]): SizeCheck[] {
  const [first] = seasons
  return (first?.legKVA ?? []).map((_, leg) => {
    const { value, season } = worst(seasons, (one) => (1000 * one.legKVA[leg]!.p99) / on.legVolts)
    return {
      ...measured('leg-load', value, (500 * derated.alternatorKVA) / on.legVolts, 'A'),
      occasion: first!.occasion,
      season,
      about: leg === 0 ? 'leg one' : 'leg two',
    }
  })
}

interface Starts {
  readonly starts: number
  readonly tooMuch: number
  readonly dips: number
  readonly either: number
}

function startsOn(
  loads: readonly Load[],
  { startings, startsPerYear }: Unshed | OnOccasion,
  limits: StartLimits,
): Starts {
  let [starts, tooMuch, dips, either] = [0, 0, 0, 0]
  loads.forEach((load, i) => {
    const count = startsPerYear[i]!
    if (count <= 0) return
    const chances = startChances(load, startings[i]!, limits)
    starts += count
    tooMuch += count * chances.tooMuch
    dips += count * chances.dips
    either += count * Math.min(1, chances.tooMuch + chances.dips)
  })
  return { starts, tooMuch, dips, either }
}

/** Overloads of the loads that stay on when what may be shed is off. */
function unshedOn(
  seasons: readonly OnOccasion[],
  limits: StartLimits,
): { readonly overloadsUnshed?: number } {
  const unshed = seasons.flatMap((one) => one.unshed ?? [])
  if (unshed.length === 0) return {}
  return {
    overloadsUnshed: unshed.reduce((sum, one) => sum + startsOn(one.loads, one, limits).tooMuch, 0),
  }
}

/** Overloads in a year that people put up with on one occasion before it is called a failing; practice. */
const mostOverloads = 1

function startOverload(
  { derated }: OfSet,
  of: { readonly seasons: readonly OnOccasion[]; readonly perYear: number },
): SizeCheck[] {
  const { value, season } = worst(of.seasons, ({ active }) => shareAbove(active, derated.engineKW))
  if (of.perYear === 0 && value === 0) return []
  return [
    {
      ...measured('start-overload', of.perYear, mostOverloads, 'a year'),
      occasion: of.seasons[0]!.occasion,
      season,
    },
  ]
}
