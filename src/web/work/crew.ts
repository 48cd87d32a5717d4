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
  isBusy: boolean
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

/** A job under way: which of its histories are given out, and what came back. */
interface Task {
  readonly job: Job
  readonly program: Parameters<Player['play']>[0]
  readonly which: Span | Picked
  readonly how: PlayHow
  readonly end: number
  next: number
  out: number
  done: number
  readonly pieces: { readonly from: number; readonly samples: Sample[] }[]
  readonly settle: (samples: Sample[] | undefined) => void
  readonly fail: (cause: unknown) => void
}

/**
 * The hands begin when they are first asked for anything: until then what the page waits for has the cores. Jobs are
 * played in the order in which they come, and whoever is free takes the next piece: several may wait at once.
 */
export function makeCrew(size: number): Crew {
  let begun: readonly Hand[] | undefined
  const hands = () => {
    begun ??= Array.from(
      { length: size },
      (): Hand => ({
        player: Comlink.wrap<Player>(
          new Worker(new URL('./player.worker.ts', import.meta.url), { type: 'module' }),
        ),
        isBusy: false,
      }),
    )
    return begun
  }
  let perPiece = 25
  let programs = 0
  let tasks: Task[] = []

  function giveOut(): void {
    hands().forEach((hand, h) => {
      if (hand.isBusy) return
      for (const task of tasks) if (task.how.stopped()) task.next = task.end
      tasks = tasks.filter((task) => task.next < task.end || task.out > 0 || ended(task))
      const task = tasks.find(({ next, end }) => next < end)
      if (task === undefined || h >= (task.how.all ? size : Math.max(1, size - 1))) return
      hand.isBusy = true
      void pieceBy(hand, task).finally(() => {
        hand.isBusy = false
        giveOut()
      })
    })
  }

  async function pieceBy(hand: Hand, task: Task): Promise<void> {
    const { job, which, program, how } = task
    const from = task.next
    const count = Math.min(perPiece, task.end - from)
    task.next += count
    task.out++
    try {
      if (hand.has !== job.id) {
        await hand.player.take(job.of)
        hand.has = job.id
      }
      const began = performance.now()
      const samples = await hand.player.play(program, pieceOf(which, { from, count }))
      task.pieces.push({ from, samples })
      task.done += count
      how.onProgress?.(task.done)
      const ms = Math.max(1, performance.now() - began)
      perPiece = Math.round(Math.min(1000, Math.max(5, (0.5 + (0.5 * pieceMs) / ms) * count)))
    } catch (cause) {
      task.next = task.end
      task.fail(cause)
    } finally {
      task.out--
    }
  }

  /** Settles a task of which nothing is out any more; false, so that it is kept no longer. */
  function ended(task: Task): boolean {
    const { pieces, done, end, settle } = task
    settle(
      done < end
        ? undefined
        : joinSamples(pieces.sort((a, b) => a.from - b.from).map(({ samples }) => samples)),
    )
    return false
  }

  return {
    async warm() {
      await Promise.all(hands().map(({ player }) => player.warm()))
    },

    play(job, which, how) {
      const { model } = job
      const program = {
        id: `${job.id} ${++programs}`,
        list: job.alternatives,
        ...(model === undefined ? {} : { model }),
      }
      return new Promise((settle, fail) => {
        const end = countOf(which)
        tasks.push({ job, program, which, how, end, next: 0, out: 0, done: 0, pieces: [], settle, fail })
        giveOut()
      })
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
