/**
 * What it costs that a job keeps the set from giving power, and on which days it gives some.
 *
 * @module
 */

import { costAt } from '../forecast/build-money.js'
import type { LifeModel } from '../forecast/life-model.js'
import { dateOfDay } from '../logbook/dates.js'

export interface Power {
  /** The price of being without it. */
  readonly loss: LifeModel['powerLoss']
  /** Share of the days of each month that want it, January first. */
  readonly needed: readonly number[]
}

/** A span without power, in days since 1970. */
export interface Outage {
  readonly from: number
  readonly until: number
}

/**
 * Prices of outages that begin on a day or later; the days that want power are added up once.
 *
 * The curve at the days that want power, times the mean of the months' factors over those days. The life model (23) takes the
 * factor of the month in which an outage begins; the work of a job goes on for weeks, and may begin in a month that wants none.
 */
export function outagePrices(
  { loss, needed }: Power,
  { first, count }: { readonly first: number; readonly count: number },
): (outage: Outage) => number {
  const months = Array.from({ length: count }, (_, i) => monthOf(first + i))
  const wanted = summed(months.map((month) => needed[month]!))
  const weighed = summed(months.map((month) => needed[month]! * loss.byMonth[month]!))
  return ({ from, until }) => {
    const days = wanted(until - first) - wanted(from - first)
    if (!(days > 0)) return 0
    const factor = (weighed(until - first) - weighed(from - first)) / days
    return costAt(loss.curve, days) * factor
  }
}

/** What has come together by a time, straight within each day; nothing before the first and no more after the last. */
function summed(perDay: readonly number[]): (time: number) => number {
  const sums = [0]
  for (const each of perDay) sums.push(sums.at(-1)! + each)
  return (time) => {
    const at = Math.min(perDay.length, Math.max(0, time))
    const day = Math.min(perDay.length - 1, Math.floor(at))
    return sums[day]! + (at - day) * perDay[day]!
  }
}

/** January is 0. */
export function monthOf(day: number): number {
  return Number(dateOfDay(day).slice(5, 7)) - 1
}
