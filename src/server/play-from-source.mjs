/**
 * The worker where the program runs from its source: the loader of this process does not reach into threads.
 *
 * @module
 */

import { register } from 'tsx/esm/api'

register()
export const { playChunk } = await import('./play-worker.ts')
