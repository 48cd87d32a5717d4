/**
 * The form of what `job apart` prints.
 *
 * @module
 */

import * as z from 'zod'
import { forms } from '../logbook/kind-forms.js'
import { ofSet, texts } from './json-form-pieces.js'

const verdict = z.enum(['passes', 'too-large', 'cannot-tell'])

export const jobApartFields = {
  'gensettle/job-apart': {
    ...ofSet,
    job: z.string(),
    state: z.string(),
    steps: z
      .array(
        z.object({
          key: z.string().describe('The id of its entry; of one to come, the name of the proposal.'),
          n: z.number().nullable(),
          what: z.string(),
          access: z.string().nullable(),
          proposed: z.string().nullable(),
          pictures: texts.describe('What to picture before it.'),
          leads: texts
            .nullable()
            .describe('Leads that come off; null: none do. Empty: their marks are not known.'),
          joined: z.boolean(),
          bag: z.string().nullable(),
          lines: texts.describe('Stop lines to be answered before it.'),
          done: z
            .object({
              entry: z.string(),
              on: z.string(),
              photographs: z.number(),
              body: forms['apart-step'].shape.body,
            })
            .nullable(),
          back: z
            .object({ entry: z.string(), on: z.string(), body: forms['refit-step'].shape.body })
            .nullable(),
        }),
      )
      .describe('In the order of undoing: as they were done, then those to come.'),
    next: z.string().nullable(),
    nextN: z.number(),
    back: texts.describe('Keys of what was undone, the last first.'),
    nextBack: z.string().nullable(),
    lines: z
      .array(z.object({ id: z.string(), hazard: z.string(), confirm: texts }))
      .describe('Stop lines that nobody answered today, and what is confirmed before the next step.'),
    loose: texts.describe('Entries that put a step back that is not in the log.'),
    sharedPlaces: z.array(z.number()),
    wayOut: z
      .object({
        edgesMm: z.array(z.number()).optional(),
        weightKg: z.object({ low: z.number(), typical: z.number(), high: z.number() }).optional(),
        tightest: z
          .object({
            opening: z.object({ name: z.string().optional(), widthMm: z.number(), heightMm: z.number() }),
            overMm: z.number(),
          })
          .optional(),
        passage: verdict,
        liftKg: z.number().optional(),
        lift: verdict,
      })
      .nullable(),
    caution: z.string(),
  },
} as const
