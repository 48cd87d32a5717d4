/**
 * A job: what is mended together, what it costs, how long the set is out, and what state it leaves behind.
 *
 * @module
 */

import { drawAmount, meanAmount, normalFrom } from './amounts.js'
import { draw, purpose, uniformFrom, WHOLE_SET } from './draws.js'
import { DEFECTIVE, discount, FAILED_UNNOTICED, type History, K, pay, position, SOUND } from './history.js'
import { beginLife, delayFrom, fallDue, restartService, scheduleFinding, wearOthers } from './life.js'
import { goDown } from './outage.js'
import { CLEARED, PATCHED, RECONDITIONED, RENEWED } from './program.js'
import { giveUp, replaceSet } from './replacement.js'
import { plantFault, visibleModeOf } from './start.js'

/** How a job comes about. */
export const comes = {
  /** A failure that stops the set. */
  stopped: 0,
  /** A failure that it runs on with. */
  running: 1,
  /** Found before it failed; the piece is there. */
  planned: 2,
  /** Found, and the set rested until the piece is there. */
  rested: 3,
  /** Met at fitting out, before the boat depends on it. */
  fittingOut: 4,
} as const

/** Parts of a job; a part stands in it once, with the strongest outcome asked for. */
export interface Job {
  count: number
  /** Links that hit in the event. */
  hits: number
  readonly part: Int32Array
  /** Mode whose remedy it is; −1 where the part is plainly damaged. */
  readonly mode: Int32Array
  readonly outcome: Uint8Array
  /** 0: as the supply's. */
  readonly quality: Float64Array
  readonly agesLess: Float64Array
  /** Place of a part in the list, −1 if not in it. */
  readonly at: Int32Array
}

export function makeJob(parts: number): Job {
  return {
    count: 0,
    hits: 0,
    part: new Int32Array(parts),
    mode: new Int32Array(parts),
    outcome: new Uint8Array(parts),
    quality: new Float64Array(parts),
    agesLess: new Float64Array(parts),
    at: new Int32Array(parts).fill(-1),
  }
}

export function emptyJob(job: Job): void {
  for (let i = 0; i < job.count; i++) job.at[job.part[i]!] = -1
  job.count = 0
}

/** Adds a part by the remedy of one of its modes, or as plainly damaged (mode −1). */
export function addToJob(h: History, job: Job, part: number, mode: number): void {
  const { modes } = h.program
  const outcome = mode >= 0 ? modes.outcome[mode]! : RENEWED
  const known = job.at[part]!
  const i = known >= 0 ? known : job.count++
  if (known < 0) {
    job.at[part] = i
    job.part[i] = part
  } else if (outcome <= job.outcome[i]!) return
  job.mode[i] = mode
  job.outcome[i] = outcome
  job.quality[i] = 0
  job.agesLess[i] = mode >= 0 ? modes.agesLess[mode]! : 1
}

/** What the pieces, hands and days of a job come to. */
interface Reckoning {
  pieces: number
  ownHours: number
  paidHours: number
  trips: number
  waitDays: number
  workshopDays: number
  accessLow: number
  accessHigh: number
}

const reckoning: Reckoning = {
  pieces: 0,
  ownHours: 0,
  paidHours: 0,
  trips: 0,
  waitDays: 0,
  workshopDays: 0,
  accessLow: 0,
  accessHigh: 0,
}

/** Chooses by the repair limit, then mends, replaces or gives up. `heading` is where its money is booked. */
export function doJob(
  h: History,
  job: Job,
  t: number,
  how: { readonly comes: number; readonly heading: number },
): void {
  const guaranteed = t < h.guaranteeUntil
  const judged = !guaranteed && how.heading !== K.now
  if (judged && h.alternative.limit !== undefined && estimate(h, job) > limitAt(h, t)) {
    insteadOfMending(h, t, how.comes)
    return
  }
  const r = reckon(h, job, t, how.comes)
  const hoursPerDay = h.program.model.labour.hoursPerDay
  const workDays = (r.ownHours + r.paidHours) / hoursPerDay
  if (!guaranteed) payJob(h, job, t, how.heading, r)
  if (how.comes !== comes.fittingOut) {
    const joins = t < h.downUntil && how.comes === comes.running
    const waits = joins || how.comes === comes.stopped || how.comes === comes.rested
    goDown(h, t, {
      waitDays: waits ? r.waitDays : 0,
      workDays: r.workshopDays + workDays,
      isStop: how.comes === comes.stopped,
    })
    h.openLow |= r.accessLow
    h.openHigh |= r.accessHigh
  }
  putRight(h, job, t)
  intrude(h, job, t)
}

