/**
 * The form of what `job quotes` prints.
 *
 * @module
 */

import * as z from 'zod'
import { asked } from '../job/quotes-questions.js'
import { leavable } from '../logbook/bodies-work.js'
import { ofSet, problem, texts } from './json-form-pieces.js'
import { lessons } from './json-forms-looking-back.js'

const question = z.object({
  about: z.enum(asked),
  works: z.array(z.enum(leavable)),
  worth: z.number().describe('Mean saving by choosing with the answer.'),
  swing: z.number().describe('What the answer furthest from what is reckoned with now would add.'),
  changesOrder: z.boolean(),
  passesWalkAway: z.boolean(),
  asks: z.string(),
})

const line = z.object({
  about: z.string(),
  name: z.string(),
  money: z.number().describe('Its mean; less than nothing: it takes off.'),
  why: z.string(),
  figures: texts.describe('Paths of figures that it rests on, each of which can be overruled.'),
})

const paidAhead = z.object({
  stages: z.array(z.object({ when: z.string(), money: z.number(), done: z.number(), ahead: z.number() })),
  beforeWork: z.number(),
  most: z.number(),
  lost: z.number(),
})

const offer = z.object({
  rank: z.number(),
  entry: z.string(),
  offeredBy: z.string().nullable(),
  given: z.string(),
  inPlaceOf: texts,
  amount: z.number(),
  withTax: z.number(),
  expired: z.boolean(),
  expected: z.number().describe('All that it costs on the one scope: the sum of its lines.'),
  spread: z.object({ low: z.number(), middle: z.number(), high: z.number() }),
  cheapest: z.number().describe('Chance of being the cheapest.'),
  room: z.number().nullable().describe('Money left to the cost at which to walk away.'),
  walkAwayPrice: z.number().nullable().describe('Its own price, as offered, above which to walk away.'),
  lines: z.array(line),
  paidAhead,
  questions: z.array(question),
  message: z.string().nullable(),
})

export const jobQuotesFields = {
  'gensettle/job-quotes': {
    ...ofSet,
    seed: z.number(),
    draws: z.number(),
    currency: z.string(),
    job: z.string(),
    says: z.string(),
    stands: z.boolean(),
    parts: z.array(z.object({ part: z.string(), did: z.string() })),
    walkAway: z
      .object({
        price: z.number(),
        low: z.number(),
        high: z.number(),
        from: z.enum(['kept', 'entered', 'reckoned']),
        entry: z.string().nullable(),
        otherwise: z.string().nullable(),
        cost: z.number(),
        costLow: z.number(),
        costHigh: z.number(),
      })
      .nullable(),
    offers: z.array(offer),
    problems: z.array(problem),
    assumed: texts,
    lessons,
    caution: z.string(),
  },
} as const
