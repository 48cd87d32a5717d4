/**
 * How a case with a known answer is put, and how far the histories of a simulator are from it.
 *
 * @module
 */

import type { LifeModelInput } from '../../src/forecast/life-model.js'

/** What one simulated history must tell, so that a case can be checked against it. */
export interface HistoryView {
  /** All money, discounted. */
  readonly presentCost: number
  readonly failureCost: number
  readonly plannedCost: number
  readonly upkeepCost: number
  readonly powerCost: number
  readonly daysWithoutPower: number
  /** All of them, same-day stops too. */
  readonly stops: number
  // What follows is asked for by the worked cases only; a simulator that does not tell it cannot be held to them.
  readonly sameDayStops?: number
  readonly replaced?: number
  readonly nowCost?: number
  readonly fuelCost?: number
  readonly intrusionCost?: number
  readonly replacementCost?: number
  readonly giveUpCost?: number
  /** Taken in, so negative. */
  readonly resaleCost?: number
  /** Visible or hidden failures, by `part/mode`. */
  readonly failures: Readonly<Record<string, number>>
  /** Expected events, by danger. */
  readonly dangers?: Readonly<Record<string, number>>
  /** The first visible failure: by `part/mode`, when, and the money of its job, not discounted. */
  readonly first: { readonly of: string; readonly atYears: number; readonly cost: number } | null
}

/** A number of one history whose mean over histories is known. */
export type Quantity =
  | {
      readonly of:
        | 'presentCost'
        | 'failureCost'
        | 'plannedCost'
        | 'upkeepCost'
        | 'powerCost'
        | 'daysWithoutPower'
        | 'stops'
        | 'sameDayStops'
        | 'replaced'
        | 'nowCost'
        | 'fuelCost'
        | 'intrusionCost'
        | 'replacementCost'
        | 'giveUpCost'
        | 'resaleCost'
        | 'firstFailureYears'
        | 'firstFailureCost'
        | 'withoutFailure'
    }
  | { readonly of: 'failures' | 'firstFailure'; readonly mode: string }
  | { readonly of: 'danger'; readonly danger: string }
  | { readonly of: 'costAtLeast'; readonly cost: number }

export type Expectation =
  | { readonly mean: Quantity; readonly value: number }
  | { readonly deviation: 'presentCost'; readonly value: number }
  | { readonly quantile: 'presentCost'; readonly share: number; readonly value: number }

export interface ClosedFormCase {
  readonly id: string
  /** Where the answer comes from. */
  readonly source: string
  readonly held: 'seen' | 'quoted' | 'recalled' | 'practice' | 'derived'
  /** Enough of them to see an error of a percent or so. */
  readonly histories: number
  /** For a slow simulator that must draw most lives in vain. */
  readonly slowHistories?: number
  readonly model: LifeModelInput
  /** The alternative that is played; `leave` unless said. */
  readonly alternative?: string
  readonly expect: readonly Expectation[]
}

export interface Agreement {
  readonly expected: number
  readonly found: number
  readonly standardError: number
}

/** What the histories say of an expectation, with the sampling error of it. A quantile of whole costs has none. */
export function agreement(histories: readonly HistoryView[], expectation: Expectation): Agreement {
  const expected = expectation.value
  if ('mean' in expectation) {
    const { mean, variance } = moments(histories.map((history) => quantityOf(history, expectation.mean)))
    return { expected, found: mean, standardError: Math.sqrt(variance / histories.length) }
  }
  const costs = histories.map((history) => history.presentCost)
  if ('quantile' in expectation) {
    costs.sort((a, b) => a - b)
    const found = costs[Math.ceil(expectation.share * costs.length) - 1]!
    return { expected, found, standardError: 0 }
  }
  // The standard error of s is that of s² over 2s; s² has variance (m4 − s⁴)/n.
  const { mean, variance } = moments(costs)
  const fourth = moments(costs.map((cost) => (cost - mean) ** 4)).mean
  const deviation = Math.sqrt(variance)
  return {
    expected,
    found: deviation,
    standardError: Math.sqrt((fourth - variance ** 2) / costs.length) / (2 * deviation),
  }
}

function quantityOf(history: HistoryView, quantity: Quantity): number {
  switch (quantity.of) {
    case 'failures':
      return history.failures[quantity.mode] ?? 0
    case 'firstFailure':
      return history.first?.of === quantity.mode ? 1 : 0
    case 'withoutFailure':
      return history.first === null ? 1 : 0
    case 'firstFailureYears':
      return history.first?.atYears ?? 0
    case 'firstFailureCost':
      return history.first?.cost ?? 0
    case 'costAtLeast':
      return history.presentCost >= quantity.cost ? 1 : 0
    case 'danger':
      return told('dangers', history.dangers)[quantity.danger] ?? 0
    default:
      return told(quantity.of, history[quantity.of])
  }
}

function told<T>(name: string, value: T | undefined): T {
  if (value === undefined) throw new Error(`${name} must be told by the simulator; found nothing`)
  return value
}

function moments(values: readonly number[]): { readonly mean: number; readonly variance: number } {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0)
  return { mean, variance: square / (values.length - 1) }
}
