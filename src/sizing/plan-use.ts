/**
 * What a day, planned or as it goes today, comes to in a year: hours, starts and low load month by month.
 *
 * @module
 */

import type { Body } from '../logbook/kinds.js'
import type { DayTotals } from './plan-run.js'

type Months = Body<'use'>['months']

const daysInMonth = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
const mostHours = 744
const mostStarts = 3000

/** Each month in which power is wanted, with the day's hours and starts on each of its days that want it. */
export function useOfDays(
  day: Pick<DayTotals, 'hours' | 'starts' | 'lowLoadShare'>,
  powerNeededByMonth: readonly number[],
): Months {
  return powerNeededByMonth.flatMap((needShare, at) => {
    if (!(needShare > 0)) return []
    const days = needShare * daysInMonth[at]!
    return [
      {
        month: at + 1,
        hours: rounded(Math.min(mostHours, day.hours * days)),
        starts: rounded(Math.min(mostStarts, day.starts * days)),
        needShare,
        lowLoadShare: rounded(day.lowLoadShare),
      },
    ]
  })
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000
}

/** Sums of a year of use. */
export function yearOf(months: Months): {
  readonly hours: number
  readonly starts: number
  readonly lowLoadShare: number
} {
  const hours = months.reduce((sum, month) => sum + month.hours, 0)
  const low = months.reduce((sum, month) => sum + month.hours * month.lowLoadShare, 0)
  return {
    hours,
    starts: months.reduce((sum, month) => sum + month.starts, 0),
    lowLoadShare: hours > 0 ? low / hours : 0,
  }
}
