/**
 * The catalogue: what is known of parts, ways in, checks, dangers, prices and care before the boat's own log is read.
 *
 * @module
 */

import type { Access, Care, Check, Danger, Source, WholeSet } from './file-schema.js'
import type { CatalogueLimit } from './limit-schema.js'
import type { CatalogueLinks } from './links-schema.js'
import type { CatalogueLoad, LoadRules, Motors } from './load-schema.js'
import type { CatalogueOffers } from './offer-schema.js'
import type { CatalogueOwed } from './owed-schema.js'
import type { Part } from './part-schema.js'
import type { Provenance } from './provenance.js'
import type { SizingLimits } from './sizing-schema.js'
import type { StopLine } from './stop-line-schema.js'

/**
 * Reference data for a set of 10 kW at 1,500 or 1,800 rpm in salt water.
 * Plain data but for `origins`, which nobody needs in a worker.
 */
export interface Catalogue {
  readonly sources: readonly Source[]
  readonly parts: readonly Part[]
  readonly access: readonly Access[]
  readonly checks: readonly Check[]
  readonly dangers: readonly Danger[]
  readonly wholeSet: WholeSet
  readonly care: Care
  readonly loads: readonly CatalogueLoad[]
  readonly loadRules: LoadRules
  readonly motors: Motors
  /** Windings, and the ways of joining their leads; no keeper of a boat overrules them. */
  readonly links: CatalogueLinks
  readonly sizing: SizingLimits
  /** Of the tests; no keeper of a boat overrules them. */
  readonly limits: readonly CatalogueLimit[]
  /** Which tests are owed after which work. */
  readonly owed: CatalogueOwed
  /** Where work can hurt; no keeper of a boat overrules them. */
  readonly stopLines: readonly StopLine[]
  /** What brings offers to one scope. */
  readonly offers: CatalogueOffers
  /** Path of a figure to where it comes from. */
  readonly origins: ReadonlyMap<string, Provenance>
}
