/**
 * What each passage of the page of a kit is handed.
 *
 * @module
 */

import type { Kits } from '../../catalogue/kit-schema.js'
import type { Kit } from '../../job/kit.js'
import type { OfSet } from '../of-set.js'
import type { OfJob } from './job-frame.js'

export interface OfKit {
  readonly of: OfSet
  readonly known: OfJob
  readonly kits: Kits
  readonly kit: Kit
  /** The short name of a part. */
  readonly nameOf: (part: string) => string
}
