/**
 * What the pieces of the page of a job's days are handed.
 *
 * @module
 */

import type { Calendar } from '../../job/calendar.js'
import type { OfSet } from '../of-set.js'
import type { OfJob } from './job-frame.js'

export interface OfCalendar {
  readonly of: OfSet
  readonly known: OfJob
  readonly calendar: Calendar
}
