/**
 * One thread that works out the verdict of every boat in a data folder and of the boats to show, and tells each.
 *
 * @module
 */

import { parentPort, workerData } from 'node:worker_threads'
import { openToRead } from '../store/read-store.js'
import { allBoats, memoryOf } from './opened.js'
import { verdictsOf } from './verdicts.js'

export interface VerdictsAsked {
  /** The data folder; it is only read. */
  readonly folder: string
  readonly seed: number
}

const { folder, seed } = workerData as VerdictsAsked
const opened = openToRead(folder)
if (!opened.ok)
  throw new Error(`folder must be one that can be read; found ${JSON.stringify(opened.problems)}`)
const memory = memoryOf(folder)
for (const boat of allBoats(opened.store)) {
  for (const verdict of await verdictsOf(boat, { seed, memory })) parentPort!.postMessage(verdict)
}
opened.store.close()
