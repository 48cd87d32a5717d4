/**
 * A failure and what it drags down: one event, in which a part is damaged, mended and charged once.
 *
 * @module
 */

import { draw, purpose, uniformFrom } from './draws.js'
import {
  clockOf,
  codeOf,
  DEFECTIVE,
  event,
  FAILED,
  FAILED_UNNOTICED,
  type History,
  K,
  SOUND,
  schedule,
} from './history.js'
import { addToJob, comes, doJob, emptyJob, type Job } from './job.js'
import { becomeDefective, scheduleFinding, wearOthers } from './life.js'
import { YEARS } from './program.js'
import { monthAt, nextUse } from './use.js'

/** A mode's delay is over (event `fails`), or it fails without warning. */
export function fail(h: History, job: Job, m: number, t: number, code: number): void {
  const { modes } = h.program
  if (modes.hidden[m] === 1) {
    failUnnoticed(h, job, m, t)
  } else if (clockOf(code) === YEARS && laidUp(h, t)) {
    failInLayUp(h, m, t)
  } else {
    failVisibly(h, job, m, t, K.failures)
  }
}

function laidUp(h: History, t: number): boolean {
  const { use } = h.program
  return t >= h.downUntil && use.laidUp[monthAt(use, t)] === 1
}

/** In lay-up a failure shows at the next day of use, unless fitting out meets it before. */
function failInLayUp(h: History, m: number, t: number): void {
  const { care } = h.program.model
  draw(h.draws, h.set, m, h.life[m]!, purpose.failure, h.patches[m]!)
  const kind = uniformFrom(h.draws.words[1]!) < care.fittingOutShare ? event.fittingOut : event.shows
  h.state[m] = FAILED
  schedule(h, codeOf(kind, m, YEARS), h.stamp[m]!, nextUse(h.program.use, t), t)
}

/** A visible failure in use, with its knock-on, its job and its money under `heading`. */
export function failVisibly(h: History, job: Job, m: number, t: number, heading: number): void {
  emptyJob(job)
  h.state[m] = FAILED
  addToJob(h, job, h.program.modes.part[m]!, m)
  const stops = countFailure(h, m)
  finishEvent(h, job, t, { m, stops: spread(h, job, m, t) || stops, heading })
}

/** A mode that stood failed before now: an ordinary failure, but what it was to drag down it has dragged down. */
export function failFromBefore(h: History, job: Job, m: number): void {
  emptyJob(job)
  h.state[m] = FAILED
  h.stamp[m]!++
  addToJob(h, job, h.program.modes.part[m]!, m)
  finishEvent(h, job, 0, { m, stops: countFailure(h, m), heading: K.failures })
}

/** Nothing shows, unless the failure brings something down with it. */
function failUnnoticed(h: History, job: Job, m: number, t: number): void {
  emptyJob(job)
  h.state[m] = FAILED_UNNOTICED
  countFailure(h, m)
  wearOthers(h, m, t, true)
  addToJob(h, job, h.program.modes.part[m]!, m)
  job.hits = 0
  const stops = spread(h, job, m, t)
  if (job.hits > 0) {
    finishEvent(h, job, t, { m, stops, heading: K.failures })
  } else {
    scheduleFinding(h, m, t, purpose.checkFailed)
  }
}

function finishEvent(
  h: History,
  job: Job,
  t: number,
  what: { readonly m: number; readonly stops: boolean; readonly heading: number },
): void {
  const before = moneyOfYear(h, t)
  const first = h.sums[K.firstMode]! < 0
  if (first) {
    h.sums[K.firstMode] = what.m
    h.sums[K.firstTime] = t
  }
  doJob(h, job, t, { comes: what.stops ? comes.stopped : comes.running, heading: what.heading })
  if (first) h.sums[K.firstCost] = moneyOfYear(h, t) - before
}

function moneyOfYear(h: History, t: number): number {
  return h.years[Math.floor(t)]!
}

/** Counts a failure and its dangers; says whether a visible one stops the set. */
function countFailure(h: History, m: number): boolean {
  const { modes, dangerChance } = h.program
  h.failuresOfMode[m]!++
  for (let d = modes.dangerFrom[m]!; d < modes.dangerFrom[m + 1]!; d++) {
    const kind = modes.dangerKind[d]!
    h.failuresOfDanger[kind]!++
    h.sums[K.dangers]! += dangerChance[kind]!
  }
  if (modes.hidden[m] === 1) return false
  draw(h.draws, h.set, m, h.life[m]!, purpose.failure, h.patches[m]!)
  return uniformFrom(h.draws.words[0]!) < modes.stops[m]!
}

/** Links of a failed mode and of all that they ruin in turn. Says whether any of what was ruined stops the set. */
function spread(h: History, job: Job, m: number, t: number): boolean {
  const { modes } = h.program
  let stops = false
  for (let l = modes.linkFrom[m]!; l < modes.linkFrom[m + 1]!; l++) {
    const part = modes.linkPart[l]!
    if (job.at[part]! >= 0 || !hits(h, job, m, l)) continue
    const mode = modes.linkMode[l]!
    if (modes.linkStartsDefect[l] === 1 && mode >= 0 && modes.delayKind[mode] !== 0) {
      if (h.state[mode] === SOUND) {
        h.stamp[mode]!++
        becomeDefective(h, mode, t)
        job.hits++
      }
      continue
    }
    job.hits++
    addToJob(h, job, part, mode)
    if (mode < 0) continue
    if (countFailure(h, mode)) stops = true
    if (spread(h, job, mode, t)) stops = true
  }
  return stops
}

/** Whether a link hits. A working shutdown takes part of the chance away; one found asleep joins the job. */
function hits(h: History, job: Job, m: number, l: number): boolean {
  const { modes } = h.program
  draw(h.draws, h.set, m, h.life[m]!, purpose.link, (l - modes.linkFrom[m]!) * 64 + (h.patches[m]! & 63))
  const u = uniformFrom(h.draws.words[0]!)
  const chance = modes.linkChance[l]!
  const guard = modes.linkGuard[l]!
  if (guard < 0) return u < chance
  const asleep = sleepingMode(h, guard)
  if (asleep < 0) return u < chance * (1 - modes.linkGuardEffect[l]!)
  const hit = u < chance
  if (hit || modes.hidden[m] === 0) addToJob(h, job, guard, asleep)
  return hit
}

function sleepingMode(h: History, part: number): number {
  const { parts } = h.program
  for (let m = parts.modeFrom[part]!; m < parts.modeFrom[part + 1]!; m++) {
    if (h.state[m] === FAILED_UNNOTICED) return m
  }
  return -1
}

/** A fault that work or the maker put in comes out: that mode fails now, whatever its state. */
export function faultShows(h: History, job: Job, m: number, t: number): void {
  if (h.state[m] === DEFECTIVE || h.state[m] === SOUND) failVisibly(h, job, m, t, K.intrusion)
}
