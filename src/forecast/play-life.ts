/**
 * One life after another of the modes of a part: onset, delay, checks and services in the order in which they come.
 *
 * The same for lives played from the first day to now and for lives played ahead; what differs is told by the rules.
 *
 * @module
 */

import { leastOnsetSlices } from './least-onset.js'
import { detectionSteps } from './mode-life.js'
import type { PlayedCheck, PlayedPart, Span } from './play-part.js'
import { normalQuantile } from './special-normal.js'
import { threefry2x32, uniformOfWord } from './threefry.js'
import { readingAt, timeOfReading } from './track.js'

export const SOUND = 0
export const DEFECTIVE = 1
export const FAILED = 2

/** The life in play. Changed in place: millions of these moments pass in a second. */
export interface Play {
  readonly prepared: PlayedPart
  readonly modes: number
  readonly theta: Float64Array
  readonly state: Uint8Array
  /** Reading of the mode's clock at its (virtual) birth. */
  readonly birth: Float64Array
  /** Running hours and time at the last renewal of the mode. */
  readonly birthHours: Float64Array
  readonly birthTime: Float64Array
  /** Time of what next happens of itself: onset or failure. */
  readonly turns: Float64Array
  /** Draw of an onset of which `turns` is only the least it may be; 0 where `turns` is exact; {@link quiet}. */
  readonly boundOnly: Float64Array
  /** Cumulative hazard that the life has outlasted already, to be added to that of `boundOnly`. */
  readonly outlasted: Float64Array
  /** Cumulative hazard of one service interval from new; below 0 if not yet worked out for the life in play. */
  readonly perInterval: Float64Array
  /** How many clearings by service are left that no onset follows within one interval. */
  readonly quietClearings: Float64Array
  readonly onset: Float64Array
  /** Row length of what is kept per mode and check. */
  readonly checkRow: number
  /** Next time of each check of a mode that is not sound. */
  readonly nextCheck: Float64Array
  /** How good each check is at this defect: a step of its table. */
  readonly quality: Int32Array
  servicedTime: number
  servicedHours: number
  serviceDue: number
  /** Clearings at known times already passed. */
  clearing: number
  /** Of the piece in place, where the draws of θ hold it; 1 from the first renewal on. */
  presentQuality: number
  /** The time for which running hours were last read, and what they were. */
  readTime: number
  readHours: number
  readonly words: Uint32Array
  readonly key: readonly [number, number]
  /** Which life, as a counter of the cipher, and how many pairs of words it has used. */
  life: number
  drawn: number
  /** A word left over from the last pair; below 0 if none. */
  spare: number
}

/** What happens at the turns of a life that are not the same for all plays. */
export interface PlayRules {
  /** Called with the time of the next event (or later than the end) before it happens. */
  readonly before: (play: Play, time: number) => void
  /** A check of a mode that is not sound falls due; `chance` is that of its being made and seeing the defect. */
  readonly checked: (
    play: Play,
    at: {
      readonly mode: number
      readonly check: PlayedCheck
      readonly time: number
      readonly chance: number
    },
  ) => void
  /** A mode fails; the state is not changed yet. */
  readonly failed: (play: Play, mode: number, time: number) => void
  /** Whether a service that falls due is done. */
  readonly serviced: (play: Play, time: number) => boolean
  /** Whether the life need be played no further. */
  readonly over: (play: Play) => boolean
}

/** A part that changes more often than this is not worth following further; practice. */
const mostEvents = 20_000
/** Keeps a check that falls on this very moment from being made twice. [years] */
const instant = 1e-9

export function makePlay(prepared: PlayedPart, key: readonly [number, number]): Play {
  const modes = prepared.part.modes.length
  const checkRow = Math.max(1, ...prepared.checks.map((checks) => checks.length))
  return {
    prepared,
    modes,
    theta: new Float64Array(modes),
    state: new Uint8Array(modes),
    birth: new Float64Array(modes),
    birthHours: new Float64Array(modes),
    birthTime: new Float64Array(modes),
    turns: new Float64Array(modes),
    boundOnly: new Float64Array(modes),
    outlasted: new Float64Array(modes),
    perInterval: new Float64Array(modes),
    quietClearings: new Float64Array(modes),
    onset: new Float64Array(modes),
    checkRow,
    nextCheck: new Float64Array(modes * checkRow),
    quality: new Int32Array(modes * checkRow),
    servicedTime: 0,
    servicedHours: 0,
    serviceDue: Infinity,
    clearing: 0,
    presentQuality: 1,
    readTime: Number.NaN,
    readHours: 0,
    words: new Uint32Array(2),
    key,
    life: 0,
    drawn: 0,
    spare: -1,
  }
}

