/**
 * Form of what goes with a part when it is renewed: small pieces, what is to be in hand, what is asked before one is ordered,
 * and the standard sizes by which pieces of different makes go in place of one another.
 *
 * @module
 */

import * as z from 'zod'
import { headSchema, sourceSchema } from './file-schema.js'
import { heldKinds } from './provenance.js'

const id = z
  .string()
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, 'must be words of small letters joined by hyphens')
const words = z.string().min(1)
const positive = z.number().positive()
const whole = z.int().min(1)

/** Who deals in a kind of piece. */
const supplierSchema = z.strictObject({ id, name: words, deals: words })

/** What is settled before a piece is ordered. */
const questionSchema = z.strictObject({
  id,
  /** What the supplier is told, in a line. */
  tell: words,
  ask: words,
  why: words,
  /** Whether it shows from outside, or only once the set is open. */
  seen: z.enum(['outside', 'open']),
  /** Where the log may tell it: a field of an entry, or a value under which a test was made. */
  known: z
    .string()
    .regex(/^(set|space|reading)\.[A-Za-z.]+$/, 'must be set.FIELD, space.FIELD or reading.CONDITION.UNIT')
    .optional(),
})

/** Standards by whose sizes pieces can be compared. */
export const standardKinds = [
  'bearing',
  'seal',
  'o-ring',
  'belt',
  'thread',
  'hose',
  'capacitor',
  'battery',
] as const

const pieceSchema = z.strictObject({
  id,
  name: words,
  /** The part's own word for it, under `alsoNeeded`. */
  need: words,
  count: whole,
  /** To have beyond that: what is lost, or spoilt in fitting. */
  spares: whole.optional(),
  renewed: z.enum(['always', 'where-needed']),
  /** Without it the set cannot go back together, or it is only a nuisance. */
  lack: z.enum(['stops', 'inconvenient']),
  /** Left out: as for the part. */
  supplier: id.optional(),
  asks: z.array(id).default([]),
  standard: z.enum(standardKinds).optional(),
  /** A part, or a piece that other parts need as well: it is needed once. */
  shared: id.optional(),
})

/** A tool, stuff that is used up, or something to be arranged. */
const readySchema = z.strictObject({
  id,
  name: words,
  need: words,
  is: z.enum(['tool', 'stuff', 'arrange']),
  supplier: id.optional(),
  asks: z.array(id).default([]),
  shared: id.optional(),
})

const kitSchema = z.strictObject({
  part: id,
  supplier: id,
  asks: z.array(id),
  pieces: z.array(pieceSchema),
  ready: z.array(readySchema),
  /** Needs of the part that are no piece: questions see to them. */
  settled: z.array(z.strictObject({ need: words, by: z.array(id).min(1) })).default([]),
  heed: words.optional(),
})

/** Where something that is no number comes from. */
const told = z.strictObject({ source: words, place: words, held: z.enum(heldKinds).exclude(['owner']) })

const listed = <T extends z.ZodRawShape>(shape: T) =>
  z.strictObject({ standard: words, list: z.array(z.strictObject({ id: words, ...shape })).min(1) })

const sizesSchema = z.strictObject({
  bearings: listed({ boreMm: positive, outsideMm: positive, widthMm: positive }),
  /** Marks behind the figures of a bearing. */
  bearingMarks: z.array(
    z.strictObject({
      of: z.enum(['clearance', 'closed', 'groove', 'cage']),
      is: words,
      marks: z.array(words).min(1),
      says: words,
      told,
    }),
  ),
  seals: listed({ shaftMm: positive, housingMm: positive, widthMm: positive }),
  oRings: listed({ insideMm: positive, thicknessMm: positive }),
  belts: z.strictObject({
    list: z.array(
      z.strictObject({
        id: words,
        names: z.array(words).min(1),
        topMm: positive,
        heightMm: positive,
        /** The length that its name tells. */
        lengthIs: z.enum(['inside', 'datum', 'outside']),
        insideToDatumMm: positive.optional(),
        datumToOutsideMm: positive,
        standard: words,
      }),
    ),
  }),
  /** Metric, coarse: pitch. */
  threads: listed({ pitchMm: positive }),
  pipeThreads: listed({
    outsideMm: positive,
    perInch: positive,
    americanOutsideMm: positive,
    americanPerInch: positive,
  }),
  batteries: listed({ lengthMm: positive, widthMm: positive, heightMm: positive }),
  /** Hours that a class of motor capacitor is made for. */
  capacitorClasses: listed({ hours: positive }),
  /** Nearer than this is alike. */
  alike: z.strictObject({
    beltLengthMm: positive,
    hoseBoreMm: positive,
    measuredMm: positive,
    capacitySharePercent: positive,
  }),
})

export const kitHeadSchema = headSchema.extend({
  type: z.enum([
    'gensettle-kit-questions',
    'gensettle-kits',
    'gensettle-standard-sizes',
    'gensettle-kit-sources',
  ]),
})

/** What stands beneath the head, by the file's type. */
export const kitBodySchemas = {
  'gensettle-kit-questions': z.strictObject({
    suppliers: z.array(supplierSchema).min(1),
    questions: z.array(questionSchema).min(1),
  }),
  'gensettle-kits': z.strictObject({ kits: z.array(kitSchema).min(1) }),
  'gensettle-standard-sizes': z.strictObject({ sizes: sizesSchema }),
  'gensettle-kit-sources': z.strictObject({ sources: z.array(sourceSchema) }),
} as const

export type KitSupplier = Readonly<z.infer<typeof supplierSchema>>
export type KitQuestion = Readonly<z.infer<typeof questionSchema>>
export type KitPiece = Readonly<z.infer<typeof pieceSchema>>
export type KitReady = Readonly<z.infer<typeof readySchema>>
export type PartKit = Readonly<z.infer<typeof kitSchema>>
export type StandardSizes = Readonly<z.infer<typeof sizesSchema>>
export type StandardKind = (typeof standardKinds)[number]

/** What goes with each part, as it is once it has been read. Plain data. */
export interface Kits {
  readonly suppliers: readonly KitSupplier[]
  readonly questions: readonly KitQuestion[]
  readonly kits: readonly PartKit[]
  readonly sizes: StandardSizes
}
