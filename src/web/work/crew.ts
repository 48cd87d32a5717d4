/**
 * Several workers that play histories. What comes out is the same, to the bit, for any number of them and any split.
 *
 * @module
 */

import * as Comlink from 'comlink'
import { countOf, joinSamples, type Picked, type Sample, type Span } from '../../alternatives/sample.js'
import type { Alternative, LifeModel } from '../../forecast/life-model.js'
import type { Played, Player } from './player.worker.js'

/** A worker, and which model it has. */
interface Hand {
  readonly player: Comlink.Remote<Player>
  has?: string
}

export interface Job {
  /** Another one whenever the model or its posterior is another. */
  readonly id: string
  readonly of: Played
  readonly alternatives: readonly Alternative[]
  /** Another model of the same set, which rests on the same posterior. */
  readonly model?: LifeModel
}

export interface Crew {
  /** Makes every hand ready for its first job. */
  warm(): Promise<void>
  /** Plays histories; `undefined` when `stopped` says so before it is done. */
  play(job: Job, which: Span | Picked, how: PlayHow): Promise<Sample[] | undefined>
}

export interface PlayHow {
  readonly stopped: () => boolean
  /** Every hand lends itself, also the one that leaves a core to the page: for the first figures, which the page waits for. */
  readonly all?: boolean
  readonly onProgress?: (histories: number) => void
}

/** Histories are given out in pieces of about this length, so that a stop is soon heard. [ms] */
const pieceMs = 120

/** The hands begin when they are first asked for anything: until then what the page waits for has the cores. */
export function makeCrew(size: number): Crew {
  let begun: readonly Hand[] | undefined
  const hands = () => {
    begun ??= Array.from(
      { length: size },
      (): Hand => ({
        player: Comlink.wrap<Player>(
          new Worker(new URL('./player.worker.ts', import.meta.url), { type: 'module' }),
        ),
      }),
    )
    return begun
  }
  let perPiece = 25
  let programs = 0
  return {
    async warm() {
      await Promise.all(hands().map(({ player }) => player.warm()))
    },

    async play(job, which, how) {
      const { model } = job
      const program = {
        id: `${job.id} ${++programs}`,
        list: job.alternatives,
        ...(model === undefined ? {} : { model }),
      }
      const pieces: { readonly from: number; readonly samples: Sample[] }[] = []
      let next = 0
      let done = 0
      const end = countOf(which)
      const work = async (hand: Hand) => {
        if (hand.has !== job.id) {
          await hand.player.take(job.of)
          hand.has = job.id
        }
        while (next < end && !how.stopped()) {
          const from = next
          const count = Math.min(perPiece, end - from)
          next += count
          const began = performance.now()
          pieces.push({ from, samples: await hand.player.play(program, pieceOf(which, { from, count })) })
          done += count
          how.onProgress?.(done)
          const ms = Math.max(1, performance.now() - began)
          perPiece = Math.round(Math.min(1000, Math.max(5, (0.5 + (0.5 * pieceMs) / ms) * count)))
        }
      }
      await Promise.all(
        hands()
          .slice(0, how.all ? size : Math.max(1, size - 1))
          .map(work),
      )
      if (done < end) return undefined
      return joinSamples(pieces.sort((a, b) => a.from - b.from).map(({ samples }) => samples))
    },
  }
}

function pieceOf(
  which: Span | Picked,
  piece: { readonly from: number; readonly count: number },
): Span | Picked {
  const { from, count } = piece
  return 'histories' in which
    ? { ...which, histories: which.histories.slice(from, from + count) }
    : { ...which, from: which.from + from, count }
}
