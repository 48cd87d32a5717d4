/**
 * A job: what is mended together, what it costs, how long the set is out, and what state it leaves behind.
 *
 * @module
 */

import { CLEARED, GIVE_UP_ABOVE, NO_DELAY, NO_LIMIT, PATCHED, RECONDITIONED, RENEWED } from '../codes'
import * as K from '../kept-at'
import * as purpose from '../purpose'
import * as alternatives from './alternatives'
import { drawAmount, meanAmount, normalFrom } from './amounts'
import { draw, uniformFrom, WHOLE_SET, word0, word1 } from './draws'
import { DEFECTIVE, discount, FAILED_UNNOTICED, h, pay, position, SOUND } from './history'
import { beginLife, delayFrom, fallDue, restartService, scheduleFinding, wearOthers } from './life'
import * as model from './model'
import * as modes from './modes'
import { goDown, isDown } from './outage'
import * as parts from './parts'
import * as repairs from './repairs'
import { giveUp, replaceSet } from './replacement'
import { plantFault, visibleModeOf } from './start'

/** How a job comes about: a failure that stops the set. */
export const STOPPED = 0
/** A failure that it runs on with. */
export const RUNNING = 1
/** Found before it failed; the piece is there. */
export const PLANNED = 2
/** Met at fitting out, before the boat depends on it. */
export const MET_AT_FITTING_OUT = 3

/** The job in hand: parts, each once, with the strongest outcome asked for. */
class Job {
  count: i32 = 0
  /** Links that hit in the event, and whether it began with a hidden mode. */
  hits: i32 = 0
  hasHiddenRoot: bool = false
  /** Mode for which the piece was ordered before, −1 if none was. */
  orderedFor: i32 = -1
  part: StaticArray<i32> = new StaticArray<i32>(parts.count)
  /** Mode whose remedy it is; −1 where the part is plainly damaged. */
  mode: StaticArray<i32> = new StaticArray<i32>(parts.count)
  outcome: StaticArray<u8> = new StaticArray<u8>(parts.count)
  /** 0: as the supply's. */
  quality: StaticArray<f64> = new StaticArray<f64>(parts.count)
  agesLess: StaticArray<f64> = new StaticArray<f64>(parts.count)
  /** Place of a part in the list, −1 if not in it. */
  at: StaticArray<i32> = new StaticArray<i32>(parts.count)
  /** Parts near those worked on. */
  near: StaticArray<i32> = new StaticArray<i32>(parts.count)
  isNear: StaticArray<u8> = new StaticArray<u8>(parts.count)
}

export let job = changetype<Job>(0)

export function openJob(): void {
  if (changetype<usize>(job) === 0) job = new Job()
  for (let p = 0; p < parts.count; p++) job.at[p] = -1
}

export function emptyJob(): void {
  for (let i = 0; i < job.count; i++) job.at[job.part[i]] = -1
  job.count = 0
  job.orderedFor = -1
}

/** Adds a part by the remedy of one of its modes, or as plainly damaged (mode −1). */
export function addToJob(part: i32, mode: i32): void {
  const outcome: i32 = mode >= 0 ? modes.outcome[mode] : RENEWED
  const known = job.at[part]
  const i = known >= 0 ? known : job.count++
  if (known < 0) {
    job.at[part] = i
    job.part[i] = part
  } else if (outcome <= <i32>job.outcome[i]) return
  job.mode[i] = mode
  job.outcome[i] = <u8>outcome
  job.quality[i] = 0
  job.agesLess[i] = mode >= 0 ? modes.agesLess[mode] : 1
}

/** What the pieces, hands and days of the job come to. */
let pieces: f64 = 0
export let ownHours: f64 = 0
export let paidHours: f64 = 0
let trips: f64 = 0
let waitDays: f64 = 0
export let workshopDays: f64 = 0
let accessLow: i32 = 0
let accessHigh: i32 = 0