function insteadOfMending(h: History, t: number, how: number): void {
  const stopped = how === comes.stopped
  const above = h.alternative.limit!.above
  if (above === 'give-up') {
    if (stopped) goDown(h, t, { waitDays: 0, workDays: 0, isStop: true })
    giveUp(h, t, stopped)
  } else {
    const candidate = h.program.model.candidates.findIndex(({ id }) => id === above.replaceWith)
    replaceSet(h, t, { candidate, planned: !stopped, isStop: stopped })
  }
}

/** The repair limit at `t`: straight between its knots at now, half way and the horizon. */
export function limitAt(h: History, t: number): number {
  const [first, middle, last] = h.alternative.limit!.knots
  const half = h.horizon / 2
  return t < half ? first + ((middle - first) * t) / half : middle + ((last - middle) * (t - half)) / half
}

/** What a workshop would say beforehand: mean pieces, hours at their rates, trips; no overrun, wait or wrong part. */
export function estimate(h: History, job: Job): number {
  const { modes, parts, repairs, model } = h.program
  const { labour } = model
  let money = 0
  let low = 0
  let high = 0
  let trips = 0
  let allOwner = true
  for (let i = 0; i < job.count; i++) {
    const part = job.part[i]!
    const r = job.mode[i]! >= 0 ? modes.repair[job.mode[i]!]! : parts.repair[part]!
    const supply = repairs.supplyFrom[r]!
    const factor = supply < repairs.supplyFrom[r + 1]! ? repairs.supplyPrice[supply]! : 1
    if (job.outcome[i] !== CLEARED) money += meanAmount(repairs.price, r) * factor * h.partPriceFactor
    const byOwner = repairs.byOwner[r] === 1
    money += repairs.hours[r]! * h.labourFactor * (byOwner ? labour.ownPerHour : labour.paidPerHour)
    allOwner &&= byOwner
    trips = Math.max(trips, repairs.trips[r]!)
    low |= parts.accessLow[part]!
    high |= parts.accessHigh[part]!
  }
  const access = accessHours(h, low, high)
  const opening = allOwner
    ? access * labour.ownerAccessFactor * labour.ownPerHour
    : access * labour.paidPerHour
  return money + opening * h.labourFactor + trips * labour.perTrip
}

function accessHours(h: History, low: number, high: number): number {
  const hours = h.program.accessHours
  let sum = 0
  for (let bits = low, i = 0; bits !== 0; bits >>>= 1, i++) if (bits & 1) sum += hours[i]!
  for (let bits = high, i = 30; bits !== 0; bits >>>= 1, i++) if (bits & 1) sum += hours[i]!
  return sum
}

/** Draws the pieces and their waits, and adds up hours; access counts once, and not what already stands open. */
export function reckon(h: History, job: Job, t: number, how: number): Reckoning {
  const { modes, parts, repairs, model } = h.program
  const r = reckoning
  r.pieces = r.ownHours = r.paidHours = r.trips = r.waitDays = r.workshopDays = r.accessLow = r.accessHigh = 0
  let allOwner = true
  for (let i = 0; i < job.count; i++) {
    const part = job.part[i]!
    const mode = job.mode[i]!
    const repair = mode >= 0 ? modes.repair[mode]! : parts.repair[part]!
    if (job.outcome[i] !== CLEARED) {
      r.pieces += drawPiece(h, job, i, repair, t)
      r.waitDays = Math.max(r.waitDays, drawnWait)
    }
    const workshop = drawWorkshop(h, part, repair)
    r.workshopDays = Math.max(r.workshopDays, workshop)
    const hours = repairs.hours[repair]! * h.labourFactor
    if (repairs.byOwner[repair] === 1) r.ownHours += hours
    else {
      r.paidHours += hours
      allOwner = false
    }
    r.trips = Math.max(r.trips, repairs.trips[repair]!)
    r.accessLow |= parts.accessLow[part]!
    r.accessHigh |= parts.accessHigh[part]!
  }
  const joined = t < h.downUntil && how !== comes.fittingOut
  if (joined) r.trips = 0
  else h.openLow = h.openHigh = 0
  const opening = accessHours(h, r.accessLow & ~h.openLow, r.accessHigh & ~h.openHigh) * h.labourFactor
  if (allOwner) r.ownHours += opening * model.labour.ownerAccessFactor
  else r.paidHours += opening
  return r
}

