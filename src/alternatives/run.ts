/**
 * One history of one alternative, from now to the horizon.
 *
 * @module
 */

import type { Alternative } from '../forecast/life-model.js'
import { amountsOf, drawAmount, normalFrom } from './amounts.js'
import { draw, purpose, uniformFrom, WHOLE_SET } from './draws.js'
import { fail, failFromBefore, failVisibly, faultShows } from './failure.js'
import {
  clockOf,
  codeOf,
  DEFECTIVE,
  discount,
  event,
  FAILED,
  FAILED_UNNOTICED,
  type History,
  indexOf,
  K,
  kindOf,
  pay,
  resetHistory,
  schedule,
  scheduleAt,
  timeAt,
} from './history.js'
import { addToJob, comes, doJob, emptyJob, intrudeOnce, type Job, putRight, reckon, waitFor } from './job.js'
import { becomeDefective, beginLife, restartService, scheduleService, timeLeft } from './life.js'
import { goDown } from './outage.js'
import { outcomeCode, YEARS } from './program.js'
import { takeFirst } from './queue.js'
import { giveUp, replaceSet, resaleValue, TooManyEvents } from './replacement.js'
import { startPresent } from './start.js'
import { DAYS_PER_YEAR, discountedYears, totalAt } from './use.js'

const mostEvents = 100_000

/** Plays history `number` of an alternative; what it came to is left in `h.sums`. */
export function runHistory(h: History, job: Job, alternative: Alternative, number: number): void {
  resetHistory(h, alternative, number)
  const { model, use } = h.program
  h.sums[K.fuel] = totalAt(use, use.discountedHours, h.horizon) * h.fuelPrice
  h.sums[K.upkeep] = model.upkeepPerYear * discountedYears(h.interest, 0, h.horizon)
  startPresent(h)
  actNow(h, job)
  for (let events = 0; h.queue.size > 0; events++) {
    if (events >= mostEvents) throw new TooManyEvents(nameOfBusiest(h))
    next(h, job)
  }
  settle(h)
}

function nameOfBusiest(h: History): string {
  const part = h.program.modes.part[indexOf(h.queue.code[takeFirst(h.queue)]!)] ?? 0
  return `part "${h.program.model.parts[part]!.id}" keeps the simulation busy: over ${mostEvents} events in one history`
}

/** Takes the first event and lets it happen, if it still holds. */
function next(h: History, job: Job): void {
  const { queue } = h
  const place = takeFirst(queue)
  const t = queue.time[place]!
  const code = queue.code[place]!
  const stamp = queue.stamp[place]!
  const kind = kindOf(code)
  const index = indexOf(code)
  if (stamp !== stampOf(h, kind, index)) return
  const moved = queue.pauses[place] !== h.pauses && clockOf(code) !== YEARS
  if (moved && comesLater(h, t, code, stamp, queue.due[place]!)) return
  happen(h, job, kind, index, t, code)
}

function stampOf(h: History, kind: number, index: number): number {
  if (kind === event.service) return h.serviceStamp[index]!
  if (kind === event.intrusion) return h.set
  return kind === event.replaceLater ? 0 : h.stamp[index]!
}

/** Outages since it was put into the queue may have moved an event on the hours or starts clock. */
function comesLater(h: History, t: number, code: number, stamp: number, due: number): boolean {
  const now = timeAt(h, clockOf(code), due)
  if (now <= t * (1 + 1e-12)) return false
  if (kindOf(code) === event.service) scheduleService(h, indexOf(code), t)
  else scheduleAt(h, code, stamp, due, now)
  return true
}

function happen(h: History, job: Job, kind: number, index: number, t: number, code: number): void {
  switch (kind) {
    case event.onset:
      if (h.program.modes.delayKind[index] === 0) fail(h, job, index, t, code)
      else becomeDefective(h, index, t)
      break
    case event.fails:
      fail(h, job, index, t, code)
      break
    case event.shows:
      failVisibly(h, job, index, t, K.failures)
      break
    case event.foundDefective:
      if (h.state[index] === DEFECTIVE) found(h, job, index, t)
      break
    case event.foundFailed:
      if (h.state[index] === FAILED_UNNOTICED) order(h, index, t)
      break
    case event.fittingOut:
      planned(h, job, index, t, comes.fittingOut)
      break
    case event.pieceComes:
      planned(h, job, index, t, comes.planned)
      break
    case event.service:
      serve(h, index, t)
      break
    case event.intrusion:
      faultShows(h, job, index, t)
      break
    default:
      if (h.set === 0) replaceSet(h, t, { candidate: index, planned: true, isStop: false })
  }
}

