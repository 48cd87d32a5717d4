/**
 * A case in a line of words, for a row of the log.
 *
 * @module
 */

import type { CaseBody } from './case.js'

/** "case-1: overheats; 6 answers; was the impeller". */
export function sayCase({ name, about, symptoms, checks, closed }: CaseBody): string {
  const count = symptoms.length + checks.length
  const answers = `${count} ${count === 1 ? 'answer' : 'answers'}`
  return [about === undefined ? name : `${name}: ${about}`, answers, ...sayClosed(closed)].join('; ')
}

function sayClosed(closed: CaseBody['closed']): string[] {
  if (closed === undefined) return []
  if (closed.as === 'not-known') return ['closed, nobody knows what it was']
  return [`closed, it was ${closed.was ?? closed.fault?.replaceAll('-', ' ') ?? 'another fault'}`]
}