/** Days of the supply just drawn, beside the price that is returned: both come from the same draws. */
let drawnWait = 0

function drawPiece(h: History, job: Job, i: number, repair: number, t: number): number {
  const { repairs, parts } = h.program
  const part = job.part[i]!
  const key = parts.modeFrom[part]!
  draw(h.draws, h.set, key, h.jobs[part]!, purpose.price, 0)
  const price = drawAmount(repairs.price, repair, h.draws.words[0]!) * h.partPriceFactor
  const option = supplyOption(h, repair, t, uniformFrom(h.draws.words[1]!))
  if (option < 0) {
    drawnWait = 0
    return price
  }
  drawnWait = supplyDays(h, part, repair, option)
  if (job.quality[i] === 0) job.quality[i] = repairs.supplyQuality[option]!
  return price * repairs.supplyPrice[option]!
}

/** Days until the piece of a part's next job is there: the same draws as the job's own. */
export function waitFor(h: History, part: number, repair: number, t: number): number {
  draw(h.draws, h.set, h.program.parts.modeFrom[part]!, h.jobs[part]!, purpose.price, 0)
  const option = supplyOption(h, repair, t, uniformFrom(h.draws.words[1]!))
  return option < 0 ? 0 : supplyDays(h, part, repair, option)
}

/** Which supply it is; −1 if none is listed. The last option grows likelier with the years. */
function supplyOption(h: History, repair: number, t: number, u: number): number {
  const { repairs } = h.program
  const from = repairs.supplyFrom[repair]!
  const last = repairs.supplyFrom[repair + 1]! - 1
  if (last < from) return -1
  const lastChance = Math.min(1, repairs.supplyChance[last]! + repairs.lastLikelier[repair]! * t)
  if (u >= 1 - lastChance) return last
  const others = 1 - repairs.supplyChance[last]!
  let sum = 0
  for (let option = from; option < last; option++) {
    sum += (repairs.supplyChance[option]! / others) * (1 - lastChance)
    if (u < sum) return option
  }
  return last
}

function supplyDays(h: History, part: number, repair: number, option: number): number {
  const { repairs, parts } = h.program
  const key = parts.modeFrom[part]!
  draw(h.draws, h.set, key, h.jobs[part]!, purpose.supply, 0)
  const days = drawAmount(repairs.supplyDays, option, h.draws.words[0]!)
  if (uniformFrom(h.draws.words[1]!) >= repairs.wrongPart[repair]!) return days
  draw(h.draws, h.set, key, h.jobs[part]!, purpose.workshop, 0)
  return days + drawAmount(repairs.supplyDays, option, h.draws.words[1]!)
}

function drawWorkshop(h: History, part: number, repair: number): number {
  const { repairs, parts } = h.program
  if (repairs.workshop.level[repair] === 0) return 0
  draw(h.draws, h.set, parts.modeFrom[part]!, h.jobs[part]!, purpose.workshop, 0)
  return drawAmount(repairs.workshop, repair, h.draws.words[0]!)
}

function payJob(h: History, job: Job, t: number, heading: number, r: Reckoning): void {
  const { labour } = h.program.model
  const factor = drawOverrun(h, job)
  const out = discount(h, t) * factor
  h.sums[K.ownHours]! += r.ownHours * out
  h.sums[K.paidHours]! += r.paidHours * out
  h.sums[K.trips]! += r.trips * out
  pay(
    h,
    heading,
    t,
    factor *
      (r.pieces +
        r.ownHours * labour.ownPerHour +
        r.paidHours * labour.paidPerHour +
        r.trips * labour.perTrip),
  )
}

