/**
 * Form of what is owed after work: the tests, their order, and what an open stop line bars.
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
  /** Of each stop line: the first step that it bars, and what opens it. It closes when the same test no longer says so. */
  lines: z.array(
    z.strictObject({
      line: id,
      hazard: words,
      act: words,
      clearWhen: z.array(words).min(1),
      /** No reason lifts it: only what clears it. */
      neverPassedOver: z.literal(true).optional(),
      /** Handed to a licensed marine electrician where one careful look does not settle it. */
      licensed: z.literal(true).optional(),
      bars: stage,
      opens: z.array(z.strictObject({ test: id, bands: z.array(id).min(1) })),
      /** Dangers of the catalogue that, found and not made safe, open it. */
      dangers: z.array(id),
    }),
  ),
  /** In order, as a list to be ticked. */
  lockOut: z.array(words).min(1),
  /** What is handed to licensed people. */
  handOver: z.array(words).min(1),
})

export type StageId = (typeof stageIds)[number]
export type CatalogueOwed = Readonly<z.infer<typeof owedSchema>>