/** Chooses by the repair limit, then mends, replaces or gives up. `heading` is where its money is booked. */
export function doJob(t: f64, how: i32, heading: i32): void {
  const guaranteed = t < h.guaranteeUntil
  const judged = !guaranteed && heading !== K.now && alternatives.above[h.alternative] !== NO_LIMIT
  if (judged && estimate() > limitAt(t)) {
    insteadOfMending(t, how)
    return
  }
  reckon(t, how)
  const workDays = (ownHours + paidHours) / model.hoursPerDay
  if (!guaranteed) payJob(t, heading)
  if (how !== MET_AT_FITTING_OUT) {
    const days = workshopDays + workDays
    if (joinsOutage(t, how)) goDown(t, waitDays, days, how === STOPPED)
    else goDown(t, (how === STOPPED ? waitDays : 0) + days, 0, how === STOPPED)
    leaveOpen()
  }
  putRight(t)
  intrude(t)
}

/** A failure met while the set is down. */
function joinsOutage(t: f64, how: i32): bool {
  return isDown(t) && (how === STOPPED || how === RUNNING)
}

/** What the job opened stands open while the set is down. */
export function leaveOpen(): void {
  h.openLow |= accessLow
  h.openHigh |= accessHigh
}

function insteadOfMending(t: f64, how: i32): void {
  const stopped = how === STOPPED
  const stands = stopped || isDown(t)
  const above = alternatives.above[h.alternative]
  if (above === GIVE_UP_ABOVE) {
    if (stopped) goDown(t, 0, 0, true)
    giveUp(t, stands)
  } else {
    replaceSet(t, above, !stands, stopped)
  }
}

/** The repair limit at `t`: straight between its knots at now, half way and the horizon. */
function limitAt(t: f64): f64 {
  const at = h.alternative * 3
  const half = model.horizonYears / 2
  const later = t >= half
  const from = alternatives.knots[later ? at + 1 : at]
  const to = alternatives.knots[later ? at + 2 : at + 1]
  return from + ((to - from) * (later ? t - half : t)) / half
}

function repairOf(i: i32): i32 {
  return job.mode[i] >= 0 ? modes.repair[job.mode[i]] : parts.repair[job.part[i]]
}

/** What a workshop would say beforehand: mean pieces, hours at their rates, trips; no overrun, wait or wrong part. */
function estimate(): f64 {
  let money: f64 = 0
  let low = 0
  let high = 0
  let mostTrips: f64 = 0
  let allOwner = true
  for (let i = 0; i < job.count; i++) {
    const part = job.part[i]
    const r = repairOf(i)
    const supply = repairs.supplyFrom[r]
    const factor = supply < repairs.supplyFrom[r + 1] ? repairs.supplyPrice[supply] : 1
    if (job.outcome[i] !== CLEARED) money += meanAmount(repairs.price, r) * factor * h.partPriceFactor
    const byOwner = repairs.byOwner[r] === 1
    money += repairs.hours[r] * h.labourFactor * (byOwner ? model.ownPerHour : model.paidPerHour)
    if (!byOwner) allOwner = false
    mostTrips = max(mostTrips, repairs.trips[r])
    low |= parts.accessLow[part]
    high |= parts.accessHigh[part]
  }
  const access = hoursOfAccess(low, high)
  const opening = allOwner ? access * model.ownerAccessFactor * model.ownPerHour : access * model.paidPerHour
  return money + opening * h.labourFactor + mostTrips * model.perTrip
}

function hoursOfAccess(low: i32, high: i32): f64 {
  let sum: f64 = 0
  for (let bits = low; bits !== 0; bits &= bits - 1) sum += model.accessHours[ctz(bits)]
  for (let bits = high; bits !== 0; bits &= bits - 1) sum += model.accessHours[30 + ctz(bits)]
  return sum
}

