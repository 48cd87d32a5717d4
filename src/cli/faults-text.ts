/**
 * A case in lines of text.
 *
 * @module
 */

import type { FaultModel } from '../catalogue/read-fault-model.js'
import type { CaseBody } from '../faults/case.js'
import { owedJobOf } from '../faults/case-entries.js'
import type { Diagnosis, Suggestion } from '../faults/diagnose.js'
import type { FaultMoney } from '../faults/mending-costs.js'
import { confirmWords, sayHeld } from '../faults/stop-lines.js'
import type { Why } from '../faults/why.js'
import {
  checkName,
  faultName,
  handOverNames,
  outcomeName,
  riskNames,
  sayAnswerKey,
  sayChance,
  sayCheckAnswer,
  symptomName,
  unitSign,
} from '../faults/words.js'
import { proofTestOf } from '../proof/tests.js'
import { colours } from './colours.js'
import { shippedCatalogue } from './places.js'
import { figure, tableText } from './table.js'

export const faultsCaution =
  'A list of what may be wrong, and no leave to touch it. Licensed people and local rules come first; chances are practice until closed cases of your own say better.'

export interface CaseTold {
  readonly model: FaultModel
  readonly body: CaseBody
  readonly diagnosis: Diagnosis
  readonly money: FaultMoney
}

const fewFaults = 6

/** Stop lines first, always; with a stop question open there is nothing else. */
export function caseLines(of: CaseTold): string[] {
  const { body, diagnosis } = of
  const head = colours.bold(body.about === undefined ? body.name : `${body.name}: ${body.about}`)
  const stops = [...openLines(diagnosis), ...firstLines(diagnosis)]
  if (diagnosis.first.length > 0) return [head, ...stops]
  if (body.closed !== undefined) return [head, ...stops, ...closedLines(of)]
  return [
    head,
    ...stops,
    ...answerLines(of),
    ...(hasAnswers(body)
      ? [...mayBeLines(of), ...nextLines(of), ...cheapestLines(of), ...questionLines(of)]
      : []),
  ]
}

function hasAnswers({ symptoms, checks }: CaseBody): boolean {
  return symptoms.length + checks.length > 0
}

function openLines({ lines }: Diagnosis): string[] {
  return lines.flatMap(({ line, is, because, inLog }) => {
    if (is === 'overruled') return [`Overruled: ${line.hazard}. Because: ${because}`]
    if (is !== 'open') return []
    const who = line.handOver === undefined ? '' : ` By ${handOverNames[line.handOver]}.`
    return [
      '',
      colours.bold(`STOP. ${line.hazard} (${line.id})`),
      `  ${line.act}`,
      `  Cleared when: ${line.clearWhen.join('; ')}.${who}`,
      ...sayHeld(inLog).map((held) => `  ${held}`),
    ]
  })
}

function firstLines({ first }: Diagnosis): string[] {
  if (first.length === 0) return []
  return [
    '',
    colours.bold('Before anything else, "faults answer NAME yes" or "no":'),
    ...first.map(({ id, asked }) => `  ${id}: ${asked}`),
  ]
}

function answerLines({ model, body }: CaseTold): string[] {
  const rows = [
    ...body.symptoms.map(({ symptom, is }) => [
      symptom,
      symptomName(model, symptom),
      { present: 'there', absent: 'not there', 'not-known': 'nobody knows' }[is],
    ]),
    ...body.checks.map((answer) => [
      answer.check,
      checkName(model, answer.check),
      sayCheckAnswer(model, answer),
    ]),
  ]
  if (rows.length === 0) {
    return [
      '',
      'Nothing answered yet. "faults symptoms WORDS" finds the symptom; "faults answer SYMPTOM present".',
    ]
  }
  return ['', tableText([{ head: 'answered' }, { head: '', wrap: 60 }, { head: 'says', wrap: 40 }], rows)]
}

function mayBeLines({ model, diagnosis }: CaseTold): string[] {
  const rows = diagnosis.ranked.slice(0, fewFaults).map(({ fault, chance }) => {
    const { mend, handOver } = model.faults.find(({ id }) => id === fault)!
    const who = handOver === undefined ? '' : ` (${handOverNames[handOver]})`
    return [fault, sayChance(chance), faultName(model, fault), `${mend}${who}`]
  })
  const { second, unexplained } = diagnosis
  return [
    '',
    tableText(
      [
        { head: 'may be' },
        { head: 'chance', align: 'right' },
        { head: 'what', wrap: 44 },
        { head: 'mend', wrap: 50 },
      ],
      rows,
    ),
    ...(second === undefined
      ? []
      : [`There may be a second fault: ${faultName(model, second.fault)}, ${sayChance(second.chance)}.`]),
    ...(unexplained
      ? ['Nothing on the list explains the answers: it may be something that is not listed.']
      : []),
  ]
}

function nextLines({ model, diagnosis, money }: CaseTold): string[] {
  const { suggestions, barred } = diagnosis
  const barredLines = barred.map(
    ({ check, open }) =>
      `  Barred: ${check.name}, until ${open.map(({ id }) => id).join(' and ')} is cleared.`,
  )
  if (suggestions.length === 0) return ['', 'No look is left that would tell anything.', ...barredLines]
  return [
    '',
    colours.bold('Next look, the most told for its cost and risk first:'),
    ...suggestions.flatMap((one, at) => suggestionLines(model, one, { at, money })),
    ...barredLines,
  ]
}

