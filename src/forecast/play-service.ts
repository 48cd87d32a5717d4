/**
 * Services as they fall due one after another, and the many quiet lives between them.
 *
 * @module
 */

import { leastOnsetSlices } from './least-onset.js'
import { beginLife, hoursAt, timeOfAge } from './play-onset.js'
import { mostEvents, nextUniform, type Play, type PlayRules, quiet, SOUND } from './play-state.js'
import { readingAt, timeOfReading } from './track.js'

/**
 * Services fall due one after another until something else comes first; returns how many. A service that renews the
 * part is one that clears every mode.
 */
export function servicesFallDue(
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

export function restartService(play: Play, time: number): void {
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

/** From now on the piece in place is as good as any. */
export function fitPlainPiece(play: Play): void {
  if (play.presentQuality === 1) return
  for (let m = 0; m < play.modes; m++) play.theta[m]! /= play.presentQuality
  play.presentQuality = 1
  play.perInterval.fill(-1)
}
