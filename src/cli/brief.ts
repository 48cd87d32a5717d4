/**
 * `gensettle brief`: the answer for somebody who was not there, on two pages.
 *
 * @module
 */

import { briefOf } from '../alternatives/brief.js'
import { shortCaution } from '../alternatives/cautions.js'
import { comparedRows } from '../alternatives/compared.js'
import { programVersion } from '../alternatives/program-version.js'
import { answerFrom, prepareFor } from './answer.js'
import { bearingOf } from './bearing.js'
import { briefHtml } from './brief-html.js'
import { briefText } from './brief-text.js'
import { lessonsFor, lessonsText } from './lessons.js'
import { newFileProblems, writeNewFile } from './new-file.js'
import { type SetOptions, withSet } from './of-set.js'
import { shippedCatalogue } from './places.js'
import { type Result, refuse } from './result.js'

export interface BriefOptions extends SetOptions {
  readonly seed: number
  readonly histories?: number
  /** Where to write it as a file of HTML. */
  readonly write?: string
}

export function showBrief(options: BriefOptions): Promise<Result> {
  return withSet(options, async (question) => {
    const { seed, histories, write } = options
    const file = { path: '--write', file: write }
    const problems = newFileProblems([file])
    if (problems.length > 0) return refuse(...problems)
    const lessons = lessonsFor(question, { seed })
    if (!lessons.ok) return lessons
    const { pooled } = lessons
    const { boat, set, asOf, named, all } = question
    const prepared = await prepareFor({ ...question, seed, pooled })
    const answer = await answerFrom(prepared, {
      boat,
      seed,
      ...(histories === undefined ? {} : { histories }),
    })
    const { findingOut, changes, when } = await bearingOf(answer, {
      seed,
      findOut: true,
      whatChanges: true,
      when: true,
    })
    const { model, report, samples } = answer
    const brief = briefOf({
      ...answer,
      rows: comparedRows(model, samples, report.verdict.best),
      findingOut: findingOut!,
      changes: changes ?? null,
      when: when ?? null,
      catalogue: shippedCatalogue(),
      numbers: new Map(all.map(({ id }, at) => [id, at + 1])),
      seed,
      program: programVersion,
      demonstration: named.demonstration,
      heard: lessonsText(pooled).filter(Boolean),
    })
    const unwritten = writeNewFile({ ...file, text: briefHtml(brief) })
    if (unwritten.length > 0) return refuse(...unwritten)
    return {
      ok: true,
      json: {
        type: 'gensettle/brief',
        version: 1,
        boat,
        set,
        asOf,
        currency: model.currency,
        seed,
        ...report,
        brief,
        caution: shortCaution,
      },
      text: [briefText(brief), ...(write === undefined ? [] : ['', `Written: ${write}`])].join('\n'),
    }
  })
}
