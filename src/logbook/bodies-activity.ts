/**
 * What has to be done in a job, in which order, and on which days people and weather let it be done.
 *
 * @module
 */

import * as z from 'zod'
import { common, dateSchema, listOf, month, nameSchema, oneOf, share, text, within, yesNo } from './atoms.js'

/** Who may be needed for work, the supplier who is waited for among them. */
export const workers = ['owner', 'helper', 'workshop', 'supplier', 'yard'] as const
/** What else a day must give: weather that lets outside work go. */
export const needed = [...workers, 'weather'] as const

export const weekdays = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
] as const

export const activityStates = ['to-do', 'begun', 'done', 'left-out'] as const

const days = within(0, 1000, 'd').optional()

/**
 * Something that has to be done in a job.
 *
 * May be given piece by piece: under the same job and name a field holds from the entry's date until a later entry gives it
 * again. One that the job itself proposes is changed in the same way.
 */
export const activityBody = z.strictObject({
  job: nameSchema,
  name: nameSchema,
  /** What is done, in words. */
  what: text(300).optional(),
  /** What must be done before it can begin, by name. */
  after: listOf(nameSchema, 0, 60).optional(),
  /** Days of work, or of waiting: the fewest, the usual number and the most. */
  days: z.strictObject({ low: days, usual: days, high: days }).optional(),
  needs: listOf(oneOf(needed), 0, needed.length).optional(),
  /** Whether all its days must follow one another without a gap. */
  inOneRun: yesNo.optional(),
  /** Begun on the first day of the entry, or done on its last. */
  state: oneOf(activityStates).optional(),
  ...common,
})

/**
 * Days on which somebody can work, or on which the weather lets outside work go.
 *
 * An entry of one date holds from then on; one of two dates holds between them, in the place of the usual.
 */
export const freeDaysBody = z.strictObject({
  who: oneOf(needed),
  /** Days of the week; left out: as before, or all of them. */
  weekdays: listOf(oneOf(weekdays), 0, 7).optional(),
  /** Days that are free besides, or are not, whatever else is said. */
  days: listOf(dateSchema, 0, 200).optional(),
  notDays: listOf(dateSchema, 0, 200).optional(),
  /** Weather alone: share of the days of a month on which outside work goes. */
  months: listOf(z.strictObject({ month, share }), 1, 12).optional(),
  ...common,
})
