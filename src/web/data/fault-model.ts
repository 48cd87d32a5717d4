/**
 * The fault model that came with the program, fetched once, when a case is first opened.
 *
 * @module
 */

import type { FaultModel } from '../../catalogue/read-fault-model.js'
import type { FaultsAnswer } from '../../server/http-types.js'
import { askJson } from './http.js'
import { type Live, live, useLive } from './value.js'

const held: Live<FaultModel | undefined> = live<FaultModel | undefined>(undefined)
let fetching: Promise<void> | undefined
const pauseMs = 2_000

/** The fault model; undefined until it is here. */
export function useFaultModel(): FaultModel | undefined {
  void loadModel()
  return useLive(held)
}

function loadModel(): Promise<void> {
  fetching ??= fetchModel()
  return fetching
}

/** Where the server does not answer, again after a while. */
async function fetchModel(): Promise<void> {
  for (;;) {
    const answer = await askJson<FaultsAnswer>('/api/faults')
    if (answer.ok) return held.set(answer.value)
    await new Promise((resolve) => setTimeout(resolve, pauseMs))
  }
}
