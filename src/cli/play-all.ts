/**
 * Histories played here when they are few, and on workers when they are many: the outcome is the same.
 *
 * @module
 */

import type { Prepared } from '../alternatives/settle.js'
import { type Sample, type Span, simulate } from '../alternatives/simulate.js'
import { playOnWorkers } from '../server/play.js'

/** Workers are not worth their start below this. */
const fewHistories = 600

export async function playAll(
  { model, posterior, used }: Pick<Prepared, 'model' | 'posterior' | 'used'>,
  span: Span,
  onProgress: (done: number) => void,
): Promise<Sample[]> {
  if (span.count > fewHistories) {
    return playOnWorkers(model, posterior, {
      ...span,
      used,
      onProgress: ({ histories }) => onProgress(histories),
    })
  }
  const samples = simulate(model, posterior, { ...span, used })
  onProgress(span.count)
  return samples
}
