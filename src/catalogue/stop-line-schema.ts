/**
 * Form of the stop lines: where work can hurt, what opens each, what it bars, and when it is clear.
 *
 * @module
 */

import * as z from 'zod'
import { stageIds } from './owed-schema.js'
import { originSchema } from './provenance.js'

const id = z
  .string()
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'must be words of small letters joined by hyphens')
const words = z.string().min(1)

/** Who takes over where the owner must not go on. */
export const handOvers = [
  'electrician',
  'rewind-shop',
  'injection-shop',
  'workshop',
  'licensed-remover',
] as const

/** One line, worded once: the tests, the faults room and the alternatives read this. */
export const stopLineSchema = z.strictObject({
  id,
  hazard: words,
  when: words,
  /** What to do, in words. */
  act: words,
  clearWhen: z.array(words).min(1),
  /** Asked before anything else in the faults room. */
  asked: words.optional(),
  /** Holds for one look only and is asked again before the next: it says nothing of the years to come. */
  eachTime: z.literal(true).optional(),
  /** No reason lifts it: only what clears it. */
  neverPassedOver: z.literal(true).optional(),
  handOver: z.enum(handOvers).optional(),
  /** The first step towards running by itself that it bars; left out: it bars hands and looks alone. */
  bars: z.enum(stageIds).optional(),
  /** It closes when the same test no longer says so. */
  opensByTests: z.array(z.strictObject({ test: id, bands: z.array(id).min(1) })),
  opensBySymptoms: z.array(id),
  opensByOutcomes: z.array(z.strictObject({ check: id, outcome: id })),
  /** Dangers of the catalogue that, found and not made safe, open it; of some parts only, or of all. */
  opensByDangers: z.array(z.strictObject({ danger: id, parts: z.array(id).min(1).optional() })),
  /** Limits whose numbers stand in its words. */
  limits: z.array(id),
  told: originSchema,
})

export type HandOver = (typeof handOvers)[number]
export type StopLine = Readonly<z.infer<typeof stopLineSchema>>
