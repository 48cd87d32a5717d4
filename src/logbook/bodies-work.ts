/**
 * Work done, offered, billed and decided.
 *
 * @module
 */

import * as z from 'zod'
import {
  common,
  dateSchema,
  listOf,
  meterHours,
  money,
  nameSchema,
  oneOf,
  share,
  taxSchema,
  text,
  ulidSchema,
  within,
  yesNo,
} from './atoms.js'
import { qualities } from './bodies-set.js'

/** What can be done to a part. */
export const deeds = [
  'renewed',
  'reconditioned',
  'cleaned',
  'freed',
  'adjusted',
  'topped-up',
  'patched',
  'relinked',
  'opened',
  'tested',
  'removed',
] as const

/** Work on the set between the entry's two dates. */
export const workBody = z.strictObject({
  parts: listOf(
    z.strictObject({
      part: nameSchema,
      did: oneOf(deeds),
      /** What was fitted, where the part was renewed. */
      quality: oneOf(qualities).optional(),
      /** How the part proved to be; left out: not known. */
      was: oneOf(['failed', 'defective', 'sound']).optional(),
      /** By which mode it had failed, was defective, or which was cured. */
      mode: nameSchema.optional(),
    }),
    1,
    60,
  ),
  by: oneOf(['owner', 'workshop', 'both']),
  why: oneOf(['failed', 'found', 'preventive', 'not-known']),
  workHours: z
    .strictObject({ owner: within(0, 10_000, 'h').optional(), paid: within(0, 10_000, 'h').optional() })
    .optional(),
  /** What was paid, tax in, where no bill is entered for it. */
  cost: money.optional(),
  what: text(2000).optional(),
  job: nameSchema.optional(),
  meterHours: meterHours.optional(),
  ...common,
})

/** Work and goods that a price may leave out. */
export const leavable = [
  'removal',
  'refitting',
  'lifting',
  'testing',
  'carriage',
  'travel',
  'parts',
  'consumables',
  'haul-out',
  'disposal',
] as const

/** How far a job has come when a stage of its price falls due. */
export const paymentStages = ['order', 'start', 'stripped', 'half-way', 'finished', 'tested'] as const

const currencyWords = 'a currency as three capital letters, such as EUR'

/** A price offered for a job. */
export const quoteBody = z.strictObject({
  job: nameSchema,
  what: text(2000).optional(),
  offeredBy: text(120).optional(),
  amount: money,
  /** As the offer has it; left out: the boat's. Only the boat's can be reckoned with. */
  currency: z
    .string({ error: currencyWords })
    .regex(/^[A-Z]{3}$/, currencyWords)
    .optional(),
  tax: taxSchema.optional(),
  firmness: oneOf(['firm', 'estimate']),
  subjectToStripDown: yesNo,
  /** What the price leaves out. */
  excludes: listOf(oneOf(leavable), 0, 10),
  alsoExcludes: text(1000).optional(),
  /** What it expressly holds; of what stands in neither list nothing was said. */
  includes: listOf(oneOf(leavable), 0, 10).optional(),
  guaranteeMonths: within(0, 120, 'months').optional(),
  validUntil: dateSchema.optional(),
  /** Calendar days from the order until the set runs again, or the day by which it does. */
  days: within(0, 1000, 'd').optional(),
  readyBy: dateSchema.optional(),
  /** Of these, days on which the set is out. */
  daysOut: within(0, 1000, 'd').optional(),
  /** What is paid before the end: at a stage of the work or on a day, a share of the price or an amount. */
  stagePayments: listOf(
    z.strictObject({
      when: oneOf(paymentStages).optional(),
      share: share.optional(),
      amount: money.optional(),
      at: dateSchema.optional(),
    }),
    1,
    12,
  ).optional(),
  /** What the price is for. */
  covers: z.strictObject({
    parts: listOf(z.strictObject({ part: nameSchema, did: oneOf(deeds) }), 0, 60),
    /** Ways in that are opened and closed within the price. */
    access: listOf(nameSchema, 0, 20).optional(),
    /** Another set is supplied. */
    newSet: z.strictObject({ ratingKw: within(0.5, 100, 'kW'), used: yesNo }).optional(),
  }),
  ...common,
})

/** Money that was asked for and is owed or paid. */
export const billBody = z.strictObject({
  amount: money,
  tax: taxSchema.optional(),
  what: text(2000).optional(),
  billedBy: text(120).optional(),
  /** The entries it belongs to. */
  quote: ulidSchema.optional(),
  work: ulidSchema.optional(),
  job: nameSchema.optional(),
  parts: listOf(nameSchema, 1, 60).optional(),
  /** How the amount divides; what is named nowhere is not known. */
  split: z
    .strictObject({
      parts: money.optional(),
      labour: money.optional(),
      travel: money.optional(),
      other: money.optional(),
    })
    .optional(),
  ...common,
})
