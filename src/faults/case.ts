/**
 * A case: what was answered so far, kept as one entry that each answer corrects.
 *
 * @module
 */

import { type Problem, shown } from '../catalogue/problem.js'
import type { FaultModel } from '../catalogue/read-fault-model.js'
import { type Body, type Entry, isKind } from '../logbook/kinds.js'
import type { Answers } from './infer.js'

export type CaseBody = Body<'case'>
export type LineAnswer = CaseBody['lines'][number]
export type CheckAnswer = CaseBody['checks'][number]
export type CaseClosed = NonNullable<CaseBody['closed']>

/** A case of a set as the log has it now. */
export interface FaultCase {
  readonly entry: string
  /** When it began. */
  readonly from: string
  readonly body: CaseBody
}

/** One answer, or one that is taken back. */
export type Step =
  | { readonly symptom: string; readonly is: 'present' | 'absent' | 'not-known' | 'not-asked' }
  | ({ readonly check: string } & (
      | {
          readonly outcome: string
          readonly value?: number
          readonly against?: number
          readonly windingC?: number
        }
      | { readonly couldNot: true }
      | { readonly notDone: true }
    ))
  | { readonly line: string; readonly is: LineAnswer['is']; readonly because?: string }
  | { readonly idleDays: number }

export type Stepped =
  | { readonly ok: true; readonly body: CaseBody }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** The cases of a set, the oldest first. */
export function casesOf(entries: readonly Entry[], set: string): FaultCase[] {
  return entries.flatMap((entry) =>
    isKind(entry, 'case') && entry.set === set
      ? [{ entry: entry.id, from: entry.from, body: entry.body }]
      : [],
  )
}

/** A case in which nothing was answered yet. */
export function newCase(name: string, about?: string): CaseBody {
  return { name, ...(about === undefined ? {} : { about }), lines: [], symptoms: [], checks: [] }
}

/** A name that no case of the set has. */
export function nextCaseName(cases: readonly FaultCase[]): string {
  const names = new Set(cases.map(({ body }) => body.name))
  for (let n = cases.length + 1; ; n++) if (!names.has(`case-${n}`)) return `case-${n}`
}

/** What inference takes from the answers: what nobody knows, or could not be done, says nothing. Names that are not of the model are left out. */
export function answersOf(model: FaultModel, { symptoms, checks }: CaseBody): Answers {
  const knownSymptoms = new Set(model.symptoms.map(({ id }) => id))
  const outcomes = new Map(
    model.checks.map((check) => [check.id, new Set(check.outcomes.map(({ id }) => id))]),
  )
  return {
    symptoms: Object.fromEntries(
      symptoms.flatMap(({ symptom, is }) =>
        is === 'not-known' || !knownSymptoms.has(symptom) ? [] : [[symptom, is]],
      ),
    ),
    outcomes: Object.fromEntries(
      checks.flatMap(({ check, outcome }) =>
        outcome !== undefined && outcomes.get(check)?.has(outcome) ? [[check, outcome]] : [],
      ),
    ),
  }
}

/** The case with one more answer, or one changed or taken back; or what is wrong with it. */
export function stepped(model: FaultModel, body: CaseBody, step: Step): Stepped {
  if (body.closed !== undefined) return refuse('closed', body.name, 'a case that is open')
  if ('idleDays' in step) return { ok: true, body: { ...body, idleDays: step.idleDays } }
  if ('line' in step) return lineStepped(model, body, step)
  return 'symptom' in step ? symptomStepped(model, body, step) : checkStepped(model, body, step)
}

function symptomStepped(
  model: FaultModel,
  body: CaseBody,
  step: Extract<Step, { symptom: string }>,
): Stepped {
  const { symptom, is } = step
  if (!model.symptoms.some(({ id }) => id === symptom)) {
    return refuse('unknown-symptom', symptom, 'a symptom of the fault model')
  }
  const others = body.symptoms.filter((one) => one.symptom !== symptom)
  const symptoms = is === 'not-asked' ? others : [...others, { symptom, is }]
  const opened =
    is === 'present' ? model.stopLines.filter((line) => line.opensBySymptoms.includes(symptom)) : []
  return { ok: true, body: { ...body, symptoms, lines: reopened(body, opened) } }
}

function checkStepped(model: FaultModel, body: CaseBody, step: Extract<Step, { check: string }>): Stepped {
  const { check: id } = step
  const check = model.checks.find((one) => one.id === id)
  if (check === undefined) return refuse('unknown-check', id, 'a check of the fault model')
  const others = body.checks.filter((one) => one.check !== id)
  if ('notDone' in step) return { ok: true, body: { ...body, checks: others } }
  if ('couldNot' in step) {
    return { ok: true, body: { ...body, checks: [...others, { check: id, couldNot: true }] } }
  }
  const { outcome, value, against, windingC } = step
  if (!check.outcomes.some((one) => one.id === outcome)) {
    return refuse('unknown-outcome', outcome, check.outcomes.map((one) => one.id).join(', '))
  }
  const answer: CheckAnswer = {
    check: id,
    outcome,
    ...(value === undefined ? {} : { value }),
    ...(against === undefined ? {} : { against }),
    ...(windingC === undefined ? {} : { windingC }),
  }
  const opened = model.stopLines.filter((line) =>
    line.opensByOutcomes.some((one) => one.check === id && one.outcome === outcome),
  )
  return { ok: true, body: { ...body, checks: [...others, answer], lines: reopened(body, opened) } }
}

function lineStepped(model: FaultModel, body: CaseBody, step: Extract<Step, { line: string }>): Stepped {
  const line = model.stopLines.find(({ id }) => id === step.line)
  if (line === undefined) return refuse('unknown-stop-line', step.line, 'a stop line of the fault model')
  const { is, because } = step
  if (is === 'overruled' && line.neverPassedOver) {
    return refuse('never-overruled', line.hazard, `cleared, when: ${line.clearWhen.join('; ')}`)
  }
  if ((is === 'overruled' || is === 'cleared') && !because?.trim()) {
    const allowed = is === 'cleared' ? `how each was met: ${line.clearWhen.join('; ')}` : 'a written reason'
    return refuse('missing', line.hazard, allowed)
  }
  const others = body.lines.filter((one) => one.line !== line.id)
  const answer = { line: line.id, is, ...(because === undefined ? {} : { because }) }
  return { ok: true, body: { ...body, lines: [...others, answer] } }
}

/** What was cleared before is open again when something new opens it. */
function reopened(body: CaseBody, opened: readonly { readonly id: string }[]): CaseBody['lines'] {
  const ids = new Set(opened.map(({ id }) => id))
  return body.lines.filter(({ line, is }) => is === 'open' || is === 'not-so' || !ids.has(line))
}

function refuse(code: string, found: string, allowed: string): Stepped & { readonly ok: false } {
  return { ok: false, problems: [{ code, path: '', found: shown(found), allowed }] }
}
