/**
 * What is true of the present set in each history, before anything is done: what could be found out by looking.
 *
 * @module
 */

import { kernelOf } from './kernel.js'
import type { Program } from './program.js'
import type { Span } from './sample.js'

export const DEFECTIVE = 1

/** Of each history of a span; rows of modes in model order: of mode `m` in history `i` at `m · histories + i`. */
export interface StartStates {
  readonly histories: number
  /** 0 sound, 1 defective, 2 failed unnoticed. */
  readonly state: Uint8Array
  /** How long it has been defective, on the clock of its delay; 0 when sound. */
  readonly since: Float32Array
  /** ln of the factor on the mode's scale, the set factor in it. */
  readonly scaleLog: Float32Array
  /** ln κ of each history. */
  readonly kappaLog: Float64Array
}

/** Draws the starting states of a span of histories as the simulator does, without playing them. */
export function startStates(program: Program, span: Span): StartStates {
  const doors = kernelOf(program)
  const modes = program.modes.count
  const { count, seed, from } = span
  const state = new Uint8Array(modes * count)
  const since = new Float32Array(modes * count)
  const scaleLog = new Float32Array(modes * count)
  const kappaLog = new Float64Array(count)
  let drawn: ReturnType<typeof drawnBy> | undefined
  for (let i = 0; i < count; i++) {
    doors.begin(seed, from + i)
    // the kernel's memory may have been moved by its growth
    if (drawn?.states.buffer !== doors.memory.buffer) drawn = drawnBy(doors, modes)
    const { states, sinces, scales, kappa } = drawn
    kappaLog[i] = kappa[0]!
    for (let m = 0, at = i; m < modes; m++, at += count) {
      state[at] = states[m]!
      since[at] = sinces[m]!
      scaleLog[at] = Math.log(scales[m]!)
    }
  }
  return { histories: count, state, since, scaleLog, kappaLog }
}

/** Where the kernel has what it drew for a history. */
function drawnBy(doors: ReturnType<typeof kernelOf>, modes: number) {
  const { buffer } = doors.memory
  return {
    states: new Uint8Array(buffer, doors.states(), modes),
    sinces: new Float64Array(buffer, doors.since(), modes),
    scales: new Float64Array(buffer, doors.scales(), modes),
    kappa: new Float64Array(buffer, doors.kappaLog(), 1),
  }
}

const listed = new WeakMap<StartStates, Map<number, Int32Array>>()

/** The histories in which a mode is not sound: few, so that what looks for faults need not go through all. */
export function notSound(states: StartStates, mode: number): Int32Array {
  const lists = listed.get(states) ?? new Map<number, Int32Array>()
  listed.set(states, lists)
  const found = lists.get(mode)
  if (found !== undefined) return found
  const n = states.histories
  const list: number[] = []
  for (let i = 0; i < n; i++) if (states.state[mode * n + i] !== 0) list.push(i)
  const made = Int32Array.from(list)
  lists.set(mode, made)
  return made
}
