/**
 * The forms of what `job kit` and `job fits` print.
 *
 * @module
 */

import * as z from 'zod'
import { lacks } from '../job/kit.js'
import { pieceStates } from '../job/order.js'
import { chance, ofSet, perhaps, problem, texts } from './json-form-pieces.js'

const said = z.string().nullable()

const compared = {
  verdict: z.enum(['fits', 'think', 'does-not-fit', 'cannot-tell']),
  differences: z.array(
    z.object({
      what: z.string(),
      old: z.string(),
      new: z.string(),
      weight: z.enum(['does-not-fit', 'think']),
      because: z.string().optional(),
    }),
  ),
  alsoLook: texts,
}

const tally = z.object({
  ordered: z.number(),
  received: z.number(),
  fits: z.number(),
  misfits: z.number(),
  differs: z.string().optional(),
  number: z.string().optional(),
  supplier: z.string().optional(),
  expected: z.string().optional(),
  entries: texts,
})

const need = z.object({
  key: z.string(),
  part: z.string(),
  piece: said,
  name: z.string(),
  supplier: z.string(),
  count: z.number(),
  counted: z.boolean().describe('By the keeper of the boat; else it is that of a usual set.'),
  spares: z.number(),
  always: z.boolean(),
  stops: z.boolean().describe('Without it the set cannot go back together.'),
  alsoFor: texts,
  sentAway: z.boolean(),
  state: z.enum(pieceStates),
  lacks: z.enum(lacks).nullable(),
  late: z.boolean(),
  numbered: z.boolean(),
  oldNumber: said,
  asks: z.array(
    z.object({
      question: z.string(),
      ask: z.string(),
      why: z.string(),
      seen: z.enum(['outside', 'open']),
      answer: said,
      entry: said,
    }),
  ),
  tally,
  byNumber: z
    .object({ ...compared, both: z.string().optional(), standard: z.string().optional() })
    .nullable(),
})

export const kitFields = {
  'gensettle/job-kit': {
    ...ofSet,
    job: said,
    begin: z.boolean(),
    needs: z.array(need),
    stops: texts,
    inconvenient: texts,
    ready: z.array(
      z.object({
        name: z.string(),
        is: z.enum(['tool', 'stuff', 'arrange']),
        supplier: z.string(),
        for: texts,
      }),
    ),
    heeds: z.array(z.object({ part: z.string(), heed: z.string() })),
    done: texts,
    nothingFor: texts,
    besides: texts,
    wrong: z.object({
      parts: z.array(
        z.object({
          part: z.string(),
          chance,
          days: z.number(),
          piece: z.number(),
          price: perhaps.optional(),
        }),
      ),
      anyChance: chance,
    }),
    lists: z.array(
      z.object({
        supplier: z.string(),
        name: z.string(),
        lines: z.array(
          z.object({
            key: z.string(),
            name: z.string(),
            count: z.number(),
            spares: z.number(),
            told: z.array(z.object({ tell: z.string(), answer: z.string() })),
            open: texts,
          }),
        ),
        stuff: texts,
        message: z.string(),
      }),
    ),
    refusedFigures: z.array(problem),
    caution: z.string(),
  },
  'gensettle/job-fits': {
    old: z.string(),
    replacement: z.string(),
    ...compared,
    both: said,
    standard: said,
  },
} as const