/** Draws the pieces and their waits, and adds up hours; access counts once, and not what already stands open. */
export function reckon(t: f64, how: i32): void {
  pieces = 0
  ownHours = 0
  paidHours = 0
  trips = 0
  waitDays = 0
  workshopDays = 0
  accessLow = 0
  accessHigh = 0
  let allOwner = true
  for (let i = 0; i < job.count; i++) {
    const part = job.part[i]
    const repair = repairOf(i)
    if (job.outcome[i] !== CLEARED) {
      pieces += drawPiece(i, repair, t)
      waitDays = max(waitDays, drawnWait)
    }
    workshopDays = max(workshopDays, drawWorkshop(part, repair))
    const hours = repairs.hours[repair] * h.labourFactor
    if (repairs.byOwner[repair] === 1) ownHours += hours
    else {
      paidHours += hours
      allOwner = false
    }
    trips = max(trips, repairs.trips[repair])
    accessLow |= parts.accessLow[part]
    accessHigh |= parts.accessHigh[part]
  }
  if (!isDown(t)) {
    h.openLow = 0
    h.openHigh = 0
  }
  const joins = joinsOutage(t, how)
  if (joins) trips = 0
  const low = joins ? accessLow & ~h.openLow : accessLow
  const high = joins ? accessHigh & ~h.openHigh : accessHigh
  const opening = hoursOfAccess(low, high) * h.labourFactor
  if (allOwner) ownHours += opening * model.ownerAccessFactor
  else paidHours += opening
}

/** Days of the supply just drawn, beside the price that is returned: both come from the same draws. */
let drawnWait: f64 = 0

function drawPiece(i: i32, repair: i32, t: f64): f64 {
  const part = job.part[i]
  const ordered = job.orderedFor
  const number = ordered >= 0 ? h.orderedAs[ordered] : h.supplies[part]++
  draw(h.set, parts.modeFrom[part], number, purpose.price, 0)
  const price = drawAmount(repairs.price, repair, word0) * h.partPriceFactor
  const option = supplyOption(repair, ordered >= 0 ? h.orderedAt[ordered] : t, uniformFrom(word1))
  if (option < 0) {
    drawnWait = 0
    return price
  }
  drawnWait = supplyDays(part, number, repair, option)
  if (job.quality[i] === 0) job.quality[i] = repairs.supplyQuality[option]
  return price * repairs.supplyPrice[option]
}

/** Days until the next piece for a part would be there; `orderedAs` of its mode is then the number of that supply. */
export function waitFor(part: i32, m: i32, t: f64): f64 {
  const number = h.supplies[part]++
  h.orderedAs[m] = number
  h.orderedAt[m] = t
  draw(h.set, parts.modeFrom[part], number, purpose.price, 0)
  const repair = modes.repair[m]
  const option = supplyOption(repair, t, uniformFrom(word1))
  return option < 0 ? 0 : supplyDays(part, number, repair, option)
}

/** Which supply it is; −1 if none is listed. The last option grows likelier with the years. */
function supplyOption(repair: i32, t: f64, u: f64): i32 {
  const from = repairs.supplyFrom[repair]
  const last = repairs.supplyFrom[repair + 1] - 1
  if (last < from) return -1
  const lastChance = min(1, repairs.supplyChance[last] + repairs.lastLikelier[repair] * t)
  if (u >= 1 - lastChance) return last
  const others = 1 - repairs.supplyChance[last]
  let sum: f64 = 0
  for (let option = from; option < last; option++) {
    sum += (repairs.supplyChance[option] / others) * (1 - lastChance)
    if (u < sum) return option
  }
  return last
}

function supplyDays(part: i32, number: i32, repair: i32, option: i32): f64 {
  const key = parts.modeFrom[part]
  draw(h.set, key, number, purpose.supply, 0)
  const days = drawAmount(repairs.supplyDays, option, word0)
  if (uniformFrom(word1) >= repairs.wrongPart[repair]) return days
  draw(h.set, key, number, purpose.workshop, 0)
  return days + drawAmount(repairs.supplyDays, option, word1)
}

function drawWorkshop(part: i32, repair: i32): f64 {
  if (repairs.workshop.level[repair] === 0) return 0
  draw(h.set, parts.modeFrom[part], h.jobs[part], purpose.workshop, 0)
  return drawAmount(repairs.workshop, repair, word0)
}

export function payJob(t: f64, heading: i32): void {
  const factor = drawOverrun()
  const out = discount(t) * factor
  h.sums[K.ownHours] += ownHours * out
  h.sums[K.paidHours] += paidHours * out
  h.sums[K.trips] += trips * out
  const hands = ownHours * model.ownPerHour + paidHours * model.paidPerHour
  pay(heading, t, factor * (pieces + hands + trips * model.perTrip))
}

