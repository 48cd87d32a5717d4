/**
 * The catalogue as one piece of JSON, for who trusts whoever read and judged its files.
 *
 * @module
 */

import type { Catalogue } from './catalogue.js'
import type { Provenance } from './provenance.js'

export interface CatalogueJson extends Omit<Catalogue, 'origins'> {
  readonly origins: readonly (readonly [path: string, origin: Provenance])[]
}

export function catalogueToJson(catalogue: Catalogue): CatalogueJson {
  return { ...catalogue, origins: [...catalogue.origins] }
}

/** The same catalogue again. */
export function catalogueFromJson(json: CatalogueJson): Catalogue {
  return { ...json, origins: new Map(json.origins) }
}
