/**
 * A case as a value and as text.
 *
 * @module
 */

import { owedJobOf } from '../faults/case-entries.js'
import { confirmWords } from '../faults/stop-lines.js'
import { checkName, faultName, sayCheckAnswer, symptomName } from '../faults/words.js'
import type { FaultQuestion } from './faults-of-set.js'
import { type CaseTold, caseLines, faultsCaution } from './faults-text.js'
import { shippedCatalogue } from './places.js'
import type { Json } from './result.js'

const mostFaults = 20

export function caseText(of: CaseTold): string {
  return [...caseLines(of), '', faultsCaution].join('\n')
}

export function caseJson(of: CaseTold & FaultQuestion, written: readonly string[]): Json {
  const { model, body, diagnosis, boat, set, asOf, money } = of
  const { cheapest, second } = diagnosis
  return {
    type: 'gensettle/faults-case',
    version: 1,
    boat,
    set,
    asOf,
    case: body.name,
    about: body.about ?? null,
    written,
    first: diagnosis.first.map(({ id, asked }) => ({ line: id, asks: asked })),
    lines: diagnosis.lines
      .filter(({ is }) => is !== 'unknown')
      .map(({ line, is, because, inLog }) => ({
        line: line.id,
        hazard: line.hazard,
        is,
        act: line.act,
        clearWhen: line.clearWhen,
        ...(inLog.length === 0 ? {} : { inLog: inLog.map(({ entry, why }) => ({ entry, why })) }),
        ...(because === undefined ? {} : { because }),
      })),
    answers: [
      ...body.symptoms.map(({ symptom, is }) => ({
        of: symptom,
        name: symptomName(model, symptom),
        says: is,
      })),
      ...body.checks.map((answer) => ({
        of: answer.check,
        name: checkName(model, answer.check),
        says: sayCheckAnswer(model, answer),
      })),
    ],
    mayBe: diagnosis.ranked.slice(0, mostFaults).map(({ fault, chance, prior }) => {
      const { mend, handOver, stopLines } = model.faults.find(({ id }) => id === fault)!
      return {
        fault,
        name: faultName(model, fault),
        chance,
        mend,
        ...(handOver === undefined ? {} : { handOver }),
        stopLines,
        prior,
      }
    }),
    second: second ?? null,
    unexplained: diagnosis.unexplained,
    next: diagnosis.suggestions.map(({ check, bits, score, totalCost, ifs, confirm }) => ({
      check: check.id,
      name: check.name,
      how: check.how,
      tools: check.tools,
      minutes: check.minutes,
      risk: check.risk,
      bits,
      score,
      totalCost,
      outcomes: check.outcomes.map(({ id, name }) => ({ id, name })),
      confirm: confirm.map((line) => ({ line: line.id, confirm: confirmWords(line) })),
      ifs,
    })),
    barred: diagnosis.barred.map(({ check, open }) => ({ check: check.id, open: open.map(({ id }) => id) })),
    questions: diagnosis.questions.map((id) => ({ id, name: symptomName(model, id) })),
    cheapest,
    currency: money.currency,
    closed: body.closed ?? null,
    job: owedJobOf(model, body, shippedCatalogue().owed) ?? null,
    caution: faultsCaution,
  }
}
