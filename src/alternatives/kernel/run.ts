/**
 * One history of one alternative, from now to the horizon.
 *
 * @module
 */

import { CLEARED, GIVE_UP, MEND, NO_DELAY, RECONDITIONED, REPLACE, YEARS } from '../codes'
import * as K from '../kept-at'
import * as purpose from '../purpose'
import * as alternatives from './alternatives'
import { drawAmount, normalFrom } from './amounts'
import { draw, uniformFrom, WHOLE_SET, word0, word1 } from './draws'
import { fail, failFromBefore, failVisibly, faultShows, standFailed } from './failure'
import {
  clockOf,
  codeOf,
  DEFECTIVE,
  discount,
  FAILED_UNNOTICED,
  FAILS,
  FITTING_OUT,
  FOUND_DEFECTIVE,
  FOUND_FAILED,
  h,
  INTRUSION,
  indexOf,
  kindOf,
  ONSET,
  PIECE_COMES,
  pay,
  REPLACE_LATER,
  resetHistory,
  SERVICE,
  SHOWS,
  schedule,
  scheduleAt,
  timeAt,
} from './history'
import {
  addToJob,
  doJob,
  emptyJob,
  intrude,
  intrudeOnce,
  job,
  leaveOpen,
  MET_AT_FITTING_OUT,
  ownHours,
  PLANNED,
  paidHours,
  payJob,
  putRight,
  reckon,
  waitFor,
  workshopDays,
} from './job'
import { becomeDefective, beginLife, restartService, scheduleService, timeLeft } from './life'
import * as model from './model'
import * as modes from './modes'
import { goDown, isDown } from './outage'
import * as parts from './parts'
import * as queue from './queue'
import { giveUp, replaceSet, resaleValue } from './replacement'
import { startPresent } from './start'
import { stopPlaying, TOO_MANY_EVENTS } from './trouble'
import * as use from './use'

const mostEvents = 100_000

/** A part that was busy when there were too many events, −1 if it was the set as a whole. */
export let busiest: i32 = 0

/** Plays a history; what it came to is left in `h.sums`. */
export function runHistory(seed: u32, number: u32, alternative: i32): void {
  resetHistory(seed, number, alternative)
  h.sums[K.fuel] = use.totalAt(use.discountedHours, model.horizonYears) * h.fuelPrice
  h.sums[K.upkeep] = model.upkeepPerYear * use.discountedYears(model.interest, 0, model.horizonYears)
  startPresent()
  actNow()
  for (let events = 0; queue.size > 0; events++) {
    if (events >= mostEvents) {
      busiest = partOf(queue.code[queue.takeFirst()])
      stopPlaying(TOO_MANY_EVENTS)
      return
    }
    next()
  }
  settle()
}

function partOf(code: i32): i32 {
  const kind = kindOf(code)
  if (kind === SERVICE) return indexOf(code)
  return kind === REPLACE_LATER ? -1 : modes.part[indexOf(code)]
}

/** Takes the first event and lets it happen, if it still holds. */
function next(): void {
  const place = queue.takeFirst()
  const t = queue.time[place]
  const code = queue.code[place]
  const stamp = queue.stamp[place]
  const kind = kindOf(code)
  const index = indexOf(code)
  if (stamp !== stampOf(kind, index)) return
  const moved = queue.pauses[place] !== h.pauses && clockOf(code) !== YEARS
  if (moved && comesLater(t, code, stamp, queue.due[place])) return
  happen(kind, index, t, code)
}

function stampOf(kind: i32, index: i32): i32 {
  if (kind === SERVICE) return h.serviceStamp[index]
  if (kind === INTRUSION) return h.set
  return kind === REPLACE_LATER ? 0 : h.stamp[index]
}

/** Outages since it was put into the queue may have moved an event on the hours or starts clock. */
function comesLater(t: f64, code: i32, stamp: i32, due: f64): bool {
  const now = timeAt(clockOf(code), due)
  if (now <= t * (1 + 1e-12)) return false
  if (kindOf(code) === SERVICE) scheduleService(indexOf(code), t)
  else scheduleAt(code, stamp, due, now)
  return true
}

