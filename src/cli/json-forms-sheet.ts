/**
 * The forms of a shop sheet and of a job sheet, as `shop-sheet --json` and `job sheet --json` print them.
 *
 * @module
 */

import * as z from 'zod'
import type { SheetBlock } from '../proof/shop-sheet-blocks.js'
import { ofSet, texts } from './json-form-pieces.js'

const drawing = z
  .object({
    width: z.number(),
    height: z.number(),
    says: z.string(),
    shapes: z.array(z.record(z.string(), z.unknown())),
  })
  .describe('Shapes to be drawn: paths, posts, dots and texts.')

const blocks = {
  text: { text: z.string(), bold: z.string().optional() },
  list: { items: texts },
  stop: { text: z.string() },
  table: { heads: texts, rows: z.array(texts) },
  blanks: { names: texts },
  pictures: {
    pictures: z.array(
      z.object({
        sha256: z.string(),
        type: z.string(),
        shows: z.string().optional(),
        arrows: z.array(z.record(z.string(), z.unknown())).optional(),
      }),
    ),
  },
  drawings: { drawings: z.array(drawing) },
  signatures: { lines: texts },
} satisfies { readonly [Kind in SheetBlock['is']]: z.ZodRawShape }

const block = z.discriminatedUnion(
  'is',
  Object.entries(blocks).map(([is, shape]) => z.object({ is: z.literal(is), ...shape })) as unknown as [
    z.ZodObject,
    ...z.ZodObject[],
  ],
)

const sheet = z.object({
  title: z.string(),
  boatName: z.string(),
  invented: z.string().optional(),
  day: z.string(),
  passages: z.array(z.object({ title: z.string(), says: z.string().optional(), blocks: z.array(block) })),
  colophon: z.string(),
})

/** The fields beside `type` and `version`. */
export const sheetFields = {
  'gensettle/shop-sheet': { ...ofSet, jobs: texts, sheet },
  'gensettle/job-sheet': { ...ofSet, job: z.string(), state: z.string(), sheet },
} as const
