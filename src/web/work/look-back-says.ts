/**
 * What the page asks of looking back, and what it is told.
 *
 * @module
 */

import type { Hindsight } from '../../alternatives/hindsight.js'
import type { Afterwards, PastChoice } from '../../alternatives/hindsight-choices.js'
import type { KnownBy, SpanMonths } from '../../alternatives/hindsight-spans.js'

/** From which past dates, and with what was known then. */
export interface LookBackAsked {
  readonly months: SpanMonths
  /** Past dates, the latest. */
  readonly most: number
  readonly by: KnownBy
}

export interface LookBackHow extends LookBackAsked {
  /** Else only what was kept is told. */
  readonly start: boolean
}

/** A choice of the past: what was kept with it, and what came after. */
export interface LookedAtChoice extends Omit<PastChoice, 'kept'> {
  readonly said?: SaidThen
  /** What would have been said is still being worked out. */
  readonly isAsked?: true
  readonly after: Afterwards
}

/** What was said at the time, where it was kept: the best by its name, and the price to walk away from. Else what would have been said. */
export type SaidThen = { readonly best: string; readonly walkAway?: number } | { readonly verdict: string }

/** What looking back came to. */
export interface LookedBackOn {
  readonly hindsight: Hindsight
  readonly choices: readonly LookedAtChoice[]
  readonly notedLate: { readonly late: number; readonly of: number }
}

/** `asleep`: nobody asked for it yet. */
export type LookBackState =
  | { readonly stage: 'asleep' }
  | { readonly stage: 'working' | 'stopped'; readonly done: number; readonly total: number }
  | ({ readonly stage: 'done' } & LookedBackOn)
  | { readonly stage: 'failed'; readonly problem: string }
