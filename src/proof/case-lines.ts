/**
 * Stop lines as one case of something gone wrong leaves them.
 *
 * @module
 */

import type { StopLine } from '../catalogue/stop-line-schema.js'
import type { Body } from '../logbook/kinds.js'

/** What opened a line in a case: the answer on the first screen, symptoms, outcomes of checks. */
export type CaseCause =
  | { readonly asked: true }
  | { readonly symptom: string }
  | { readonly check: string; readonly outcome: string }

export interface CaseLine {
  readonly line: StopLine
  /** `unknown`: nobody has asked yet. `cleared` and `overruled` were open and are no more. */
  readonly is: 'open' | 'cleared' | 'overruled' | 'not-so' | 'unknown'
  /** How it was cleared, or why it is overruled. */
  readonly because?: string
  readonly by: readonly CaseCause[]
}

/**
 * Every stop line as a case leaves it, in the list's order. What was seen opens one whatever was said before; no reason lifts one
 * that may never be passed over.
 */
export function caseLines(
  stopLines: readonly StopLine[],
  body: Pick<Body<'case'>, 'lines' | 'symptoms' | 'checks'>,
): CaseLine[] {
  return stopLines.map((line) => {
    const said = body.lines.find((one) => one.line === line.id)
    const overruledInVain = said?.is === 'overruled' && line.neverPassedOver === true
    const by: CaseCause[] = [
      ...(said?.is === 'open' || overruledInVain ? [{ asked: true } as const] : []),
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
    const isLifted = said?.is === 'cleared' || (said?.is === 'overruled' && !overruledInVain)
    const is = isLifted ? said.is : by.length > 0 ? 'open' : (said?.is ?? 'unknown')
    return { line, is, by, ...(said?.because === undefined ? {} : { because: said.because }) }
  })
}
