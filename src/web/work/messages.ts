/**
 * What the page and its workers say to one another.
 *
 * @module
 */

import type { AskedOf } from '../../alternatives/answer-key.js'
import type { AnswerView } from '../../alternatives/answer-view.js'
import type { WhatChanges, WorthFindingOut } from '../../alternatives/bearing.js'
import type { Basis } from '../../alternatives/figures.js'
import type { KeptAnswer } from '../../alternatives/kept-answer.js'
import type { LifeSpan, MonthByMonth } from '../../alternatives/month-by-month.js'
import type { PriceChange } from '../../alternatives/reweigh.js'
import type { WhenToReplace } from '../../alternatives/when-to-replace.js'
import type { DescribedFigure } from '../../catalogue/overrule.js'
import type { Problem } from '../../catalogue/problem.js'
import type { Forecast } from '../../forecast/odds.js'
import type { WorthOfAdditions } from '../../job/additions.js'
import type { Job } from '../../job/jobs.js'
import type { Together } from '../../job/plan-job.js'
import type { Entry } from '../../logbook/kinds.js'
import type { LookBackHow, LookBackState } from './look-back-says.js'

/** `preparing`: no figure yet. `stopped`: by the reader, or because another page was gone to. */
export type Stage = 'preparing' | 'refining' | 'stopped' | 'done' | 'failed'

export interface AnswerState {
  readonly stage: Stage
  /** Repair limits of the alternatives are being chosen, and the figures so far rest on one for all. */
  readonly choosing?: boolean
  /** First figures, from few lives, without the used set and without limits: better ones follow in a moment. */
  readonly rough?: boolean
  readonly basis?: Basis
  readonly view?: AnswerView
  readonly histories: number
  /** Histories after which it is looked at again. */
  readonly wanted: number
  readonly problem?: string
}

export interface ForecastView {
  readonly forecast: Forecast
  readonly months: MonthByMonth
  readonly spans: readonly LifeSpan[]
}

export interface ForecastState {
  readonly stage: 'preparing' | 'done' | 'failed'
  readonly basis?: Basis
  readonly view?: ForecastView
  readonly problem?: string
}

/** What bears on an answer; `waiting`: until the answer stands. */
export interface BearingState {
  readonly stage: 'waiting' | 'working' | 'stopped' | 'done' | 'failed'
  /** How much of it is done, from 0 to 1. */
  readonly share?: number
  readonly findingOut?: WorthFindingOut
  /** null: only one alternative is open. */
  readonly changes?: WhatChanges | null
  /** null: no other set is among the alternatives. */
  readonly when?: WhenToReplace | null
  readonly problem?: string
}

/** As much of a job as hangs on what belongs with it. */
export type JobAsked = Pick<Job, 'name' | 'parts'> & { readonly what?: string; readonly alternative?: string }

/** What each further part of a job would save. */
export interface JobWorthState {
  readonly stage: 'working' | 'stopped' | 'done' | 'failed'
  /** How much of it is done, from 0 to 1. */
  readonly share: number
  readonly worth?: WorthOfAdditions
  readonly of?: {
    readonly currency: string
    readonly horizonYears: number
    readonly hoursPerDay: number
    /** Names of the set's parts. */
    readonly names: Readonly<Record<string, string>>
  }
  readonly problem?: string
}

/** An answer as a decision keeps it. */
export type Decided =
  | { readonly ok: true; readonly kept: KeptAnswer; readonly walkAwayPrice?: number }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** A figure of the catalogue with the title of the document it comes from. */
export interface FigureSource extends DescribedFigure {
  readonly sourceTitle: string
}

/** Gives entries from a place on, a slice at a time; none after the last. */
export type Entries = (from: number) => Promise<readonly Entry[]>

/** What the page may ask of the worker that prepares, reports and keeps. */
export interface Conductor {
  /** Begins an answer that a page is about to ask for, as far as first figures. */
  expect(asked: AskedOf): Promise<void>
  answer(
    asked: AskedOf & { readonly key: string },
    entries: Entries,
    tell: (state: AnswerState) => void,
    how: { readonly roughFirst: boolean },
  ): Promise<void>
  forecast(
    asked: AskedOf & { readonly key: string },
    entries: Entries,
    tell: (state: ForecastState) => void,
  ): Promise<void>
  /** Moves prices of an answer: re-weighed, never played again. */
  prices(key: string, change: PriceChange): Promise<void>
  /** What bears on an answer at these prices; ends what was asked for before. */
  bearing(key: string, change: PriceChange, tell: (state: BearingState) => void): Promise<void>
  stopBearing(): Promise<void>
  /** Looks back on past forecasts; ends what was asked for before. */
  lookBack(
    asked: AskedOf & { readonly key: string },
    entries: Entries,
    tell: (state: LookBackState) => void,
    how: LookBackHow,
  ): Promise<void>
  stopLookingBack(): Promise<void>
  /** The answer as a decision keeps it, at the prices of the log; undefined where there is none yet. */
  decision(key: string): Promise<Decided | undefined>
  /** What each further part would save with a job; ends what was asked for before. */
  jobWorth(
    asked: AskedOf & { readonly key: string },
    entries: Entries,
    job: JobAsked,
    tell: (state: JobWorthState) => void,
  ): Promise<void>
  /** What parts chosen save as a whole; undefined where none is, or where it was stopped. */
  jobTogether(
    asked: AskedOf & { readonly key: string },
    entries: Entries,
    job: JobAsked,
    parts: readonly string[],
  ): Promise<Together | undefined>
  stopJob(): Promise<void>
  stop(key: string): Promise<void>
  /** Goes on, further than the rule asks if it was settled. */
  goOn(key: string): Promise<void>
  /** Fetches beforehand what every answer needs. */
  warm(): Promise<void>
  describe(key: string, path: string): Promise<FigureSource | undefined>
}
