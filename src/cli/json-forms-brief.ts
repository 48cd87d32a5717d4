/**
 * The form of a decision brief, as `brief --json` prints it.
 *
 * @module
 */

import * as z from 'zod'
import type { BriefBlock } from '../alternatives/brief-blocks.js'
import { texts } from './json-form-pieces.js'

const span = z.object({ low: z.number(), high: z.number() })

const range = z.object({
  name: z.string(),
  tag: z.enum(['Best in money', 'Barred']).optional(),
  why: z.string().optional(),
  low: z.number(),
  middle: z.number(),
  high: z.number(),
  expected: z.number(),
  drawn: z.string(),
  cells: texts,
})

const widths = z.object({
  price: z.number(),
  findingOut: span,
  simulation: span,
  quote: z.number(),
  said: z.object({ price: z.string(), low: z.string(), high: z.string(), quote: z.string() }),
  drawn: z.string(),
})

const kinds = {
  say: { text: z.string(), bold: z.string().optional() },
  text: { text: z.string(), bold: z.string().optional() },
  list: { items: texts },
  stop: { title: z.string(), text: z.string() },
  number: { number: z.string(), text: z.string(), widths: widths.optional() },
  table: { heads: texts, rows: z.array(texts) },
  ranges: { heads: texts, rows: z.array(range) },
  signatures: { lines: texts },
} satisfies { readonly [Kind in BriefBlock['is']]: z.ZodRawShape }

const block = z.discriminatedUnion(
  'is',
  Object.entries(kinds).map(([is, shape]) => z.object({ is: z.literal(is), ...shape })) as unknown as [
    z.ZodObject,
    ...z.ZodObject[],
  ],
)

const passage = z.object({
  title: z.string(),
  says: z.string().optional(),
  fine: z.literal(true).optional(),
  blocks: z.array(block),
})

/** Everything that it says, in the order in which it says it. */
export const brief = z.object({
  title: z.string(),
  boatName: z.string(),
  setLine: z.string(),
  invented: z.string().optional(),
  day: z.string(),
  passages: z.array(passage),
  colophon: z.string(),
})
