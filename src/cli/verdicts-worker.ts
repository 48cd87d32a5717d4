/**
 * One thread that works out the verdict of every boat in a data folder and of the boats to show, and tells each.
 *
 * @module
 */

import { parentPort, workerData } from 'node:worker_threads'
import { openToRead } from '../store/read-store.js'
import { lessonsFor } from './lessons.js'
import { allBoats, figuresKeptIn, memoryOf } from './opened.js'
import { today } from './places.js'
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
const boats = allBoats(opened.store)
const how = { seed, memory, onFigures: figuresKeptIn(folder) }
for (const boat of boats) {
  const lessons = lessonsFor({ folder, boats, named: boat, asOf: today(), memory }, { seed })
  for (const verdict of await verdictsOf(boat, { ...how, lessons })) parentPort!.postMessage(verdict)
}
opened.store.close()
