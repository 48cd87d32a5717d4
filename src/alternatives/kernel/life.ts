/**
 * A mode's life: onset, delay, the checks that may find it, the service that forestalls it, wear by others.
 *
 * @module
 */

import { HOURS, LOGNORMAL_DELAY, NO_DELAY, sliceShift, YEARS } from '../codes'
import * as purpose from '../purpose'
import { normalFrom } from './amounts'
import { draw, lifeWord, uniformFrom, uniformFromLow, word0, word1 } from './draws'
import {
  codeOf,
  DEFECTIVE,
  FAILED_UNNOTICED,
  FAILS,
  FOUND_DEFECTIVE,
  FOUND_FAILED,
  h,
  isBeyond,
  ONSET,
  position,
  SERVICE,
  SOUND,
  schedule,
  scheduleAt,
  timeAt,
} from './history'
import * as model from './model'
import * as modes from './modes'
import { normalCdf, normalQuantile } from './normal'
import * as parts from './parts'
import * as use from './use'

/** Starts a new life of mode `m` at `t`; `virtualAge` is what a reconditioned part keeps, on the running clock. */
export function beginLife(m: i32, t: f64, virtualAge: f64): void {
  if (h.state[m] === FAILED_UNNOTICED) wearOthers(m, t, false)
  h.life[m]++
  h.stamp[m]++
  h.patches[m] = 0
  h.state[m] = SOUND
  h.birth[m] = position(modes.clock[m], t) - virtualAge
  h.birthHours[m] = position(HOURS, t)
  h.birthTime[m] = t
  const word = lifeWord(h.set, m, h.life[m])
  if (virtualAge === 0 && h.wear[m] === 1) scheduleFirstOnset(m, t, word)
  else scheduleOnset(m, t, -Math.log(uniformFrom(word)))
}

/** Onset of a life without age or wear, for which most words say at a glance that it lies past the horizon. */
export function scheduleFirstOnset(m: i32, t: f64, word: u32): void {
  const clock = modes.clock[m]
  const birth = h.birth[m]
  const scale = h.scale[m]
  const atLeast = modes.leastOnset[modes.leastOnsetRow[m] + (word >>> sliceShift)]
  if (modes.isWorn[m] === 0 && isBeyond(clock, birth + scale * atLeast)) {
    h.onsetAt[m] = Infinity
    return
  }
  h.onsetAt[m] = birth + scale * power(-Math.log(uniformFrom(word)), 1 / modes.shape[m])
  schedule(codeOf(ONSET, m, clock), h.stamp[m], h.onsetAt[m], t)
}

/** Onset where `hazard` (unit exponential) more has been used than by the age at `t`. */
export function scheduleOnset(m: i32, t: f64, hazard: f64): void {
  const shape = modes.shape[m]
  const scale = h.scale[m]
  const clock = modes.clock[m]
  const age = position(clock, t) - h.birth[m]
  const end = (age > 0 ? power(age / scale, shape) : 0) + hazard / h.wear[m]
  h.onsetAt[m] = h.birth[m] + scale * power(end, 1 / shape)
  schedule(codeOf(ONSET, m, clock), h.stamp[m], h.onsetAt[m], t)
}

export function power(base: f64, exponent: f64): f64 {
  return exponent === 1 ? base : base ** exponent
}

/** The defect arises: the delay to failure starts, and the checks get their chance. */
export function becomeDefective(m: i32, t: f64): void {
  h.state[m] = DEFECTIVE
  h.onsetAt[m] = Infinity
  draw(h.set, m, h.life[m], purpose.delay, 0)
  fallDue(m, t, delayFrom(m, word0))
  scheduleFinding(m, t, purpose.check)
}

/** The mode fails after `delay` more on the delay's clock. */
export function fallDue(m: i32, t: f64, delay: f64): void {
  const clock = modes.delayClock[m]
  h.failsAt[m] = position(clock, t) + delay
  schedule(codeOf(FAILS, m, clock), h.stamp[m], h.failsAt[m], t)
}

/** Time from defect to failure. */
export function delayFrom(m: i32, word: u32): f64 {
  const kind = modes.delayKind[m]
  if (kind === NO_DELAY) return 0
  const level = modes.delayLevel[m]
  const spread = modes.delaySpread[m]
  return kind === LOGNORMAL_DELAY
    ? level * Math.exp(spread * normalFrom(word))
    : level * power(-Math.log(uniformFrom(word)), 1 / spread)
}

