/**
 * Many histories of every alternative, on common random numbers, and what they come to.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import type { Posterior } from '../forecast/posterior-type.js'
import { type History, type Kept, kept, makeHistory } from './history.js'
import { makeJob } from './job.js'
import { compile, type Program } from './program.js'
import { runHistory } from './run.js'

/** Which histories to play: `count` of them from number `from` on. */
export interface Span {
  readonly seed: number
  readonly from: number
  readonly count: number
}

/** What each history of one alternative came to. */
export interface Sample {
  readonly alternative: string
  /** [quantity][history], in the order of `kept`. */
  readonly columns: readonly Float64Array[]
  /** Failures of each mode, summed over the histories; whole numbers. */
  readonly failuresOfMode: Float64Array
  /** Failures that carry each danger, summed over the histories; whole numbers. */
  readonly failuresOfDanger: Float64Array
}

/** One quantity of a sample, by history. */
export function column(sample: Sample, quantity: Kept): Float64Array {
  return sample.columns[kept.indexOf(quantity)]!
}

/** Plays a span of histories for every alternative of a compiled model. */
export function playSpan(program: Program, span: Span): Sample[] {
  const history = makeHistory(program, span.seed)
  const job = makeJob(program.parts.count)
  const samples = program.alternatives.map((alternative) => ({
    alternative: alternative.id,
    columns: kept.map(() => new Float64Array(span.count)),
    failuresOfMode: new Float64Array(program.modes.count),
    failuresOfDanger: new Float64Array(program.dangerKinds.length),
  }))
  // History by history, so that the start that all alternatives share is drawn, and fetched from memory, once.
  for (let i = 0; i < span.count; i++) {
    program.alternatives.forEach((alternative, a) => {
      const sample = samples[a]!
      history.failuresOfMode = sample.failuresOfMode
      history.failuresOfDanger = sample.failuresOfDanger
      runHistory(history, job, alternative, span.from + i)
      keep(history, sample.columns, i)
    })
  }
  return samples
}

function keep(history: History, columns: readonly Float64Array[], i: number): void {
  for (let k = 0; k < columns.length; k++) columns[k]![i] = history.sums[k]!
}

/** Puts samples of successive spans together, in order; the same for any split. */
export function joinSamples(spans: readonly (readonly Sample[])[]): Sample[] {
  return spans[0]!.map((first, a) => ({
    alternative: first.alternative,
    columns: kept.map((_, k) => concatenate(spans.map((span) => span[a]!.columns[k]!))),
    failuresOfMode: addUp(spans.map((span) => span[a]!.failuresOfMode)),
    failuresOfDanger: addUp(spans.map((span) => span[a]!.failuresOfDanger)),
  }))
}

function concatenate(pieces: readonly Float64Array[]): Float64Array {
  const whole = new Float64Array(pieces.reduce((sum, piece) => sum + piece.length, 0))
  let at = 0
  for (const piece of pieces) {
    whole.set(piece, at)
    at += piece.length
  }
  return whole
}

function addUp(columns: readonly Float64Array[]): Float64Array {
  const sum = new Float64Array(columns[0]!.length)
  for (const values of columns) for (let i = 0; i < sum.length; i++) sum[i]! += values[i]!
  return sum
}

/** Compiles and plays in one go. */
export function simulate(
  model: LifeModel,
  posterior: Posterior,
  span: Span & { readonly used?: ReadonlyMap<number, Posterior> },
): Sample[] {
  return playSpan(compile(model, posterior, span.used), span)
}
