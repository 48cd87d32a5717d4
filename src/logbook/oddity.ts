/**
 * A question about something odd in the log.
 *
 * @module
 */

import type { LogDate } from './dates.js'

/** Something to ask the person who keeps the log. */
export interface Oddity {
  readonly code: string
  /** The entries it is about. */
  readonly ids: readonly string[]
  readonly question: string
}

/** What the questions are asked against. */
export interface KnownThings {
  /** The day on which it is asked, exact to the day. */
  readonly today: LogDate
  /** Parts of the catalogue, each with its failure modes. */
  readonly parts: ReadonlyMap<string, ReadonlySet<string>>
  /** Checks and tests by name; left out: not asked about. */
  readonly checks?: ReadonlySet<string>
  /** Stop lines and tests by name, each with whether a reason passes it over; left out: not asked about. */
  readonly passable?: ReadonlyMap<string, boolean>
}
