/**
 * Published forms of what was measured and of the run plan.
 *
 * @module
 */

import * as z from 'zod'
import { asked, chance, entry, numbers, texts } from './json-form-pieces.js'

const curve = z.array(z.object({ kW: z.number(), share: chance }))

export const planFields = {
  'gensettle/measured': {
    boat: z.string().optional().describe('Left out where nothing was written.'),
    entries: z.array(entry),
    asked: z.array(asked),
    read: z.object({
      columns: z.array(z.object({ field: z.string(), heading: z.string(), unit: z.string() })),
      otherColumns: texts,
      headingsOnLine: z.number(),
      times: z.string(),
      dateOrder: z.string(),
      decimal: z.string(),
      guessedUnits: texts,
      assumed: texts,
      rows: z.number(),
      badRows: z.number(),
      bad: z.array(z.object({ line: z.number(), code: z.string(), found: z.string() })),
    }),
    rows: z.number(),
    badRows: z.number(),
    coveredS: z.number(),
    gapS: z.number(),
    days: z.number(),
    starts: z.number(),
    energyKwh: z.number(),
    mostKw: z.number(),
    curve: curve.describe('Share of the running time at which so much or more is drawn.'),
    day: z
      .object({
        hours: z.number(),
        starts: z.number(),
        kWh: z.number(),
        meanKW: z.number(),
        lowLoadShare: chance,
        onByHour: numbers,
        meanByHour: numbers,
      })
      .optional(),
  },
} as const
