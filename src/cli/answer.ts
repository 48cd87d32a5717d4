/**
 * The whole chain for one set: from its log to the verdict.
 *
 * @module
 */

import { type Memory, noMemory } from '../alternatives/memory.js'
import { type Report, reportOf } from '../alternatives/report.js'
import { joinSamples, type Sample } from '../alternatives/sample.js'
import { type Saying, sayReport } from '../alternatives/say.js'
import { type Prepared, preparing, withAlternatives, withOwnLimits } from '../alternatives/settle.js'
import type { Alternative, LifeModel } from '../forecast/life-model.js'
import type { Pooled } from '../forecast/pooling-lessons.js'
import { learnedOverrunOf } from '../job/actual.js'
import type { Entry } from '../logbook/kinds.js'
import { shippedCatalogue } from './places.js'
import { playAll } from './play-all.js'
import { progressOf } from './progress.js'

export interface Answer extends Prepared {
  readonly samples: readonly Sample[]
  readonly report: Report
  readonly saying: Saying
}

export interface AnswerQuestion {
  readonly entries: readonly Entry[]
  readonly boat: string
  readonly set: string
  readonly asOf: string
  readonly seed: number
  /** Histories to play; left out: as many as the verdict needs, up to the last of `steps`. */
  readonly histories?: number
  readonly memory?: Memory
  /** Lessons of the owner's other boats, where they are to be heard. */
  readonly pooled?: Pooled | undefined
  /** Alternatives to look at in the place of those that the log gives; a repair limit that one has is kept. */
  readonly others?: (model: LifeModel) => readonly Alternative[]
  /** A first answer: with one repair limit for all alternatives. */
  readonly first?: boolean
  readonly signal?: AbortSignal
}

/** Numbers of histories after which the verdict is looked at. */
const steps = [2_000, 20_000, 100_000]

/** Prepares, plays until the verdict can be said, and says it. */
export async function answerFor(question: AnswerQuestion): Promise<Answer> {
  return answerFrom(await prepareFor(question), question)
}

/** Plays until the verdict can be said, and says it. */
export async function answerFrom(
  prepared: Prepared,
  question: Pick<AnswerQuestion, 'boat' | 'seed' | 'histories' | 'signal'>,
): Promise<Answer> {
  const { seed, histories, signal } = question
  const { model } = prepared
  const bar = progressOf(`playing ${question.boat}`)
  try {
    const spans: Sample[][] = []
    let from = 0
    for (const upTo of histories === undefined ? steps : [histories]) {
      const span = { seed, from, count: upTo - from }
      const onProgress = (done: number) => bar.show(span.from + done, upTo)
      spans.push(await playAll(prepared, span, { onProgress, signal }))
      from = upTo
      const samples = joinSamples(spans)
      const report = reportOf(model, samples, seed)
      if (upTo === (histories ?? steps.at(-1)) || isSettled(report)) {
        return { ...prepared, samples, report, saying: sayReport(model, samples, report) }
      }
    }
    throw new Error('steps must not be empty')
  } finally {
    bar.end()
  }
}

/** Everything up to the histories. Between its steps whatever else waits is heard, a stop among it. */
export async function prepareFor(question: AnswerQuestion): Promise<Prepared> {
  const { seed, memory = noMemory, signal, others } = question
  const bar = progressOf(`preparing ${question.boat}`)
  try {
    const catalogue = shippedCatalogue()
    const overrun = learnedOverrunOf({ ...question, catalogue })
    const preparation = preparing({ ...question, memory, catalogue, overrun })
    let step = preparation.next()
    for (let done = 1; !step.done; done++) {
      bar.show(done, preparingSteps)
      await breathe(signal)
      step = preparation.next()
    }
    const list = others?.(step.value.model)
    const prepared = list === undefined ? step.value : withAlternatives(step.value, list, { seed, memory })
    if (question.first) return prepared
    const { posterior, used, model } = prepared
    return await withOwnLimits(prepared, {
      seed,
      memory,
      except: new Set(list?.flatMap(({ id, limit }) => (limit === undefined ? [] : [id]))),
      play: (alternatives, span) =>
        playAll({ posterior, used, model: { ...model, alternatives: [...alternatives] } }, span, { signal }),
    })
  } finally {
    bar.end()
  }
}

/** Steps of the preparation, for the bar. */
const preparingSteps = 5

/** Lets signals and timers have their turn. */
async function breathe(signal: AbortSignal | undefined): Promise<void> {
  await new Promise((resolve) => setImmediate(resolve))
  signal?.throwIfAborted()
}

/** More running would change no word: the saving stands well clear of the error of the simulation. */
function isSettled({ verdict }: Report): boolean {
  return verdict.clearness === 'clear' && Math.abs(verdict.saving) > 4 * verdict.savingError
}
