/**
 * Pieces that several answers of `--json` have in common.
 *
 * @module
 */

import * as z from 'zod'
import { kinds } from '../logbook/kinds.js'
import { demandBases } from '../sizing/demand-basis.js'

export const texts = z.array(z.string())
export const numbers = z.array(z.number())
export const chance = z.number().min(0).max(1)
/** What JSON has no number for, such as an age that is never reached, is null. */
export const perhaps = z.number().nullable()

export const problem = z.object({
  code: z.string(),
  path: z.string(),
  found: z.string(),
  allowed: z.string(),
})
export const asked = z.object({ code: z.string(), ids: texts, question: z.string() })

export const entry = z
  .object({
    version: z.number(),
    id: z.string(),
    boat: z.string(),
    set: z.string().nullable(),
    kind: z.enum(kinds),
    from: z.string(),
    until: z.string(),
    noted: z.string(),
    device: z.string(),
    n: z.number(),
    body: z.record(z.string(), z.unknown()),
    corrects: texts,
    voids: z.literal(true).optional(),
  })
  .describe('An entry, as logbook.schema.json tells kind by kind.')

export const ofSet = {
  boat: z.string(),
  set: z.string(),
  asOf: z.string(),
  /** Rests on what was noted by then. */
  asNoted: z.literal(true).optional(),
}
export const written = { boat: z.string(), entries: z.array(entry), asked: z.array(asked) }

/** What tells what is drawn aboard. */
export const demandBasis = z.enum(demandBases)

const meanAndPoints = z.object({
  mean: z.number(),
  p50: z.number(),
  p95: z.number(),
  p99: z.number(),
  most: z.number(),
})
export const durationCurve = z.array(z.object({ kW: z.number(), share: chance }))

/** A recording and the list of loads beside each other. */
export const measuredDemand = z.object({
  against: z
    .object({
      measuredKW: meanAndPoints,
      listKW: meanAndPoints,
      factor: z.number(),
      widest: z.object({ kW: z.number(), measured: chance, list: chance }),
    })
    .optional(),
  recorded: durationCurve,
  listed: durationCurve,
  hoursFactor: z.number(),
  missingKW: z.number(),
})
