/**
 * `gensettle faults`: a case begun, answered, looked at, and closed with what it really was.
 *
 * @module
 */

import { type CaseBody, type FaultCase, newCase, nextCaseName, type Step, stepped } from '../faults/case.js'
import { draftOfCase, type EntryPlace, entriesOfCase } from '../faults/case-entries.js'
import { hindsightOfCases, placeOf } from '../faults/closed-cases.js'
import { findSymptoms } from '../faults/search.js'
import { type Why, whyOf } from '../faults/why.js'
import { faultName, sayAnswerKey, sayChance } from '../faults/words.js'
import type { Draft } from '../store/compose.js'
import { type AnswerOptions, stepOf } from './faults-answer.js'
import { type FaultOptions, type FaultQuestion, withCase, withFaults } from './faults-of-set.js'
import { faultsCaution, whyText } from './faults-text.js'
import { caseJson, caseText } from './faults-told.js'
import { writeAndAsk } from './log.js'
import { withStore } from './opened.js'
import { type Json, type Result, refuse } from './result.js'
import { shippedFaultModel } from './shipped.js'
import { tableText } from './table.js'

export interface StartOptions extends FaultOptions {
  readonly idle?: number
  readonly nothingDangerous?: boolean
}

/** Begins a case. The stop questions come before anything else. */
export function startCase(words: readonly string[], options: StartOptions): Promise<Result> {
  return writing(options, withFaults, (question) => {
    const { cases, model } = question
    const about = words.join(' ').trim()
    const name = options.case ?? nextCaseName(cases)
    if (cases.some(({ body }) => body.name === name)) {
      return refuse({
        code: 'taken',
        path: '--case',
        found: name,
        allowed: 'a name that no case of the set has',
      })
    }
    const begun = newCase(name, about === '' ? undefined : about)
    const body: CaseBody = {
      ...begun,
      ...(options.idle === undefined ? {} : { idleDays: options.idle }),
      lines: options.nothingDangerous
        ? model.stopLines.flatMap(({ id, asked }) =>
            asked === undefined ? [] : [{ line: id, is: 'not-so' as const }],
          )
        : [],
    }
    return { ok: true, body, drafts: [draftOfCase(placeOfEntry(question), body)] }
  })
}

/** Answers a stop question, a symptom or a check; or takes an answer back. */
export function answerCase(words: readonly string[], options: AnswerOptions): Promise<Result> {
  return writing(options, withCase, (question) => {
    const read = stepOf(words, { ...question, options })
    if (!read.ok) return read
    return afterStep(question, read.step)
  })
}

function afterStep(question: Asked, step: Step): Changed {
  const { body } = question.case
  const next = stepped(question.model, body, step)
  if (!next.ok) return next
  return {
    ok: true,
    body: next.body,
    drafts: [draftOfCase(placeOfEntry(question), next.body, question.case)],
  }
}

export interface CloseOptions extends FaultOptions {
  readonly was?: string
}

/** Closes a case: with a fault of the list, something else in words, or nobody knows. What was seen goes into the log. */
export function closeCase(fault: string | undefined, options: CloseOptions): Promise<Result> {
  return writing(options, withCase, (question) => {
    const { model, tables, case: own, diagnosed } = question
    if (own.body.closed !== undefined) {
      return refuse({ code: 'closed', path: '--case', found: own.body.name, allowed: 'a case that is open' })
    }
    if (fault !== undefined && !model.faults.some(({ id }) => id === fault)) {
      const allowed = 'a fault as "faults next" names it; left out with --was for another one'
      return refuse({ code: 'unknown-fault', path: 'fault', found: fault, allowed })
    }
    const { posterior } = diagnosed(own.body)
    const place = fault === undefined ? undefined : placeOf(tables, posterior, fault)
    const was = options.was === undefined ? {} : { was: options.was }
    const closed: CaseBody['closed'] =
      fault !== undefined
        ? { as: 'listed', fault, ...was, ...place }
        : { as: options.was === undefined ? 'not-known' : 'other', ...was }
    const body = { ...own.body, closed }
    const at = placeOfEntry(question)
    return { ok: true, body, drafts: [draftOfCase(at, body, own), ...entriesOfCase(model, body, at)] }
  })
}

/** The case as it stands, and what to look at next. */
export function nextOfCase(options: FaultOptions): Promise<Result> {
  return withCase(options, (question) => told(question, question.case.body, []))
}

