/**
 * One worker of the pool: keeps the compiled model between chunks and plays the histories it is given.
 *
 * @module
 */

import { workerData } from 'node:worker_threads'
import type { Program } from '../alternatives/program.js'
import { type Picked, playSpan, type Sample, type Span } from '../alternatives/simulate.js'
import type { Alternative } from '../forecast/life-model.js'

/** What a worker is told once, when it starts. */
export interface PlayData {
  readonly program: Program
}

/** Alternatives to be played, and a number that tells them from others. */
export interface PlayQuestion {
  readonly number: number
  readonly alternatives: readonly Alternative[]
}

export interface PlayChunk {
  readonly question: PlayQuestion
  readonly which: Span | Picked
}

const data = workerData as PlayData
let inHand: { readonly number: number; readonly program: Program } | undefined

/** Plays one chunk. */
export function playChunk({ question, which }: PlayChunk): Sample[] {
  if (inHand?.number !== question.number) {
    inHand = { number: question.number, program: { ...data.program, alternatives: question.alternatives } }
  }
  return playSpan(inHand.program, which)
}
