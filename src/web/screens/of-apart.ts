/**
 * What every passage of the page of taking apart is drawn from.
 *
 * @module
 */

import type { StopLine } from '../../catalogue/stop-line-schema.js'
import type { Apart } from '../../job/apart.js'
import type { OfSet } from '../of-set.js'
import type { OfJob } from './job-frame.js'

export interface ApartKnown {
  readonly of: OfSet
  readonly known: OfJob
  readonly apart: Apart
  readonly stopLines: readonly StopLine[]
  /** Under which names what is typed is kept. */
  readonly slot: string
  readonly say: (said: string) => void
}
