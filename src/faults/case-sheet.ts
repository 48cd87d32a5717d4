/**
 * A case on one sheet, for a mechanic who was not there: what stops, what was seen, what it may be, what to look at next.
 *
 * @module
 */

import type { FaultModel } from '../catalogue/read-fault-model.js'
import type { CaseBody } from './case.js'
import type { Diagnosis } from './diagnose.js'
import { confirmWords, sayHeld } from './stop-lines.js'
import {
  checkName,
  faultName,
  handOverNames,
  outcomeName,
  riskNames,
  sayChance,
  sayCheckAnswer,
  symptomName,
} from './words.js'

export interface CaseSheet {
  readonly title: string
  /** Days it had stood, and what was asked first and is not so. */
  readonly head: readonly string[]
  readonly stops: readonly { readonly title: string; readonly act: string; readonly clear: string }[]
  readonly seen: readonly { readonly what: string; readonly says: string }[]
  readonly mayBe: readonly { readonly what: string; readonly chance: string; readonly mend: string }[]
  readonly next: readonly {
    readonly what: string
    readonly how: string
    readonly before: readonly string[]
    readonly outcomes: readonly string[]
  }[]
  readonly notes: readonly string[]
}

const mostFaults = 8

export function caseSheetOf(
  model: FaultModel,
  { body, diagnosis }: { readonly body: CaseBody; readonly diagnosis: Diagnosis },
): CaseSheet {
  const { lines, ranked, suggestions, second, unexplained, first } = diagnosis
  const open = lines.filter(({ is }) => is === 'open')
  const overruled = lines.filter(({ is }) => is === 'overruled')
  return {
    title: body.about ?? body.name,
    head: [
      ...(body.idleDays === undefined ? [] : [`It had stood for ${body.idleDays} days.`]),
      ...(first.length === 0
        ? []
        : [`Not asked yet: ${first.map(({ hazard }) => hazard.toLowerCase()).join(', ')}.`]),
      ...lines.flatMap(({ line, is, because }) =>
        is === 'cleared' ? [`${line.hazard} cleared: ${because}.`] : [],
      ),
    ],
    stops: [
      ...open.map(({ line, inLog }) => ({
        title: line.hazard,
        act: line.act,
        clear: [
          `Cleared when: ${line.clearWhen.join('; ')}.${line.handOver === undefined ? '' : ` By ${handOverNames[line.handOver]}.`}`,
          ...sayHeld(inLog),
        ].join(' '),
      })),
      ...overruled.map(({ line, because }) => ({
        title: `${line.hazard}, overruled by the owner`,
        act: line.act,
        clear: `The owner’s reason: ${because}.`,
      })),
    ],
    seen: [
      ...body.symptoms.map(({ symptom, is }) => ({
        what: symptomName(model, symptom),
        says: { present: 'there', absent: 'looked for, not there', 'not-known': 'not known' }[is],
      })),
      ...body.checks.map((answer) => ({
        what: checkName(model, answer.check),
        says: sayCheckAnswer(model, answer),
      })),
    ],
    mayBe: ranked.slice(0, mostFaults).map(({ fault, chance }) => {
      const { mend, handOver } = model.faults.find(({ id }) => id === fault)!
      return {
        what: faultName(model, fault),
        chance: sayChance(chance),
        mend: handOver === undefined ? mend : `${mend} (${handOverNames[handOver]})`,
      }
    }),
    next: suggestions.map(({ check, confirm }) => ({
      what: `${check.name}, ${check.minutes} min, ${riskNames[check.risk]}`,
      how: [check.how, ...(check.tools.length === 0 ? [] : [`Tools: ${check.tools.join(', ')}.`])].join(' '),
      before: confirm.map((line) => `${line.hazard}: ${confirmWords(line).join('; ')}`),
      outcomes: check.outcomes.map(({ id }) => outcomeName(model, check.id, id)),
    })),
    notes: [
      ...(second === undefined
        ? []
        : [`There may be a second fault: ${faultName(model, second.fault)}, ${sayChance(second.chance)}.`]),
      ...(unexplained ? ['Nothing on the list explains what was seen.'] : []),
      'Chances are of one cause, by a list of 80 faults; practice, but for this set’s own closed cases. Local rules and licensed people come first.',
    ],
  }
}