/** A defect is found: the piece is ordered, and if it would fail first the set may be rested. */
function found(h: History, job: Job, m: number, t: number): void {
  const { modes, model } = h.program
  const wait = waitFor(h, modes.part[m]!, modes.repair[m]!, t) / DAYS_PER_YEAR
  if (timeLeft(h, m, t) > wait) {
    schedule(h, codeOf(event.pieceComes, m, YEARS), h.stamp[m]!, t + wait, t)
    return
  }
  draw(h.draws, h.set, m, h.life[m]!, purpose.rest, h.patches[m]!)
  if (uniformFrom(h.draws.words[0]!) < model.care.restChance) planned(h, job, m, t, comes.rested)
}

function order(h: History, m: number, t: number): void {
  const { modes } = h.program
  const wait = waitFor(h, modes.part[m]!, modes.repair[m]!, t) / DAYS_PER_YEAR
  schedule(h, codeOf(event.pieceComes, m, YEARS), h.stamp[m]!, t + wait, t)
}

function planned(h: History, job: Job, m: number, t: number, how: number): void {
  emptyJob(job)
  addToJob(h, job, h.program.modes.part[m]!, m)
  doJob(h, job, t, { comes: how, heading: K.planned })
}

/** A service falls due, and is done or put off by one interval. */
function serve(h: History, part: number, t: number): void {
  const { parts, model } = h.program
  if (isServiceDone(h, part)) {
    const rate = parts.serviceByOwner[part] === 1 ? model.labour.ownPerHour : model.labour.paidPerHour
    const work = parts.serviceWork[part]! * h.labourFactor
    if (t >= h.guaranteeUntil || rate > 0 || parts.servicePrice[part]! > 0) {
      const amount = parts.servicePrice[part]! * h.partPriceFactor + work * rate
      const worth = discount(h, t)
      h.sums[K.upkeep]! += amount * worth
      h.years[Math.floor(t)]! += amount
      h.sums[parts.serviceByOwner[part] === 1 ? K.ownHours : K.paidHours]! += work * worth
    }
    if (parts.serviceRenews[part] === 1) {
      for (let m = parts.modeFrom[part]!; m < parts.modeFrom[part + 1]!; m++) renew(h, m, t)
    } else {
      for (let c = parts.clearsFrom[part]!; c < parts.clearsFrom[part + 1]!; c++) {
        renew(h, parts.clearsMode[c]!, t)
      }
    }
  }
  restartService(h, part, t)
}

function isServiceDone(h: History, part: number): boolean {
  const { parts } = h.program
  const number = h.services[part]!++
  let word = h.serviceWord[part]!
  if ((number & 1) === 0) {
    draw(h.draws, h.set, parts.modeFrom[part]!, number >> 1, purpose.service, 0)
    word = h.draws.words[0]!
    h.serviceWord[part] = h.draws.words[1]!
  }
  return uniformFrom(word) < parts.serviceDiligence[part]!
}

/** A service does nothing for what has failed already: that waits for its job. */
function renew(h: History, m: number, t: number): void {
  if (h.state[m] === FAILED) return
  if (h.program.parts.serviceRenews[h.program.modes.part[m]!] === 1) h.scale[m] = h.scaleAsNew[m]!
  beginLife(h, m, t, 0)
}

