/**
 * One life after another of the modes of a part: onset, delay, checks and services in the order in which they come.
 *
 * The same for lives played from the first day to now and for lives played ahead; what differs is told by the rules.
 *
 * @module
 */

import { detectionSteps } from './mode-life.js'
import { beginLife, hoursAt, recondition, workOutOnset } from './play-onset.js'
import type { PlayedCheck, Span } from './play-part.js'
import { fitPlainPiece, restartService, servicesFallDue } from './play-service.js'
import { DEFECTIVE, FAILED, mostEvents, nextUniform, type Play, type PlayRules, SOUND } from './play-state.js'
import { normalQuantile } from './special-normal.js'
import { readingAt, timeOfReading } from './track.js'

/** Keeps a check that falls on this very moment from being made twice. [years] */
const instant = 1e-9

/** Plays on until `end`. */
export function runLife(play: Play, rules: PlayRules, end: number): void {
  const { prepared, modes, turns, boundOnly, state, nextCheck, checkRow } = play
  for (let turn = 0; turn < mostEvents && !rules.over(play); turn++) {
    let time = Infinity
    let what = -1
    let check = -1
    for (let m = 0; m < modes; m++) {
      if (turns[m]! < time) {
        time = turns[m]!
        what = m
        check = -1
      }
      if (state[m] === SOUND) continue
      const checks = prepared.checks[m]!.length
      for (let c = 0; c < checks; c++) {
        const at = nextCheck[m * checkRow + c]!
        if (at < time) {
          time = at
          what = m
          check = c
        }
      }
    }
    const clearing = prepared.clearings[play.clearing]
    const clearedAt = clearing === undefined ? Infinity : clearing.time
    if (clearedAt <= time && clearedAt <= play.serviceDue && clearedAt <= end) {
      rules.before(play, clearedAt)
      beginLife(play, clearing!.mode, clearedAt)
      play.clearing++
      continue
    }
    if (clearedAt < time) time = clearedAt
    if (play.serviceDue <= time && play.serviceDue < end) {
      turn += servicesFallDue(play, rules, { first: time, end })
      continue
    }
    if (what >= 0 && check < 0 && boundOnly[what]! > 0 && time < end) {
      workOutOnset(play, what)
      continue
    }
    rules.before(play, time)
    if (!(time < end)) return
    if (check >= 0) checkFallsDue(play, rules, { mode: what, check, time })
    else if (state[what] === SOUND) becomeDefective(play, what, time)
    else rules.failed(play, what, time)
  }
}

function becomeDefective(play: Play, m: number, time: number): void {
  play.state[m] = DEFECTIVE
  play.onset[m] = time
  play.turns[m] = failureAfter(play, m, { time, factor: 1 })
  startChecks(play, m, time)
}

/** The checks of a mode get their chance at a new defect. */
export function startChecks(play: Play, m: number, time: number): void {
  const checks = play.prepared.checks[m]!
  for (let c = 0; c < checks.length; c++) {
    play.quality[m * play.checkRow + c] = Math.floor(nextUniform(play) * detectionSteps)
    play.nextCheck[m * play.checkRow + c] = checkAfter(play, m, { check: checks[c]!, time })
  }
}

/** When a defect that begins (or begins again, × factor) at `time` will have failed. */
export function failureAfter(
  play: Play,
  m: number,
  at: { readonly time: number; readonly factor: number },
): number {
  const { use, lives } = play.prepared
  const { delay, delayClock } = lives[m]!
  if (delay.kind === 'none') return at.time
  const drawn =
    delay.kind === 'lognormal'
      ? delay.median * Math.exp(delay.logSd * normalQuantile(nextUniform(play)))
      : delay.scale * (-Math.log(nextUniform(play))) ** (1 / delay.shape)
  return timeOfReading(use, delayClock, readingAt(use, delayClock, at.time) + drawn * at.factor)
}

/** First time after this at which a check falls due: a multiple of its interval since the mode was renewed. */
function checkAfter(
  play: Play,
  m: number,
  at: { readonly check: PlayedCheck; readonly time: number },
): number {
  const { use } = play.prepared
  if (!(use.hoursPerYear > 0)) {
    const born = play.birthTime[m]!
    return born + Math.floor(at.time - born + 1 + instant)
  }
  const every = Math.min(at.check.everyHours, use.hoursPerYear)
  const born = play.birthHours[m]!
  const run = hoursAt(play, at.time) - born
  return timeOfReading(use, 'hours', born + every * Math.floor(run / every + 1 + instant))
}

function checkFallsDue(
  play: Play,
  rules: PlayRules,
  at: { readonly mode: number; readonly check: number; readonly time: number },
): void {
  const { mode, time } = at
  const check = play.prepared.checks[mode]![at.check]!
  const slot = mode * play.checkRow + at.check
  play.nextCheck[slot] = Math.max(checkAfter(play, mode, { check, time }), time + instant)
  const table = play.state[mode] === FAILED ? check.detectedFailed : check.detected
  rules.checked(play, { mode, check, time, chance: check.diligence * table[play.quality[slot]!]! })
}

/** What a mend leaves: the outcome of the mode's remedy. */
export function mendMode(play: Play, m: number, time: number): void {
  const { outcome, agesLess, delayFactor } = play.prepared.modes[m]!
  if (outcome === 'cleared') {
    beginLife(play, m, time)
  } else if (outcome === 'patched') {
    play.state[m] = DEFECTIVE
    play.onset[m] = time
    play.turns[m] = failureAfter(play, m, { time, factor: delayFactor })
  } else if (outcome === 'reconditioned') {
    for (let k = 0; k < play.modes; k++) recondition(play, k, { time, agesLess })
  } else renewPart(play, time)
}

/** Every mode starts anew, and so does the service. */
export function renewPart(play: Play, time: number): void {
  fitPlainPiece(play)
  for (let m = 0; m < play.modes; m++) beginLife(play, m, time)
  restartService(play, time)
}

export function within(spans: readonly Span[], time: number): boolean {
  for (const span of spans) if (time >= span.from && time <= span.to) return true
  return false
}
