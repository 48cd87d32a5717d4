/**
 * The forms of what the commands that look back print with `--json`.
 *
 * @module
 */

import * as z from 'zod'
import type { LeftOut } from '../alternatives/hindsight-outcomes.js'
import { chance, ofSet, perhaps, texts, written } from './json-form-pieces.js'

const belief = z.object({ mean: z.number(), variance: z.number(), modes: z.number() })
/** Lessons of the owner's other boats, where they were heard. */
export const lessons = z
  .object({
    boats: z.number(),
    lifeFactor: z.number(),
    boatLogSd: z.number(),
    systems: z.record(z.string(), belief),
  })
  .optional()
const counts = z.object({ low: z.number(), high: z.number() })
const band = z.object({
  from: chance,
  to: chance,
  told: z.number(),
  meanChance: chance,
  expected: z.number(),
  came: z.number(),
  expectedBounds: counts,
  shareBounds: counts,
  judged: z.enum(['too-few', 'as-told', 'came-oftener', 'came-seldomer']),
})
const leftOut = [
  'not-complete',
  'stood-broken',
  'day-not-known',
  'renewed-sound',
  'taken-off',
  'set-gone',
] as const satisfies readonly LeftOut[]
const figureKept = z.union([z.string(), z.number(), z.boolean()]).nullable()

/** The fields of each type beside `type` and `version`. */
export const lookingBackFields = {
  'gensettle/hindsight': {
    ...ofSet,
    currency: z.string(),
    seed: z.number(),
    months: z.number(),
    by: z.enum(['noted', 'happened']),
    unknownThen: z.number(),
    notedLate: z.object({ late: z.number(), of: z.number() }),
    dates: z.array(
      z.object({
        asOf: z.string(),
        until: z.string(),
        complete: z.boolean(),
        parts: z.array(
          z.object({ part: z.string(), chance, became: z.enum(['failed', 'held', ...leftOut]) }),
        ),
        stopping: chance,
        stopped: z.boolean(),
        failed: z.array(
          z.object({
            part: z.string(),
            mode: z.string().optional(),
            firstDay: z.number(),
            lastDay: z.number(),
            stopped: z.boolean(),
            entry: z.string(),
            chance,
          }),
        ),
        failedUntold: texts,
      }),
    ),
    brier: z
      .object({
        told: z.number(),
        score: z.number(),
        reliability: z.number(),
        resolution: z.number(),
        uncertainty: z.number(),
        withinBands: z.number(),
        skill: perhaps,
      })
      .nullable(),
    bands: z.array(band),
    allBands: band.nullable(),
    wholeSet: z.object({ spans: z.number(), expected: z.number(), came: z.number() }),
    leftOut: z.object(
      Object.fromEntries(leftOut.map((why) => [why, z.number()])) as Record<LeftOut, z.ZodNumber>,
    ),
    untold: z.number(),
    notComplete: z.object({ spans: z.number(), expected: z.number(), entered: z.number() }),
    choices: z.array(
      z.object({
        entry: z.string(),
        kind: z.enum(['decision', 'quote']),
        asOf: z.string(),
        notedBy: z.string(),
        what: z.string(),
        job: z.string().optional(),
        alternative: z.string().optional(),
        quoted: z.number().optional(),
        covers: texts,
        said: z
          .object({
            kept: z.boolean(),
            best: z.string(),
            walkAway: perhaps,
            verdict: z.string(),
            walkAwaySaying: z.string().nullable(),
          })
          .nullable(),
        after: z.object({
          until: z.string(),
          done: z.array(
            z.object({
              entry: z.string(),
              day: z.string(),
              parts: texts,
              set: z.string().optional(),
              by: z.enum(['owner', 'workshop', 'both']).optional(),
            }),
          ),
          failures: texts,
          stops: z.number(),
          daysWithoutPower: z.number(),
          paid: z.number(),
        }),
      }),
    ),
    caution: z.string(),
  },
  'gensettle/decide': written,
  'gensettle/rerun': {
    boat: z.string(),
    entry: z.string(),
    seed: z.number(),
    histories: z.number(),
    same: z.boolean(),
    figures: z.number(),
    differences: z.array(z.object({ figure: z.string(), kept: figureKept, now: figureKept })),
    keptBy: z.object({ program: z.string(), reckoning: z.string().nullable(), engine: z.string() }),
    now: z.object({ program: z.string(), reckoning: z.string(), engine: z.string() }),
    sameProgram: z.boolean(),
    sameEngine: z.boolean(),
  },
  'gensettle/lessons': {
    heard: z.boolean(),
    asOf: z.string(),
    boats: z.array(
      z.object({
        boat: z.string(),
        sets: z.array(
          z.object({
            lifeFactor: perhaps,
            logError: perhaps,
            systems: z.record(z.string(), z.number()),
          }),
        ),
        lessons,
      }),
    ),
  },
} as const
