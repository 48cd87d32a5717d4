/**
 * What a set is at a date, as far as the logbook tells.
 *
 * Days are counted since 1970, hours are running hours since the set's first day, whatever its meter shows.
 *
 * @module
 */

import type { Overruling } from '../catalogue/overrule.js'
import type { Body } from '../logbook/kinds.js'
import type { CandidateFact } from './load-facts.js'

export type BoatFacts = Omit<Body<'boat'>, 'remark' | 'photographs'>
export type SetFacts = Omit<Body<'set'>, 'remark' | 'photographs'>
export type Terms = Omit<Body<'terms'>, 'remark' | 'photographs'>
export type MonthOfUse = Body<'use'>['months'][number]
/** A usual year, and the one before it where this one is a change: empty, if nobody said how that was. */
export interface UseFacts {
  readonly months: readonly MonthOfUse[]
  readonly entry: string
  readonly before?: readonly MonthOfUse[]
}
export type Deed = Body<'work'>['parts'][number]['did']
export type Quality = Body<'fitted'>['quality']

/** A place on the track of running hours. */
export interface HoursPoint {
  readonly day: number
  readonly hours: number
  /** Starts since the first day, where the entry tells them. */
  readonly starts?: number
  /** The entry it rests on; left out: the first day, or reckoned on from the last reading. */
  readonly entry?: string
}

export interface HoursTrack {
  /** Oldest first, never falling; the first is the set's first day, the last the day asked for. Empty: nothing known. */
  readonly points: readonly HoursPoint[]
  /** Day of the last meter reading. */
  readonly lastReadingDay?: number
  /** Over the last five years, or as long as there are readings. [h/a] */
  readonly perYear?: number
}

/** What a part has been through; a clock is left out where the log does not tell it. */
export interface Ages {
  readonly years: number
  readonly hours?: number
}

export interface PastLife {
  readonly age: Ages
  readonly endedDay: number
  readonly ended: 'failed' | 'defective' | 'sound'
  /** Nobody said how it proved to be: renewed by rote, so at least at work. */
  readonly presumed?: true
  readonly mode?: string
  readonly entry: string
}

/** Work that set one mode back to new, or mended it for the time being. */
export interface ModeMend {
  readonly day: number
  readonly did: Deed
  readonly mode?: string
  readonly entry: string
}

export interface PartRegister {
  readonly part: string
  /** Unknown: it may be any age up to the set's, which is when it was last known to be new. */
  readonly age: Ages | 'unknown'
  /** When it was fitted; of an unknown one, the set's first day. */
  readonly sinceDay?: number
  readonly originalToSet: boolean
  readonly quality?: Quality
  readonly removed: boolean
  /** Of the first piece that is known to have been put in after the set was new, where nothing is known of the one before. */
  readonly firstRenewalDay?: number
  readonly lives: readonly PastLife[]
  readonly mends: readonly ModeMend[]
  /** Every entry that names the part. */
  readonly entries: readonly string[]
}

/** A look that was entered: a finding, or what work laid bare. */
export interface Look {
  readonly entry: string
  readonly day: number
  readonly about: readonly { readonly part: string; readonly mode?: string }[]
  readonly verdict: 'nothing-seen' | 'defect-seen' | 'unsure'
  readonly check?: string
  readonly seen?: string
}

export interface Measured {
  readonly entry: string
  readonly day: number
  readonly test: string
  readonly part?: string
  readonly values: Body<'reading'>['values']
  readonly conditions: NonNullable<Body<'reading'>['conditions']>
  readonly answers?: NonNullable<Body<'reading'>['answers']>
}

export interface Stop {
  readonly entry: string
  readonly day: number
  readonly lastDay: number
  readonly daysWithoutPower: number
  readonly sameDay: boolean
  readonly cause?: { readonly part: string; readonly mode?: string }
  /** It had not run again on the day asked for. */
  readonly open: boolean
}

/** Something failed that is known and not yet mended. */
export interface Broken {
  readonly part: string
  readonly mode?: string
  readonly entry: string
}

export interface OpenDanger {
  readonly danger: string
  readonly part: string
  readonly mode: string
  readonly entry: string
  /** The entry that made it safe, where there is one: the defect may still be there. */
  readonly madeSafeBy?: string
}

export interface Protection {
  readonly part: string
  readonly fitted: 'fitted' | 'not-fitted' | 'not-known'
  readonly lastTestedDay?: number
}

/** A span in which everything of a kind is in the log. */
export interface CompleteSpan {
  readonly of: 'stops' | 'work'
  readonly firstDay: number
  readonly lastDay: number
  readonly entry: string
}

export interface Letdowns {
  readonly entry: string
  readonly times: number
  readonly firstDay: number
  readonly lastDay: number
}

export interface Spending {
  readonly total: number
  readonly byYear: Readonly<Record<string, number>>
  /** By the catalogue's systems; `whole-set` where several or none is named. */
  readonly bySystem: Readonly<Record<string, number>>
}

/** A price that has been offered and neither billed nor worked to. */
export interface OpenQuote {
  readonly entry: string
  readonly job: string
  readonly day: number
  readonly what?: string
  readonly offeredBy?: string
  /** As offered, and with the tax on it. */
  readonly amount: number
  readonly withTax: number
  /** Nobody said whether tax is in it: taken as in. */
  readonly taxUnknown: boolean
  readonly firmness: 'firm' | 'estimate'
  readonly subjectToStripDown: boolean
  readonly excludes: Body<'quote'>['excludes']
  readonly alsoExcludes?: string
  readonly guaranteeMonths?: number
  readonly expired: boolean
  readonly covers: Body<'quote'>['covers']
  /** The latest decision on the job, where there is one. */
  readonly decision?: string
}

/** A quote and what was billed for it in the end, both with tax. */
export interface Overrun {
  readonly quote: string
  readonly job: string
  readonly quoted: number
  readonly billed: number
  readonly ratio: number
}

/** Of each id the latest form of an alternative that the owner entered, with its entry. */
export type OwnAlternative = Omit<Body<'alternative'>, 'remark' | 'photographs'> & { readonly entry: string }

export interface SetRegister {
  readonly boat: string
  readonly set: string
  /** The date asked for, exact to the day. */
  readonly asOf: string
  readonly asOfDay: number
  readonly boatFacts: BoatFacts
  readonly setFacts: SetFacts
  readonly terms: Terms
  /** The entry that each field rests on: `set.ratingKw`, `terms.paidPerHour`. */
  readonly given: Readonly<Record<string, string>>
  readonly overrulings: readonly Overruling[]
  /** In the middle of what is said of when it was built; left out: not known. */
  readonly builtDay?: number
  readonly hours: HoursTrack
  /** The usual year; left out: not said. */
  readonly use?: UseFacts
  readonly parts: ReadonlyMap<string, PartRegister>
  readonly looks: readonly Look[]
  readonly readings: readonly Measured[]
  readonly stops: readonly Stop[]
  readonly letdowns: readonly Letdowns[]
  readonly complete: readonly CompleteSpan[]
  /** Looks that saw a defect which nothing has mended or taken back. */
  readonly openDefects: readonly Look[]
  readonly broken: readonly Broken[]
  readonly openDangers: readonly OpenDanger[]
  readonly protections: readonly Protection[]
  readonly spent: Spending
  /** Oldest first: the last one is the quote in hand. */
  readonly openQuotes: readonly OpenQuote[]
  readonly overruns: readonly Overrun[]
  /** In the order in which their ids first came. */
  readonly ownAlternatives: readonly OwnAlternative[]
  /** Sets that were offered; left out: none. */
  readonly offeredSets?: readonly CandidateFact[]
}
