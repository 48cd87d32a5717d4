/**
 * The catalogue that came with the program, fetched once.
 *
 * @module
 */

import type { Catalogue } from '../../catalogue/catalogue.js'
import { catalogueFromJson } from '../../catalogue/catalogue-json.js'
import type { CatalogueAnswer } from '../../server/http-types.js'
import { askJson } from './http.js'
import { type Live, live, useLive } from './value.js'

const held: Live<Catalogue | undefined> = live<Catalogue | undefined>(undefined)
let fetching: Promise<void> | undefined

/** The catalogue; undefined until it is here. */
export function useCatalogue(): Catalogue | undefined {
  void loadCatalogue()
  return useLive(held)
}

/** Fetches the catalogue, once; where the server does not answer, again after a while. */
function loadCatalogue(): Promise<void> {
  fetching ??= fetchCatalogue()
  return fetching
}

async function fetchCatalogue(): Promise<void> {
  const answer = await askJson<CatalogueAnswer>('/api/catalogue')
  if (answer.ok) {
    held.set(catalogueFromJson(answer.value))
    return
  }
  setTimeout(() => {
    fetching = undefined
    void loadCatalogue()
  }, pauseMs)
}

const pauseMs = 2_000