function drawOverrun(): f64 {
  if (model.overrunLogSd === 0) return model.overrunMedian
  const mode = job.mode[0]
  if (mode >= 0) draw(h.set, mode, h.life[mode], purpose.overrun, h.patches[mode])
  else draw(h.set, WHOLE_SET, h.jobs[job.part[0]], purpose.overrun, job.part[0])
  return model.overrunMedian * Math.exp(model.overrunLogSd * normalFrom(word0))
}

/** The states that the job leaves behind. */
export function putRight(t: f64): void {
  for (let i = 0; i < job.count; i++) {
    const part = job.part[i]
    const mode = job.mode[i]
    const outcome = job.outcome[i]
    const quality = job.quality[i] === 0 ? 1 : job.quality[i]
    h.jobs[part]++
    const one = mode >= 0 && (outcome === PATCHED || outcome === CLEARED)
    const from = one ? mode : parts.modeFrom[part]
    const to = one ? mode + 1 : parts.modeFrom[part + 1]
    for (let m = from; m < to; m++) {
      if (outcome === PATCHED) patch(m, t)
      else if (outcome === CLEARED) beginLife(m, t, 0)
      else if (outcome === RECONDITIONED) recondition(m, t, job.agesLess[i])
      else {
        h.scale[m] = h.scaleAsNew[m] * quality
        beginLife(m, t, 0)
      }
    }
    if (outcome === RENEWED) restartService(part, t)
  }
}

/** Kijima II: a share of the virtual age goes; the rhythm of the checks stays. */
function recondition(m: i32, t: f64, agesLess: f64): void {
  const hours = h.birthHours[m]
  const time = h.birthTime[m]
  const age = position(modes.clock[m], t) - h.birth[m]
  beginLife(m, t, age * (1 - agesLess))
  h.birthHours[m] = hours
  h.birthTime[m] = time
}

/** Stays defective; what is left until it fails is drawn again, and shorter. */
function patch(m: i32, t: f64): void {
  if (h.state[m] === SOUND) return
  if (modes.delayKind[m] === NO_DELAY) {
    beginLife(m, t, 0)
    return
  }
  if (h.state[m] === FAILED_UNNOTICED) wearOthers(m, t, false)
  h.stamp[m]++
  h.state[m] = DEFECTIVE
  draw(h.set, m, h.life[m], purpose.patch, h.patches[m]++)
  fallDue(m, t, delayFrom(m, word0) * modes.delayFactor[m])
  scheduleFinding(m, t, purpose.check)
}

/** Work puts faults into what it opens. */
export function intrude(t: f64): void {
  for (let i = 0; i < job.count; i++) intrudeOnce(t, i, i + 1, repairs.intrusion[repairOf(i)])
}

/** With the chance given, less what the tests catch, the work on some parts of the job leaves a fault near one of them. */
export function intrudeOnce(t: f64, from: i32, to: i32, chance: f64): void {
  if (chance === 0) return
  const part = job.part[from]
  const key = parts.modeFrom[part]
  draw(h.set, key, h.jobs[part], purpose.intrusion, 0)
  if (uniformFrom(word0) >= chance * (1 - model.testsCatch)) return
  const struck = partNear(from, to, uniformFrom(word1))
  draw(h.set, key, h.jobs[part], purpose.intrusionMode, 0)
  const onsetWord = word1
  const mode = visibleModeOf(struck, word0)
  if (mode >= 0) plantFault(t, mode, onsetWord)
}

/** One of the parts that share access with some parts of the job, each once. */
function partNear(from: i32, to: i32, u: f64): i32 {
  let count = 0
  for (let i = from; i < to; i++) {
    const part = job.part[i]
    for (let n = parts.nearFrom[part]; n < parts.nearFrom[part + 1]; n++) {
      const near = parts.nearPart[n]
      if (job.isNear[near] === 1) continue
      job.isNear[near] = 1
      job.near[count++] = near
    }
  }
  for (let i = 0; i < count; i++) job.isNear[job.near[i]] = 0
  return job.near[<i32>(u * <f64>count)]
}
