/**
 * How the leads of a winding are joined.
 *
 * @module
 */

import * as z from 'zod'
import { common, listOf, nameSchema, oneOf } from './atoms.js'

const mark = '[A-Za-z0-9]{1,6}'
const jointWords = 'leads joined by "-", such as T2-T3'
const outletWords = 'a name and the lead it leaves from, such as L1=T1'
const labelWords = 'a lead and what is written on it, without commas, such as T4=blue sleeve'
const coilWords = 'start, end and angle of a coil, such as K1-K2 at 0'

function written(form: RegExp, words: string) {
  return z.string({ error: words }).max(120, words).regex(form, words)
}

/** Leads that are joined: `T2-T3`. */
export const joint = written(new RegExp(`^${mark}(-${mark})+$`), jointWords)

const outlet = written(new RegExp(`^[A-Za-z][A-Za-z0-9]{0,5}=${mark}$`), outletWords)

/**
 * Leads as they were found before anything was undone, or as they were left.
 *
 * Pictures of them are among the photographs of the entry. What the joints give is worked out, not written down.
 */
export const linksBody = z.strictObject({
  state: oneOf(['as-found', 'as-left']),
  /** A winding of the catalogue, or `own` with its coils. */
  winding: nameSchema,
  coils: listOf(
    written(new RegExp(`^${mark}-${mark} at -?\\d{1,3}(\\.\\d+)?$`), coilWords),
    1,
    24,
  ).optional(),
  /** How its leads are marked: `nema` or `iec`. */
  marks: nameSchema.optional(),
  joined: listOf(joint, 0, 24),
  lines: listOf(outlet, 0, 8),
  /** Where the regulator looks. */
  sensing: listOf(outlet, 0, 4).optional(),
  /** What is written on the leads, where it is another mark: `T4=blue sleeve`. */
  labels: listOf(written(new RegExp(`^${mark}=[^,;\\n]{1,80}$`), labelWords), 0, 48).optional(),
  ...common,
})