/** Starts the draws of a life anew. */
export function startDraws(play: Play, life: number): void {
  play.life = life
  play.drawn = 0
  play.spare = -1
  play.clearing = 0
  play.presentQuality = 1
  play.perInterval.fill(-1)
  play.boundOnly.fill(0)
}

/** A uniform draw; the draws of a life are numbered, and each cipher gives two. */
export function nextUniform(play: Play): number {
  if (play.spare >= 0) {
    const word = play.spare
    play.spare = -1
    return uniformOfWord(word)
  }
  threefry2x32(play.key[0], play.key[1], play.life, play.drawn++, play.words)
  play.spare = play.words[1]!
  return uniformOfWord(play.words[0]!)
}

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

/** A new life of a mode. */
export function beginLife(play: Play, m: number, time: number): void {
  const { use, lives, leastOnsets } = play.prepared
  const life = lives[m]!
  const reading = life.clock === 'hours' ? hoursAt(play, time) : readingAt(use, life.clock, time)
  play.state[m] = SOUND
  play.birth[m] = reading * life.pace
  play.birthHours[m] = hoursAt(play, time)
  play.birthTime[m] = time
  const uniform = nextUniform(play)
  const least = leastOnsets[m]![Math.floor(uniform * leastOnsetSlices)]!
  play.turns[m] = Math.max(time, timeOfAge(play, m, play.theta[m]! * life.onsetScale * least))
  play.boundOnly[m] = uniform
  play.outlasted[m] = 0
}

/** Sound again, with a share of its age taken away; the phase of its checks goes on. */
function recondition(play: Play, m: number, at: { readonly time: number; readonly agesLess: number }): void {
  const { time, agesLess } = at
  const { use, lives } = play.prepared
  const life = lives[m]!
  const reading = readingAt(use, life.clock, time) * life.pace
  const usedAge = Math.max(0, (reading - play.birth[m]!) * (1 - agesLess))
  play.state[m] = SOUND
  play.birth[m] = reading - usedAge
  drawOnset(play, m, { time, usedAge })
}

/** Running hours at a time; many ask for the same moment one after another. */
function hoursAt(play: Play, time: number): number {
  if (time !== play.readTime) {
    play.readTime = time
    play.readHours = readingAt(play.prepared.use, 'hours', time)
  }
  return play.readHours
}

/** When a mode will have reached an age. */
function timeOfAge(play: Play, m: number, age: number): number {
  const life = play.prepared.lives[m]!
  return timeOfReading(play.prepared.use, life.clock, (play.birth[m]! + age) / life.pace)
}

/** Onset of a life that began as new. */
function workOutOnset(play: Play, m: number): void {
  const life = play.prepared.lives[m]!
  const hazard = play.outlasted[m]! - Math.log(play.boundOnly[m]!)
  const age = play.theta[m]! * life.onsetScale * hazard ** (1 / life.shape)
  play.turns[m] = Math.max(play.turns[m]!, timeOfAge(play, m, age))
  play.boundOnly[m] = 0
}

