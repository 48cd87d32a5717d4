/**
 * The form of what `job calendar` prints.
 *
 * @module
 */

import * as z from 'zod'
import { chance, ofSet, problem, texts } from './json-form-pieces.js'

const day = z
  .string()
  .nullable()
  .describe('A day; null: none within three years, or none that keeps the chance.')
const spread = { low: day, middle: day, high: day }
const moments = z.object({ mean: z.number(), sd: z.number() })

export const jobCalendarFields = {
  'gensettle/job-calendar': {
    ...ofSet,
    job: z.string(),
    seed: z.number(),
    histories: z.number(),
    isDone: z.boolean(),
    rows: z.array(
      z.object({
        name: z.string(),
        what: z.string(),
        after: texts,
        needs: texts,
        inOneRun: z.boolean(),
        proposed: z.boolean(),
        entries: texts,
        days: z.object({
          low: z.number(),
          usual: z.number(),
          high: z.number(),
          as: z.enum(['three-point', 'delivery']),
        }),
        state: z.enum(['to-do', 'begun', 'done']),
        since: z.string().nullable(),
        plan: z.object({
          start: z.string(),
          end: z.string(),
          slackDays: z.number(),
          onLongestWay: z.boolean(),
        }),
        starts: z.object(spread),
        ends: z.object(spread),
        criticality: chance,
        beginBy: day,
        doneBy: day,
      }),
    ),
    longestWay: texts,
    ready: z.object({ ...spread, likely: day, plan: z.string() }),
    target: z.object({ date: day, isAsked: z.boolean(), chance, error: z.number() }),
    orders: z.array(
      z.object({
        name: z.string(),
        what: z.string(),
        beginBy: day,
        isDue: z.boolean(),
        weekLater: z.object({ days: z.number(), price: z.number() }),
      }),
    ),
    months: z.array(z.object({ month: z.string(), needShare: chance, chance })),
    currency: z.string(),
    price: z.object({ whole: z.number(), dayMore: z.number() }),
    byFormula: z.object({ chain: moments, met: moments }),
    problems: z.array(problem),
    assumed: texts,
    ics: z.string().nullable(),
    caution: z.string(),
  },
} as const
