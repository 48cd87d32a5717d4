/**
 * What is told of a part before one is ordered, and the pieces that were ordered, came, and were held against the old.
 *
 * @module
 */

import * as z from 'zod'
import {
  common,
  dateSchema,
  listOf,
  money,
  nameSchema,
  oneOf,
  taxSchema,
  text,
  wholeWithin,
  yesNo,
} from './atoms.js'

/** How far the pieces of an entry have come, in this order. */
export const orderStates = ['ordered', 'received', 'checked'] as const

/** What a part, or a small piece of it, was found to be: its number, and answers to what a supplier asks. */
export const particularsBody = z.strictObject({
  part: nameSchema,
  /** A small piece that goes with the part; left out: the part itself. */
  piece: nameSchema.optional(),
  /** What is stamped or printed on it, or its size as the standards write it. */
  number: text(80).optional(),
  answers: listOf(z.strictObject({ question: nameSchema, answer: text(300) }), 1, 40).optional(),
  ...common,
})

/** Pieces that were ordered, that came, or that were held against the old ones. */
export const orderBody = z.strictObject({
  state: oneOf(orderStates),
  lines: listOf(
    z.strictObject({
      part: nameSchema,
      piece: nameSchema.optional(),
      /** Left out: as many as the part needs. */
      count: wholeWithin(1, 1000).optional(),
      number: text(80).optional(),
      /** Checked: whether it is like the old one in all that matters. */
      fits: yesNo.optional(),
      /** Where it does not fit: what differs. */
      differs: text(500).optional(),
    }),
    1,
    60,
  ),
  job: nameSchema.optional(),
  supplier: text(120).optional(),
  /** Of all of it. */
  price: money.optional(),
  tax: taxSchema.optional(),
  /** When it is to be there. */
  expected: dateSchema.optional(),
  ...common,
})
