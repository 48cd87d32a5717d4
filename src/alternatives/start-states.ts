/**
 * What is true of the present set in each history, before anything is done: what could be found out by looking.
 *
 * @module
 */

import { kernelOf } from './kernel.js'
import type { Program } from './program.js'
import type { Span } from './sample.js'

export const DEFECTIVE = 1
export const FAILED_UNNOTICED = 2

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
  for (let i = 0; i < count; i++) {
    doors.begin(seed, from + i)
    const { buffer } = doors.memory
    const drawn = new Uint8Array(buffer, doors.states(), modes)
    const began = new Float64Array(buffer, doors.since(), modes)
    const scales = new Float64Array(buffer, doors.scales(), modes)
    kappaLog[i] = new Float64Array(buffer, doors.kappaLog(), 1)[0]!
    for (let m = 0; m < modes; m++) {
      const at = m * count + i
      state[at] = drawn[m]!
      since[at] = began[m]!
      scaleLog[at] = Math.log(scales[m]!)
    }
  }
  return { histories: count, state, since, scaleLog, kappaLog }
}

/** States of successive spans put together, in order. */
export function joinStates(spans: readonly StartStates[]): StartStates {
  const histories = spans.reduce((sum, span) => sum + span.histories, 0)
  const modes = spans[0]!.state.length / spans[0]!.histories
  const joined = {
    histories,
    state: new Uint8Array(modes * histories),
    since: new Float32Array(modes * histories),
    scaleLog: new Float32Array(modes * histories),
    kappaLog: new Float64Array(histories),
  }
  let at = 0
  for (const span of spans) {
    const n = span.histories
    joined.kappaLog.set(span.kappaLog, at)
    for (let m = 0; m < modes; m++) {
      for (const name of ['state', 'since', 'scaleLog'] as const) {
        joined[name].set(span[name].subarray(m * n, (m + 1) * n), m * histories + at)
      }
    }
    at += n
  }
  return joined
}
