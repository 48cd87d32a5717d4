/**
 * Stop lines of a case: which are open and why, which looks they bar, and what must be confirmed before a look.
 *
 * @module
 */

import type { FaultCheck, StopLine } from '../catalogue/fault-schema.js'
import type { FaultModel } from '../catalogue/read-fault-model.js'
import type { CaseBody } from './case.js'

export interface LineState {
  readonly line: StopLine
  /** `unknown`: nobody has asked yet. `cleared` and `overruled` were open and are no more. */
  readonly is: 'open' | 'cleared' | 'overruled' | 'not-so' | 'unknown'
  /** How it was cleared, or why it is overruled. */
  readonly because?: string
  /** What opened it: the answer on the first screen, symptoms, outcomes of checks. */
  readonly by: readonly LineCause[]
}

export type LineCause =
  | { readonly asked: true }
  | { readonly symptom: string }
  | { readonly check: string; readonly outcome: string }

/** Every stop line as a case leaves it, in the model's order. What was seen opens one whatever was said before. */
export function lineStates(model: Pick<FaultModel, 'stopLines'>, body: CaseBody): LineState[] {
  return model.stopLines.map((line) => {
    const said = body.lines.find((one) => one.line === line.id)
    const by: LineCause[] = [
      ...(said?.is === 'open' ? [{ asked: true } as const] : []),
      ...body.symptoms.flatMap(({ symptom, is }) =>
        is === 'present' && line.opensBySymptoms.includes(symptom) ? [{ symptom }] : [],
      ),
      ...body.checks.flatMap(({ check, outcome }) =>
        outcome !== undefined &&
        line.opensByOutcomes.some((one) => one.check === check && one.outcome === outcome)
          ? [{ check, outcome }]
          : [],
      ),
    ]
    const lifted = said?.is === 'cleared' || said?.is === 'overruled'
    const is = lifted ? said.is : by.length > 0 ? 'open' : (said?.is ?? 'unknown')
    return { line, is, by, ...(said?.because === undefined ? {} : { because: said.because }) }
  })
}

/** Lines that are asked before anything else and have no answer yet. */
export function firstQuestions(states: readonly LineState[]): StopLine[] {
  return states.flatMap(({ line, is }) => (line.asked !== undefined && is === 'unknown' ? [line] : []))
}

export interface Clearance {
  /** Open: the look is barred. */
  readonly open: readonly StopLine[]
  /** Must be confirmed before the look; those that hold each time are confirmed each time. */
  readonly confirm: readonly StopLine[]
}

/** What stands before a look. */
export function clearanceOf(check: Pick<FaultCheck, 'clearFirst'>, states: readonly LineState[]): Clearance {
  const named = states.filter(({ line }) => check.clearFirst.includes(line.id))
  return {
    open: named.filter(({ is }) => is === 'open').map(({ line }) => line),
    confirm: named
      .filter(({ line, is }) => is === 'unknown' || (line.eachTime && is !== 'open'))
      .map(({ line }) => line),
  }
}

/** What is confirmed before a look: that it is not so; or, of a line that holds each time, how it is met. */
export function confirmWords({ eachTime, when, clearWhen }: StopLine): readonly string[] {
  return eachTime ? clearWhen : [`Not so: ${when}`]
}
