/**
 * What a test is: the one form that the command line, the screens, the list of tests owed and the faults room read.
 *
 * @module
 */

import type { readingUnits } from '../logbook/bodies-seen.js'
import type { MeterUnit } from '../units/meter.js'
import type { Limit, Limits } from './limits.js'

/** `cannot tell` is an answer: a test that cannot tell says so, and nothing that it was to open opens. */
export type Verdict = 'pass' | 'fail' | 'cannot tell'

/** A unit in which a reading is kept. */
export type ReadingUnit = (typeof readingUnits)[number]

/** What the set is said to be, for a field that the log can fill in. */
export type SetFact = 'volts' | 'hertz' | 'phases' | 'ratingKw' | 'rpm'

interface AnyField {
  readonly id: string
  /** As it is asked of a person. */
  readonly name: string
  /** Where to put the meter, what to watch for. */
  readonly help?: string
  /** Without it the test cannot tell. Others may be left out. */
  readonly needed?: true
  /** It sharpens what is worked out and decides nothing alone: folded away on a screen until it is wanted. */
  readonly further?: true
}

/** A number that a meter shows. */
export interface NumberField extends AnyField {
  readonly kind: 'number'
  /** In which the test takes it. */
  readonly unit: ReadingUnit
  /** The units that a meter may show it in, the likeliest first. */
  readonly units: readonly MeterUnit[]
  /** What can be at all; past it the reading is asked about. */
  readonly least: number
  readonly most: number
  /** A condition under which the reading was taken, rather than the reading. */
  readonly condition?: true
  /** Filled in from what is said of the set. */
  readonly of?: SetFact
}

/** One of several things. */
export interface ChoiceField extends AnyField {
  readonly kind: 'choice'
  /** Each of these is a test of its own: a good one says nothing of another. */
  readonly apart?: true
  readonly choices: readonly { readonly id: string; readonly name: string }[]
}

export type Field = NumberField | ChoiceField

/** What was read, by field: numbers in the field's unit, choices by their id. `sure-CODE: 'yes'` answers a question of that code. */
export type Readings = Readonly<Record<string, number | string | undefined>>

/** What the whole test is good for, from bad to good or good to bad; together they take in every number there is. */
export interface Band {
  readonly id: string
  readonly name: string
  readonly verdict: 'pass' | 'fail'
}

/** Something that was left out or looks odd. Nothing is guessed in its place. */
export interface Ask {
  readonly code: string
  /** The field that it is about. */
  readonly field: string
  readonly question: string
  /** May be answered by "it is so": `sure-CODE: 'yes'` among the readings. */
  readonly confirmable: boolean
}

/** A figure that was worked out on the way to the verdict. */
export interface Worked {
  readonly name: string
  readonly value: number
  readonly unit: string
}

export interface Judgement {
  readonly verdict: Verdict
  /** The band that it falls into; left out where it cannot be told. */
  readonly band?: string
  /** The verdict in a sentence, with the figure and the limit. */
  readonly says: string
  readonly worked: readonly Worked[]
  /** Every limit that counted, with its source and how it is held. */
  readonly limits: readonly Limit[]
  /** What to do now. */
  readonly next: string
  readonly asks: readonly Ask[]
}

/**
 * How dangerous it is to take the reading: everything stopped and locked out; the engine turning with nothing live in reach;
 * or something live. Of the last two every step is shown first, and nothing is typed until the person stands clear.
 */
export type Danger = 'locked out' | 'turning' | 'live'

/** One test. */
export interface ProofTest {
  readonly id: string
  /** In the trade's words. */
  readonly name: string
  /** What it is for, in a sentence. */
  readonly purpose: string
  readonly danger: Danger
  /** Ids of the catalogue's dangers whose cautions stand beside it. */
  readonly dangers: readonly string[]
  readonly instrument: string
  /** From the first to the last, to be read before the first is done. */
  readonly steps: readonly string[]
  /** What the steps come to for a set of a rating in kW. */
  readonly plan?: (ratingKw: number, limits: Limits) => readonly string[]
  /** Parts of which it is made one by one; the reading names the part. Left out: of the whole set. */
  readonly parts?: readonly string[]
  /** The test that it repeats: the later of the two holds. */
  readonly repeats?: string
  readonly fields: readonly Field[]
  readonly bands: readonly Band[]
  /** Pure: the same readings and limits give the same judgement. */
  readonly judge: (readings: Readings, limits: Limits) => Judgement
}