function happen(kind: i32, index: i32, t: f64, code: i32): void {
  switch (kind) {
    case ONSET:
      if (modes.delayKind[index] === NO_DELAY) fail(index, t, code)
      else becomeDefective(index, t)
      break
    case FAILS:
      fail(index, t, code)
      break
    case SHOWS:
      failVisibly(index, t, K.failures)
      break
    case FOUND_DEFECTIVE:
      if (h.state[index] === DEFECTIVE) found(index, t)
      break
    case FOUND_FAILED:
      if (h.state[index] === FAILED_UNNOTICED) order(index, t, waitDays(index, t))
      break
    case FITTING_OUT:
      mendPlanned(index, t, MET_AT_FITTING_OUT)
      break
    case PIECE_COMES:
      mendPlanned(index, t, PLANNED)
      break
    case SERVICE:
      serve(index, t)
      break
    case INTRUSION:
      faultShows(index, t)
      break
    default:
      if (h.set === 0) replaceSet(t, index, !isDown(t), false)
  }
}

/** A defect is found: the piece is ordered, and if it would fail first the set may be rested. */
function found(m: i32, t: f64): void {
  const days = waitDays(m, t)
  if (timeLeft(m, t) <= days / use.DAYS_PER_YEAR) {
    draw(h.set, m, h.life[m], purpose.rest, h.patches[m])
    if (uniformFrom(word0) >= model.restChance) return
    // At rest it does not fail.
    h.stamp[m]++
    goDown(t, days, 0, false)
  }
  order(m, t, days)
}

/** What is only cleared takes no piece. */
function waitDays(m: i32, t: f64): f64 {
  return modes.outcome[m] === CLEARED ? 0 : waitFor(modes.part[m], m, t)
}

function order(m: i32, t: f64, days: f64): void {
  schedule(codeOf(PIECE_COMES, m, YEARS), h.stamp[m], t + days / use.DAYS_PER_YEAR, t)
}

function mendPlanned(m: i32, t: f64, how: i32): void {
  emptyJob()
  if (how === PLANNED) job.orderedFor = m
  addToJob(modes.part[m], m)
  doJob(t, how, K.planned)
}

/** A service falls due, and is done or put off by one interval. */
function serve(part: i32, t: f64): void {
  if (isServiceDone(part)) {
    paySevice(part, t)
    if (parts.serviceRenews[part] === 1) {
      for (let m = parts.modeFrom[part]; m < parts.modeFrom[part + 1]; m++) renew(m, t, true)
    } else {
      for (let c = parts.clearsFrom[part]; c < parts.clearsFrom[part + 1]; c++) {
        renew(parts.clearsMode[c], t, false)
      }
    }
  }
  restartService(part, t)
}

function paySevice(part: i32, t: f64): void {
  const byOwner = parts.serviceByOwner[part] === 1
  const rate = byOwner ? model.ownPerHour : model.paidPerHour
  const work = parts.serviceWork[part] * h.labourFactor
  const price = parts.servicePrice[part]
  if (t < h.guaranteeUntil && rate === 0 && price === 0) return
  const amount = price * h.partPriceFactor + work * rate
  const worth = discount(t)
  h.sums[K.upkeep] += amount * worth
  h.years[<i32>t] += amount
  h.sums[byOwner ? K.ownHours : K.paidHours] += work * worth
}

function isServiceDone(part: i32): bool {
  const number = h.services[part]++
  let word = h.serviceWord[part]
  if ((number & 1) === 0) {
    draw(h.set, parts.modeFrom[part], number >> 1, purpose.service, 0)
    word = word0
    h.serviceWord[part] = word1
  }
  return uniformFrom(word) < parts.serviceDiligence[part]
}

function renew(m: i32, t: f64, wholePart: bool): void {
  if (wholePart) h.scale[m] = h.scaleAsNew[m]
  beginLife(m, t, 0)
}

/** What the alternative does now, and what stands broken and is not put right by it. */
function actNow(): void {
  const a = h.alternative
  const brokenStops = standsStopped()
  if (alternatives.laterWith[a] >= 0) {
    const code = codeOf(REPLACE_LATER, alternatives.laterWith[a], YEARS)
    schedule(code, 0, alternatives.laterYear[a], 0)
  }
  const now = alternatives.now[a]
  if (now === GIVE_UP) {
    giveUp(0, brokenStops)
    return
  }
  if (now === REPLACE) {
    replaceSet(0, alternatives.replaceWith[a], !brokenStops, false)
    return
  }
  if (now === MEND) mendNow(a, brokenStops)
  for (let p = 0; p < parts.count; p++) {
    const m = parts.broken[p]
    if (m < 0 || isPutRightNow(a, p, m) || h.set > 0 || h.gaveUpAt >= 0) continue
    failFromBefore(m)
  }
}

