/**
 * Use of the boat ahead: running totals at the ends of months, straight within a month.
 *
 * @module
 */

import { bytes, countOf, double, doubles, integer, integers } from './sections'

export const DAYS_PER_YEAR: f64 = 365.25
const monthsPerYear: f64 = 12

export let time = changetype<StaticArray<f64>>(0)
export let hours = changetype<StaticArray<f64>>(0)
export let starts = changetype<StaticArray<f64>>(0)
export let neededDays = changetype<StaticArray<f64>>(0)
export let discountedHours = changetype<StaticArray<f64>>(0)
export let monthOfYear = changetype<StaticArray<u8>>(0)
export let laidUp = changetype<StaticArray<u8>>(0)
/** Running hours, and starts, by the first end of a month at or past the horizon. */
export let hoursToHorizon: f64 = 0
export let startsToHorizon: f64 = 0
export let hoursPerYear: f64 = 0
let hourMonth = changetype<StaticArray<i32>>(0)
let hourMonthsPerUnit: f64 = 0
let startMonth = changetype<StaticArray<i32>>(0)
let startMonthsPerUnit: f64 = 0
/** Index of the last end of a month. */
let last: i32 = 0

export function readUse(): void {
  time = doubles('use.time')
  hours = doubles('use.hours')
  starts = doubles('use.starts')
  neededDays = doubles('use.neededDays')
  discountedHours = doubles('use.discountedHours')
  monthOfYear = bytes('use.monthOfYear')
  laidUp = bytes('use.laidUp')
  hoursPerYear = double('use.hoursPerYear')
  hourMonth = integers('use.hourMonth')
  hourMonthsPerUnit = double('use.hourMonthsPerUnit')
  startMonth = integers('use.startMonth')
  startMonthsPerUnit = double('use.startMonthsPerUnit')
  last = countOf('use.time') - 1
  const horizonMonth = integer('use.horizonMonth')
  hoursToHorizon = hours[horizonMonth]
  startsToHorizon = starts[horizonMonth]
}

/** Discounted length of the years from `from` to `to`: ∫ exp(−r·t) dt. */
export function discountedYears(interest: f64, from: f64, to: f64): f64 {
  if (to <= from) return 0
  if (interest === 0) return to - from
  return (-Math.exp(-interest * from) * Math.expm1(-interest * (to - from))) / interest
}

/** Index of the month that holds `t`. */
export function monthAt(t: f64): i32 {
  if (t >= time[last]) return last
  if (t < time[1]) return 0
  let k = min(last, 1 + <i32>((t - time[1]) * monthsPerYear))
  while (k > 0 && time[k] > t) k--
  while (k < last && time[k + 1] <= t) k++
  return k
}

/** Value of a running total of use at `t`; past the end of the calendar it stands still. */
export function totalAt(total: StaticArray<f64>, t: f64): f64 {
  const k = monthAt(t)
  if (k >= last) return total[last]
  const from = time[k]
  return total[k] + ((total[k + 1] - total[k]) * (t - from)) / (time[k + 1] - from)
}

/** The first time at which the running hours reach `value`; Infinity if the calendar ends before. */
export function timeOfHours(value: f64): f64 {
  return timeOfTotal(hours, hourMonth, hourMonthsPerUnit, value)
}

export function timeOfStarts(value: f64): f64 {
  return timeOfTotal(starts, startMonth, startMonthsPerUnit, value)
}

function timeOfTotal(total: StaticArray<f64>, month: StaticArray<i32>, perUnit: f64, value: f64): f64 {
  if (value <= 0) return 0
  if (!(value <= total[last])) return Infinity
  let k = month[<i32>(value * perUnit)]
  while (k > 0 && total[k - 1] >= value) k--
  while (total[k] < value) k++
  if (k === 0) return 0
  const from = time[k - 1]
  return from + ((time[k] - from) * (value - total[k - 1])) / (total[k] - total[k - 1])
}

/** Start of the next month with running hours, `t` itself if the set is in use; Infinity if it never runs. */
export function nextUse(t: f64): f64 {
  let k = monthAt(t)
  if (laidUp[k] === 0) return t
  while (k <= last && laidUp[k] === 1) k++
  return k > last ? Infinity : time[k]
}
