/**
 * The list of loads brought to what a meter recorded.
 *
 * @module
 */

import { type Occasion, occasions, seasons } from '../catalogue/load-schema.js'
import { demandOf } from './demand.js'
import type { Load } from './load-type.js'
import { chancesWhileOn, type MeasuredBody } from './measured-summary.js'
import type { Aboard } from './occasions.js'

export interface Correction {
  readonly loads: readonly Load[]
  /** Every load is switched on for so many times as long as the list says, at most throughout. */
  readonly hoursFactor: number
  /** Drawn all the time, and by no load of the list; 0: the hours account for all of it. [kW] */
  readonly missingKW: number
}

/** More than this, either way, the hours of a list are not wrong by; what is left is missing from it. Practice. */
const mostHoursFactor = 3
/** A load that draws less is no load. [kW] */
const leastMissingKW = 0.05
const halvings = 10

/**
 * The hours that every load is switched on, all by one factor, so that the mean while the set runs comes to the recorded one;
 * where three times as long is not enough, a steady load that the list lacks stands for the rest.
 *
 * Source: derived; the bound is practice.
 */
export function correctedTo(recording: MeasuredBody, aboard: Aboard): Correction {
  const wantedKW = recordedMeanKW(recording)
  const meanAt = (factor: number) => meanKW({ ...aboard, loads: onFor(aboard.loads, factor) })
  if (meanAt(1) === 0 || wantedKW === 0) return { loads: aboard.loads, hoursFactor: 1, missingKW: 0 }
  const factor = factorFor(meanAt, wantedKW)
  const loads = onFor(aboard.loads, factor)
  const missingKW = wantedKW - meanAt(factor)
  if (missingKW < leastMissingKW) return { loads, hoursFactor: factor, missingKW: 0 }
  return { loads: [...loads, steady(missingKW, loads[0]!)], hoursFactor: factor, missingKW }
}

/** The factor at which the mean comes to what is wanted, or the nearest that is allowed: the span is halved, by ratio. */
function factorFor(meanAt: (factor: number) => number, wantedKW: number): number {
  let [low, high] = [1 / mostHoursFactor, mostHoursFactor]
  if (meanAt(high) <= wantedKW) return high
  if (meanAt(low) >= wantedKW) return low
  for (let step = 0; step < halvings; step++) {
    const middle = Math.sqrt(low * high)
    if (meanAt(middle) < wantedKW) low = middle
    else high = middle
  }
  return Math.sqrt(low * high)
}

/** Mean of a recording while power is drawn. [kW] */
function recordedMeanKW(recording: MeasuredBody): number {
  return chancesWhileOn(recording).reduce(
    (sum, chance, step) => sum + chance * (step + 0.5) * recording.stepKw,
    0,
  )
}

/** Mean of what a list draws in the hours of a year with the set running. [kW] */
function meanKW(aboard: Aboard): number {
  const parts = occasions.flatMap((occasion) =>
    seasons.flatMap((season) => {
      const hours = aboard.habits.setHours[occasion] * aboard.habits.days[season]
      return hours > 0 ? [{ hours, demand: demandOf({ ...aboard, occasion, season, twoLegs: false }) }] : []
    }),
  )
  const total = parts.reduce((sum, { hours }) => sum + hours, 0)
  return parts.reduce((sum, { hours, demand }) => sum + (hours * demand.meanW) / 1000 / total, 0)
}

function onFor(loads: readonly Load[], factor: number): Load[] {
  return loads.map((load) => ({
    ...load,
    hours: Object.fromEntries(
      Object.entries(load.hours).map(([occasion, hours]) => [occasion, factor * hours]),
    ),
  }))
}

/** A load that is on whenever the set runs. */
function steady(kW: number, { volts, leg }: Load): Load {
  const all = <K extends string, T>(keys: readonly K[], value: T) =>
    Object.fromEntries(keys.map((key) => [key, value])) as Record<K, T>
  return {
    id: 'not-on-the-list',
    name: 'What the list lacks',
    basis: 'measured',
    volts,
    leg,
    watts: 1000 * kW,
    vars: 0,
    season: 'all',
    duty: all(seasons, { easy: 1, hard: 1 }),
    hours: all(occasions as readonly Occasion[], 24),
    startsPerHour: all(seasons, 0),
    canWait: 'not',
  }
}
