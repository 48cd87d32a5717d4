/**
 * What no single field of an alternative shows: fields that belong to another kind of doing, and those that are missing.
 *
 * @module
 */

import { shown } from '../catalogue/problem.js'
import type { Problem } from './problems.js'

/** Fields that say something of the doing, each with what must be done now for it to mean anything; none: anything. */
const belongsTo: Readonly<Record<string, string | undefined>> = {
  name: undefined,
  now: undefined,
  parts: 'mend',
  price: 'mend',
  job: 'mend',
  besides: 'mend',
  days: 'mend',
  replaceWith: 'replace',
  later: undefined,
}

/** Everything in the body of an alternative that does not hang together. */
export function alternativeProblems(body: Readonly<Record<string, unknown>>): Problem[] {
  const problems: Problem[] = []
  const say = (code: string, field: string, allowed: string) =>
    problems.push({ code, path: `body.${field}`, found: shown(body[field]), allowed })
  const { now, leftOut } = body
  const said = Object.keys(belongsTo).filter((field) => body[field] !== undefined)
  if (leftOut === true) {
    for (const field of said) say('left-out-but-told', field, 'nothing more of one that is left out')
    return problems
  }
  if (now === undefined) say('missing', 'now', 'what is done now, or leftOut')
  for (const field of said) {
    const doing = belongsTo[field]
    if (doing !== undefined && typeof now === 'string' && now !== doing) {
      say('not-of-this', field, `nothing, unless now is ${doing}`)
    }
  }
  if (now === 'mend' && body.parts === undefined) say('missing', 'parts', 'the parts to be put right')
  if (now === 'replace' && body.replaceWith === undefined) {
    say('missing', 'replaceWith', 'the set that is fitted, such as new-same')
  }
  if (now === 'give-up' && body.later !== undefined) say('not-of-this', 'later', 'nothing after giving up')
  if (body.price !== undefined && body.job !== undefined) {
    say('priced-twice', 'price', 'either a price or the job of a quote')
  }
  if (now === 'mend' && body.besides !== undefined && body.job === undefined) {
    say('not-of-this', 'besides', 'nothing, unless job names a quote; else put it into the price')
  }
  if (now === 'mend' && body.days !== undefined && body.price === undefined && body.job === undefined) {
    say('not-of-this', 'days', 'nothing, unless the whole job has a price or a quote')
  }
  if (Array.isArray(body.parts)) partProblems(body.parts, problems)
  return problems
}

function partProblems(parts: readonly unknown[], problems: Problem[]): void {
  const met = new Set<string>()
  parts.forEach((one, i) => {
    if (typeof one !== 'object' || one === null) return
    const { part, mode, outcome, agesLess } = one as Readonly<Record<string, unknown>>
    const path = `body.parts.${i}`
    const key = `${part} ${mode ?? ''}`.trim()
    if (met.has(key)) problems.push({ code: 'named-twice', path, found: shown(key), allowed: 'each once' })
    met.add(key)
    if (agesLess !== undefined && outcome !== 'reconditioned') {
      const allowed = 'nothing, unless the outcome is reconditioned'
      problems.push({ code: 'not-of-this', path: `${path}.agesLess`, found: shown(agesLess), allowed })
    }
  })
}
