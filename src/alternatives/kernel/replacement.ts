/**
 * Another set, or none: what a policy does when it does not mend.
 *
 * @module
 */

import * as K from '../kept-at'
import * as purpose from '../purpose'
import { drawAmount, normalFrom } from './amounts'
import { draw, mostSets, uniformFrom, WHOLE_SET, word0, word1 } from './draws'
import { discount, empty, h, pay } from './history'
import * as model from './model'
import { endOutage, goDown, staysStopped } from './outage'
import * as parts from './parts'
import { clearQueue } from './queue'
import { plantFault, startCandidate, visibleModeOf } from './start'
import { stopPlaying, TOO_MANY_SETS } from './trouble'
import * as use from './use'

/** Fits candidate `c` at `t`. Planned: the set comes while the old one still runs. */
export function replaceSet(t: f64, c: i32, planned: bool, isStop: bool): void {
  if (h.set + 1 >= mostSets) {
    stopPlaying(TOO_MANY_SETS)
    return
  }
  h.set++
  h.candidate = c
  if (h.sums[K.replacedAt] < 0) h.sums[K.replacedAt] = t
  draw(h.set, WHOLE_SET, 0, purpose.replacement, 0)
  const price = drawAmount(model.price, c, word0)
  const install = drawAmount(model.install, c, word1)
  pay(K.replacement, t, price + install - model.salvageAtReplacement)
  draw(h.set, WHOLE_SET, 0, purpose.replacementDays, 0)
  const lead = drawAmount(model.leadDays, c, word0)
  const days = drawAmount(model.installDays, c, word1)

  changeFuel(t, model.candidateFuelPerHour[c])
  draw(h.set, WHOLE_SET, 0, purpose.newSet, 0)
  h.kappa = Math.exp(h.boatLog + model.setLogSd * normalFrom(word0))
  h.partPriceFactor = model.partPriceFactor[c]
  h.labourFactor = model.labourFactor[c]
  h.lowLoadShare = model.candidateLowLoadShare[c]
  h.guaranteeUntil = t + model.guaranteeYears[c]
  h.setBorn = t - model.usedYears[c]
  goDown(t, (planned ? 0 : lead) + days, 0, isStop)
  empty(h.jobs, parts.count)
  empty(h.supplies, parts.count)
  empty(h.services, parts.count)
  startCandidate(t)
  plantInfantFaults(t, model.infantFaults[c])
}

/** Faults built in: a Poisson number, each in a part drawn evenly. */
function plantInfantFaults(t: f64, mean: f64): void {
  if (mean === 0) return
  draw(h.set, WHOLE_SET, 0, purpose.infants, 0)
  const count = poisson(mean, uniformFrom(word0))
  for (let i = 0; i < count; i++) {
    draw(h.set, WHOLE_SET, 0, purpose.infant, i)
    const part = <i32>(uniformFrom(word0) * <f64>parts.count)
    const mode = visibleModeOf(part, word1)
    draw(h.set, WHOLE_SET, 0, purpose.infantOnset, i)
    if (mode >= 0) plantFault(t, mode, word0)
  }
}

function poisson(mean: f64, u: f64): i32 {
  let chance = Math.exp(-mean)
  let sum = chance
  let count = 0
  while (u > sum && chance > 0) {
    count++
    chance *= mean / <f64>count
    sum += chance
  }
  return count
}

/** Discounted running hours from `t`, or from the end of the outage under way, to the horizon. */
function hoursAhead(t: f64): f64 {
  const from = max(t, min(h.downUntil, model.horizonYears))
  return use.totalAt(use.discountedHours, model.horizonYears) - use.totalAt(use.discountedHours, from)
}

/** Running hours that were booked at the old set's fuel go on at the new one's. */
function changeFuel(t: f64, fuelPrice: f64): void {
  const old = h.fuelPrice
  h.fuelPrice = fuelPrice
  h.sums[K.fuel] += hoursAhead(t) * (fuelPrice - old)
}

/** Lives on without a set from `t`: sells it, pays what stands in for it, and does without the rest. */
export function giveUp(t: f64, standsFailed: bool): void {
  draw(h.set, WHOLE_SET, 0, purpose.giveUp, 0)
  pay(K.giveUp, t, drawAmount(model.giveUpCost, 0, word0))
  h.sums[K.resale] -= resaleValue(t, standsFailed) * discount(t)
  staysStopped(t)
  h.gaveUpAt = t
  clearQueue()
  const horizon = model.horizonYears
  const annuity = use.discountedYears(model.interest, t, horizon)
  h.sums[K.giveUp] += model.giveUpPerYear * annuity
  for (let y = <i32>t; <f64>y < horizon; y++) {
    h.years[y] += model.giveUpPerYear * (min(<f64>y + 1, horizon) - max(<f64>y, t))
  }
  let byMonth: f64 = 0
  for (let month = 0; month < 12; month++) byMonth += model.powerByMonth[month]
  h.sums[K.daysWithout] += model.giveUpDaysPerYear * (horizon - t)
  h.sums[K.power] += model.giveUpDaysPerYear * model.lastSlope * (byMonth / 12) * annuity
  h.sums[K.fuel] -= hoursAhead(t) * h.fuelPrice
  endOutage(t)
  h.sums[K.upkeep] -= model.upkeepPerYear * annuity
}

/** What the set in place would fetch at `t`. */
export function resaleValue(t: f64, standsFailed: bool): f64 {
  const row = h.candidate + 1
  if (model.resaleShare[row] < 0) return 0
  const age = max(0, t - h.setBorn)
  const worth =
    model.resaleNewPrice[row] * model.resaleShare[row] * Math.exp(-model.resaleFallPerYear[row] * age)
  const running = max(model.resaleLeast[row], worth)
  return standsFailed ? running * model.resaleDeadShare[row] : running
}
