/**
 * One thing looked at when a set is judged, and what came of it.
 *
 * @module
 */

import type { Occasion, Weathers } from './load-type.js'

export const checkIds = [
  'engine-load',
  'alternator-load',
  'leg-load',
  'start-overload',
  'voltage-dip',
  'starts-together',
  'start-current',
  'first-step',
  'frequency-dip',
  'low-load',
  'mean-load',
  'raw-water',
  'exhaust-hose',
  'exhaust-lift',
  'exhaust-heat',
  'sea-cooling',
  'ventilation',
  'engine-space',
  'noise',
  'way-out',
  'lift',
] as const
export type CheckId = (typeof checkIds)[number]

/** `tight`: within the limit that stops, beyond the one aimed at. `cannot-tell`: something it needs is not told. */
export type Verdict = 'passes' | 'tight' | 'fails' | 'cannot-tell'

/** One thing that was looked at. */
export interface SizeCheck {
  readonly check: CheckId
  readonly verdict: Verdict
  readonly found?: number
  readonly limit?: number
  readonly unit: string
  /** How far beyond the limit, as a share of it; below nought: so much is left. */
  readonly by?: number
  /** Where it is worst. */
  readonly occasion?: Occasion
  readonly season?: Weathers
  /** What it is about: a load, an opening, a leg. */
  readonly about?: string
  /** The largest start that the set bears, and the smallest alternator that bears the one looked at. */
  readonly bears?: { readonly startKVA: number; readonly setKVA: number }
  /** How often in a year. */
  readonly perYear?: number
  /** The limit's place in the catalogue; undefined: from the set itself or the boat. */
  readonly limitPath?: string
  /** Taken as usual, because nobody told it. */
  readonly usual?: readonly string[]
}

/** A value against a limit that it may reach. */
export function measured(check: CheckId, found: number, limit: number, unit: string): SizeCheck {
  const by = limit === 0 ? 0 : found / limit - 1
  return { check, verdict: found <= limit + 1e-9 ? 'passes' : 'fails', found, limit, unit, by }
}

const rank: Readonly<Record<Verdict, number>> = { passes: 0, 'cannot-tell': 1, tight: 2, fails: 3 }

export function worstOf(verdicts: readonly Verdict[]): Verdict {
  return verdicts.reduce<Verdict>((worst, one) => (rank[one] > rank[worst] ? one : worst), 'passes')
}
