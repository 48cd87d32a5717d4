/**
 * A case of something gone wrong: what was seen, tried and cleared so far, and what it proved to be.
 *
 * Each answer is a further `case` entry that corrects the one before, so that a case can be left and gone on with anywhere.
 * What it is thought to be is never in it: that is worked out.
 *
 * @module
 */

import * as z from 'zod'
import { common, listOf, mark, nameSchema, oneOf, share, text, wholeWithin, within } from './atoms.js'

const measured = within(0, 1e12)

export const caseBody = z.strictObject({
  name: nameSchema,
  /** What is wrong, in the owner's words. */
  about: text(1000).optional(),
  /** Days that the set had stood before this. */
  idleDays: within(0, 36_500, 'd').optional(),
  /** Stop lines that were asked, cleared, or overruled with a reason. */
  lines: listOf(
    z.strictObject({
      line: nameSchema,
      is: oneOf(['open', 'cleared', 'overruled', 'not-so']),
      because: text(1000).optional(),
    }),
    0,
    60,
  ),
  symptoms: listOf(
    z.strictObject({ symptom: nameSchema, is: oneOf(['present', 'absent', 'not-known']) }),
    0,
    120,
  ),
  checks: listOf(
    z.strictObject({
      check: nameSchema,
      /** Left out with `couldNot`: it was tried, or cannot be done aboard. */
      outcome: nameSchema.optional(),
      couldNot: mark.optional(),
      /** As it was read, in the unit of the check. */
      value: measured.optional(),
      /** What it was held against: the book's figure, what is marked on it. */
      against: measured.optional(),
      windingC: within(-50, 250, 'C').optional(),
    }),
    0,
    120,
  ),
  closed: z
    .strictObject({
      /** What it really was: a fault that is listed, another one, or nobody knows. */
      as: oneOf(['listed', 'other', 'not-known']),
      fault: nameSchema.optional(),
      was: text(1000).optional(),
      /** Place and chance that the list gave it then, for looking back. */
      place: wholeWithin(1, 1000).optional(),
      chance: share.optional(),
    })
    .optional(),
  ...common,
})
