/**
 * What was worked out before and rests on the same figures need not be worked out again.
 *
 * @module
 */

import type { Posterior } from '../forecast/posterior-type.js'

/** Gives back what was made under the same key before, or makes it. A key says everything that the outcome rests on. */
export interface Memory {
  posterior(key: unknown, make: () => Posterior): Posterior
  /** For plain values that JSON can hold. */
  value<T>(key: unknown, make: () => Promise<T>): Promise<T>
}

/** Forgets everything at once. */
export const noMemory: Memory = { posterior: (_, make) => make(), value: (_, make) => make() }
