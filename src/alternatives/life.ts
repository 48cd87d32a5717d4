/**
 * A mode's life: onset, delay, the checks that may find it, the service that forestalls it, wear by others.
 *
 * @module
 */

import { normalCdf, normalQuantile } from '../forecast/special-normal.js'
import { normalFrom } from './amounts.js'
import { draw, lifeWord, purpose, uniformFrom, uniformFromLow } from './draws.js'
import {
  codeOf,
  DEFECTIVE,
  event,
  FAILED_UNNOTICED,
  type History,
  isBeyond,
  position,
  SOUND,
  schedule,
  scheduleAt,
  timeAt,
} from './history.js'
import { HOURS, leastOnsetShift, YEARS } from './program.js'

/** Starts a new life of mode `m` at `t`; `virtualAge` is what a reconditioned part keeps, on the running clock. */
export function beginLife(h: History, m: number, t: number, virtualAge: number): void {
  const { modes } = h.program
  if (h.state[m] === FAILED_UNNOTICED) wearOthers(h, m, t, false)
  h.life[m]!++
  h.stamp[m]!++
  h.patches[m] = 0
  h.state[m] = SOUND
  const clock = modes.clock[m]!
  h.birth[m] = position(h, clock, t) - virtualAge
  h.birthHours[m] = position(h, HOURS, t)
  h.birthTime[m] = t
  const word = lifeWord(h.draws, h.set, m, h.life[m]!)
  if (virtualAge === 0 && h.wear[m] === 1) scheduleFirstOnset(h, m, t, word)
  else scheduleOnset(h, m, t, -Math.log(uniformFrom(word)))
}

/** Onset of a life without age or wear, for which most words say at a glance that it lies past the horizon. */
export function scheduleFirstOnset(h: History, m: number, t: number, word: number): void {
  const { modes, isWorn } = h.program
  const clock = modes.clock[m]!
  const birth = h.birth[m]!
  const scale = h.scale[m]!
  const atLeast = modes.leastOnset[modes.leastOnsetRow[m]! + (word >>> leastOnsetShift)]!
  if (isWorn[m] === 0 && isBeyond(h, clock, birth + scale * atLeast)) {
    h.onsetAt[m] = Number.POSITIVE_INFINITY
    return
  }
  const hazard = -Math.log(uniformFrom(word))
  const shape = modes.shape[m]!
  h.onsetAt[m] = birth + scale * (shape === 1 ? hazard : hazard ** (1 / shape))
  schedule(h, codeOf(event.onset, m, clock), h.stamp[m]!, h.onsetAt[m]!, t)
}

/** Onset where `hazard` (unit exponential) more has been used than by the age at `t`. */
export function scheduleOnset(h: History, m: number, t: number, hazard: number): void {
  const { modes } = h.program
  const shape = modes.shape[m]!
  const scale = h.scale[m]!
  const clock = modes.clock[m]!
  const age = position(h, clock, t) - h.birth[m]!
  const end = (age > 0 ? (age / scale) ** shape : 0) + hazard / h.wear[m]!
  h.onsetAt[m] = h.birth[m]! + scale * (shape === 1 ? end : end ** (1 / shape))
  schedule(h, codeOf(event.onset, m, clock), h.stamp[m]!, h.onsetAt[m]!, t)
}

/** The defect arises: the delay to failure starts, and the checks get their chance. */
export function becomeDefective(h: History, m: number, t: number): void {
  h.state[m] = DEFECTIVE
  h.onsetAt[m] = Number.POSITIVE_INFINITY
  draw(h.draws, h.set, m, h.life[m]!, purpose.delay, 0)
  fallDue(h, m, t, delayFrom(h, m, h.draws.words[0]!))
  scheduleFinding(h, m, t, purpose.check)
}

/** The mode fails after `delay` more on the delay's clock. */
export function fallDue(h: History, m: number, t: number, delay: number): void {
  const { modes } = h.program
  const clock = modes.delayClock[m]!
  h.failsAt[m] = position(h, clock, t) + delay
  schedule(h, codeOf(event.fails, m, clock), h.stamp[m]!, h.failsAt[m]!, t)
}

/** Time from defect to failure. */
export function delayFrom(h: History, m: number, word: number): number {
  const { modes } = h.program
  const level = modes.delayLevel[m]!
  switch (modes.delayKind[m]) {
    case 0:
      return 0
    case 1:
      return level * Math.exp(modes.delaySpread[m]! * normalFrom(word))
    default:
      return level * (-Math.log(uniformFrom(word))) ** (1 / modes.delaySpread[m]!)
  }
}

/** What is left of a delay that has already lasted `since`. */
export function delayLeft(h: History, m: number, word: number, since: number): number {
  const { modes } = h.program
  const level = modes.delayLevel[m]!
  const spread = modes.delaySpread[m]!
  const u = uniformFrom(word)
  if (modes.delayKind[m] === 0 || since <= 0) return delayFrom(h, m, word)
  if (modes.delayKind[m] === 2) {
    return level * ((since / level) ** spread - Math.log(u)) ** (1 / spread) - since
  }
  if (spread === 0) return Math.max(0, level - since)
  const left = u * normalCdf(-Math.log(since / level) / spread)
  return level * Math.exp(-spread * normalQuantile(left)) - since
}

