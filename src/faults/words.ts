/**
 * The fault model's names, and answers in words.
 *
 * @module
 */

import type { FaultCheck } from '../catalogue/fault-schema.js'
import type { FaultModel } from '../catalogue/read-fault-model.js'
import type { HandOver } from '../catalogue/stop-line-schema.js'
import type { CheckAnswer } from './case.js'
import type { AnswerKey } from './infer.js'

export const handOverNames: Readonly<Record<HandOver, string>> = {
  electrician: 'a licensed marine electrician',
  'rewind-shop': 'a rewind shop',
  'injection-shop': 'a fuel-injection shop',
  workshop: 'a mechanic',
  'licensed-remover': 'people licensed for it',
}

export const riskNames: Readonly<Record<FaultCheck['risk'], string>> = {
  none: 'stopped and isolated',
  running: 'engine running',
  fuel: 'fuel opened',
  energised: 'live: a licensed marine electrician, unless you are trained for it',
  lifting: 'lifting',
}

export function faultName(model: FaultModel, id: string): string {
  return model.faults.find((fault) => fault.id === id)?.name ?? spaced(id)
}

export function symptomName(model: FaultModel, id: string): string {
  return model.symptoms.find((symptom) => symptom.id === id)?.name ?? spaced(id)
}

export function checkName(model: FaultModel, id: string): string {
  return model.checks.find((check) => check.id === id)?.name ?? spaced(id)
}

export function outcomeName(model: FaultModel, check: string, outcome: string): string {
  const found = model.checks.find(({ id }) => id === check)?.outcomes.find(({ id }) => id === outcome)
  return found?.name ?? spaced(outcome)
}

/** "Steam at the exhaust …: not there", "Impeller out: vanes missing". */
export function sayAnswerKey(model: FaultModel, key: AnswerKey): string {
  if ('symptom' in key) {
    return `${symptomName(model, key.symptom)}: ${key.is === 'present' ? 'there' : 'looked for, not there'}`
  }
  return `${checkName(model, key.check)}: ${outcomeName(model, key.check, key.outcome)}`
}

/** What a check came to, with the number that was read. */
export function sayCheckAnswer(model: FaultModel, answer: CheckAnswer): string {
  if (answer.outcome === undefined) return 'could not be done'
  const unit = model.checks.find(({ id }) => id === answer.check)?.reading?.unit ?? ''
  const said = outcomeName(model, answer.check, answer.outcome)
  if (answer.value === undefined) return said
  const against = answer.against === undefined ? '' : ` against ${answer.against}`
  return `${said} (${answer.value}${against} ${unitSign(unit)})`
}

/** A chance of a list: "46 in 100", "1 in 40". */
export function sayChance(chance: number): string {
  if (chance >= 0.995) return 'nearly certain'
  if (chance >= 0.05) return `${Math.round(100 * chance)} in 100`
  return chance < 0.001 ? 'under 1 in 1,000' : `1 in ${Math.round(1 / chance)}`
}

const signs: Readonly<Record<string, string>> = { Mohm: 'MΩ', ohm: 'Ω', uF: 'µF', C: '°C' }

export function unitSign(unit: string): string {
  return signs[unit] ?? unit
}

function spaced(id: string): string {
  return id.replaceAll('-', ' ')
}