function standsStopped(): bool {
  let stopped = false
  for (let p = 0; p < parts.count; p++) {
    const m = parts.broken[p]
    if (m >= 0 && breaks(m)) stopped = true
  }
  return stopped
}

/** Whether a mode that stands broken stops the set. */
function breaks(m: i32): bool {
  if (modes.hidden[m] === 1) return false
  draw(0, m, 0, purpose.failure, 0)
  return uniformFrom(word0) < modes.stops[m]
}

/** Whether what is done now puts a mode right that stands broken. */
function isPutRightNow(a: i32, part: i32, m: i32): bool {
  for (let row = alternatives.itemFrom[a]; row < alternatives.itemFrom[a + 1]; row++) {
    const mode = alternatives.itemMode[row]
    const isWhole = mode < 0 || <i32>alternatives.itemOutcome[row] >= RECONDITIONED
    if (alternatives.itemPart[row] === part && (isWhole || mode === m)) return true
  }
  return false
}

/** The job in hand: by its quote, by a usual price, or as its parts are priced. */
function mendNow(a: i32, brokenStops: bool): void {
  emptyJob()
  for (let row = alternatives.itemFrom[a]; row < alternatives.itemFrom[a + 1]; row++) {
    const p = alternatives.itemPart[row]
    addToJob(p, alternatives.itemMode[row])
    const i = job.at[p]
    job.outcome[i] = alternatives.itemOutcome[row]
    job.quality[i] = alternatives.itemQuality[row]
    job.agesLess[i] = alternatives.itemAgesLess[row]
  }
  reckon(0, PLANNED)
  const usualDays = workshopDays + (ownHours + paidHours) / model.hoursPerDay
  const isPriced = alternatives.isPriced[a] === 1
  if (isPriced) payPriced(a)
  else payJob(0, K.now)
  draw(0, WHOLE_SET, 0, purpose.quoteDays, 0)
  const workDays = alternatives.areDaysGiven[a] === 1 ? drawAmount(alternatives.days, a, word0) : usualDays
  goDown(0, brokenStops ? drawAmount(alternatives.wait, a, word1) : 0, workDays, false)
  leaveOpen()
  for (let i = 0; i < job.count; i++) {
    const broken = parts.broken[job.part[i]]
    if (broken >= 0) standFailed(broken)
  }
  putRight(0)
  if (isPriced) intrudeOnce(0, 0, job.count, alternatives.intrusionChance[a])
  else intrude(0)
}

function payPriced(a: i32): void {
  draw(0, WHOLE_SET, 0, purpose.quote, 0)
  const factor = alternatives.overrunMedian[a] * Math.exp(alternatives.overrunLogSd[a] * normalFrom(word0))
  if (alternatives.isQuoted[a] === 1) h.sums[K.quoteFactor] += factor
  draw(0, WHOLE_SET, 0, purpose.quote, 1)
  const besides = drawAmount(alternatives.besides, a, word1)
  pay(K.now, 0, drawAmount(alternatives.price, a, word0) * factor + besides)
}

/** What is left at the horizon, and the sum of it all. */
function settle(): void {
  const sums = h.sums
  const horizon = model.horizonYears
  if (h.gaveUpAt < 0) {
    sums[K.resale] -= resaleValue(horizon, h.downUntil > horizon) * discount(horizon)
  }
  sums[K.cost] =
    sums[K.now] +
    sums[K.failures] +
    sums[K.planned] +
    sums[K.upkeep] +
    sums[K.fuel] +
    sums[K.power] +
    sums[K.intrusion] +
    sums[K.replacement] +
    sums[K.giveUp] +
    sums[K.resale]
  let largest: f64 = 0
  for (let y = 0; y < <i32>Math.ceil(horizon) + 1; y++) largest = max(largest, h.years[y])
  sums[K.largestYear] = largest
  sums[K.replacements] = h.set
}
