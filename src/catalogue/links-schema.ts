/**
 * Form of the catalogue's windings whose leads can be joined in more than one way.
 *
 * @module
 */

import * as z from 'zod'
import { heldKinds } from './provenance.js'

const id = z
  .string()
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, 'must be words of small letters and digits joined by hyphens')
const words = z.string().min(1)
const lead = z.string().regex(/^[A-Z]{1,2}\d{1,2}$/, 'must be a mark such as T12')

/** Where something that is no number comes from. */
const told = z.strictObject({ source: words, place: words, held: z.enum(heldKinds).exclude(['owner']) })

export const linksSchema = z.strictObject({
  windings: z.array(
    z.strictObject({
      id,
      name: words,
      /** Under the first of its marks. */
      coils: z.array(
        z.strictObject({ name: words, start: lead, end: lead, degrees: z.number().min(-180).max(180) }),
      ),
      /** The same leads in the same order, marked in several ways. */
      marks: z.array(z.strictObject({ id, leads: z.array(lead), told })).min(1),
    }),
  ),
  /** Ways of joining them, under the first of the marks. */
  patterns: z.array(z.strictObject({ id, winding: id, name: words, joined: words, lines: words, told })),
  /** What boats are wired for. */
  supplies: z.array(
    z.strictObject({
      id,
      name: words,
      kind: z.enum(['two-wire', 'three-wire', 'three-phase', 'three-phase-neutral']),
      /** Between lines; of two wires, between these. [V] */
      volts: z.number().positive(),
      hertz: z.number().positive(),
    }),
  ),
})

/** Windings, ways of joining them, and supplies. */
export type CatalogueLinks = z.infer<typeof linksSchema>
export type CatalogueWinding = CatalogueLinks['windings'][number]
export type LinkPattern = CatalogueLinks['patterns'][number]
export type Supply = CatalogueLinks['supplies'][number]
