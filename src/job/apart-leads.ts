/**
 * Marks of the leads that a winding brings out.
 *
 * @module
 */

import type { CatalogueLinks } from '../catalogue/links-schema.js'

/** The marks of the windings of the catalogue that have so many leads; none where no winding has. */
export function leadsOfWinding({ windings }: CatalogueLinks, count: number | undefined): readonly string[] {
  const winding = windings.find(({ coils }) => coils.length * 2 === count)
  return winding?.marks[0]?.leads ?? []
}
