/**
 * The stop line of leads that were put back otherwise than they were found.
 *
 * @module
 */

import type { CatalogueLinks } from '../catalogue/links-schema.js'
import type { Entry } from '../logbook/kinds.js'
import type { SetRegister } from '../register/register-types.js'
import { compareLinks, linksEntries, ratedValues, recordOfEntry } from './as-found.js'
import type { Limits } from './limits.js'
import type { ProofResult } from './results.js'

/** Leads that were left otherwise than they were found, and the line that this opens. */
export interface LeftOtherwise {
  readonly line: string
  readonly entry: string
  /** Place among the entries as they follow one another. */
  readonly order: number
  readonly why: string
}

/** Open until the links are proved after the leads were entered as left; none where nothing differs that matters. */
export function openByLinks(
  entries: readonly Entry[],
  of: {
    readonly register: Pick<SetRegister, 'set' | 'setFacts'>
    readonly links: CatalogueLinks
    readonly limits: Limits
    readonly results: readonly ProofResult[]
  },
): LeftOtherwise[] {
  const { found, left } = linksEntries(entries, of.register.set)
  if (found === undefined || left === undefined) return []
  const order = entries.indexOf(left)
  const isProved = of.results.some(
    (result) =>
      result.test === 'winding-links' && result.order > order && result.judgement.verdict === 'pass',
  )
  const [before, after] = [recordOfEntry(of.links, found), recordOfEntry(of.links, left)]
  if (isProved || !before.ok || !after.ok) return []
  const { stops } = compareLinks(
    before.record,
    after.record,
    ratedValues(before.record, of.register.setFacts),
  )
  return stops.length === 0
    ? []
    : [{ line: 'links-unproven', entry: left.id, order, why: `As left against as found: ${stops.join(' ')}` }]
}
