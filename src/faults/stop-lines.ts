/**
 * Stop lines of a case: which are open and why, which looks they bar, and what must be confirmed before a look.
 *
 * @module
 */

import type { FaultCheck } from '../catalogue/fault-schema.js'
import type { FaultModel } from '../catalogue/read-fault-model.js'
import type { StopLine } from '../catalogue/stop-line-schema.js'
import { type CaseCause, type CaseLine, caseLines } from '../proof/case-lines.js'
import type { LineCause, OpenLine } from '../proof/open-lines.js'
import type { CaseBody } from './case.js'

export interface LineState extends Omit<CaseLine, 'by'> {
  /** What opened it in the case. */
  readonly by: readonly CaseCause[]
  /** What else in the log holds it open: no answer of a case clears that. */
  readonly inLog: readonly LineCause[]
}

/**
 * Every stop line as a case leaves it, in the model's order, with what the log holds of it apart from cases: open there, it is
 * open here, and what was passed over there is passed over here.
 */
export function lineStates(
  model: Pick<FaultModel, 'stopLines'>,
  body: CaseBody,
  inLog: readonly OpenLine[] = [],
): LineState[] {
  return caseLines(model.stopLines, body).map((own): LineState => {
    const found = inLog.find(({ line }) => line === own.line.id)
    const others = found?.causes.filter(({ by }) => by !== 'case') ?? []
    const passedOver = found?.passedOver
    if (passedOver !== undefined && (own.is === 'open' || others.length > 0)) {
      return { ...own, is: 'overruled', because: passedOver.because, inLog: others }
    }
    return { ...own, ...(others.length > 0 ? { is: 'open' as const } : {}), inLog: others }
  })
}

/** That the log holds a line open apart from the case, and by what; nothing where it does not. */
export function sayHeld(inLog: readonly LineCause[]): string[] {
  if (inLog.length === 0) return []
  const whys = [...new Set(inLog.map(({ why }) => why))].join(' ')
  return [`The log holds it open apart from the case, and no answer clears that: ${whys}`]
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
