/**
 * Many histories of every alternative, on common random numbers, and what they come to.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import type { Posterior } from '../forecast/posterior-type.js'
import { type Kept, kept } from './kept.js'
import { doublesAt, kernelOf, playHistory } from './kernel.js'
import { compile, type Program } from './program.js'

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

/** Plays histories for every alternative of a compiled model. */
export function playSpan(program: Program, which: Span | Picked): Sample[] {
  const { seed } = which
  const count = countOf(which)
  const doors = kernelOf(program)
  const columns = program.alternatives.map(() => kept.map(() => new Float64Array(count)))
  const yearCount = which.withYears ? yearsOf(program.model) : 0
  const years = columns.map(() => new Float64Array(count * yearCount))
  let sums = doublesAt(doors, doors.sums(), kept.length)
  // History by history, so that the start that all alternatives share is drawn, and fetched from memory, once.
  for (let i = 0; i < count; i++) {
    const history = 'histories' in which ? which.histories[i]! : which.from + i
    for (let alternative = 0; alternative < columns.length; alternative++) {
      playHistory(program, doors, { seed, history, alternative })
      if (sums.length === 0) sums = doublesAt(doors, doors.sums(), kept.length)
      const into = columns[alternative]!
      for (let k = 0; k < into.length; k++) into[k]![i] = sums[k]!
      if (yearCount > 0) years[alternative]!.set(doublesAt(doors, doors.years(), yearCount), i * yearCount)
    }
  }
  const modes = program.modes.count
  const dangers = program.dangerKinds.length
  const byMode = doublesAt(doors, doors.failuresByMode(), modes * columns.length)
  const byDanger = doublesAt(doors, doors.failuresByDanger(), dangers * columns.length)
  return program.alternatives.map(({ id }, a) => ({
    alternative: id,
    columns: columns[a]!,
    failuresOfMode: byMode.slice(a * modes, (a + 1) * modes),
    failuresOfDanger: byDanger.slice(a * dangers, (a + 1) * dangers),
    ...(yearCount > 0 ? { years: years[a]! } : {}),
  }))
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

/** Compiles and plays in one go. */
export function simulate(
  model: LifeModel,
  posterior: Posterior,
  which: (Span | Picked) & { readonly used?: ReadonlyMap<number, Posterior> },
): Sample[] {
  return playSpan(compile(model, posterior, which.used), which)
}
