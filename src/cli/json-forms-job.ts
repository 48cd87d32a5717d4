/**
 * The forms of what the commands of a job print.
 *
 * @module
 */

import * as z from 'zod'
import { ofSet, texts } from './json-form-pieces.js'
import { lessons } from './json-forms-looking-back.js'

const bundle = z.object({
  parts: texts,
  opens: texts,
  price: z.number(),
  hours: z.number(),
  net: z.number().describe('Money saved over the years kept, price and opening taken off.'),
})

export const jobFields = {
  'gensettle/job-plan': {
    ...ofSet,
    seed: z.number(),
    currency: z.string(),
    horizonYears: z.number(),
    histories: z.number(),
    job: z.string(),
    open: texts,
    additions: z.array(
      z.object({
        part: z.string(),
        price: z.number(),
        hours: z.number(),
        opens: texts,
        saves: z.number(),
        error: z.number(),
        mayPutIn: z.number(),
        failures: z.object({ left: z.number(), renewed: z.number() }),
      }),
    ),
    openings: z.array(z.object({ id: z.string(), price: z.number(), hours: z.number() })),
    tooSmall: z.number(),
    unplayed: z.number(),
    best: bundle,
    second: bundle.nullable(),
    together: z.object({ saves: z.number(), standardError: z.number() }).nullable(),
    assumed: texts,
    lessons,
    caution: z.string(),
  },
  'gensettle/job-actual': {
    ...ofSet,
    currency: z.string(),
    heard: z.boolean().describe('Whether what jobs came to moves what work is expected to come to.'),
    jobs: z.array(
      z.object({
        job: z.string(),
        kind: z.string().describe('The system of its parts; whole-set where they are of several.'),
        hours: z.object({ expected: z.number(), used: z.number() }).optional(),
        money: z
          .object({
            expected: z.number(),
            from: z.enum(['quote', 'catalogue']),
            quote: z.string().optional(),
            usual: z.number().describe('With the overrun that such quotes, or usual prices, have.'),
            came: z.number(),
          })
          .optional(),
      }),
    ),
    kinds: z.array(
      z.object({
        kind: z.string(),
        jobs: z.number(),
        own: z.number().describe('Came to over usual, of its own jobs: their geometric mean.'),
        median: z.number(),
        logSd: z.number(),
        few: z.boolean(),
      }),
    ),
    further: z.object({ median: z.number(), logSd: z.number() }),
    caution: z.string(),
  },
} as const
