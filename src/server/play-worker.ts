/**
 * One worker of the pool: keeps the compiled model between chunks and plays the histories it is given.
 *
 * @module
 */

import { workerData } from 'node:worker_threads'
import { compile, type Program } from '../alternatives/program.js'
import type { Picked, Sample, Span } from '../alternatives/sample.js'
import { playSpan } from '../alternatives/simulate.js'
import type { Alternative, LifeModel } from '../forecast/life-model.js'

/** What a worker is told once, when it starts. */
export interface PlayData {
  readonly program: Program
}

/** Alternatives to be played, and a number that tells them from others. */
export interface PlayQuestion {
  readonly number: number
  readonly alternatives: readonly Alternative[]
  /** Another model of the same set; absent: the one that the worker was told. */
  readonly model?: LifeModel
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
    const { number, model, alternatives } = question
    const { program } = data
    const other = model === undefined ? program : compile(model, program.posterior, program.used)
    inHand = { number, program: { ...other, alternatives } }
  }
  return playSpan(inHand.program, which)
}
