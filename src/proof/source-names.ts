/**
 * Documents as they are named to a person, with the place in them and how firmly they are held.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { Support } from '../catalogue/provenance.js'

/** Who issued each document, and its title within a sentence, by its id. */
export function sourceNames({ sources }: Pick<Catalogue, 'sources'>): ReadonlyMap<string, string> {
  return new Map(
    sources.map(({ id, issuer, title }) => [
      id,
      issuer === 'none' || title.startsWith(issuer) ? title : `${issuer}, ${lowerFirst(title)}`,
    ]),
  )
}

/** "US Army, TM 9-6115-464-34, reconnection of 15 kW sets, board for 240/416 V; seen" */
export function sayOrigin({ source, place, held }: Support, names: ReadonlyMap<string, string>): string {
  return `${names.get(source) ?? source}, ${place}; ${held}`
}

/** A title within a sentence; one that begins with a number or an abbreviation stays. */
function lowerFirst(title: string): string {
  return /^[A-Z][a-z]/.test(title) ? title[0]!.toLowerCase() + title.slice(1) : title
}
