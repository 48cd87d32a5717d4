/**
 * What an insurer usually wants before anything is stripped, where a claim may be made.
 *
 * @module
 */

import type { Held } from '../catalogue/provenance.js'

export interface InsurerWant {
  readonly what: string
  readonly why: string
  readonly source: string
  readonly held: Held
}

const practice = { source: 'practice', held: 'practice' } as const
const clauses = {
  source: 'Institute Yacht Clauses (1 November 1985), notice of claim and tenders',
  held: 'recalled',
} as const

/** In the order in which they are done. The policy in hand goes before all of it. */
export const insurerWants: readonly InsurerWant[] = [
  {
    what: 'Tell the insurer, in writing, before a nut is undone; note day, hour and who answered.',
    why: 'Notice late, or after the survey, may cost the claim: they may want a surveyor of their own.',
    ...clauses,
  },
  {
    what: 'Keep it from getting worse: shut the sea-cock, take water out, dry, prop, and keep the receipts.',
    why: 'Who is insured must do what is reasonable to lessen the loss.',
    source: 'Marine Insurance Act 1906, section 78 (4)',
    held: 'recalled',
  },
  {
    what: 'Begin nothing else before their surveyor has looked, or they have written that you may go on.',
    why: 'Once it is stripped, nobody can see why it failed.',
    ...practice,
  },
  {
    what: 'Pictures first: all round, the plate, the hours, water lines, the damage near with a rule beside it and from afar, then each step.',
    why: 'They stand for what can no longer be seen.',
    ...practice,
  },
  {
    what: 'Keep every part that comes off, and a jar of each oil and coolant, with day and place on it, until they let them go.',
    why: 'A part that is thrown away proves nothing.',
    ...practice,
  },
  {
    what: 'Two quotes for the same scope, and no order before one is agreed to.',
    why: 'They may ask for tenders, and may object to who does it.',
    ...clauses,
  },
  {
    what: 'This log: when it was last serviced and looked at, and what was found.',
    why: 'Wear, rust and want of care are usually left out of a policy; a sudden event is not.',
    ...practice,
  },
  {
    what: 'Tell them at once what more is found once it is open.',
    why: 'What was not agreed to may not be paid.',
    ...practice,
  },
]
