/**
 * `gensettle alternatives`: the verdict, the walk-away price, and all that could be done, in money and days.
 *
 * @module
 */

import { alternativesFile, readAlternativesFile } from '../alternatives/alternatives-file.js'
import { shortCaution } from '../alternatives/cautions.js'
import type { OpenStop } from '../alternatives/open-stops.js'
import { moneyIn } from '../alternatives/say.js'
import { saySet } from '../alternatives/say-set.js'
import { type Summary, summarise } from '../alternatives/summary.js'
import type { Problem } from '../catalogue/problem.js'
import type { LifeModel } from '../forecast/life-model.js'
import { type Answer, answerFrom, prepareFor } from './answer.js'
import { bearingOf, bearingText, bearingValue } from './bearing.js'
import { lessonsFor, lessonsText, lessonsValue } from './lessons.js'
import { newFileProblems, readJsonFile, writeJsonFiles } from './new-file.js'
import { type SetOptions, withSet } from './of-set.js'
import { type Result, refuse, refusedText } from './result.js'
import { chance, figure, tableText } from './table.js'

export interface AlternativesOptions extends SetOptions {
  readonly seed: number
  readonly histories?: number
  /** An edited list of alternatives to look at in the place of those that the log gives. */
  readonly with?: string
  /** Where to write the alternatives as they are laid out. */
  readonly write?: string
  /** Where to write the whole life model, with the alternatives. */
  readonly writeModel?: string
  readonly findOut?: boolean
  readonly whatChanges?: boolean
  readonly when?: boolean
}

export function showAlternatives(options: AlternativesOptions): Promise<Result> {
  return withSet(options, async (question) => {
    const { seed, histories, write, writeModel } = options
    const edited = editedList(options.with)
    const files = [
      { path: '--write', file: write },
      { path: '--write-model', file: writeModel },
    ] as const
    const problems = [...(edited.problem === undefined ? [] : [edited.problem]), ...newFileProblems(files)]
    // An edited list can only be judged against the model; without one what is wrong is told before any work.
    if (problems.length > 0 && !('value' in edited)) return refuse(...problems)
    const wrong = [...problems]
    const others = (model: LifeModel) => {
      const read = readAlternativesFile(edited.value, model)
      if (read.ok) return read.alternatives
      wrong.push(...read.problems)
      return model.alternatives
    }
    const lessons = lessonsFor(question, { seed })
    if (!lessons.ok) return lessons
    const { pooled } = lessons
    const prepared = await prepareFor({
      ...question,
      seed,
      pooled,
      ...(options.with === undefined ? {} : { others }),
    })
    if (wrong.length > 0) return refuse(...wrong)
    const { model, assumed } = prepared
    const { boat, set, asOf } = question
    const unwritten = writeJsonFiles([
      { ...files[0], value: alternativesFile(model, { boat, set, asOf }) },
      { ...files[1], value: model },
    ])
    if (unwritten.length > 0) return refuse(...unwritten)
    const answer = await answerFrom(prepared, {
      boat,
      seed,
      ...(histories === undefined ? {} : { histories }),
    })
    const { report, saying } = answer
    const bearing = await bearingOf(answer, options)
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
        stops: prepared.stops,
        assumed,
        refusedFigures: prepared.problems,
        refusedAlternatives: prepared.refusedAlternatives,
        ...lessonsValue(pooled),
        ...bearingValue(bearing),
        caution: shortCaution,
      },
      text: [
        alternativesText(answer, summaries, {
          lessons: lessonsText(pooled),
          bearing: bearingText(model, bearing),
        }),
        ...files.flatMap(({ file }) => (file === undefined ? [] : [`Written: ${file}`])),
      ].join('\n'),
    }
  })
}

function editedList(file: string | undefined): { readonly value?: unknown; readonly problem?: Problem } {
  return file === undefined ? {} : readJsonFile(file, { path: '--with', holds: 'a list of alternatives' })
}

/** Names of alternatives are broken, so that a table fits on a screen. */
const nameWidth = 38

function alternativesText(
  answer: Answer,
  summaries: readonly Summary[],
  { lessons, bearing }: { readonly lessons: readonly string[]; readonly bearing: readonly string[] },
): string {
  const { model, saying, report, register, assumed, problems, refusedAlternatives } = answer
  const right = (head: string) => ({ head, align: 'right' }) as const
  const order = summaries
    .map((summary, i) => ({ summary, alternative: model.alternatives[i]! }))
    .sort((a, b) => a.summary.cost.mean - b.summary.cost.mean)
  const table = tableText(
    [
      { head: `${model.currency}, ${figure(model.horizonYears)} years`, wrap: nameWidth },
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
    ...stopsText(model),
    ...passedOverText(answer.stops),
    '',
    table,
    `Days without power, stops of a day or longer and dangers are a year. ± is one standard error of ${figure(report.histories)} histories; the spread from 10 to 90 is the world's, and no running narrows it.`,
    ...(most === undefined ? [] : [`You can pay at most ${moneyIn(model.currency, most)} in one year.`]),
    ...limitsText(model),
    ...bearing,
    ...lessons,
    ...refusedText('Alternatives of yours that could not be laid out', refusedAlternatives),
    ...refusedText('Figures of yours that could not be used', problems),
    ...(assumed.length === 0
      ? []
      : ['', 'Taken for granted because nobody said:', ...assumed.map((line) => `  ${line}`)]),
    '',
    shortCaution,
  ].join('\n')
}

/** Each reason that bars a choice, with all that it bars. */
function stopsText({ alternatives }: LifeModel): string[] {
  const barred = new Map<string, string[]>()
  for (const { id, name, barred: why } of alternatives) {
    if (why !== undefined) barred.set(why, [...(barred.get(why) ?? []), name ?? id])
  }
  return [...barred].map(([why, names]) => `Stop: ${why} As things stand this bars: ${names.join('; ')}.`)
}

/** What was passed over bars nothing, and its reason stays in sight. */
function passedOverText(stops: readonly OpenStop[]): string[] {
  return stops.flatMap(({ why, passedOver }) =>
    passedOver === undefined
      ? []
      : [`Passed over, and bars nothing: ${why} Because, ${passedOver.date}: ${passedOver.because}`],
  )
}

/** What happens to later jobs, where they are not always mended. */
function limitsText({ alternatives, candidates, currency }: LifeModel): string[] {
  const rows = alternatives.flatMap(({ id, name, limit }) => {
    if (limit === undefined) return []
    const { above, knots } = limit
    const other = above === 'give-up' ? undefined : candidates.find((one) => one.id === above.replaceWith)
    const instead = above === 'give-up' ? 'do without' : `fit ${other?.name ?? above.replaceWith}`
    return [[name ?? id, ...knots.map((knot) => moneyIn(currency, knot)), instead]]
  })
  if (rows.length === 0) return []
  const right = (head: string) => ({ head, align: 'right' }) as const
  const columns = [
    { head: 'later jobs are mended up to', wrap: nameWidth },
    ...['now', 'half way', 'at the end'].map(right),
    { head: 'above that' },
  ]
  return ['', tableText(columns, rows), 'These limits cost least on other histories than those above.']
}
