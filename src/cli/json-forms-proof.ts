/**
 * The forms of what the commands of proof print with `--json`.
 *
 * @module
 */

import * as z from 'zod'
import { stageIds } from '../catalogue/owed-schema.js'
import { heldKinds } from '../catalogue/provenance.js'
import { entry, ofSet, texts } from './json-form-pieces.js'

const danger = z.enum(['locked out', 'turning', 'live'])
const verdict = z.enum(['pass', 'fail', 'cannot tell'])
const limit = z.object({
  id: z.string(),
  name: z.string(),
  value: z.number(),
  unit: z.string(),
  source: z.string(),
  place: z.string(),
  held: z.enum(heldKinds),
})

const judgement = z.object({
  verdict,
  band: z.string().optional(),
  says: z.string(),
  worked: z.array(z.object({ name: z.string(), value: z.number().nullable(), unit: z.string() })),
  limits: z.array(limit),
  next: z.string(),
  asks: z.array(
    z.object({ code: z.string(), field: z.string(), question: z.string(), confirmable: z.boolean() }),
  ),
})

const result = z.object({
  entry: z.string(),
  date: z.string(),
  test: z.string(),
  part: z.string().optional(),
  which: z.string().optional(),
  readings: z.record(z.string(), z.union([z.number(), z.string()])),
  judgement,
  testedBy: z.string().optional(),
  instrument: z.string().optional(),
})

const openedBy = z.enum(['test', 'winding', 'danger', 'links', 'case'])

/** What blocks running on, as the alternatives say it. */
export const openStop = z.object({
  line: z.string(),
  by: openedBy,
  parts: texts,
  danger: z.string().optional(),
  mode: z.string().optional(),
  why: z.string(),
  byAnyWork: z.boolean().optional(),
  test: z.string().optional(),
  passedOver: z.object({ because: z.string(), date: z.string() }).optional(),
})

const cause = z.object({
  by: openedBy,
  entry: z.string(),
  why: z.string(),
  part: z.string().optional(),
  danger: z.string().optional(),
  mode: z.string().optional(),
  test: z.string().optional(),
})

const passedOver = z.object({ entry: z.string(), date: z.string(), about: z.string(), because: z.string() })
const stage = z.enum(stageIds)

export const proofFields = {
  'gensettle/tests': {
    tests: z.array(z.object({ id: z.string(), name: z.string(), purpose: z.string(), danger })),
  },
  'gensettle/test': {
    id: z.string(),
    name: z.string(),
    purpose: z.string(),
    danger,
    instrument: z.string(),
    steps: texts,
    plan: texts.describe('What the steps come to for the rating of the set, where one is named.'),
    fields: z.array(
      z.object({
        id: z.string(),
        name: z.string(),
        kind: z.enum(['number', 'choice']),
        unit: z.string().optional(),
        units: texts.optional(),
        choices: z.array(z.object({ id: z.string(), name: z.string() })).optional(),
      }),
    ),
    bands: z.array(z.object({ id: z.string(), name: z.string(), verdict: z.enum(['pass', 'fail']) })),
    cautions: z.array(z.object({ name: z.string(), caution: z.string() })),
  },
  'gensettle/prove': { test: z.string(), entry: entry.nullable(), judgement, waitsFor: texts },
  'gensettle/owed': {
    ...ofSet,
    gates: z.array(
      z.object({ stage, name: z.string(), opens: z.string(), open: z.boolean(), says: z.string() }),
    ),
    tests: z.array(
      z.object({
        test: z.string(),
        name: z.string(),
        part: z.string().optional(),
        stage,
        because: z.array(
          z.object({
            rule: z.string(),
            why: z.string(),
            entry: z.string(),
            date: z.string(),
            part: z.string().optional(),
          }),
        ),
        is: z.enum(['owed', 'passed', 'failed', 'cannot tell', 'passed over']),
        results: z.array(result),
        passedOver: passedOver.optional(),
        never: z.boolean(),
        waitsFor: texts,
      }),
    ),
    lines: z.array(
      z.object({
        line: z.string(),
        hazard: z.string(),
        why: z.string(),
        act: z.string(),
        clearWhen: texts,
        bars: stage.optional(),
        eachTime: z.boolean(),
        causes: z.array(cause),
        entries: texts,
        closedBy: texts,
        never: z.boolean(),
        licensed: z.boolean(),
        passedOver: passedOver.optional(),
      }),
    ),
    results: z.array(result),
    lockOut: texts,
    handOver: texts,
  },
}
