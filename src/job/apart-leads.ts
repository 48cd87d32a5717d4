/**
 * Leads that come off: their marks, and how they are labelled.
 *
 * @module
 */

import type { CatalogueLinks } from '../catalogue/links-schema.js'

/** The marks of the windings of the catalogue that have so many leads; none where no winding has. */
export function leadsOfWinding({ windings }: CatalogueLinks, count: number | undefined): readonly string[] {
  const winding = windings.find(({ coils }) => coils.length * 2 === count)
  return winding?.marks[0]?.leads ?? []
}

/** How leads are labelled; practice. */
export const leadAdvice: readonly string[] = [
  'A sleeve or tape flag on every lead before the first one comes off, at the lead’s end and at its terminal.',
  'Write on it the lead’s own mark; where it has none, a letter of your own, and keep to it.',
  'Write down which post it was on. Colours are not enough: oil and heat take them.',
  'A picture with an arrow to each label. Joined leads are also drawn on the page of winding links.',
]
