/**
 * `gensettle alternatives`: the verdict, the walk-away price, and all that could be done, in money and days.
 *
 * @module
 */

import { shortCaution } from '../alternatives/cautions.js'
import { moneyIn } from '../alternatives/say.js'
import { type Summary, summarise } from '../alternatives/summary.js'
import { type Answer, answerFor } from './answer.js'
import { type SetOptions, withSet } from './of-set.js'
import type { Result } from './result.js'
import { chance, figure, tableText } from './table.js'
import { saySet } from './verdicts.js'

export interface AlternativesOptions extends SetOptions {
  readonly seed: number
  readonly histories?: number
}

export function showAlternatives(options: AlternativesOptions): Promise<Result> {
  return withSet(options, async (question) => {
    const { seed, histories } = options
    const answer = await answerFor({ ...question, seed, ...(histories === undefined ? {} : { histories }) })
    const { model, report, saying, assumed, problems } = answer
    const summaries = answer.samples.map((sample) => summarise(model, sample))
    return {
      ok: true,
      json: {
        type: 'gensettle/alternatives',
        version: 1,
        boat: question.boat,
        set: question.set,
        asOf: question.asOf,
        currency: model.currency,
        horizonYears: model.horizonYears,
        seed,
        ...report,
        sayings: saying,
        alternatives: summaries.map((summary, i) => ({ ...model.alternatives[i], ...summary })),
        assumed,
        refusedFigures: problems,
        caution: shortCaution,
      },
      text: alternativesText(answer, summaries),
    }
  })
}

function alternativesText(answer: Answer, summaries: readonly Summary[]): string {
  const { model, saying, report, register, assumed } = answer
  const right = (head: string) => ({ head, align: 'right' }) as const
  const order = summaries
    .map((summary, i) => ({ summary, alternative: model.alternatives[i]! }))
    .sort((a, b) => a.summary.cost.mean - b.summary.cost.mean)
  const table = tableText(
    [
      { head: `${model.currency}, ${figure(model.horizonYears)} years` },
      ...['mean ± error', '10 in 100', '90 in 100', 'worst tenth', 'days without', 'stops', 'danger'].map(
        right,
      ),
    ],
    order.map(({ summary, alternative }) => [
      `${alternative.name ?? alternative.id}${alternative.barred === undefined ? '' : ' [barred]'}`,
      `${figure(summary.cost.mean)} ± ${figure(summary.cost.standardError)}`,
      figure(summary.costSpread.low),
      figure(summary.costSpread.high),
      figure(summary.worstTenth),
      figure(summary.daysWithoutPerYear.mean),
      figure(summary.stopsPerYear.mean),
      chance(Object.values(summary.dangersPerYear).reduce((sum, perYear) => sum + perYear, 0)),
    ]),
  )
  const most = model.mostPayableInOneYear
  return [
    `${register.boatFacts.name ?? register.boat}: ${saySet(register)}`,
    '',
    saying.verdict,
    saying.walkAway,
    ...saying.barred.map((line) => `Stop: ${line}`),
    '',
    table,
    `Days without power, stops of a day or longer and dangers are a year. ± is one standard error of ${figure(report.histories)} histories; the spread from 10 to 90 is the world's, and no running narrows it.`,
    ...(most === undefined ? [] : [`You can pay at most ${moneyIn(model.currency, most)} in one year.`]),
    ...(assumed.length === 0
      ? []
      : ['', 'Taken for granted because nobody said:', ...assumed.map((line) => `  ${line}`)]),
    '',
    shortCaution,
  ].join('\n')
}
