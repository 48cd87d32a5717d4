/**
 * What goes with each part, as it came with the program: fetched once, when a kit is first opened.
 *
 * @module
 */

import type { Kits } from '../../catalogue/kit-schema.js'
import type { KitsAnswer } from '../../server/http-types.js'
import { askJson } from './http.js'
import { type Live, live, useLive } from './value.js'

const held: Live<Kits | undefined> = live<Kits | undefined>(undefined)
let fetching: Promise<void> | undefined
const pauseMs = 2_000

/** The kits; undefined until they are here. */
export function useKits(): Kits | undefined {
  void loadKits()
  return useLive(held)
}

function loadKits(): Promise<void> {
  fetching ??= fetchKits()
  return fetching
}

/** Where the server does not answer, again after a while. */
async function fetchKits(): Promise<void> {
  for (;;) {
    const answer = await askJson<KitsAnswer>('/api/kits')
    if (answer.ok) return held.set(answer.value)
    await new Promise((resolve) => setTimeout(resolve, pauseMs))
  }
}
