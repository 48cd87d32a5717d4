/**
 * The day it is where the person sits.
 *
 * @module
 */

import type { LogDate } from '../../logbook/dates.js'

/** Today, exact to the day. */
export function today(now = new Date()): LogDate {
  const two = (number: number) => String(number).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}
