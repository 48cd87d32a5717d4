/**
 * What the owner settled, and the whole answer that it rested on, so that it can be run again.
 *
 * @module
 */

import * as z from 'zod'
import {
  common,
  listOf,
  mark,
  nameSchema,
  oneOf,
  sha256Schema,
  share,
  text,
  wholeWithin,
  within,
} from './atoms.js'
import { deeds } from './bodies-work.js'

/** A life model in an entry, packed. Leaves room for all else that an entry of its longest may hold. [characters] */
export const longestKeptModel = 64_000
/** The same unpacked; what grows past it is no model of ours. [bytes] */
export const mostModelBytes = 4_000_000

const idWords = 'an id of letters, digits, dot, dash or underscore'
const alternativeId = z.string({ error: idWords }).regex(/^[a-z0-9][a-zA-Z0-9_.-]{0,63}$/, idWords)

const packedWords = `a packed life model: base64 of at most ${longestKeptModel} characters`
const packedModel = z
  .string({ error: packedWords })
  .max(longestKeptModel, packedWords)
  .regex(/^(?:[A-Za-z0-9+/]{4})+(?:[A-Za-z0-9+/]{2}==|[A-Za-z0-9+/]{3}=)?$/, packedWords)

const amount = within(-1e12, 1e12)
/** Of a single history the error is not known. */
const error = z.union([amount, z.null()], { error: 'a number, or null where it is not known' })
const span = z.strictObject({ low: amount, high: amount })

/** What was put in and what came out; run again on the same program, the same comes out to the last digit. */
export const keptAnswer = z.strictObject({
  /** The life model as canonical JSON (RFC 8785), deflated (RFC 1951), in base64 (RFC 4648). */
  model: packedModel,
  modelBytes: wholeWithin(2, mostModelBytes),
  seed: wholeWithin(0, 0xffffffff),
  histories: wholeWithin(1, 1_000_000),
  /** The program that reckoned: its version, and a digest of all of it that reckons where that is known. */
  program: text(40),
  reckoning: sha256Schema.optional(),
  /** What ran the program, such as node and its engine, or a browser. */
  engine: text(200),
  result: z.strictObject({
    best: alternativeId,
    next: z.union([alternativeId, z.null()], { error: `${idWords}, or null` }),
    saving: amount,
    savingError: error,
    chanceBest: share,
    clearness: oneOf(['clear', 'leaning', 'too-close']),
    walkAway: z
      .strictObject({
        price: amount,
        simulation: span,
        findingOut: span,
        quote: amount,
        otherwise: alternativeId,
      })
      .optional(),
    /** Cost of each alternative: its mean and one standard error. */
    alternatives: listOf(
      z.strictObject({ alternative: alternativeId, mean: amount, error, barred: mark.optional() }),
      1,
      40,
    ),
  }),
})

/** What the owner settled. */
export const decisionBody = z.strictObject({
  choice: text(1000),
  because: text(4000).optional(),
  job: nameSchema.optional(),
  alternative: nameSchema.optional(),
  /** All that is to be done in the job, where it is more or less than its quote covers. */
  parts: listOf(z.strictObject({ part: nameSchema, did: oneOf(deeds) }), 1, 60).optional(),
  /** The walk-away price that was shown at the time. */
  walkAwayPrice: within(-1e9, 1e9).optional(),
  kept: keptAnswer.optional(),
  ...common,
})
