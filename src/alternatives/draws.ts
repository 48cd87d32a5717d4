/**
 * Every random number of the simulation as a pure function of what it is for, so that the n-th life of a part is
 * the same in every alternative (common random numbers).
 *
 * @module
 */

import { threefry2x32 } from '../forecast/threefry.js'

/** What a draw is for. The two words of one draw serve two ends, named after "and". */
export const purpose = {
  /** Index of the starting state and onset of the first life. */
  start: 0,
  /** Onset and delay of a life. */
  life: 1,
  /** Per check: how good it is at this defect, and looks until found. */
  check: 2,
  /** Per check: looks until a failure unnoticed is found. */
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
  /** Whether a service is done. */
  service: 21,
  /** Index of the time since the last service. */
  serviceStart: 22,
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

/** The draws of one history: two words at a time. */
export interface Draws {
  readonly words: Uint32Array
  seed: number
  history: number
}

export function makeDraws(seed: number): Draws {
  return { words: new Uint32Array(2), seed: seed | 0, history: 0 }
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
