/**
 * The set out of action: outages as a union of days, their price, and the clocks that stand still meanwhile.
 *
 * @module
 */

import { discount, type History, K } from './history.js'
import { DAYS_PER_YEAR, monthAt, totalAt, type UseAhead } from './use.js'

/**
 * Puts the set out from `t`: first a wait, then work. An outage under way is joined: it lasts until the later of its
 * old end and the new wait's, and the work comes on top.
 */
export function goDown(
  h: History,
  t: number,
  outage: { readonly waitDays: number; readonly workDays: number; readonly isStop: boolean },
): void {
  const { waitDays, workDays, isStop } = outage
  const joined = t < h.downUntil
  const ready = t + waitDays / DAYS_PER_YEAR
  const end = (joined ? Math.max(h.downUntil, ready) : ready) + workDays / DAYS_PER_YEAR
  if (!joined) {
    h.downFrom = t
    h.downPrice = 0
    h.downDays = 0
    h.downIsStop = false
  }
  loseUse(h, joined ? h.downUntil : t, end)
  h.downUntil = end
  price(h)
  countStop(h, isStop && !joined)
}

function loseUse(h: History, from: number, to: number): void {
  if (to <= from) return
  const { use } = h.program
  h.pauses++
  h.lostHours += totalAt(use, use.hours, to) - totalAt(use, use.hours, from)
  h.lostStarts += totalAt(use, use.starts, to) - totalAt(use, use.starts, from)
  const ends = Math.min(to, h.horizon)
  if (from < ends) {
    const saved = totalAt(use, use.discountedHours, ends) - totalAt(use, use.discountedHours, from)
    h.sums[K.fuel]! -= saved * h.fuelPrice
  }
}

export function fuelPerHour(h: History): number {
  const { model } = h.program
  return (h.candidate >= 0 ? model.candidates[h.candidate]!.fuelPerHour : undefined) ?? model.fuelPerHour
}

/** The price of the outage as it stands now replaces what was booked for it before. */
function price(h: History): void {
  const { use, model } = h.program
  const end = Math.min(h.downUntil, h.horizon)
  const days = totalAt(use, use.neededDays, end) - totalAt(use, use.neededDays, h.downFrom)
  h.sums[K.daysWithout]! += days - h.downDays
  h.downDays = days
  const middle = (h.downFrom + end) / 2
  const cost = priceOfDays(model.powerLoss.curve, days) * byMonth(h, use, h.downFrom) * discount(h, middle)
  h.sums[K.power]! += cost - h.downPrice
  h.downPrice = cost
}

function byMonth(h: History, use: UseAhead, t: number): number {
  return h.program.model.powerLoss.byMonth[use.monthOfYear[monthAt(use, t)]!]!
}

/** A stop counts once; as a same-day stop while its outage is under a day. */
function countStop(h: History, begins: boolean): void {
  const short = h.downUntil - h.downFrom < 1 / DAYS_PER_YEAR
  if (begins) {
    h.downIsStop = true
    h.downIsSameDay = short
    h.sums[short ? K.sameDayStops : K.stops]! += 1
  } else if (h.downIsStop && h.downIsSameDay && !short) {
    h.downIsSameDay = false
    h.sums[K.sameDayStops]! -= 1
    h.sums[K.stops]! += 1
  }
}

/** The set is given up: a stop under way will not be over the same day. */
export function staysStopped(h: History, t: number): void {
  if (!h.downIsStop || !h.downIsSameDay || t > h.downUntil) return
  h.downIsSameDay = false
  h.sums[K.sameDayStops]! -= 1
  h.sums[K.stops]! += 1
}

type Curve = readonly { readonly days: number; readonly cost: number }[]

/** Straight between the points of the curve; before the first its cost in proportion, after the last its slope. */
export function priceOfDays(curve: Curve, days: number): number {
  if (days <= 0) return 0
  let before = { days: 0, cost: 0 }
  for (const point of curve) {
    if (days <= point.days) {
      return before.cost + ((point.cost - before.cost) * (days - before.days)) / (point.days - before.days)
    }
    before = point
  }
  return before.cost + lastSlope(curve) * (days - before.days)
}

/** Price of one more day at the long end of the curve. */
export function lastSlope(curve: Curve): number {
  const last = curve[curve.length - 1]!
  const before = curve.length > 1 ? curve[curve.length - 2]! : { days: 0, cost: 0 }
  return last.days > before.days ? (last.cost - before.cost) / (last.days - before.days) : 0
}
