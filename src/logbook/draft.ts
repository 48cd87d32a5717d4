/**
 * What a person enters; id, device, count and the instant are put to it when it is written.
 *
 * @module
 */

import type { EntryOf, Kind } from './kinds.js'

/** An entry still to be written. */
export type Draft = {
  [K in Kind]: Pick<EntryOf<K>, 'boat' | 'set' | 'from' | 'kind' | 'body'> & {
    /** Left out: the same as `from`. */
    readonly until?: string
    readonly corrects?: readonly string[]
    readonly voids?: true
  }
}[Kind]