/** Which answers speak for and against the leading faults, or one that is named. */
export function whyOfCase(fault: string | undefined, options: FaultOptions): Promise<Result> {
  return withCase(options, (question) => {
    const { model, tables, boat, set, asOf, case: own, diagnosed, catalogue } = question
    if (fault !== undefined && !model.faults.some(({ id }) => id === fault)) {
      const allowed = 'a fault as "faults next" names it'
      return refuse({ code: 'unknown-fault', path: 'fault', found: fault, allowed })
    }
    const { posterior, ranked, left } = diagnosed(own.body)
    const wanted = fault === undefined ? ranked.slice(0, 3).map((one) => one.fault) : [fault]
    const whys = wanted.map((one) => whyOf(tables, posterior, { fault: one, left, catalogue }))
    const json = (why: Why) => ({
      ...why,
      name: faultName(model, why.fault),
      speaks: why.speaks.map(({ answer, times }) => ({ answer: sayAnswerKey(model, answer), times })),
    })
    return {
      ok: true,
      json: {
        type: 'gensettle/faults-why',
        version: 1,
        boat,
        set,
        asOf,
        case: own.body.name,
        faults: whys.map(json),
        caution: faultsCaution,
      },
      text: [...whys.map((why) => whyText(model, why)), faultsCaution].join('\n\n'),
    }
  })
}

/** The cases of a set, and the place that the truth had in the list of each. */
export function listCases(options: FaultOptions): Promise<Result> {
  return withFaults(options, ({ cases, model, boat, set, asOf }) => {
    const looked = new Map(hindsightOfCases(cases).map((one) => [one.name, one]))
    const rows = cases.map(({ from, body: { name, about, closed } }) => {
      const { place = null, chance = null } = looked.get(name) ?? {}
      const was =
        closed === undefined
          ? null
          : (closed.was ?? (closed.fault && faultName(model, closed.fault)) ?? 'nobody knows')
      return { case: name, from, about: about ?? null, open: closed === undefined, was, place, chance }
    })
    return {
      ok: true,
      json: { type: 'gensettle/faults-cases', version: 1, boat, set, asOf, cases: rows },
      text:
        rows.length === 0
          ? 'No case yet. Begin with "gensettle faults start".'
          : tableText(
              [
                { head: 'case' },
                { head: 'began' },
                { head: 'about', wrap: 40 },
                { head: 'was', wrap: 40 },
                { head: 'place it had', align: 'right' },
                { head: 'chance it had', align: 'right' },
              ],
              rows.map((row) => [
                row.case,
                row.from,
                row.about ?? '',
                row.was ?? 'open',
                row.place === null ? '' : String(row.place),
                row.chance === null ? '' : sayChance(row.chance),
              ]),
            ),
    }
  })
}

/** Symptoms by plain words. */
export function showSymptoms(words: readonly string[]): Result {
  const found = findSymptoms(shippedFaultModel().symptoms, words.join(' '))
  const symptoms = found.map(({ id, name, look }) => ({ id, name, ...(look === undefined ? {} : { look }) }))
  return {
    ok: true,
    json: { type: 'gensettle/faults-symptoms', version: 1, symptoms },
    text:
      found.length === 0
        ? 'No symptom fits these words. "gensettle faults symptoms" without words lists all.'
        : tableText(
            [{ head: 'symptom' }, { head: 'what is seen' }],
            found.map(({ id, name }) => [id, name]),
          ),
  }
}

type Asked = FaultQuestion & { readonly case: FaultCase }
type Changed =
  | { readonly ok: true; readonly body: CaseBody; readonly drafts: readonly Draft[] }
  | (Result & { readonly ok: false })

/** Reads, changes the case, writes what follows, and tells how it stands then. */
async function writing<Q extends FaultQuestion, O extends FaultOptions>(
  options: O,
  read: (options: FaultOptions, work: (question: Q) => Result | Promise<Result>) => Promise<Result>,
  change: (question: Q) => Changed,
): Promise<Result> {
  let made:
    | { readonly drafts: readonly Draft[]; readonly tell: (ids: readonly string[]) => Result }
    | undefined
  const result = await read(options, (question) => {
    if (question.named.demonstration) {
      const allowed = 'a boat of your own: demonstration boats are only read'
      return refuse({ code: 'read-only', path: '--boat', found: question.boat, allowed })
    }
    const changed = change(question)
    if (!changed.ok) return changed
    made = { drafts: changed.drafts, tell: (ids) => told(question, changed.body, ids) }
    return { ok: true, json: { type: 'gensettle/faults-case', version: 1 } as Json, text: '' }
  })
  if (!result.ok || made === undefined) return result
  const { drafts, tell } = made
  const written = await withStore(options, (store) => writeAndAsk(store, drafts, 'gensettle/faults-case'))
  if (!written.ok) return written
  return tell((written.json.entries as readonly { readonly id: string }[]).map(({ id }) => id))
}

function told(question: FaultQuestion, body: CaseBody, written: readonly string[]): Result {
  const diagnosis = question.diagnosed(body)
  const of = { ...question, body, diagnosis }
  return { ok: true, json: caseJson(of, written), text: caseText(of) }
}

function placeOfEntry({ boat, set, asOf }: FaultQuestion): EntryPlace {
  return { boat, set, from: asOf }
}
