/**
 * Use of the boat ahead: running hours, starts and wanted power as they grow with the calendar.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'

/** Running totals at the ends of months from now on; straight within a month. */
export interface UseAhead {
  /** Ends of months, the first at 0. [years] */
  readonly time: Float64Array
  /** [h] */
  readonly hours: Float64Array
  readonly starts: Float64Array
  /** Days on which power is wanted. */
  readonly neededDays: Float64Array
  /** Running hours weighted by exp(−r·t). [h] */
  readonly discountedHours: Float64Array
  /** Month of the year that begins at each end: 0 January. */
  readonly monthOfYear: Uint8Array
  /** 1 where the month has no running hours. */
  readonly laidUp: Uint8Array
  /** Index of the first end of a month at or past the horizon. */
  readonly horizonMonth: number
  readonly hoursPerYear: number
  readonly hourMonths: MonthIndex
  readonly startMonths: MonthIndex
}

/** Where to begin to look for a value of a running total: for equal steps of it, the first month that ends at or past. */
export interface MonthIndex {
  readonly perUnit: number
  readonly month: Uint16Array
}

const DAYS_PER_YEAR = 365.25
const monthsPerYear = 12
/** An outage that begins before the horizon may end after it; beyond this the calendar is not kept. */
const yearsPastHorizon = 15

/** Tables of use over the horizon and some years past it. */
export function calendarAhead(model: LifeModel): UseAhead {
  const { hoursByMonth, startsByMonth, powerNeededByMonth } = model.use
  const first = Math.floor(model.startMonth)
  const partMonth = (first + 1 - model.startMonth) / monthsPerYear
  const months = Math.ceil((model.horizonYears + yearsPastHorizon) * monthsPerYear) + 1
  const time = new Float64Array(months + 1)
  const hours = new Float64Array(months + 1)
  const starts = new Float64Array(months + 1)
  const neededDays = new Float64Array(months + 1)
  const discountedHours = new Float64Array(months + 1)
  const monthOfYear = new Uint8Array(months + 1)
  const laidUp = new Uint8Array(months + 1)
  for (let k = 0; k <= months; k++) {
    const month = (first + k) % monthsPerYear
    monthOfYear[k] = month
    laidUp[k] = hoursByMonth[month]! > 0 ? 0 : 1
    if (k === months) break
    const length = k === 0 ? partMonth : 1 / monthsPerYear
    const share = length * monthsPerYear
    time[k + 1] = k === 0 ? partMonth : partMonth + k / monthsPerYear
    hours[k + 1] = hours[k]! + hoursByMonth[month]! * share
    starts[k + 1] = starts[k]! + startsByMonth[month]! * share
    neededDays[k + 1] = neededDays[k]! + powerNeededByMonth[month]! * length * DAYS_PER_YEAR
    const rate = (hoursByMonth[month]! * share) / length
    discountedHours[k + 1] =
      discountedHours[k]! + rate * discountedYears(model.realInterestPerYear, time[k]!, time[k + 1]!)
  }
  const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0)
  return {
    time,
    hours,
    starts,
    neededDays,
    discountedHours,
    monthOfYear,
    laidUp,
    horizonMonth: time.findIndex((end) => end >= model.horizonYears),
    hoursPerYear: sum(hoursByMonth),
    hourMonths: monthIndex(hours),
    startMonths: monthIndex(starts),
  }
}

function monthIndex(total: Float64Array): MonthIndex {
  const steps = total.length * 4
  const most = total[total.length - 1]!
  const perUnit = most > 0 ? steps / most : 0
  const month = new Uint16Array(steps + 1)
  for (let step = 0, k = 0; step <= steps; step++) {
    while (k < total.length - 1 && total[k]! * perUnit < step) k++
    month[step] = k
  }
  return { perUnit, month }
}

/** Discounted length of the years from `from` to `to`: ∫ exp(−r·t) dt. */
function discountedYears(interest: number, from: number, to: number): number {
  if (to <= from) return 0
  if (interest === 0) return to - from
  return (-Math.exp(-interest * from) * Math.expm1(-interest * (to - from))) / interest
}
