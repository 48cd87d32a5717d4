/**
 * The small pieces that entries are made of. Every piece carries the words that tell a person what is allowed.
 *
 * @module
 */

import * as z from 'zod'
import { isLogDate, logDatePattern } from './dates.js'
import { photographTypes } from './photograph-types.js'

const nameWords =
  'small letters and digits, words joined by hyphens, beginning with a letter, at most 60 characters'

/** A name that only identifies: of a boat, a set, a part, a check, a job. */
export const nameSchema = z
  .string({ error: nameWords })
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, nameWords)
  .max(60, nameWords)

/** Text that a person wrote; line breaks and tabs allowed, other control characters not. */
export function text(most: number) {
  const words = `text of 1 to ${most} characters, not only blanks, without control characters`
  return z
    .string({ error: words })
    .max(most, words)
    .regex(/\S/, words)
    .regex(/^(?:[^\p{Cc}\p{Cs}]|[\n\t])*$/u, words)
}

/** A number between two bounds, both allowed. */
export function within(low: number, high: number, unit = '') {
  const words = `a number from ${low} to ${high}${unit === '' ? '' : ` ${unit}`}`
  return z.number({ error: words }).min(low, words).max(high, words)
}

export function wholeWithin(low: number, high: number) {
  const words = `a whole number from ${low} to ${high}`
  return z.int({ error: words }).min(low, words).max(high, words)
}

export function oneOf<const T extends readonly string[]>(values: T) {
  return z.enum(values, { error: `one of: ${values.join(', ')}` })
}

/** A list of `least` to `most` items. */
export function listOf<T extends z.ZodType>(item: T, least: number, most: number) {
  const words = `a list of ${least} to ${most}`
  return z.array(item, { error: words }).min(least, words).max(most, words)
}

/** Present and true, or left out. */
export const mark = z.literal(true, { error: 'true, or left out' })

export const yesNo = z.boolean({ error: 'true or false' })

const dateWords =
  'a date such as 2019, 2019-05 or 2019-05-12, of the years 1900 to 2199, that the calendar has'

export const dateSchema = z
  .string({ error: dateWords })
  .regex(logDatePattern, { error: dateWords, abort: true })
  .refine(isLogDate, dateWords)

const ulidWords = 'a ULID: 26 digits and capital letters'

export const ulidSchema = z.string({ error: ulidWords }).regex(/^[0-7][0-9A-HJKMNP-TV-Z]{25}$/, ulidWords)

const instantWords = 'an instant in universal time such as 2024-05-01T10:30:00Z'

export const instantSchema = z
  .string({ error: instantWords })
  .regex(/^(?:19|20|21)\d\d-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.\d{3})?Z$/, { error: instantWords, abort: true })
  .refine((instant) => !Number.isNaN(Date.parse(instant)), instantWords)

const sha256Words = 'a SHA-256 digest: 64 hexadecimal digits in small letters'

export const sha256Schema = z.string({ error: sha256Words }).regex(/^[0-9a-f]{64}$/, sha256Words)

/** An amount in the boat's currency. */
export const money = within(0, 1e9)

export const percent = within(0, 100, '%')

export const share = within(0, 1)

export const meterHours = within(0, 200_000, 'h')

export const month = wholeWithin(1, 12)

/** A part of the set, and how it fails where that is known. */
export const partAndMode = z.strictObject({ part: nameSchema, mode: nameSchema.optional() })

/** A place on a picture: shares of its width from the left and of its height from the top, as it is seen upright. */
const spotSchema = z.strictObject({ x: share, y: share })

/** An arrow on a picture, its head at `to`. */
export const arrowSchema = z.strictObject({
  from: spotSchema,
  to: spotSchema,
  label: text(80).optional(),
})

/** A photograph kept beside the logbook under its digest. */
export const photographSchema = z.strictObject({
  sha256: sha256Schema,
  type: oneOf(photographTypes),
  bytes: wholeWithin(1, 50_000_000),
  shows: text(300).optional(),
})

/** A photograph with what is pointed out on it. */
export const markedPhotographSchema = photographSchema.extend({
  arrows: listOf(arrowSchema, 1, 20).optional(),
})

/** What may stand in the body of every kind. */
export const common = {
  remark: text(4000).optional(),
  photographs: listOf(photographSchema, 1, 50).optional(),
}

/** Tax on an amount. */
export const taxSchema = z.strictObject({
  /** Whether the amount holds the tax already. */
  included: yesNo,
  percent,
})

export type DeepReadonly<T> = T extends readonly (infer Item)[]
  ? readonly DeepReadonly<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]: DeepReadonly<T[Key]> }
    : T
