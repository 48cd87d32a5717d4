/**
 * The whole chain for one set: from its log to the verdict.
 *
 * @module
 */

import { type Report, reportOf } from '../alternatives/report.js'
import { type Saying, sayReport } from '../alternatives/say.js'
import { type Prepared, prepareAnswer } from '../alternatives/settle.js'
import { joinSamples, type Sample } from '../alternatives/simulate.js'
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
}

/** Numbers of histories after which the verdict is looked at. */
const steps = [2_000, 20_000, 100_000]

/** Prepares, plays until the verdict can be said, and says it. */
export async function answerFor(question: AnswerQuestion): Promise<Answer> {
  const prepared = prepareAnswer({ ...question, catalogue: shippedCatalogue() })
  const { seed, histories } = question
  const { model } = prepared
  const bar = progressOf(`playing ${question.boat}`)
  try {
    const spans: Sample[][] = []
    let from = 0
    for (const upTo of histories === undefined ? steps : [histories]) {
      const span = { seed, from, count: upTo - from }
      spans.push(await playAll(prepared, span, (done) => bar.show(span.from + done, upTo)))
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

/** More running would change no word: the saving stands well clear of the error of the simulation. */
function isSettled({ verdict }: Report): boolean {
  return verdict.clearness === 'clear' && Math.abs(verdict.saving) > 4 * verdict.savingError
}
