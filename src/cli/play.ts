/**
 * Histories played on as many workers as the machine has room for. The split changes no bit of the outcome.
 *
 * @module
 */

import { availableParallelism } from 'node:os'
import { Piscina } from 'piscina'
import { compile } from '../alternatives/program.js'
import { joinSamples, playSpan, type Sample, type Span } from '../alternatives/simulate.js'
import type { LifeModel } from '../forecast/life-model.js'
import type { Posterior } from '../forecast/posterior-type.js'

/** What is played. */
export interface Played {
  readonly model: LifeModel
  readonly posterior: Posterior
  /** Starting states of candidates that are used sets, by their place in the model. */
  readonly used?: ReadonlyMap<number, Posterior>
}

export interface Player {
  /** Plays a span; `onProgress` is told how many histories are done. */
  play(span: Span, onProgress?: (done: number) => void): Promise<Sample[]>
  close(): Promise<void>
}

/** Histories that one worker plays in one go: few enough that progress is seen. */
const pieceLength = 500
/** Workers are not worth their start below this. */
const fewHistories = 1000
const mostWorkers = 8

/** Something that plays a model, here for few histories and on workers for many. Close it when done. */
export function openPlayer(played: Played): Player {
  let pool: Piscina | undefined
  const workers = Math.min(mostWorkers, availableParallelism())
  return {
    play: async (span, onProgress = () => undefined) => {
      if (span.count <= fewHistories) {
        const sample = playSpan(compile(played.model, played.posterior, played.used), span)
        onProgress(span.count)
        return sample
      }
      pool ??= new Piscina({
        filename: new URL('./play-worker.js', import.meta.url).href,
        name: 'play',
        workerData: played,
        minThreads: workers,
        maxThreads: workers,
      })
      const runIn = pool
      let done = 0
      const pieces = piecesOf(span).map(async (piece) => {
        const sample = (await runIn.run(piece)) as Sample[]
        done += piece.count
        onProgress(done)
        return sample
      })
      return joinSamples(await Promise.all(pieces))
    },
    close: async () => {
      await pool?.destroy()
    },
  }
}

function piecesOf({ seed, from, count }: Span): Span[] {
  return Array.from({ length: Math.ceil(count / pieceLength) }, (_, i) => ({
    seed,
    from: from + i * pieceLength,
    count: Math.min(pieceLength, count - i * pieceLength),
  }))
}