/** How long, as the calendar goes without outages, until a defective mode fails. [years] */
export function timeLeft(h: History, m: number, t: number): number {
  return timeAt(h, h.program.modes.delayClock[m]!, h.failsAt[m]!) - t
}

/**
 * When the checks find a mode that is defective (or failed unnoticed). Each check is as good at this defect as one
 * draw from its beta distribution says, so the looks until it is found are geometric: ⌊ln u / ln(1 − chance)⌋ miss.
 */
export function scheduleFinding(h: History, m: number, t: number, forWhat: number): void {
  const { modes, use, looksPerLog } = h.program
  const runs = use.hoursPerYear > 0
  const clock = runs ? HOURS : YEARS
  const now = position(h, clock, t)
  const born = runs ? h.birthHours[m]! : h.birthTime[m]!
  const rows = forWhat === purpose.check ? modes.checkLooks : modes.checkLooksFailed
  let found = Number.POSITIVE_INFINITY
  const from = modes.checkFrom[m]!
  const to = modes.checkFrom[m + 1]!
  for (let c = from; c < to; c++) {
    const word = (c - from) & 1
    if (word === 0) drawLooks(h, m, forWhat, (c - from) >> 1)
    const perLog = looksPerLog[rows[c]! + (goodWords[word]! >>> 24)]!
    const missed = Math.floor(Math.log(uniformFromLow(lookWords[word]!)) * perLog)
    const every = modes.checkEvery[c]!
    const at = born + (Math.floor((now - born) / every) + 1 + missed) * every
    if (at < found) found = at
  }
  if (found === Number.POSITIVE_INFINITY) return
  const kind = forWhat === purpose.check ? event.foundDefective : event.foundFailed
  schedule(h, codeOf(kind, m, clock), h.stamp[m]!, found, t)
}

/** Words of two checks: how good each is at the defect that a mode has in this life, and how many looks it takes. */
const goodWords = new Uint32Array(2)
const lookWords = new Uint32Array(2)

function drawLooks(h: History, m: number, forWhat: number, pair: number): void {
  const { words } = h.draws
  draw(h.draws, h.set, m, h.life[m]!, purpose.check, pair)
  goodWords[0] = words[0]!
  goodWords[1] = words[1]!
  if (forWhat !== purpose.check) draw(h.draws, h.set, m, h.life[m]!, forWhat, pair)
  lookWords[0] = words[0]!
  lookWords[1] = words[1]!
}

/** A mode that failed unnoticed begins, or ends, to wear others: what is left of their lives shrinks, or grows. */
export function wearOthers(h: History, m: number, t: number, begins: boolean): void {
  const { modes } = h.program
  for (let w = modes.wearFrom[m]!; w < modes.wearFrom[m + 1]!; w++) {
    const worn = modes.wearMode[w]!
    const factor = modes.wearFactor[w]!
    if (h.state[worn] !== SOUND) {
      h.wear[worn]! *= begins ? factor : 1 / factor
      continue
    }
    const shape = modes.shape[worn]!
    const age = Math.max(0, position(h, modes.clock[worn]!, t) - h.birth[worn]!)
    const used = (age / h.scale[worn]!) ** shape
    const end = ((h.onsetAt[worn]! - h.birth[worn]!) / h.scale[worn]!) ** shape
    const hazard = Math.max(0, end - used) * h.wear[worn]!
    h.wear[worn]! *= begins ? factor : 1 / factor
    h.stamp[worn]!++
    scheduleOnset(h, worn, t, hazard)
  }
}

/** When the next service of a part is due: the earlier of its hours and its years. */
export function scheduleService(h: History, part: number, t: number): void {
  const { parts } = h.program
  if (parts.serviced[part] === 0) return
  const dueHours = h.servicedHours[part]! + parts.serviceHours[part]!
  const dueTime = h.servicedTime[part]! + parts.serviceYears[part]!
  const reached = isBeyond(h, HOURS, dueHours) ? Number.POSITIVE_INFINITY : timeAt(h, HOURS, dueHours)
  const byHours = reached < dueTime
  const code = codeOf(event.service, part, byHours ? HOURS : YEARS)
  const when = byHours ? reached : dueTime
  scheduleAt(h, code, h.serviceStamp[part]!, byHours ? dueHours : dueTime, Math.max(when, t))
}

/** A part was renewed or serviced at `t`: its service falls due one interval later. */
export function restartService(h: History, part: number, t: number): void {
  if (h.program.parts.serviced[part] === 0) return
  h.serviceStamp[part]!++
  h.servicedHours[part] = position(h, HOURS, t)
  h.servicedTime[part] = t
  scheduleService(h, part, t)
}
