/**
 * What was worked out before and rests on the same figures need not be worked out again.
 *
 * @module
 */

import type { Posterior } from '../forecast/posterior-type.js'

/** What was made before, found by a key that says everything it rests on. */
export interface Memory {
  /** What was made under the same key before, or what is made now. */
  posterior(key: unknown, make: () => Posterior): Posterior
  /** The plain value, as JSON can hold it, that was kept under a key. */
  find(key: unknown): { readonly value: unknown } | undefined
  keep(key: unknown, value: unknown): void
}

/** Forgets everything at once. */
export const noMemory: Memory = {
  posterior: (_, make) => make(),
  find: () => undefined,
  keep: () => undefined,
}
