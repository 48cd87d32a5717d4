/**
 * What was seen, measured and suffered.
 *
 * @module
 */

import * as z from 'zod'
import {
  common,
  listOf,
  meterHours,
  nameSchema,
  oneOf,
  partAndMode,
  sha256Schema,
  text,
  ulidSchema,
  wholeWithin,
  within,
  yesNo,
} from './atoms.js'

/**
 * A look at one or more parts.
 *
 * `nothing-seen` holds for every part and mode named. `defect-seen` and `unsure` with several named mean that any of them
 * may be the reason.
 */
export const findingBody = z.strictObject({
  about: listOf(partAndMode, 1, 20),
  verdict: oneOf(['nothing-seen', 'defect-seen', 'unsure']),
  seen: text(2000).optional(),
  check: nameSchema.optional(),
  meterHours: meterHours.optional(),
  ...common,
})

/** Units in which readings are kept. `C` is a temperature, `K` a difference of two, `1` a bare number. */
export const readingUnits = [
  'V',
  'mV',
  'A',
  'mA',
  'ohm',
  'mohm',
  'kohm',
  'Mohm',
  'uF',
  'Hz',
  'W',
  'kW',
  'kVA',
  'kvar',
  'rpm',
  'C',
  'K',
  'kPa',
  'l',
  'l/min',
  'l/h',
  'mm',
  'm',
  'mm2',
  'mm/s',
  'g',
  'kg',
  's',
  'min',
  'h',
  'd',
  '%',
  'ppm',
  'dB',
  'deg',
  '1',
] as const

const measured = z.strictObject({
  name: nameSchema,
  value: within(-1e12, 1e12),
  unit: oneOf(readingUnits),
})

/** What a test showed. Whether that is good is worked out, not written down. */
export const readingBody = z.strictObject({
  test: nameSchema,
  part: nameSchema.optional(),
  /** None where it was told in words alone. */
  values: listOf(measured, 0, 100),
  /** Under which it was taken: winding and air temperature, load, voltage of the tester. */
  conditions: listOf(measured, 1, 50).optional(),
  /** What was told in words rather than in numbers: which system, which source, how it was read. */
  answers: listOf(z.strictObject({ name: nameSchema, is: nameSchema }), 1, 50).optional(),
  testedBy: text(120).optional(),
  instrument: text(120).optional(),
  meterHours: meterHours.optional(),
  ...common,
})

/** A stop line, or a test that is owed, was passed over; some never are, whatever is written. */
export const passedOverBody = z.strictObject({
  about: nameSchema,
  because: text(1000),
  ...common,
})

/** The set stopped, or would not start, from the first date; it ran again at the second. */
export const stopBody = z.strictObject({
  /** Days on which power was wanted and there was none. [d] */
  daysWithoutPower: within(0, 3650, 'd'),
  /** Cured aboard within the day. */
  curedSameDay: yesNo,
  cause: partAndMode.optional(),
  seen: text(2000).optional(),
  meterHours: meterHours.optional(),
  ...common,
})

/** How often power was wanted and there was none, in the years before the entry's date; the owner's recollection. */
export const letdownsBody = z.strictObject({
  times: wholeWithin(0, 1000),
  years: within(0.5, 10, 'years'),
  ...common,
})

/** Everything of a kind that happened between the entry's two dates is in the log. */
export const completeBody = z.strictObject({
  of: listOf(oneOf(['stops', 'work']), 1, 2),
  ...common,
})

/** A danger that had been found was made safe. */
export const dangerSafeBody = z.strictObject({
  danger: nameSchema,
  at: partAndMode.optional(),
  /** The entry in which it was found. */
  found: ulidSchema.optional(),
  how: text(2000),
  ...common,
})

export const noteBody = z.strictObject({ text: text(10_000), ...common })

/** The bytes of a photograph were taken away; its digest stays where it was named. */
export const photographRemovedBody = z.strictObject({
  sha256: sha256Schema,
  because: text(500),
  remark: common.remark,
})
