/**
 * Why a history cannot be played to its end.
 *
 * @module
 */

import { clearQueue } from './queue'

export const TOO_MANY_EVENTS = 1
export const TOO_MANY_SETS = 2

/** 0 while all is well. */
export let trouble: i32 = 0

/** Leaves nothing to happen. */
export function stopPlaying(why: i32): void {
  if (trouble === 0) trouble = why
  clearQueue()
}

export function forgetTrouble(): void {
  trouble = 0
}
