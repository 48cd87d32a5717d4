/**
 * Every random number of the simulation as a pure function of what it is for, so that the n-th life of a part is
 * the same in every alternative (common random numbers).
 *
 * @module
 */

import { threefry2x32 } from '../forecast/threefry.js'

/** What a draw is for. The two words of one draw serve two ends, named after "and". */
export const purpose = {
  /** Index of the starting state, and onset of the first life. */
  start: 0,
  /** Onsets of a life of a mode with an even number, and of its neighbour's life of the same number. */
  life: 1,
  /** A check in each word: in its high bits how good it is at this defect, in the others the looks until found. */
  check: 2,
  /** A check in each word: the looks until a failure unnoticed is found. */
  checkFailed: 3,
  /** Whether a failure stops the set, and whether it is met at fitting out. */
  failure: 4,
  /** Whether the set is rested. */
  rest: 5,
  /** Per link: whether it hits. */
  link: 6,
  /** Scale of a mode in a new set. */
  scale: 7,
  /** Delay of a patched defect. */
  patch: 8,
  /** Overrun of a job. */
  overrun: 9,
  /** Price, and which supply. */
  price: 16,
  /** Days of the supply, and whether the wrong part comes. */
  supply: 17,
  /** Workshop days, and days of the second supply. */
  workshop: 18,
  /** Whether work puts in a fault, and where. */
  intrusion: 19,
  /** Its mode, and when it shows. */
  intrusionMode: 20,
  /** Whether a service is done, and whether the next one is. */
  service: 21,
  /** Delay of a life. */
  delay: 22,
  /** Node of κ, and the boat's part in it. */
  kappa: 32,
  /** The new set's part of κ. */
  newSet: 33,
  /** Overrun of the quote, and what it leaves out. */
  quote: 34,
  /** Days of the job in hand, and its wait. */
  quoteDays: 35,
  /** Price of a replacement, and its installation. */
  replacement: 36,
  /** Its lead time, and days to install. */
  replacementDays: 37,
  /** Number of infant faults. */
  infants: 38,
  /** Per infant fault: part and mode. */
  infant: 39,
  /** Per infant fault: when it shows. */
  infantOnset: 40,
  /** Cost of giving up. */
  giveUp: 41,
} as const

/** Stands for "no mode": draws of the set as a whole. */
export const WHOLE_SET = 8191

const modeBits = 13
const lifeBits = 19
const setBits = 8
const purposeBits = 6
const useBits = 18

/** Largest numbers that the packing keeps apart. */
export const drawLimits = {
  modes: 2 ** modeBits - 1,
  lives: 2 ** lifeBits,
  sets: 2 ** setBits,
  purposes: 2 ** purposeBits,
  uses: 2 ** useBits,
} as const

/** First counter word: mode and life. */
export function counterOfLife(mode: number, life: number): number {
  return (mode << lifeBits) | life
}

/** Second counter word: set, purpose, and which use of the purpose in that life. */
export function counterOfUse(set: number, forWhat: number, use: number): number {
  return (set << (purposeBits + useBits)) | (forWhat << useBits) | use
}

const steps = 4294967296

/** Uniform in (0, 1) from 32 random bits, never 0 or 1. */
export function uniformFrom(word: number): number {
  return (word + 0.5) / steps
}

const lowSteps = 2 ** 24

/** Uniform in (0, 1) from the lower 24 of 32 random bits, never 0 or 1; the upper eight are free for a table. */
export function uniformFromLow(word: number): number {
  return ((word & (lowSteps - 1)) + 0.5) / lowSteps
}

/** The draws of one history: two words at a time. */
export interface Draws {
  readonly words: Uint32Array
  seed: number
  history: number
  /** The last pair of lives drawn: its counter words, and its draws. */
  readonly pair: Uint32Array
  pairLife: number
  pairUse: number
}

export function makeDraws(seed: number): Draws {
  return {
    words: new Uint32Array(2),
    seed: seed | 0,
    history: 0,
    pair: new Uint32Array(2),
    pairLife: -1,
    pairUse: -1,
  }
}

/** Begins another history. */
export function restartDraws(draws: Draws, history: number): void {
  draws.history = history
  draws.pairLife = -1
}

/** The word of a mode's life: neighbours share a draw, and a part renews its modes together, so most need no draw of their own. */
export function lifeWord(draws: Draws, set: number, mode: number, life: number): number {
  const pairLife = counterOfLife(mode >> 1, life)
  const pairUse = counterOfUse(set, purpose.life, 0)
  if (draws.pairLife !== pairLife || draws.pairUse !== pairUse) {
    draws.pairLife = pairLife
    draws.pairUse = pairUse
    threefry2x32(draws.seed, draws.history, pairLife, pairUse, draws.pair)
  }
  return draws.pair[mode & 1]!
}

/** Puts the two words of a draw into `draws.words`. */
export function draw(
  draws: Draws,
  set: number,
  mode: number,
  life: number,
  forWhat: number,
  use: number,
): void {
  threefry2x32(
    draws.seed,
    draws.history,
    counterOfLife(mode, life),
    counterOfUse(set, forWhat, use),
    draws.words,
  )
}
