/**
 * Histories played here when they are few, and on workers when they are many: the outcome is the same.
 *
 * @module
 */

import { countOf, type Picked, type Sample, type Span } from '../alternatives/sample.js'
import type { Prepared } from '../alternatives/settle.js'
import { simulate } from '../alternatives/simulate.js'
import { playOnWorkers } from '../server/play.js'

/** Workers are not worth their start below so many histories, counted over all alternatives. */
const fewHistories = 6_000
/** A chunk is about as much work whatever the number of alternatives. */
const fewestPerChunk = 20

export async function playAll(
  { model, posterior, used }: Pick<Prepared, 'model' | 'posterior' | 'used'>,
  which: Span | Picked,
  how: { readonly onProgress?: (done: number) => void; readonly signal?: AbortSignal | undefined } = {},
): Promise<Sample[]> {
  const { onProgress, signal } = how
  const count = countOf(which)
  if (count * model.alternatives.length > fewHistories) {
    return playOnWorkers(model, posterior, {
      ...which,
      used,
      historiesPerChunk: Math.max(fewestPerChunk, Math.floor(fewHistories / model.alternatives.length)),
      onProgress: ({ histories }) => onProgress?.(histories),
      ...(signal === undefined ? {} : { signal }),
    })
  }
  const samples = simulate(model, posterior, { ...which, used })
  onProgress?.(count)
  return samples
}
