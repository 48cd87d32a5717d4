/**
 * The memory of worked-out answers in a data folder.
 *
 * @module
 */

import type { Memory } from '../alternatives/memory.js'
import { posteriorBytes, posteriorFrom } from '../forecast/posterior-bytes.js'
import { type Computed, digestOf, keyOf } from './computed.js'

/** Finds what this very program worked out before; `program` names it to the last change of its code. */
export function memoryIn(computed: Computed, program: string): Memory {
  return {
    posterior: (restsOn, make) => {
      const key = keyOf(digestOf(restsOn), program)
      const kept = computed.read(key)
      const found = kept && posteriorFrom(kept)
      if (found !== undefined) return found
      const made = make()
      computed.keep(key, posteriorBytes(made))
      return made
    },
    find: (restsOn) => valueFrom(computed.read(keyOf(digestOf(restsOn), program))),
    keep: (restsOn, value) => {
      computed.keep(keyOf(digestOf(restsOn), program), new TextEncoder().encode(JSON.stringify({ value })))
    },
  }
}

function valueFrom(bytes: Uint8Array | undefined): { readonly value: unknown } | undefined {
  if (bytes === undefined) return undefined
  try {
    return JSON.parse(new TextDecoder().decode(bytes)) as { readonly value: unknown }
  } catch {
    return undefined
  }
}
