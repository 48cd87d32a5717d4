/**
 * All that the log of a set says beforehand of a case: clocks, kind, standing defects, recent work, closed cases.
 *
 * @module
 */

import type { FaultModel } from '../catalogue/read-fault-model.js'
import type { Entry } from '../logbook/kinds.js'
import type { SetRegister } from '../register/register-types.js'
import type { CaseBody, FaultCase } from './case.js'
import { clocksOf, defectiveInLog, recentWorkOf } from './clocks.js'
import { closedCounts } from './closed-cases.js'
import type { PriorGiven } from './priors.js'

export interface GivenFrom {
  readonly model: FaultModel
  readonly register: SetRegister
  /** In their current form. */
  readonly entries: readonly Entry[]
  readonly cases: readonly FaultCase[]
  readonly body: CaseBody
  /** What the forecast says of each part: chance that it stands defective now. */
  readonly standing?: Readonly<Record<string, number>>
}

export function givenOf({ model, register, entries, cases, body, standing = {} }: GivenFrom): PriorGiven {
  const { excitation, governor } = register.setFacts
  const inLog = defectiveInLog(register)
  const parts = new Set([...Object.keys(inLog), ...Object.keys(standing)])
  return {
    clocks: clocksOf(model, register, body.idleDays),
    kind: { excitation, governor },
    defective: Object.fromEntries(
      [...parts].map((part) => [part, Math.max(inLog[part] ?? 0, standing[part] ?? 0)]),
    ),
    work: recentWorkOf(entries, register),
    closed: closedCounts(cases, body.name),
  }
}
