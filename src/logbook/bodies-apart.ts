/**
 * What was taken off, one step at a time, and each step undone when it is put back.
 *
 * @module
 */

import * as z from 'zod'
import {
  common,
  listOf,
  mark,
  markedPhotographSchema,
  nameSchema,
  text,
  ulidSchema,
  wholeWithin,
  within,
} from './atoms.js'
import { joint } from './bodies-links.js'

/** A tightening torque. [N·m] */
const torqueNm = within(0.1, 3000, 'N·m')

const photographs = listOf(markedPhotographSchema, 1, 50).optional()

/**
 * One step of taking apart, as it was done. Its pictures, with arrows on them, are among the photographs of the entry.
 *
 * A torque stands here only with where it is from: the set's own manual, or who measured it.
 */
export const apartStepBody = z.strictObject({
  job: nameSchema,
  /** Its place in the order of undoing. */
  n: wholeWithin(1, 1000),
  what: text(500),
  /** The way in that it belongs to; left out: to none. */
  access: nameSchema.optional(),
  /** The step that was proposed and that it is; left out: one of the owner's own. */
  proposed: nameSchema.optional(),
  /** Proposed, and not to be done: it is not on this set, or stays as it is. */
  notNeeded: mark.optional(),
  /** Leads that came off: which, what was written on each, and where it was. */
  leads: listOf(
    z.strictObject({ lead: text(40), label: text(80), from: text(120).optional() }),
    1,
    60,
  ).optional(),
  /** Leads that were joined, as found. */
  joined: listOf(joint, 1, 24).optional(),
  /** Where its fasteners are. */
  bag: z
    .strictObject({
      label: text(60),
      count: wholeWithin(1, 1000).optional(),
      size: text(80).optional(),
    })
    .optional(),
  torque: z.strictObject({ nm: torqueNm, source: text(200) }).optional(),
  /** Stop lines that were answered before it. */
  cleared: listOf(nameSchema, 1, 40).optional(),
  ...common,
  photographs,
})

/** A step put back. */
export const refitStepBody = z.strictObject({
  job: nameSchema,
  /** The entry of the step that is put back. */
  step: ulidSchema,
  /** What it was tightened to. */
  torqueNm: torqueNm.optional(),
  /** What is otherwise than it was found. */
  differs: text(500).optional(),
  /** Stop lines that were answered before it. */
  cleared: listOf(nameSchema, 1, 40).optional(),
  ...common,
  photographs,
})
