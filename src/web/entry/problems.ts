/**
 * What is wrong with an entry, in words, at the field where it is.
 *
 * @module
 */

import type { Problem } from '../../logbook/problems.js'
import { form } from '../words/entry/form.js'
import type { Misread } from './values.js'

/** Words of what is wrong, by the key of the field; under `` what belongs to no field. */
export type Wrong = Readonly<Record<string, string>>

/** The problems of an entry sorted to the fields of its form. */
export function wrongOf(problems: readonly Problem[], misread: Misread, keys: readonly string[]): Wrong {
  const wrong: Record<string, string> = {}
  for (const [key, what] of Object.entries(misread))
    wrong[key] = what === 'date' ? form.noDate : form.noNumber
  for (const problem of problems) {
    const path = problem.path.replace(/^body\.?/, '')
    const key = fieldAt(path, keys)
    wrong[key] ??= saidProblem(problem, key === '' ? path : '')
  }
  return wrong
}

/** The field that a path leads to, or into. */
function fieldAt(path: string, keys: readonly string[]): string {
  const steps = path.split('.')
  for (let length = steps.length; length > 0; length -= 1) {
    const start = steps.slice(0, length).join('.')
    if (keys.includes(start)) return start
  }
  return keys.find((key) => path !== '' && key.startsWith(`${path}.`)) ?? ''
}

export function saidProblem({ code, path, found, allowed }: Problem, place = path): string {
  const at = place === '' ? '' : `${place}: `
  if (code === 'missing' && allowed.startsWith('one of:')) return `${at}${form.chooseOne}`
  if (code === 'missing' && allowed.startsWith('a list of')) return `${at}${form.atLeastOne}`
  if (code === 'missing' && allowed === 'true or false') return `${at}${form.yesOrNo}`
  if (code === 'missing' && allowed.startsWith('small letters')) return `${at}${form.nameIt}`
  if (code === 'missing') return `${at}${form.missing(inThousands(allowed))}`
  return `${at}${form.allowed(found, inThousands(allowed))}`
}

/** "from 0 to 1,000,000": long numbers as they are read. Years stay as they are. */
function inThousands(text: string): string {
  return text
    .replace(/ from 0 to 10{9}\b/, ', 0 or more')
    .replace(/\b\d{5,}\b/g, (digits) => Number(digits).toLocaleString('en-GB'))
}
