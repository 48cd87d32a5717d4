/**
 * The forms of what the faults commands print.
 *
 * @module
 */

import * as z from 'zod'
import { chance, ofSet, perhaps, texts } from './json-form-pieces.js'

const line = z.object({
  line: z.string(),
  hazard: z.string(),
  is: z.enum(['open', 'cleared', 'overruled', 'not-so', 'unknown']),
  act: z.string(),
  clearWhen: texts,
  inLog: z.array(z.object({ entry: z.string(), why: z.string() })).optional(),
  because: z.string().optional(),
})

const named = z.object({ id: z.string(), name: z.string() })
const answered = z.object({ of: z.string(), name: z.string(), says: z.string() })

const job = z.object({
  parts: z.array(z.object({ part: z.string(), mode: z.string().optional() })),
  mend: z.string().optional(),
  handOver: z.string().optional(),
  testsOwed: texts,
  proofsOwed: texts,
  openLines: texts,
})

export const faultFields = {
  'gensettle/faults-case': {
    ...ofSet,
    case: z.string(),
    about: z.string().nullable(),
    written: texts,
    first: z.array(z.object({ line: z.string(), asks: z.string() })),
    lines: z.array(line),
    answers: z.array(answered),
    mayBe: z.array(
      z.object({
        fault: z.string(),
        name: z.string(),
        chance,
        mend: z.string(),
        handOver: z.string().optional(),
        stopLines: texts,
        prior: z.object({
          weight: z.number(),
          clock: z.number(),
          kind: z.number(),
          part: z.number(),
          work: z.number(),
          closed: z.number(),
        }),
      }),
    ),
    second: z.object({ fault: z.string(), chance }).nullable(),
    unexplained: z.boolean(),
    next: z.array(
      z.object({
        check: z.string(),
        name: z.string(),
        how: z.string(),
        tools: texts,
        minutes: z.number(),
        risk: z.string(),
        bits: z.number(),
        score: z.number(),
        totalCost: z.number(),
        outcomes: z.array(named),
        confirm: z.array(z.object({ line: z.string(), confirm: texts })),
        ifs: z.array(z.object({ outcome: z.string(), chance, leads: z.string(), leadsChance: chance })),
      }),
    ),
    barred: z.array(z.object({ check: z.string(), open: texts })),
    questions: z.array(named),
    cheapest: z.object({
      do: z.enum(['look', 'mend', 'hand-over']),
      check: z.string().optional(),
      fault: z.string().optional(),
      totalCost: z.number(),
      mendingNow: z.number().optional(),
      lookingFirst: z.number().optional(),
    }),
    currency: z.string(),
    closed: z
      .object({
        as: z.enum(['listed', 'other', 'not-known']),
        fault: z.string().optional(),
        was: z.string().optional(),
        place: z.number().optional(),
        chance: chance.optional(),
      })
      .nullable(),
    job: job.nullable(),
    caution: z.string(),
  },
  'gensettle/faults-why': {
    ...ofSet,
    case: z.string(),
    faults: z.array(
      z.object({
        fault: z.string(),
        name: z.string(),
        chance,
        speaks: z.array(z.object({ answer: z.string(), times: z.number() })),
        looksAlike: z.array(z.object({ fault: z.string(), chance, toldApartBy: z.string().optional() })),
        dragsDown: texts,
        draggedParts: z.array(z.object({ part: z.string(), chance, what: z.string() })),
      }),
    ),
    caution: z.string(),
  },
  'gensettle/faults-cases': {
    ...ofSet,
    cases: z.array(
      z.object({
        case: z.string(),
        from: z.string(),
        about: z.string().nullable(),
        open: z.boolean(),
        was: z.string().nullable(),
        place: perhaps,
        chance: perhaps,
      }),
    ),
  },
  'gensettle/faults-symptoms': {
    symptoms: z.array(z.object({ id: z.string(), name: z.string(), look: z.string().optional() })),
  },
}