function suggestionLines(
  model: FaultModel,
  { check, ifs, confirm, totalCost }: Suggestion,
  { at, money }: { readonly at: number; readonly money: FaultMoney },
): string[] {
  const reading = check.reading
  const number =
    reading === undefined
      ? []
      : [
          `     or a number: ${reading.what}, in ${unitSign(reading.unit)}${reading.against === undefined ? '' : `, with --against ${reading.against}`}`,
        ]
  return [
    `  ${at + 1}. ${check.name} (${check.id}), ${check.minutes} min, ${riskNames[check.risk]}`,
    `     ${check.how}${check.tools.length === 0 ? '' : ` Tools: ${check.tools.join(', ')}.`}`,
    ...confirm.map((line) => `     First, ${line.hazard.toLowerCase()}: ${confirmWords(line).join('; ')}`),
    `     ${ifs
      .map(
        (one) =>
          `${outcomeName(model, check.id, one.outcome)} (${sayChance(one.chance)}): ${one.leads}, ${sayChance(one.leadsChance)}`,
      )
      .join('. ')}`,
    `     Answers: ${check.outcomes.map(({ id }) => id).join(', ')}, could-not`,
    ...number,
    `     Until it works, with this look first: about ${figure(totalCost)} ${money.currency}`,
  ]
}

function cheapestLines({ model, diagnosis: { cheapest }, money }: CaseTold): string[] {
  if (cheapest.do === 'look') {
    return [
      '',
      `Cheapest to a working set: ${checkName(model, cheapest.check)} first, about ${figure(cheapest.totalCost)} ${money.currency}; mending by the list at once, about ${figure(cheapest.mendingNow)}.`,
    ]
  }
  if (cheapest.do === 'hand-over') {
    return [
      '',
      `Cheapest to a working set: let a mechanic find it, about ${figure(cheapest.totalCost)} ${money.currency} with what mends it.`,
    ]
  }
  const { mend } = model.faults.find(({ id }) => id === cheapest.fault)!
  const instead =
    cheapest.lookingFirst === undefined
      ? ''
      : `; with the best look first, about ${figure(cheapest.lookingFirst)}`
  return [
    '',
    `Cheaper than another look: ${mend} (${cheapest.fault}), about ${figure(cheapest.totalCost)} ${money.currency} until it works${instead}. Open stop lines come first all the same.`,
  ]
}

function questionLines({ model, diagnosis: { questions } }: CaseTold): string[] {
  if (questions.length === 0) return []
  return [
    '',
    'Worth asking, "faults answer NAME present", "absent" or "unknown":',
    ...questions.map((id) => `  ${id}: ${symptomName(model, id)}`),
  ]
}

function closedLines({ model, body }: CaseTold): string[] {
  const { closed } = body
  if (closed === undefined) return []
  const job = owedJobOf(model, body, shippedCatalogue().owed)
  const was =
    closed.as === 'not-known'
      ? 'nobody knows what it was'
      : (closed.was ?? faultName(model, closed.fault ?? ''))
  return [
    '',
    `Closed: ${was}.`,
    ...(closed.place === undefined || closed.chance === undefined
      ? []
      : [
          `It stood ${closed.place === 1 ? 'first' : `at place ${closed.place}`} in the list then, ${sayChance(closed.chance)}.`,
        ]),
    ...(job?.mend === undefined
      ? []
      : [`To do: ${job.mend}${job.handOver === undefined ? '' : `, by ${handOverNames[job.handOver]}`}.`]),
    ...(job === undefined || job.testsOwed.length === 0
      ? []
      : [
          `To be tried again until it comes out right: ${job.testsOwed.map((id) => checkName(model, id)).join('; ')}.`,
        ]),
    ...(job === undefined || job.proofsOwed.length === 0
      ? []
      : [
          `Owed once that is done, before it is trusted ("owed" follows the work in the log): ${job.proofsOwed.map((id) => proofTestOf(id)?.name ?? id).join('; ')}.`,
        ]),
    ...(job === undefined || job.openLines.length === 0
      ? []
      : [`Still open, before it runs or is energised: ${job.openLines.join(', ')}.`]),
  ]
}

/** Why one fault stands where it does. */
export function whyText(model: FaultModel, why: Why): string {
  const times = (value: number) =>
    value >= 1 ? `${figure(value)} times for it` : `${figure(1 / value)} times against it`
  return [
    colours.bold(`${faultName(model, why.fault)} (${why.fault}): ${sayChance(why.chance)}`),
    ...(why.speaks.length === 0
      ? ['  Nothing answered yet: it stands there by how often it happens on a set like this.']
      : why.speaks.map(({ answer, times: by }) =>
          Math.abs(Math.log(by)) < 0.02
            ? `  ${sayAnswerKey(model, answer)}: says nothing of it`
            : `  ${sayAnswerKey(model, answer)}: ${times(by)}`,
        )),
    ...why.looksAlike.map(({ fault, chance, toldApartBy }) => {
      const by = toldApartBy === undefined ? '' : `; told apart by: ${checkName(model, toldApartBy)}`
      return `  Would look the same: ${faultName(model, fault)}, ${sayChance(chance)}${by}`
    }),
    ...(why.dragsDown.length === 0
      ? []
      : [`  Run on, it may bring: ${why.dragsDown.map((id) => faultName(model, id)).join('; ')}`]),
    ...why.draggedParts.map(({ part, chance, what }) => `  Run on, ${sayChance(chance)}: ${part}. ${what}`),
  ].join('\n')
}
