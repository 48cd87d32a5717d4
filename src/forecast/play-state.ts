/**
 * The life in play: what it is made of, and its draws.
 *
 * @module
 */

import type { PlayedCheck, PlayedPart } from './play-part.js'
import { threefry2x32, uniformOfWord } from './threefry.js'

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
export const mostEvents = 20_000

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
    servicedTime: Number.NaN,
    servicedHours: Number.NaN,
    serviceDue: Infinity,
    clearing: 0,
    presentQuality: 1,
    readTime: Number.NaN,
    readHours: Number.NaN,
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

/** In `boundOnly`: no onset comes before the next service, and if that is done none has to be drawn. */
export const quiet = -1
