/**
 * A failure and what it drags down: one event, in which a part is damaged, mended and charged once.
 *
 * @module
 */

import { NO_DELAY, YEARS } from '../codes'
import * as K from '../kept-at'
import * as purpose from '../purpose'
import { draw, uniformFrom, word0, word1 } from './draws'
import {
  clockOf,
  codeOf,
  DEFECTIVE,
  FAILED,
  FAILED_UNNOTICED,
  FITTING_OUT,
  failuresOfDanger,
  failuresOfMode,
  h,
  SHOWS,
  SOUND,
  schedule,
} from './history'
import { addToJob, doJob, emptyJob, job, RUNNING, STOPPED } from './job'
import { becomeDefective, scheduleFinding, wearOthers } from './life'
import * as model from './model'
import * as modes from './modes'
import * as parts from './parts'
import * as use from './use'

/** A mode's delay is over, or it fails without warning. */
export function fail(m: i32, t: f64, code: i32): void {
  if (modes.hidden[m] === 1) {
    failUnnoticed(m, t)
  } else if (clockOf(code) === YEARS && use.laidUp[use.monthAt(t)] === 1) {
    failInLayUp(m, t)
  } else {
    failVisibly(m, t, K.failures)
  }
}

/** In lay-up a failure shows at the next day of use, unless fitting out meets it before. */
function failInLayUp(m: i32, t: f64): void {
  draw(h.set, m, h.life[m], purpose.failure, h.patches[m])
  const kind = uniformFrom(word1) < model.fittingOutShare ? FITTING_OUT : SHOWS
  h.state[m] = FAILED
  schedule(codeOf(kind, m, YEARS), h.stamp[m], use.nextUse(t), t)
}

/** A visible failure in use, with its knock-on, its job and its money under `heading`. */
export function failVisibly(m: i32, t: f64, heading: i32): void {
  emptyJob()
  job.hasHiddenRoot = false
  h.state[m] = FAILED
  addToJob(modes.part[m], m)
  const stops = countFailure(m)
  const othersStop = spread(m, t)
  finishEvent(t, m, stops || othersStop, heading)
}

/** A mode that stood failed before now: an ordinary failure, but what it was to drag down it has dragged down. */
export function failFromBefore(m: i32): void {
  emptyJob()
  h.state[m] = FAILED
  h.stamp[m]++
  addToJob(modes.part[m], m)
  finishEvent(0, m, countFailure(m), K.failures)
}

/** Nothing shows, unless the failure brings something down with it. */
function failUnnoticed(m: i32, t: f64): void {
  emptyJob()
  h.state[m] = FAILED_UNNOTICED
  countFailure(m)
  wearOthers(m, t, true)
  addToJob(modes.part[m], m)
  job.hits = 0
  job.hasHiddenRoot = true
  const stops = spread(m, t)
  if (job.hits > 0) finishEvent(t, m, stops, K.failures)
  else scheduleFinding(m, t, purpose.checkFailed)
}

function finishEvent(t: f64, m: i32, stops: bool, heading: i32): void {
  const year = <i32>t
  const before = h.years[year]
  const first = h.sums[K.firstMode] < 0
  if (first) {
    h.sums[K.firstMode] = m
    h.sums[K.firstTime] = t
  }
  doJob(t, stops ? STOPPED : RUNNING, heading)
  if (first) h.sums[K.firstCost] = h.years[year] - before
}

/** Counts a failure and its dangers; says whether a visible one stops the set. */
function countFailure(m: i32): bool {
  failuresOfMode[h.alternative * modes.count + m]++
  for (let d = modes.dangerFrom[m]; d < modes.dangerFrom[m + 1]; d++) {
    const kind = modes.dangerKind[d]
    failuresOfDanger[h.alternative * model.dangerCount + kind]++
    h.sums[K.dangers] += model.dangerChance[kind]
  }
  if (modes.hidden[m] === 1) return false
  draw(h.set, m, h.life[m], purpose.failure, h.patches[m])
  const u = uniformFrom(word0)
  if (u < modes.stops[m]) return true
  if (u < modes.stops[m] + modes.derates[m]) h.sums[K.derates] += 1
  return false
}

/** Links of a failed mode and of all that they ruin in turn. Says whether any of what was ruined stops the set. */
function spread(m: i32, t: f64): bool {
  let stops = false
  for (let l = modes.linkFrom[m]; l < modes.linkFrom[m + 1]; l++) {
    const part = modes.linkPart[l]
    if (job.at[part] >= 0 || !hits(m, l)) continue
    const mode = modes.linkMode[l]
    const startsDefect = modes.linkStartsDefect[l] === 1 && mode >= 0
    if (startsDefect && h.state[mode] !== SOUND) continue
    job.hits++
    if (startsDefect && modes.delayKind[mode] !== NO_DELAY) {
      h.stamp[mode]++
      becomeDefective(mode, t)
      continue
    }
    addToJob(part, mode)
    if (mode < 0) continue
    standFailed(mode)
    if (countFailure(mode)) stops = true
    if (spread(mode, t)) stops = true
  }
  return stops
}

/** What fails unnoticed keeps its state, so that its wear on others ends with its mend. */
export function standFailed(m: i32): void {
  if (h.state[m] !== FAILED_UNNOTICED) h.state[m] = FAILED
}

/** Whether a link hits. A working shutdown takes part of the chance away; one found asleep joins the job. */
function hits(m: i32, l: i32): bool {
  draw(h.set, m, h.life[m], purpose.link, (l - modes.linkFrom[m]) * 64 + (h.patches[m] & 63))
  const u = uniformFrom(word0)
  const chance = modes.linkChance[l]
  const guard = modes.linkGuard[l]
  if (guard < 0) return u < chance
  const asleep = sleepingMode(guard)
  if (asleep < 0) return u < chance * (1 - modes.linkGuardEffect[l])
  const hit = u < chance
  if (hit || !job.hasHiddenRoot) addToJob(guard, asleep)
  return hit
}

function sleepingMode(part: i32): i32 {
  for (let m = parts.modeFrom[part]; m < parts.modeFrom[part + 1]; m++) {
    if (h.state[m] === FAILED_UNNOTICED) return m
  }
  return -1
}

/** A fault that work or the maker put in comes out: that mode fails now, whatever its state. */
export function faultShows(m: i32, t: f64): void {
  if (h.state[m] === DEFECTIVE || h.state[m] === SOUND) failVisibly(m, t, K.intrusion)
}
