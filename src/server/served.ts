/**
 * What a server has to serve.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { Kits } from '../catalogue/kit-schema.js'
import type { FaultModel } from '../catalogue/read-fault-model.js'
import type { Store } from '../store/store.js'
import type { Pages } from './pages.js'

export interface Served {
  readonly store: Store
  /** Boats that came with the program, only to be read. */
  readonly demonstration: Pick<Store, 'boats' | 'lines' | 'photograph'>
  readonly catalogue: Catalogue
  /** What is known of faults, judged before it is served. */
  readonly faults: FaultModel
  /** What goes with each part, judged before it is served. */
  readonly kits: Kits
  readonly pages: Pages
  /** The bytes of what was worked out before, by the digest of what it rests on. */
  readonly computed: (digest: string) => Uint8Array | undefined
  /** Told of what went wrong in the program itself. */
  readonly onError: (error: Error) => void
}

/** Whose boat it is. A boat of the owner's goes before one that came with the program and has the same name. */
export function whose({ store, demonstration }: Served, boat: string): 'own' | 'demonstration' | 'none' {
  if (store.boats().includes(boat)) return 'own'
  return demonstration.boats().includes(boat) ? 'demonstration' : 'none'
}
