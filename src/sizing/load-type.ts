/**
 * What draws power aboard, in the form that all of sizing works on: one boat's list, ready to be reckoned with.
 *
 * @module
 */

import type { Occasion, Season } from '../catalogue/load-schema.js'

export type { Occasion, Season }

/** The weather that figures are of; a recording tells none. */
export type Weathers = Season | 'recorded'

/**
 * Where a load hangs on a set of two legs (120/240 V): on one of them, or across both. On a set of one voltage all
 * loads hang on leg one.
 */
export type Leg = 'one' | 'two' | 'both'

/** What a motor takes while it comes up to speed. */
export interface LoadStart {
  /** Apparent power with the rotor standing still, at nominal voltage, soft starter already taken off. [VA] */
  readonly va: number
  /** Power factor meanwhile. */
  readonly powerFactor: number
  /** Without a soft starter. [VA] */
  readonly bareVa: number
  /** Behind one; undefined where none can be fitted. [VA] */
  readonly softVa?: number
  readonly softStarter: boolean
  /** Code letter of its locked-rotor power, where its horsepower is told. */
  readonly letter?: string
  /** Until it is up to speed. [s] Left out: not known. */
  readonly seconds?: number
}

/** Share of the time on while switched on, on a day of easy and of hard weather for the season. */
export interface Duty {
  readonly easy: number
  readonly hard: number
}

/** Where a figure of a load comes from. */
export type LoadBasis = 'catalogue' | 'nameplate' | 'measured'

/** One thing that draws power; of several alike each is one. */
export interface Load {
  readonly id: string
  readonly name: string
  /** The catalogue's load that it is one of; undefined where it is none of them. */
  readonly is?: string
  readonly basis: LoadBasis
  readonly volts: number
  readonly leg: Leg
  /** While it runs. [W] */
  readonly watts: number
  /** While it runs, lagging. [var] */
  readonly vars: number
  /** Undefined where nothing is to start. */
  readonly start?: LoadStart
  readonly season: 'all' | 'cooling' | 'heating' | 'with-climate'
  readonly duty: Readonly<Record<Season, Duty>>
  /** Hours a day switched on, by occasion; left out: not on that occasion itself. [h/d] */
  readonly hours: Readonly<Partial<Record<Occasion, number>>>
  /** Starts in an hour switched on, by season, as a mean of the weather. */
  readonly startsPerHour: Readonly<Record<Season, number>>
  readonly canWait: 'not' | 'a-little' | 'to-another-hour' | 'in-pieces' | 'turned-down' | 'with-climate'
  /** It may be switched off when all cannot be carried: 1 goes first. Undefined: never. */
  readonly shed?: number
}

/** Loads that are never on together, or never more than so many of them: a rule of the house. */
export interface HouseRule {
  readonly id: string
  readonly loads: readonly string[]
  readonly atMost: number
}

/** When the set runs: hours a day of each occasion with the set running, and days a year of each season. */
export interface Habits {
  readonly setHours: Readonly<Record<Occasion, number>>
  readonly days: Readonly<Record<Season, number>>
}
