/**
 * What judging a set for a boat starts from, and what comes of it.
 *
 * @module
 */

import type { WholeSet } from '../catalogue/file-schema.js'
import type { SizingLimits } from '../catalogue/sizing-schema.js'
import type { SpaceFacts } from '../register/load-facts.js'
import type { Load, Occasion } from './load-type.js'
import type { OnOccasion } from './occasions.js'
import type { SizeCheck, Verdict } from './size-check.js'
import type { SizedSet } from './sized-set.js'

/** How one set meets one occasion, over its seasons. */
export interface SetOnOccasion {
  readonly occasion: Occasion
  readonly hours: number
  /** Worst over the seasons. */
  readonly p99KW: number
  readonly p99KVA: number
  /** Share of the time at which more is drawn than the engine gives. */
  readonly overShare: number
  /** Share of the time below 30 % of the rating. */
  readonly lowShare: number
  /** Starts in a year that ask for more than the engine gives, and that dip the voltage too far. */
  readonly overloadsPerYear: number
  readonly dipsPerYear: number
  /** Overloads left when all that may be shed is off; left out: nothing may be shed. */
  readonly overloadsUnshed?: number
  /** Chance that a start does either; undefined where nothing starts. */
  readonly chanceAtStart?: number
  readonly checks: readonly SizeCheck[]
}

/** What a set burns in a year for the same loads. */
export interface FuelOfYear {
  readonly litres: number
  /** Left out: nothing is drawn. */
  readonly litresPerKWh?: number
  readonly co2Kg: number
}

export interface JudgedSet {
  readonly set: SizedSet
  /** What is left of engine and alternator where it stands. */
  readonly engineKW: number
  readonly alternatorKVA: number
  readonly engineFactor: number
  readonly alternatorFactor: number
  /** The alternator's by the rise of class H alone: a second opinion. */
  readonly alternatorFactorByRise: number
  /** The engine's by the correction of engine tests, the same; left out: that does not reach so far. */
  readonly engineFactorByTest?: number
  readonly fuel: FuelOfYear
  readonly occasions: readonly SetOnOccasion[]
  /** Over the year and whatever the occasion. */
  readonly checks: readonly SizeCheck[]
  readonly hoursPerYear: number
  readonly lowShare: number
  readonly overloadsPerYear: number
  readonly dipsPerYear: number
  readonly overloadsUnshed?: number
  /** Whether it carries what is asked of it. */
  readonly verdict: Verdict
  /** Whether it can stand where it is to stand, and get there. */
  readonly place: Verdict
}

/** What sets are held against. */
export interface PlaceBook {
  readonly sizing: SizingLimits
  readonly wholeSet: WholeSet
}

export interface Judged {
  readonly book: PlaceBook
  readonly loads: readonly Load[]
  readonly year: readonly OnOccasion[]
  readonly space: SpaceFacts
  /** Between the legs' outer ends, and of a leg; the same on a set of one voltage. [V] */
  readonly legVolts: number
}

/** What heat and height leave of a set. */
export type Derated = Pick<
  JudgedSet,
  | 'engineKW'
  | 'alternatorKVA'
  | 'engineFactor'
  | 'alternatorFactor'
  | 'alternatorFactorByRise'
  | 'engineFactorByTest'
>

export interface OfSet {
  readonly set: SizedSet
  readonly derated: Derated
}
