/**
 * New lives of modes, and when a defect begins in them.
 *
 * @module
 */

import { leastOnsetSlices } from './least-onset.js'
import { nextUniform, type Play, SOUND } from './play-state.js'
import { readingAt, timeOfReading } from './track.js'

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
export function recondition(
  play: Play,
  m: number,
  at: { readonly time: number; readonly agesLess: number },
): void {
  const { time, agesLess } = at
  const { use, lives } = play.prepared
  const life = lives[m]!
  const reading = readingAt(use, life.clock, time) * life.pace
  const usedAge = Math.max(0, (reading - play.birth[m]!) * (1 - agesLess))
  play.state[m] = SOUND
  play.birth[m] = reading - usedAge
  drawOnset(play, m, { time, usedAge })
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

/** Onset of a life that began as new. */
export function workOutOnset(play: Play, m: number): void {
  const life = play.prepared.lives[m]!
  const hazard = play.outlasted[m]! - Math.log(play.boundOnly[m]!)
  const age = play.theta[m]! * life.onsetScale * hazard ** (1 / life.shape)
  play.turns[m] = Math.max(play.turns[m]!, timeOfAge(play, m, age))
  play.boundOnly[m] = 0
}

/** Running hours at a time; many ask for the same moment one after another. */
export function hoursAt(play: Play, time: number): number {
  if (time !== play.readTime) {
    play.readTime = time
    play.readHours = readingAt(play.prepared.use, 'hours', time)
  }
  return play.readHours
}

/** When a mode will have reached an age. */
export function timeOfAge(play: Play, m: number, age: number): number {
  const life = play.prepared.lives[m]!
  return timeOfReading(play.prepared.use, life.clock, (play.birth[m]! + age) / life.pace)
}
