/**
 * What no single field shows of a load, of a rule of the house and of a set that is offered.
 *
 * @module
 */

import { shown } from '../catalogue/problem.js'
import type { Problem } from './problems.js'

type Fields = Readonly<Record<string, unknown>>

const untold = new Set(['id', 'removed', 'remark', 'photographs'])

/** Kinds whose entries are told apart by an id and may be taken away again. */
const withIds: ReadonlySet<unknown> = new Set(['load', 'house-rule', 'candidate'])

/** Everything in such a body that does not hang together; nothing for any other kind. */
export function loadsProblems(kind: unknown, body: Fields): Problem[] {
  const problems: Problem[] = []
  const say = (code: string, field: string, allowed: string) =>
    problems.push({ code, path: `body.${field}`, found: shown(body[field]), allowed })
  const told = Object.keys(body).filter((field) => !untold.has(field))
  if (withIds.has(kind) && body.removed === true) {
    for (const field of told) say('removed-but-told', field, 'nothing more of what is taken away')
    return problems
  }
  if ((kind === 'habits' || kind === 'space' || kind === 'candidate') && told.length === 0) {
    problems.push({ code: 'says-nothing', path: 'body', found: shown(body), allowed: 'at least one field' })
  }
  if (kind === 'load' && body.codeLetter !== undefined && body.horsepower === undefined) {
    say('missing', 'horsepower', 'the power of the motor that the letter is of')
  }
  if (kind === 'load' && body.codeLetter !== undefined && body.lockedRotorA !== undefined) {
    say('told-twice', 'codeLetter', 'either the letter or the locked-rotor current')
  }
  if (kind === 'house-rule') ruleProblems(body, say)
  return problems
}

function ruleProblems(
  { loads, atMost }: Fields,
  say: (code: string, field: string, allowed: string) => void,
) {
  if (loads === undefined) say('missing', 'loads', 'the loads that are never on together')
  if (!Array.isArray(loads)) return
  if (new Set(loads).size < loads.length) say('named-twice', 'loads', 'each load once')
  if (typeof atMost === 'number' && atMost >= loads.length)
    say('says-nothing', 'atMost', 'fewer than the loads')
}
