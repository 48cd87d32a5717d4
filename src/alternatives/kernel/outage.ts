/**
 * The set out of action: outages as a union of days, their price, and the clocks that stand still meanwhile.
 *
 * @module
 */

import * as K from '../kept-at'
import { discount, h } from './history'
import * as model from './model'
import * as use from './use'

/** At its very end the set is still down: a piece that was waited for is fitted before it is up again. */
export function isDown(t: f64): bool {
  return t < h.downUntil || (t === h.downUntil && h.downUntil > h.downFrom)
}

/**
 * Puts the set out from `t`: first a wait, then work. An outage under way is joined: it lasts until the later of its
 * old end and the new wait's, and the work comes on top.
 */
export function goDown(t: f64, waitDays: f64, workDays: f64, isStop: bool): void {
  const joined = isDown(t)
  const ready = t + waitDays / use.DAYS_PER_YEAR
  const end = (joined ? max(h.downUntil, ready) : ready) + workDays / use.DAYS_PER_YEAR
  if (!joined) {
    h.downFrom = t
    h.downPrice = 0
    h.downDays = 0
    h.downIsStop = false
  }
  loseUse(joined ? h.downUntil : t, end)
  h.downUntil = end
  bookPower()
  countStop(isStop && !joined)
}

function loseUse(from: f64, to: f64): void {
  if (to <= from) return
  h.pauses++
  h.lostHours += use.totalAt(use.hours, to) - use.totalAt(use.hours, from)
  h.lostStarts += use.totalAt(use.starts, to) - use.totalAt(use.starts, from)
  const ends = min(to, model.horizonYears)
  if (from < ends) {
    const saved = use.totalAt(use.discountedHours, ends) - use.totalAt(use.discountedHours, from)
    h.sums[K.fuel] -= saved * h.fuelPrice
  }
}

/** The price of the outage as it stands now replaces what was booked for it before. */
function bookPower(): void {
  const end = min(h.downUntil, model.horizonYears)
  const days = use.totalAt(use.neededDays, end) - use.totalAt(use.neededDays, h.downFrom)
  h.sums[K.daysWithout] += days - h.downDays
  h.downDays = days
  const month = use.monthOfYear[use.monthAt(h.downFrom)]
  const cost = priceOfDays(days) * model.powerByMonth[month] * discount((h.downFrom + end) / 2)
  h.sums[K.power] += cost - h.downPrice
  h.downPrice = cost
}

/** A stop counts once; as a same-day stop while its outage is under a day. */
function countStop(begins: bool): void {
  const short = h.downUntil - h.downFrom < 1 / use.DAYS_PER_YEAR
  if (begins) {
    h.downIsStop = true
    h.downIsSameDay = short
    h.sums[short ? K.sameDayStops : K.stops] += 1
  } else if (h.downIsStop && h.downIsSameDay && !short) {
    lastsLonger()
  }
}

/** The set is given up, and with it an outage under way. */
export function endOutage(t: f64): void {
  if (t >= h.downUntil) return
  h.downUntil = t
  bookPower()
}

/** The set is given up: a stop under way will not be over the same day. */
export function staysStopped(t: f64): void {
  if (h.downIsStop && h.downIsSameDay && t <= h.downUntil) lastsLonger()
}

function lastsLonger(): void {
  h.downIsSameDay = false
  h.sums[K.sameDayStops] -= 1
  h.sums[K.stops] += 1
}

/** Straight between the points of the curve; before the first its cost in proportion, after the last its slope. */
function priceOfDays(days: f64): f64 {
  if (days <= 0) return 0
  let daysBefore: f64 = 0
  let costBefore: f64 = 0
  for (let i = 0; i < model.curvePoints; i++) {
    const daysHere = model.curveDays[i]
    const costHere = model.curveCost[i]
    if (days <= daysHere) {
      return costBefore + ((costHere - costBefore) * (days - daysBefore)) / (daysHere - daysBefore)
    }
    daysBefore = daysHere
    costBefore = costHere
  }
  return costBefore + model.lastSlope * (days - daysBefore)
}