function drawOverrun(h: History, job: Job): number {
  const { median, logSd } = h.program.model.labour.overrun
  if (logSd === 0) return median
  const mode = job.mode[0]!
  if (mode >= 0) draw(h.draws, h.set, mode, h.life[mode]!, purpose.overrun, h.patches[mode]!)
  else draw(h.draws, h.set, WHOLE_SET, h.jobs[job.part[0]!]!, purpose.overrun, job.part[0]!)
  return median * Math.exp(logSd * normalFrom(h.draws.words[0]!))
}

/** The states that a job leaves behind. */
export function putRight(h: History, job: Job, t: number): void {
  const { parts } = h.program
  for (let i = 0; i < job.count; i++) {
    const part = job.part[i]!
    const mode = job.mode[i]!
    const quality = job.quality[i]! || 1
    h.jobs[part]!++
    switch (job.outcome[i]) {
      case PATCHED:
        eachMode(h, part, mode, (m) => patch(h, m, t))
        break
      case CLEARED:
        eachMode(h, part, mode, (m) => beginLife(h, m, t, 0))
        break
      case RECONDITIONED:
        for (let m = parts.modeFrom[part]!; m < parts.modeFrom[part + 1]!; m++) {
          recondition(h, m, t, job.agesLess[i]!)
        }
        break
      default:
        for (let m = parts.modeFrom[part]!; m < parts.modeFrom[part + 1]!; m++) {
          h.scale[m] = h.scaleAsNew[m]! * quality
          beginLife(h, m, t, 0)
        }
        restartService(h, part, t)
    }
  }
}

/** The one mode named, or all of the part. */
function eachMode(h: History, part: number, mode: number, act: (m: number) => void): void {
  if (mode >= 0) {
    act(mode)
    return
  }
  const { modeFrom } = h.program.parts
  for (let m = modeFrom[part]!; m < modeFrom[part + 1]!; m++) act(m)
}

/** Kijima II: a share of the virtual age goes; the rhythm of the checks stays. */
function recondition(h: History, m: number, t: number, agesLess: number): void {
  const { birthHours, birthTime } = h
  const hours = birthHours[m]!
  const time = birthTime[m]!
  const age = position(h, h.program.modes.clock[m]!, t) - h.birth[m]!
  beginLife(h, m, t, age * (1 - agesLess))
  birthHours[m] = hours
  birthTime[m] = time
}

/** Stays defective; what is left until it fails is drawn again, and shorter. */
function patch(h: History, m: number, t: number): void {
  if (h.state[m] === SOUND) return
  if (h.program.modes.delayKind[m] === 0) {
    beginLife(h, m, t, 0)
    return
  }
  if (h.state[m] === FAILED_UNNOTICED) wearOthers(h, m, t, false)
  h.stamp[m]!++
  h.state[m] = DEFECTIVE
  draw(h.draws, h.set, m, h.life[m]!, purpose.patch, h.patches[m]!++)
  fallDue(h, m, t, delayFrom(h, m, h.draws.words[0]!) * h.program.modes.delayFactor[m]!)
  scheduleFinding(h, m, t, purpose.check)
}

/** Work puts faults into what it opens. */
function intrude(h: History, job: Job, t: number): void {
  const { modes, parts, repairs } = h.program
  for (let i = 0; i < job.count; i++) {
    const mode = job.mode[i]!
    const part = job.part[i]!
    const repair = mode >= 0 ? modes.repair[mode]! : parts.repair[part]!
    intrudeOnce(h, t, part, repairs.intrusion[repair]!)
  }
}

/** With the chance given, less what the tests catch, a fault is left in a part that shares the opened access. */
export function intrudeOnce(h: History, t: number, part: number, chance: number): void {
  if (chance === 0) return
  const { parts, model } = h.program
  const key = parts.modeFrom[part]!
  draw(h.draws, h.set, key, h.jobs[part]!, purpose.intrusion, 0)
  if (uniformFrom(h.draws.words[0]!) >= chance * (1 - model.intrusion.testsCatch)) return
  const from = parts.nearFrom[part]!
  const near = parts.nearFrom[part + 1]! - from
  const struck = parts.nearPart[from + Math.floor(uniformFrom(h.draws.words[1]!) * near)]!
  draw(h.draws, h.set, key, h.jobs[part]!, purpose.intrusionMode, 0)
  const onsetWord = h.draws.words[1]!
  const mode = visibleModeOf(h, struck, h.draws.words[0]!)
  if (mode >= 0) plantFault(h, t, { mode, onsetWord })
}
