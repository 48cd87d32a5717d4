/**
 * The quantities kept of each history.
 *
 * @module
 */

import * as at from './kept-at.js'

/** Place of each quantity among those kept. */
export const K = at
export type Kept = keyof typeof at

/** Their names, in the order in which they are kept. */
export const kept = Object.entries(at)
  .sort(([, a], [, b]) => a - b)
  .map(([name]) => name as Kept)