/** Draws the onset of a sound mode that has reached an age. */
export function drawOnset(
  play: Play,
  m: number,
  at: { readonly time: number; readonly usedAge: number },
): void {
  const life = play.prepared.lives[m]!
  const scale = play.theta[m]! * life.onsetScale
  let end = -Math.log(nextUniform(play))
  if (at.usedAge > 0) end += (at.usedAge / scale) ** life.shape
  play.turns[m] = Math.max(at.time, timeOfAge(play, m, scale * end ** (1 / life.shape)))
  play.boundOnly[m] = 0
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

/** From now on the piece in place is as good as any. */
function fitPlainPiece(play: Play): void {
  if (play.presentQuality === 1) return
  for (let m = 0; m < play.modes; m++) play.theta[m]! /= play.presentQuality
  play.presentQuality = 1
  play.perInterval.fill(-1)
}

/** Every mode starts anew, and so does the service. */
export function renewPart(play: Play, time: number): void {
  fitPlainPiece(play)
  for (let m = 0; m < play.modes; m++) beginLife(play, m, time)
  restartService(play, time)
}

/**
 * Services fall due one after another until something else comes first; returns how many. A service that renews the
 * part is one that clears every mode.
 */
function servicesFallDue(
  play: Play,
  rules: PlayRules,
  until: { readonly first: number; readonly end: number },
): number {
  const { cleared } = play.prepared
  let { first } = until
  let count = 0
  while (play.serviceDue <= first && play.serviceDue < until.end && count < mostEvents && !rules.over(play)) {
    const time = play.serviceDue
    count++
    rules.before(play, time)
    const done = rules.serviced(play, time)
    if (done && play.prepared.service.renews) fitPlainPiece(play)
    // done or not, it is due again one interval later
    restartService(play, time)
    for (const m of cleared) {
      if (done) clearByService(play, m, time)
      else missService(play, m)
      first = Math.min(first, play.turns[m]!)
    }
  }
  for (const m of cleared) readBirth(play, m)
  return count
}

/** In `boundOnly`: no onset comes before the next service, and if that is done none has to be drawn. */
const quiet = -1

/**
 * A mode starts anew and will be serviced again after one interval, in which it uses up the hazard M at most. Draws of
 * its life under M come with chance 1 − e^(−M), so that a geometric draw tells how many lives are quiet; of those no
 * more need be known unless the next service is not done.
 */
function clearByService(play: Play, m: number, time: number): void {
  const { longestInterval } = play.prepared
  if (longestInterval[m] === Infinity) {
    beginLife(play, m, time)
    return
  }
  if (play.perInterval[m]! < 0) {
    const life = play.prepared.lives[m]!
    play.perInterval[m] = (longestInterval[m]! / (play.theta[m]! * life.onsetScale)) ** life.shape
    drawQuietClearings(play, m)
  }
  play.state[m] = SOUND
  play.birthTime[m] = time
  play.birth[m] = Number.NaN
  play.boundOnly[m] = quiet
  play.turns[m] = Infinity
  if (play.quietClearings[m]!-- > 0) return
  const life = play.prepared.lives[m]!
  const hazard = -Math.log1p(nextUniform(play) * Math.expm1(-play.perInterval[m]!))
  drawQuietClearings(play, m)
  readBirth(play, m)
  const age = play.theta[m]! * life.onsetScale * hazard ** (1 / life.shape)
  play.turns[m] = Math.max(time, timeOfAge(play, m, age))
  play.boundOnly[m] = 0
}

function drawQuietClearings(play: Play, m: number): void {
  play.quietClearings[m] = Math.floor(Math.log(nextUniform(play)) / -play.perInterval[m]!)
}

/** The service of a quiet life was not done: it has outlasted one interval, and now its end is to be drawn. */
function missService(play: Play, m: number): void {
  if (play.boundOnly[m] !== quiet) return
  const { lives, longestInterval, leastOnsets } = play.prepared
  readBirth(play, m)
  const uniform = nextUniform(play)
  const least = leastOnsets[m]![Math.floor(uniform * leastOnsetSlices)]!
  const age = Math.max(longestInterval[m]!, play.theta[m]! * lives[m]!.onsetScale * least)
  play.turns[m] = timeOfAge(play, m, age)
  play.boundOnly[m] = uniform
  play.outlasted[m] = play.perInterval[m]!
}

/** Reads the clocks at a birth of which only the time was noted. */
function readBirth(play: Play, m: number): void {
  if (!Number.isNaN(play.birth[m]!)) return
  const { use, lives } = play.prepared
  const time = play.birthTime[m]!
  play.birth[m] = readingAt(use, lives[m]!.clock, time) * lives[m]!.pace
  play.birthHours[m] = readingAt(use, 'hours', time)
}

function restartService(play: Play, time: number): void {
  play.servicedTime = time
  play.servicedHours = hoursAt(play, time)
  setServiceDue(play, { time, hours: play.servicedHours })
}

/** The next service one interval after these: by years or by hours, whichever comes first. */
export function setServiceDue(play: Play, from: { readonly time: number; readonly hours: number }): void {
  const { everyYears, everyHours } = play.prepared.service
  const byHours =
    everyHours === Infinity ? Infinity : timeOfReading(play.prepared.use, 'hours', from.hours + everyHours)
  play.serviceDue = Math.min(from.time + everyYears, byHours)
}

export function within(spans: readonly Span[], time: number): boolean {
  for (const span of spans) if (time >= span.from && time <= span.to) return true
  return false
}
