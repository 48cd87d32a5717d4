/**
 * Form of what is owed after work: the tests, and their order.
 *
 * @module
 */

import * as z from 'zod'

const id = z
  .string()
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'must be words of small letters joined by hyphens')
const words = z.string().min(1)

/** Steps from standing still to running by itself. */
export const stageIds = ['turning', 'energising', 'load', 'alone'] as const
const stage = z.enum(stageIds)

export const owedSchema = z.strictObject({
  /** In their order; the tests of each in theirs. */
  stages: z.array(
    z.strictObject({
      id: stage,
      name: words,
      opens: words,
      /** One after the other; left out: as it comes. */
      inOrder: z.literal(true).optional(),
      tests: z.array(id),
    }),
  ),
  rules: z.array(
    z.strictObject({
      id,
      why: words,
      parts: z.array(id).min(1),
      /** As entries of work name it. */
      did: z.array(id).min(1),
      tests: z.array(id).min(1),
      /** Hours of running since speak for themselves; left out: only the test does. */
      runsIn: z.literal(true).optional(),
    }),
  ),
  /** In order, as a list to be ticked. */
  lockOut: z.array(words).min(1),
  /** What is handed to licensed people. */
  handOver: z.array(words).min(1),
})

export type StageId = (typeof stageIds)[number]
export type CatalogueOwed = Readonly<z.infer<typeof owedSchema>>
