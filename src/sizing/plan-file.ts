/**
 * A day written by hand, or written out to be changed.
 *
 * @module
 */

import * as z from 'zod'
import type { Problem } from '../catalogue/problem.js'
import { problemsOf } from '../logbook/problems.js'
import type { RunDay } from './plan-day.js'

const within = (low: number, high: number) => {
  const words = `a number from ${low} to ${high}`
  return z.number({ error: words }).min(low, words).max(high, words)
}
const kW = within(0, 200)
const slots = (of: z.ZodType) => z.array(of, { error: 'a list, one for each slot' }).min(1).max(96)
const slot = z.int({ error: 'a whole number' }).min(0).max(95)
const id = z.string({ error: 'a name' }).min(1).max(60)
const amount = within(0, 1e6)

export const daySchema = z.strictObject({
  type: z.literal('gensettle/day', { error: '"gensettle/day"' }),
  version: z.literal(1, { error: '1' }),
  slotHours: within(0.25, 4),
  baseKW: slots(kW),
  baseMostKW: slots(kW).optional(),
  partSlots: z.boolean().optional(),
  baseShare: slots(within(0, 1)).optional(),
  batches: z
    .array(
      z.strictObject({
        id,
        name: z.string().max(80).optional(),
        kW,
        mostKW: kW.optional(),
        slots: z.int().min(1).max(96),
        first: slot.optional(),
        last: slot.optional(),
        share: within(0, 1).optional(),
        after: id.optional(),
      }),
    )
    .max(20)
    .default([]),
  stores: z
    .array(
      z.strictObject({
        id,
        name: z.string().max(80).optional(),
        kW,
        perHour: within(0.001, 1e5),
        unit: z.enum(['kWh', 'l', 'h'], { error: 'kWh, l or h' }),
        holds: amount,
        least: amount.default(0),
        begins: amount.optional(),
        ends: amount.optional(),
        drawn: slots(amount),
        wholeSlots: z.boolean().optional(),
      }),
    )
    .max(20)
    .default([]),
  set: z.strictObject({ ratingKW: within(0.5, 100), mostKW: within(0.1, 110), lowKW: within(0, 100) }),
  costs: z.strictObject({
    perHour: within(0, 100),
    perKWh: within(0, 100),
    perStart: within(0, 100),
    perLowHour: within(0, 100),
  }),
  quiet: z.array(z.boolean()).max(96).optional(),
  battery: z
    .strictObject({
      usableKWh: within(0, 1000),
      beginsKWh: within(0, 1000),
      chargeKW: kW,
      inverterKW: kW,
      chargeEfficiency: within(0.3, 1),
      inverterEfficiency: within(0.3, 1),
      wearPerKWh: within(0, 100),
    })
    .optional(),
  solarKW: slots(kW).optional(),
  shore: z.strictObject({ mostKW: slots(kW), perKWh: within(0, 100) }).optional(),
})

/** The day of a file, or everything that is wrong with it. */
export function readDayFile(
  value: unknown,
):
  | { readonly ok: true; readonly day: RunDay }
  | { readonly ok: false; readonly problems: readonly Problem[] } {
  const parsed = daySchema.safeParse(value)
  if (!parsed.success) return { ok: false, problems: problemsOf(parsed.error, value) }
  const { type: _, version: __, ...day } = parsed.data
  return { ok: true, day: day as RunDay }
}

/** A day as a file. */
export function dayFile(day: RunDay): z.input<typeof daySchema> {
  return JSON.parse(JSON.stringify({ type: 'gensettle/day', version: 1, ...day })) as z.input<
    typeof daySchema
  >
}

/** JSON Schema (draft 2020-12) of such a file. */
export function dayJsonSchema(): Readonly<Record<string, unknown>> {
  const { $schema, ...rest } = z.toJSONSchema(daySchema, { io: 'input' })
  return {
    $comment: 'Generated from src/sizing/plan-file.ts; do not edit.',
    $schema,
    title: 'A day for "gensettle plan --with"',
    ...rest,
  }
}
