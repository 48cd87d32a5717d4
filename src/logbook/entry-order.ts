/**
 * What no single field shows of an order, and of what is told of a part.
 *
 * @module
 */

import { shown } from '../catalogue/problem.js'
import type { Problem } from './problems.js'

type Fields = Readonly<Record<string, unknown>>

/** Everything in such a body that does not hang together; nothing for any other kind. */
export function orderProblems(kind: unknown, body: Fields): Problem[] {
  if (kind === 'particulars') return particularsProblems(body)
  return kind === 'order' && Array.isArray(body.lines)
    ? body.lines.flatMap((line: unknown, at) => (isFields(line) ? lineProblems(line, at, body.state) : []))
    : []
}

/** Whether it fits is said of each piece that was checked, and of no other; what differs where it does not fit. */
function lineProblems({ fits, differs }: Fields, at: number, state: unknown): Problem[] {
  const problem = (code: string, field: string, found: unknown, allowed: string): Problem => ({
    code,
    path: `body.lines.${at}.${field}`,
    found: shown(found),
    allowed,
  })
  const checked = state === 'checked'
  return [
    ...(checked && fits === undefined
      ? [problem('missing', 'fits', fits, 'true or false: whether it is like the old one')]
      : []),
    ...(!checked && fits !== undefined
      ? [problem('contradiction', 'fits', fits, 'left out until it is checked against the old one')]
      : []),
    ...(fits === false && differs === undefined
      ? [problem('missing', 'differs', differs, 'what differs from the old one')]
      : []),
    ...(fits !== false && differs !== undefined
      ? [problem('contradiction', 'differs', differs, 'left out where it fits')]
      : []),
  ]
}

function particularsProblems({ number, answers }: Fields): Problem[] {
  if (number === undefined && answers === undefined) {
    return [
      { code: 'says-nothing', path: 'body', found: 'neither', allowed: 'a number, or at least one answer' },
    ]
  }
  if (!Array.isArray(answers)) return []
  const asked = answers.map((one: unknown) => (isFields(one) ? one.question : undefined))
  const twice = asked.filter((question, at) => asked.indexOf(question) < at)
  return twice.length === 0
    ? []
    : [{ code: 'named-twice', path: 'body.answers', found: shown(twice), allowed: 'each question once' }]
}

function isFields(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
