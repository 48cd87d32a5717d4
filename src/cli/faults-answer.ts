/**
 * What was typed behind `gensettle faults answer`, read as one answer.
 *
 * @module
 */

import type { FaultCheck } from '../catalogue/fault-schema.js'
import type { Problem } from '../catalogue/problem.js'
import { outcomeOfReading } from '../faults/bands.js'
import type { FaultCase, Step } from '../faults/case.js'
import { clearanceOf, firstQuestions, type LineState, lineStates } from '../faults/stop-lines.js'
import { limitsOf } from '../proof/limits.js'
import type { FaultOptions, FaultQuestion } from './faults-of-set.js'

export interface AnswerOptions extends FaultOptions {
  readonly against?: number
  readonly winding?: number
  readonly because?: string
}

type Read =
  | { readonly ok: true; readonly step: Step }
  | { readonly ok: false; readonly problems: readonly Problem[] }

type Question = FaultQuestion & { readonly case: FaultCase; readonly options: AnswerOptions }

/** One word for what is answered, one for the answer. */
export function stepOf([what = '', said = '']: readonly string[], question: Question): Read {
  const { model } = question
  const line = model.stopLines.find(({ id }) => id === what)
  const states = lineStates(model, question.case.body, question.inLog)
  if (line !== undefined) return lineStep(what, said, { states, options: question.options })
  const [first] = firstQuestions(states)
  if (first !== undefined) {
    return refuse('asked-first', what, `first an answer to "${first.id}", yes or no: ${first.asked}`)
  }
  if (model.symptoms.some(({ id }) => id === what)) return symptomStep(what, said)
  const check = model.checks.find(({ id }) => id === what)
  if (check === undefined) {
    return refuse('unknown-name', what, 'a stop question, a symptom or a check as "faults next" names them')
  }
  if (said === 'take-back') return { ok: true, step: { check: what, notDone: true } }
  if (said === 'could-not') return { ok: true, step: { check: what, couldNot: true } }
  const { open } = clearanceOf(check, states)
  if (open.length > 0) {
    const lines = open.map(({ id, clearWhen }) => `${id} (${clearWhen.join('; ')})`).join(', ')
    return refuse('barred', what, `first cleared: ${lines}`)
  }
  return checkStep(check, said, question)
}

const lineAnswers = { yes: 'open', no: 'not-so', cleared: 'cleared', overruled: 'overruled' } as const
const symptomAnswers = {
  present: 'present',
  yes: 'present',
  absent: 'absent',
  no: 'absent',
  unknown: 'not-known',
  'take-back': 'not-asked',
} as const

function lineStep(
  line: string,
  said: string,
  {
    states,
    options: { because },
  }: { readonly states: readonly LineState[]; readonly options: AnswerOptions },
): Read {
  const is = Object.entries(lineAnswers).find(([word]) => word === said)?.[1]
  if (is === undefined) return refuse('answer', said, `one of: ${Object.keys(lineAnswers).join(', ')}`)
  const state = states.find((one) => one.line.id === line)
  if (is !== 'open' && state?.is === 'open' && state.inLog.length > 0) {
    const whys = state.inLog.map(({ why }) => why).join(' ')
    return refuse('held-by-log', said, `what closes it in the log, as "gensettle owed" tells: ${whys}`)
  }
  return { ok: true, step: { line, is, ...(because === undefined ? {} : { because }) } }
}

function symptomStep(symptom: string, said: string): Read {
  const is = Object.entries(symptomAnswers).find(([word]) => word === said)?.[1]
  if (is === undefined) return refuse('answer', said, `one of: ${Object.keys(symptomAnswers).join(', ')}`)
  return { ok: true, step: { symptom, is } }
}

function checkStep(check: FaultCheck, said: string, { register, options, catalogue }: Question): Read {
  if (said.trim() === '' || !Number.isFinite(Number(said))) {
    const outcomes = check.outcomes.map(({ id }) => id)
    if (outcomes.includes(said)) return { ok: true, step: { check: check.id, outcome: said } }
    const number =
      check.reading === undefined ? [] : [`a number: ${check.reading.what}, in ${check.reading.unit}`]
    return refuse('answer', said, `one of: ${[...outcomes, 'could-not', 'take-back', ...number].join(', ')}`)
  }
  const { volts, hertz } = register.setFacts
  const { against, winding } = options
  const value = Number(said)
  const rated = { volts: volts === undefined ? undefined : Math.max(...volts), hertz }
  const read = { value, against, windingC: winding }
  const banded = outcomeOfReading(check, read, { rated, limits: limitsOf(catalogue) })
  if (!banded.ok) return banded
  const step = {
    check: check.id,
    outcome: banded.outcome,
    value,
    ...(against === undefined ? {} : { against }),
    ...(winding === undefined ? {} : { windingC: winding }),
  }
  return { ok: true, step }
}

function refuse(code: string, found: string, allowed: string): Read {
  return { ok: false, problems: [{ code, path: '', found: found || 'nothing', allowed }] }
}
