/**
 * What the owner thinks of doing.
 *
 * @module
 */

import * as z from 'zod'
import { common, listOf, mark, money, nameSchema, oneOf, share, text, within } from './atoms.js'

/**
 * Something that could be done about the set, in the owner's own words; or one of those that are laid out from the log,
 * changed or left out. Under the same id the latest entry holds.
 */
export const alternativeBody = z.strictObject({
  /** Where it is that of one laid out from the log, such as `mend`, this one stands in its place. */
  id: nameSchema,
  /** Not to be laid out at all; nothing else is said then. */
  leftOut: mark.optional(),
  name: text(120).optional(),
  now: oneOf(['leave', 'mend', 'replace', 'give-up']).optional(),
  /** To be put right as one job, where the set is mended. */
  parts: listOf(
    z.strictObject({
      part: nameSchema,
      /** Left out: renewed. */
      outcome: oneOf(['renewed', 'reconditioned', 'cleared', 'patched']).optional(),
      /** Left out: the whole part. */
      mode: nameSchema.optional(),
      /** Life of what is fitted, as a multiple of a new original's. */
      quality: within(0.01, 5).optional(),
      /** Share of the age that reconditioning takes away. */
      agesLess: share.optional(),
    }),
    1,
    60,
  ).optional(),
  /** What the whole job may cost, tax in; left out: as the parts' own mends do, or as its quote says. */
  price: money.optional(),
  /** The job whose open quote it is done at. */
  job: nameSchema.optional(),
  /** What comes on top of the quote. */
  besides: money.optional(),
  /** Days that the work takes. */
  days: within(0, 365, 'd').optional(),
  /** The set that is fitted, where it is replaced. */
  replaceWith: nameSchema.optional(),
  /** Fit another set some years from now. */
  later: z.strictObject({ year: within(0, 60, 'years'), with: nameSchema.optional() }).optional(),
  ...common,
})
