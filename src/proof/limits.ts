/**
 * The limits of the tests, each with where it comes from.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { Held } from '../catalogue/provenance.js'
import { sourceNames } from './source-names.js'

/** One limit with all that is to be said of it. */
export interface Limit {
  readonly id: string
  readonly name: string
  readonly value: number
  readonly unit: string
  /** Who issued what it comes from, and the title; the place in it; how firmly it is held. */
  readonly source: string
  readonly place: string
  readonly held: Held
}

/** The limit of an id. Throws RangeError where there is none: a test has named one that the catalogue has not. */
export type Limits = (id: string) => Limit

/** The limits of a catalogue. No boat's own figures enter here: nothing that comes aboard loosens a limit. */
export function limitsOf(catalogue: Pick<Catalogue, 'limits' | 'origins' | 'sources'>): Limits {
  const titles = sourceNames(catalogue)
  const all = new Map(
    catalogue.limits.map((limit): [string, Limit] => {
      const origin = catalogue.origins.get(`limits.${limit.id}.value`)
      if (origin === undefined) throw new RangeError(`limits.${limit.id} must have an origin; found none`)
      const { source, place, held } = origin
      return [limit.id, { ...limit, source: titles.get(source) ?? source, place, held }]
    }),
  )
  return (id) => {
    const limit = all.get(id)
    if (limit === undefined) throw new RangeError(`id must be one of a limit; found ${id}`)
    return limit
  }
}
