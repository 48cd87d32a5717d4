/**
 * The worker that plays the calendar of a job.
 *
 * @module
 */

import * as Comlink from 'comlink'
import { type CalendarQuestion, type CalendarResult, calendarOf } from '../../job/calendar.js'

export interface CalendarPlayer {
  play(question: CalendarQuestion): CalendarResult
}

const player: CalendarPlayer = { play: calendarOf }

Comlink.expose(player)
