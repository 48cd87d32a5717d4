/**
 * The memory of worked-out answers in a data folder.
 *
 * @module
 */

import { restsOnAnswer } from '../alternatives/answer-key.js'
import { answerView } from '../alternatives/answer-view.js'
import type { Begun, Figures } from '../alternatives/figures.js'
import type { Memory } from '../alternatives/memory.js'
import { packed, unpacked } from '../forecast/packed.js'
import type { Posterior } from '../forecast/posterior-type.js'
import { type Computed, digestOf, keyOf } from './computed.js'

/** Finds what this very program worked out before; `program` names it to the last change of its code. */
export function memoryIn(computed: Computed, program: string): Memory {
  return {
    posterior: (restsOn, make) => {
      const key = keyOf(digestOf(restsOn), program)
      const kept = computed.read(key)
      const found = kept && unpacked<Posterior>(kept)
      if (found !== undefined) return found
      const made = make()
      computed.keep(key, packed(made))
      return made
    },
    find: (restsOn) => valueFrom(computed.read(keyOf(digestOf(restsOn), program))),
    keep: (restsOn, value) => {
      computed.keep(keyOf(digestOf(restsOn), program), new TextEncoder().encode(JSON.stringify({ value })))
    },
  }
}

export interface KeptFigures {
  readonly key: string
  readonly seed: number
  readonly figures: Figures
}

/** Keeps an answer for a page that asks for it by the same key, of this very program: what is shown of it, and its histories. */
export function keepFigures(computed: Computed, program: string, { key, seed, figures }: KeptFigures): void {
  const { basis, samples } = figures
  const view = answerView(basis.model, samples, { seed, change: {} })
  const keep = (what: 'view' | 'histories', value: object) =>
    computed.keep(keyOf(digestOf(restsOnAnswer(key, what)), program), packed(value))
  keep('histories', samples)
  keep('view', { basis, view } satisfies Begun)
}

function valueFrom(bytes: Uint8Array | undefined): { readonly value: unknown } | undefined {
  if (bytes === undefined) return undefined
  try {
    return JSON.parse(new TextDecoder().decode(bytes)) as { readonly value: unknown }
  } catch {
    return undefined
  }
}
