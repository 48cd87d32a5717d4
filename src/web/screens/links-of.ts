/**
 * What the log says of a set's leads, and what follows from it.
 *
 * @module
 */

import { useMemo } from 'react'
import type { Catalogue } from '../../catalogue/catalogue.js'
import type { CatalogueLinks } from '../../catalogue/links-schema.js'
import type { Problem } from '../../catalogue/problem.js'
import type { EntryOf } from '../../logbook/kinds.js'
import {
  compareLinks,
  type LinksComparison,
  type LinksRecord,
  linksEntries,
  ratedValues,
  recordOfEntry,
} from '../../proof/as-found.js'
import { limitsOf } from '../../proof/limits.js'
import type { CoilValues } from '../../proof/links/winding.js'
import { registerOf } from '../../register/register.js'
import type { SetRegister } from '../../register/register-types.js'
import { type Boat, useBoat, useCatalogue } from '../data/boat.js'
import { today } from '../data/today.js'
import type { OfSet } from '../of-set.js'

/** One state of the leads, with the entry that it was written in. */
export interface State {
  readonly record: LinksRecord
  readonly entry: EntryOf<'links'>
}

export interface LinksOf {
  readonly log: Boat
  readonly catalogue: Catalogue
  readonly links: CatalogueLinks
  readonly register: SetRegister
  readonly found: State | undefined
  readonly left: State | undefined
  /** What each coil is made for, as far as the log tells. */
  readonly values: CoilValues
  readonly comparison: LinksComparison | undefined
  readonly problems: readonly Problem[]
}

/** None until the log and the catalogue are here. */
export function useLinksOf({ boat, set }: OfSet): LinksOf | undefined {
  const log = useBoat(boat)
  const catalogue = useCatalogue()
  return useMemo(() => {
    if (catalogue === undefined || log.status !== 'ready') return undefined
    const { links } = catalogue
    const register = registerOf({ entries: log.entries, boat, set, asOf: today(), catalogue })
    const problems: Problem[] = []
    const read = (entry: EntryOf<'links'> | undefined): State | undefined => {
      if (entry === undefined) return undefined
      const one = recordOfEntry(links, entry)
      if (one.ok) return { record: one.record, entry }
      problems.push(...one.problems)
      return undefined
    }
    const of = linksEntries(log.entries, set)
    const [found, left] = [read(of.found), read(of.left)]
    const known = found ?? left
    const values = known === undefined ? {} : ratedValues(known.record, register.setFacts)
    const comparison =
      found &&
      left &&
      compareLinks({ found: found.record, left: left.record }, { values, limits: limitsOf(catalogue) })
    return { log, catalogue, links, register, found, left, values, comparison, problems }
  }, [log, catalogue, boat, set])
}
