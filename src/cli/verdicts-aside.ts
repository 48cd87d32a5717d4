/**
 * The verdicts of all boats worked out on a thread of their own, so that whoever asks the server meanwhile is answered at once.
 *
 * @module
 */

import { Worker } from 'node:worker_threads'
import type { Verdict } from './verdicts.js'
import type { VerdictsAsked } from './verdicts-worker.js'

export interface VerdictsHow extends VerdictsAsked {
  /** Stops the work; what was worked out until then is given. */
  readonly signal: AbortSignal
}

/** Every boat's verdicts, the owner's first, each told as soon as it is there. */
export function verdictsAside(
  { folder, seed, signal }: VerdictsHow,
  onVerdict: (verdict: Verdict) => void,
): Promise<readonly Verdict[]> {
  const workerData: VerdictsAsked = { folder, seed }
  const worker = new Worker(new URL('./verdicts-worker.js', import.meta.url), { workerData })
  const verdicts: Verdict[] = []
  return new Promise((resolve, reject) => {
    signal.addEventListener('abort', () => void worker.terminate())
    worker.on('message', (verdict: Verdict) => {
      verdicts.push(verdict)
      onVerdict(verdict)
    })
    worker.on('error', (error) => (signal.aborted ? resolve(verdicts) : reject(error)))
    worker.on('exit', () => resolve(verdicts))
  })
}