/** What the alternative does now, and what stands broken and is not put right by it. */
function actNow(h: History, job: Job): void {
  const { now, replaceLater } = h.alternative
  const { model, parts } = h.program
  const brokenStops = standsStopped(h)
  if (replaceLater !== undefined) {
    const candidate = model.candidates.findIndex(({ id }) => id === replaceLater.with)
    schedule(h, codeOf(event.replaceLater, candidate, YEARS), 0, replaceLater.year, 0)
  }
  if (now === 'give-up') {
    giveUp(h, 0, brokenStops)
    return
  }
  if (now !== 'leave' && 'replaceWith' in now) {
    const candidate = model.candidates.findIndex(({ id }) => id === now.replaceWith)
    replaceSet(h, 0, { candidate, planned: !brokenStops, isStop: false })
    return
  }
  if (now !== 'leave') mendNow(h, job, now, brokenStops)
  for (let p = 0; p < parts.count; p++) {
    const m = parts.broken[p]!
    if (m < 0 || h.jobs[p]! > 0 || h.set > 0 || h.gaveUpAt >= 0) continue
    failFromBefore(h, job, m)
  }
}

function standsStopped(h: History): boolean {
  let stopped = false
  for (const m of h.program.parts.broken) if (m >= 0 && breaks(h, m)) stopped = true
  return stopped
}

/** Whether a mode that stands broken stops the set. */
function breaks(h: History, m: number): boolean {
  draw(h.draws, 0, m, 0, purpose.failure, 0)
  return uniformFrom(h.draws.words[0]!) < h.program.modes.stops[m]!
}

/** The job in hand: by its quote, or priced as any other. */
function mendNow(h: History, job: Job, action: Action, brokenStops: boolean): void {
  const { parts, model } = h.program
  emptyJob(job)
  for (const wanted of action.parts) {
    const p = model.parts.findIndex(({ id }) => id === wanted.part)
    const mode =
      wanted.mode === undefined
        ? -1
        : parts.modeFrom[p]! + model.parts[p]!.modes.findIndex(({ id }) => id === wanted.mode)
    addToJob(h, job, p, mode)
    const i = job.at[p]!
    job.outcome[i] = outcomeCode[wanted.outcome]
    job.quality[i] = wanted.quality
    job.agesLess[i] = wanted.agesLess
  }
  if (action.quote === undefined && action.price === undefined) {
    doJob(h, job, 0, { comes: brokenStops ? comes.stopped : comes.planned, heading: K.now })
    return
  }
  const work = reckon(h, job, 0, comes.planned)
  const usualDays = work.workshopDays + (work.ownHours + work.paidHours) / model.labour.hoursPerDay
  const amounts = amountsOf([
    action.quote?.besides ?? 0,
    action.days ?? usualDays,
    action.wait,
    action.quote?.price ?? action.price ?? 0,
  ])
  draw(h.draws, 0, WHOLE_SET, 0, purpose.quote, 0)
  const { median, logSd } = action.quote?.overrun ?? model.labour.overrun
  const factor = median * Math.exp(logSd * normalFrom(h.draws.words[0]!))
  if (action.quote !== undefined) h.sums[K.quoteFactor]! += factor
  draw(h.draws, 0, WHOLE_SET, 0, purpose.quote, 1)
  const besides = drawAmount(amounts, 0, h.draws.words[1]!)
  pay(h, K.now, 0, drawAmount(amounts, 3, h.draws.words[0]!) * factor + besides)
  draw(h.draws, 0, WHOLE_SET, 0, purpose.quoteDays, 0)
  const workDays = drawAmount(amounts, 1, h.draws.words[0]!)
  const waitDays = brokenStops ? drawAmount(amounts, 2, h.draws.words[1]!) : 0
  goDown(h, 0, { waitDays, workDays, isStop: false })
  putRight(h, job, 0)
  intrudeOnce(h, 0, job.part[0]!, action.intrusionChance)
}
type Action = Extract<Alternative['now'], { parts: unknown }>

/** What is left at the horizon, and the sum of it all. */
function settle(h: History): void {
  const { sums } = h
  if (h.gaveUpAt < 0) {
    const down = h.downUntil > h.horizon
    sums[K.resale]! -= resaleValue(h, h.horizon, down) * discount(h, h.horizon)
  }
  sums[K.cost] =
    sums[K.now]! +
    sums[K.failures]! +
    sums[K.planned]! +
    sums[K.upkeep]! +
    sums[K.fuel]! +
    sums[K.power]! +
    sums[K.intrusion]! +
    sums[K.replacement]! +
    sums[K.giveUp]! +
    sums[K.resale]!
  let largest = 0
  for (const year of h.years) if (year > largest) largest = year
  sums[K.largestYear] = largest
  sums[K.replacements] = h.set
}
