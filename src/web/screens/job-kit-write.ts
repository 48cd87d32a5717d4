/**
 * Entries of orders as the page of the kit writes them.
 *
 * @module
 */

import type { Need } from '../../job/kit.js'
import type { Draft } from '../../logbook/draft.js'
import type { Body } from '../../logbook/kinds.js'
import type { Problem } from '../../logbook/problems.js'
import { today } from '../data/today.js'
import type { OfSet } from '../of-set.js'
import { words } from '../words/job-kit.js'

type Line = Body<'order'>['lines'][number]
type More = Partial<Pick<Body<'order'>, 'supplier' | 'expected'>>

/** An entry that says of pieces how far they have come. */
export function orderDraft(
  { of, job }: { readonly of: OfSet; readonly job: string },
  state: Body<'order'>['state'],
  lines: readonly Line[],
  more: More = {},
): Draft {
  return { kind: 'order', boat: of.boat, set: of.set, from: today(), body: { state, lines, job, ...more } }
}

/** The line of a piece. */
export function lineOf({ part, piece, count }: Need, more: Omit<Line, 'part' | 'piece'> = {}): Line {
  return { part, ...(piece === undefined ? {} : { piece }), count, ...more }
}

export function problemsInWords(problems: readonly Problem[]): string {
  return words.whatWasWrong(problems.map(({ found, allowed }) => `${found}; ${allowed}`).join('. '))
}
