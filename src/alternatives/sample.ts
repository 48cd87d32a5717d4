/**
 * Histories asked for, and what they came to: columns by quantity.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import { type Kept, kept } from './kept.js'

/** Which histories to play: `count` of them from number `from` on. */
export interface Span extends KeptBesides {
  readonly seed: number
  readonly from: number
  readonly count: number
}

interface KeptBesides {
  /** Money by year is wanted too. */
  readonly withYears?: boolean
}

/** Some histories by their numbers. */
export interface Picked extends KeptBesides {
  readonly seed: number
  readonly histories: Int32Array
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
  /** Where it was asked for: money paid in each year from now, not discounted, fuel left out; history by history. */
  readonly years?: Float64Array
}

/** One quantity of a sample, by history. */
export function column(sample: Sample, quantity: Kept): Float64Array {
  return sample.columns[kept.indexOf(quantity)]!
}

/** Years that money is counted by: the last one may be begun only. */
export function yearsOf({ horizonYears }: Pick<LifeModel, 'horizonYears'>): number {
  return Math.ceil(horizonYears)
}

/** How many histories are asked for. */
export function countOf(which: Span | Picked): number {
  return 'histories' in which ? which.histories.length : which.count
}

/** The same histories in pieces of at most `size`, in order. */
export function piecesOf<T extends Span | Picked>(which: T, size: number): T[] {
  const count = countOf(which)
  return Array.from({ length: Math.ceil(count / size) }, (_, i) => {
    const at = i * size
    return 'histories' in which
      ? { ...which, histories: which.histories.slice(at, at + size) }
      : { ...which, from: which.from + at, count: Math.min(size, count - at) }
  })
}

/** Puts samples of successive spans together, in order; the same for any split. */
export function joinSamples(spans: readonly (readonly Sample[])[]): Sample[] {
  return spans[0]!.map((first, a) => ({
    alternative: first.alternative,
    columns: kept.map((_, k) => concatenate(spans.map((span) => span[a]!.columns[k]!))),
    failuresOfMode: addUp(spans.map((span) => span[a]!.failuresOfMode)),
    failuresOfDanger: addUp(spans.map((span) => span[a]!.failuresOfDanger)),
    ...(first.years === undefined ? {} : { years: concatenate(spans.map((span) => span[a]!.years!)) }),
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
