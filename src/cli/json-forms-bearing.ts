/**
 * The forms of what bears on an answer, as `alternatives --find-out --what-changes --json` prints it.
 *
 * @module
 */

import * as z from 'zod'
import { chance } from './json-form-pieces.js'

const choice = z.object({ alternative: z.string(), renews: z.boolean() })
const lead = z.object({ value: z.number(), error: z.number() })
const turn = z.object({ at: z.number(), to: z.string() })
const axis = z.object({ id: z.string(), low: z.number(), high: z.number(), now: z.number() })

const estimate = z.object({ mean: z.number(), standardError: z.number() })
const life = z.object({ years: z.number(), costPerYear: z.number(), error: z.number() })
const economic = z.object({ lives: z.array(life), best: life })

export const bearing = {
  findingOut: z
    .object({
      looks: z.array(
        z.object({
          check: z.string(),
          part: z.string(),
          chanceSeen: chance,
          worth: z.number(),
          error: z.number(),
          cost: z.number(),
          unlooked: choice,
          ifSeen: choice,
          ifNot: choice,
          pays: z.boolean(),
        }),
      ),
      tooSmall: z.number(),
      unvalued: z.number(),
      quantities: z.array(
        z.object({ id: z.string(), worth: z.number(), error: z.number(), pays: z.boolean() }),
      ),
    })
    .optional()
    .describe('With --find-out.'),
  whatChanges: z
    .object({
      turning: z.object({
        best: z.string(),
        inputs: z.array(
          z.object({
            id: z.string(),
            now: z.number(),
            low: z.number(),
            high: z.number(),
            lead: z.object({ low: lead, high: lead }),
            below: turn.optional(),
            above: turn.optional(),
          }),
        ),
        barred: z.array(z.object({ id: z.string(), saving: z.number() })),
      }),
      maps: z.array(
        z.object({
          across: axis,
          down: axis,
          rows: z.array(z.object({ down: z.number(), first: z.string(), changes: z.array(turn) })),
        }),
      ),
    })
    .nullable()
    .optional()
    .describe('With --what-changes; null where only one alternative is open.'),
  whenToReplace: z
    .object({
      keeping: z.string(),
      candidate: z.string(),
      limitByYear: z.array(z.number()).optional(),
      above: z.union([z.literal('give-up'), z.object({ replaceWith: z.string() })]).optional(),
      planned: z.array(z.object({ years: z.number(), adds: estimate })),
      yearly: z.object({ saves: estimate, stopsIn: z.array(chance) }).optional(),
      old: economic,
      fresh: economic,
      marginal: z.array(z.number()),
      paysYears: z.number(),
    })
    .nullable()
    .optional()
    .describe('With --when; null where no other set is among the alternatives.'),
}
