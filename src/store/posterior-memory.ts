/**
 * The memory of worked-out answers in a data folder.
 *
 * @module
 */

import type { Memory } from '../alternatives/memory.js'
import { type Computed, keyOf } from './computed.js'
import { posteriorBytes, posteriorFrom } from './posterior-bytes.js'

/** Finds what this very program worked out before; `program` names it to the last change of its code. */
export function memoryIn(computed: Computed, program: string): Memory {
  return {
    posterior: (restsOn, make) => {
      const key = keyOf(restsOn, program)
      const kept = computed.read(key)
      const found = kept && posteriorFrom(kept)
      if (found !== undefined) return found
      const made = make()
      computed.keep(key, posteriorBytes(made))
      return made
    },
    find: (restsOn) => valueFrom(computed.read(keyOf(restsOn, program))),
    keep: (restsOn, value) => {
      computed.keep(keyOf(restsOn, program), new TextEncoder().encode(JSON.stringify({ value })))
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
