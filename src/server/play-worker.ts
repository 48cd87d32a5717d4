/**
 * One worker of the pool: keeps the compiled model between chunks and plays the histories it is given.
 *
 * @module
 */

import { workerData } from 'node:worker_threads'
import { compile } from '../alternatives/program.js'
import { playSpan, type Sample, type Span } from '../alternatives/simulate.js'
import type { LifeModel } from '../forecast/life-model.js'
import type { Posterior } from '../forecast/posterior-type.js'

/** What a worker is told once, when it starts. */
export interface PlayData {
  readonly model: LifeModel
  readonly posterior: Posterior
  /** Starting states of used candidates, by candidate index. */
  readonly used: ReadonlyMap<number, Posterior>
}

const data = workerData as PlayData
const program = compile(data.model, data.posterior, data.used)

/** Plays one chunk. */
export function playChunk(span: Span): Sample[] {
  return playSpan(program, span)
}
