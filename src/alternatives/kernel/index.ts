/**
 * The simulator's kernel, compiled to WebAssembly: the doors by which it is called.
 *
 * @module
 */

import * as K from '../kept-at'
import { readAlternatives } from './alternatives'
import { readNormal } from './amounts'
import { beginDraws, draw, word0, word1 } from './draws'
import { empty, failuresOfDanger, failuresOfMode, h, openHistory, resetHistory } from './history'
import { openJob } from './job'
import * as model from './model'
import { readModel } from './model'
import * as modes from './modes'
import { readModes } from './modes'
import { readParts } from './parts'
import { openQueue } from './queue'
import { readRepairs } from './repairs'
import { busiest, runHistory } from './run'
import { countOf, openSections } from './sections'
import {
  drawPresent,
  forgetStart,
  presentScales,
  presentSince,
  presentStates,
  readCandidate,
  readPresent,
} from './start'
import { forgetTrouble, trouble } from './trouble'
import { readUse } from './use'

let countOfAlternatives: i32 = 0

/** Room for the sections of a model. */
export function reserve(size: usize): usize {
  return heap.alloc(size)
}

/** Makes ready to play the model whose sections begin at `at`: the first one, or another of the same set. */
export function open(at: usize): void {
  openSections(at)
  readNormal()
  readModes()
  readParts()
  readRepairs()
  readUse()
  readModel()
  openQueue(model.horizonYears)
  openJob()
  forgetStart()
}

/** Takes what may be true of the present set from the sections that begin at `at`; after the model, once. */
export function openPresent(at: usize): void {
  openSections(at)
  readPresent(model.hourLifeFactor.length)
}

/** Makes ready to fit a candidate that is bought used, with the states whose sections begin at `at`. */
export function openCandidate(candidate: i32, at: usize): void {
  openSections(at)
  readCandidate(candidate)
}

/** Makes ready to play the alternatives whose sections begin at `at`. */
export function openAlternatives(at: usize): void {
  openSections(at)
  readAlternatives()
  countOfAlternatives = countOf('alternatives.now')
  openHistory(countOfAlternatives)
}

/** Plays a history of an alternative; 0, or what kept it from its end. */
export function play(seed: u32, history: u32, alternative: i32): i32 {
  forgetTrouble()
  runHistory(seed, history, alternative)
  return trouble
}

/** Address of what the last history came to: doubles in the order of what is kept. */
export function sums(): usize {
  return changetype<usize>(h.sums)
}

/** Draws what is true of the present set in a history, which is not played. */
export function begin(seed: u32, history: u32): void {
  resetHistory(seed, history, 0)
  drawPresent()
}

/** Address of the state of each mode in the history begun last. */
export function states(): usize {
  return changetype<usize>(presentStates())
}

/** Address of when each mode became defective, before now, on the clock of its delay. */
export function since(): usize {
  return changetype<usize>(presentSince())
}

/** Address of the scale of each mode against the catalogue's, the set factor in it. */
export function scales(): usize {
  return changetype<usize>(presentScales())
}

/** Address of ln κ of the history begun or played last. */
export function kappaLog(): usize {
  return changetype<usize>(h.sums) + K.kappaLog * sizeof<f64>()
}

/** Address of the money paid in each year from now of the last history, not discounted; upkeep, jobs and sets, not fuel. */
export function years(): usize {
  return changetype<usize>(h.years)
}

/** Counts failures from nought again. */
export function forgetFailures(): void {
  empty(failuresOfMode, countOfAlternatives * modes.count)
  empty(failuresOfDanger, countOfAlternatives * model.dangerCount)
}

/** Address of the failures of each mode, alternative by alternative, counted since they were last forgotten. */
export function failuresByMode(): usize {
  return changetype<usize>(failuresOfMode)
}

export function failuresByDanger(): usize {
  return changetype<usize>(failuresOfDanger)
}

/** A part that was busy when there were too many events, −1 if it was the set as a whole. */
export function busiestPart(): i32 {
  return busiest
}

/** Draws as the simulator does, for what is looked at beside it. */
export function drawFor(seed: u32, history: u32, set: i32, mode: i32, life: i32, forWhat: i32): void {
  beginDraws(seed, history)
  draw(set, mode, life, forWhat, 0)
}

/** The first or second word of the last draw. */
export function word(which: i32): u32 {
  return which === 0 ? word0 : word1
}