/** What is left of a delay that has already lasted `since`. */
export function delayLeft(m: i32, word: u32, since: f64): f64 {
  const level = modes.delayLevel[m]
  const spread = modes.delaySpread[m]
  const kind = modes.delayKind[m]
  if (kind === NO_DELAY || since <= 0) return delayFrom(m, word)
  const u = uniformFrom(word)
  if (kind !== LOGNORMAL_DELAY) {
    return level * ((since / level) ** spread - Math.log(u)) ** (1 / spread) - since
  }
  if (spread === 0) return max(0, level - since)
  const left = u * normalCdf(-Math.log(since / level) / spread)
  return level * Math.exp(-spread * normalQuantile(left)) - since
}

/** How long, as the calendar goes without outages, until a defective mode fails. [years] */
export function timeLeft(m: i32, t: f64): f64 {
  return timeAt(modes.delayClock[m], h.failsAt[m]) - t
}

/**
 * When the checks find a mode that is defective (or failed unnoticed). Each check is as good at this defect as one
 * draw from its beta distribution says, so the looks until it is found are geometric: ⌊ln u / ln(1 − chance)⌋ miss.
 */
export function scheduleFinding(m: i32, t: f64, forWhat: i32): void {
  const runs = use.hoursPerYear > 0
  const clock = runs ? HOURS : YEARS
  const now = position(clock, t)
  const born = runs ? h.birthHours[m] : h.birthTime[m]
  const rows = forWhat === purpose.check ? modes.checkLooks : modes.checkLooksFailed
  let found = Infinity
  const from = modes.checkFrom[m]
  const to = modes.checkFrom[m + 1]
  for (let c = from; c < to; c++) {
    const isFirst = ((c - from) & 1) === 0
    if (isFirst) drawLooks(m, forWhat, (c - from) >> 1)
    const goodWord = isFirst ? goodWord0 : goodWord1
    const perLog = model.looksPerLog[rows[c] + (goodWord >>> sliceShift)]
    const missed = Math.floor(Math.log(uniformFromLow(isFirst ? word0 : word1)) * perLog)
    const every = modes.checkEvery[c]
    const at = born + (Math.floor((now - born) / every) + 1 + missed) * every
    if (at < found) found = at
  }
  if (found === Infinity) return
  const kind = forWhat === purpose.check ? FOUND_DEFECTIVE : FOUND_FAILED
  schedule(codeOf(kind, m, clock), h.stamp[m], found, t)
}

/** Words that say how good two checks are at the defect that a mode has in this life. */
let goodWord0: u32 = 0
let goodWord1: u32 = 0

/** Leaves in `word0` and `word1` how many looks the two checks take. */
function drawLooks(m: i32, forWhat: i32, pair: i32): void {
  draw(h.set, m, h.life[m], purpose.check, pair)
  goodWord0 = word0
  goodWord1 = word1
  // After a patch it is the same defect, but other looks.
  const patches = h.patches[m] & 1023
  if (forWhat !== purpose.check || patches > 0) draw(h.set, m, h.life[m], forWhat, pair | (patches << 8))
}

/** A mode that failed unnoticed begins, or ends, to wear others: what is left of their lives shrinks, or grows. */
export function wearOthers(m: i32, t: f64, begins: bool): void {
  for (let w = modes.wearFrom[m]; w < modes.wearFrom[m + 1]; w++) {
    const worn = modes.wearMode[w]
    const factor = begins ? modes.wearFactor[w] : 1 / modes.wearFactor[w]
    if (h.state[worn] !== SOUND) {
      h.wear[worn] *= factor
      continue
    }
    const shape = modes.shape[worn]
    const age = max(0, position(modes.clock[worn], t) - h.birth[worn])
    const used = power(age / h.scale[worn], shape)
    const end = power((h.onsetAt[worn] - h.birth[worn]) / h.scale[worn], shape)
    const hazard = max(0, end - used) * h.wear[worn]
    h.wear[worn] *= factor
    h.stamp[worn]++
    scheduleOnset(worn, t, hazard)
  }
}

/** When the next service of a part is due: the earlier of its hours and its years. */
export function scheduleService(part: i32, t: f64): void {
  if (parts.serviced[part] === 0) return
  const dueHours = h.servicedHours[part] + parts.serviceHours[part]
  const dueTime = h.servicedTime[part] + parts.serviceYears[part]
  const reached = isBeyond(HOURS, dueHours) ? Infinity : timeAt(HOURS, dueHours)
  const byHours = reached < dueTime
  const code = codeOf(SERVICE, part, byHours ? HOURS : YEARS)
  const when = byHours ? reached : dueTime
  scheduleAt(code, h.serviceStamp[part], byHours ? dueHours : dueTime, max(when, t))
}

/** A part was renewed or serviced at `t`: its service falls due one interval later. */
export function restartService(part: i32, t: f64): void {
  if (parts.serviced[part] === 0) return
  h.serviceStamp[part]++
  h.servicedHours[part] = position(HOURS, t)
  h.servicedTime[part] = t
  scheduleService(part, t)
}
