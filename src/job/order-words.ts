/**
 * An order, and what is told of a part, in a line of words.
 *
 * @module
 */

import type { Body } from '../logbook/kinds.js'

type NameOf = (part: string) => string

/** "ordered: sea-water pump; 2 gasket of the sea-water pump; from the shop by the lock; expected 2026-12-04". */
export function sayOrder(body: Body<'order'>, nameOf: NameOf): string {
  const { state, lines, supplier, expected } = body
  return [
    `${state}: ${lines.map((line) => sayLine(line, nameOf)).join('; ')}`,
    ...(supplier === undefined ? [] : [`from ${supplier}`]),
    ...(expected === undefined ? [] : [`expected ${expected}`]),
  ].join('; ')
}

/** "outboard bearing: 6305-2RS/C3, shaft size 25 mm". */
export function sayParticulars(body: Body<'particulars'>, nameOf: NameOf): string {
  const { part, piece, number, answers = [] } = body
  const said = [
    ...(number === undefined ? [] : [number]),
    ...answers.map(({ question, answer }) => `${spaced(question)} ${answer}`),
  ]
  return `${sayPiece({ part, piece }, nameOf)}: ${said.join(', ')}`
}

function sayLine(
  { part, piece, count, number, fits, differs }: Body<'order'>['lines'][number],
  nameOf: NameOf,
): string {
  return [
    ...(count === undefined || count === 1 ? [] : [String(count)]),
    sayPiece({ part, piece }, nameOf),
    ...(number === undefined ? [] : [number]),
    ...(fits === undefined ? [] : [fits ? '(fits)' : `(does not fit: ${differs})`]),
  ].join(' ')
}

function sayPiece(
  { part, piece }: { readonly part: string; readonly piece?: string | undefined },
  nameOf: NameOf,
): string {
  return piece === undefined ? nameOf(part) : `${spaced(piece)} of ${nameOf(part)}`
}

function spaced(name: string): string {
  return name.replaceAll('-', ' ')
}
