/**
 * Entries of each kind. What judges them is in `kind-forms.ts`: to read entries that were judged, it need not be loaded.
 *
 * @module
 */

import type * as z from 'zod'
import type { DeepReadonly } from './atoms.js'
import type { kindForms } from './kind-forms.js'
import { type Kind, kinds, presentVersion } from './kind-names.js'

export { type Kind, kinds, presentVersion }

/** What the body of a kind holds. */
export type Body<K extends Kind> = DeepReadonly<z.infer<(typeof kindForms)[K]['body']>>

/** An entry of one kind, as it is kept. */
export interface EntryOf<K extends Kind> {
  readonly version: typeof presentVersion
  /** ULID. Only identifies: order comes from the dates. */
  readonly id: string
  readonly boat: string
  readonly set: z.infer<(typeof kindForms)[K]['set']>
  readonly from: string
  readonly until: string
  /** When it was written down. */
  readonly noted: string
  readonly device: string
  /** Counts the entries that the device wrote for the boat: 1, 2, 3 … */
  readonly n: number
  readonly kind: K
  readonly body: Body<K>
  /** Entries in whose place this one stands. */
  readonly corrects: readonly string[]
  /** The entries corrected are to be taken as never written; the body says why. */
  readonly voids?: true | undefined
}

/** Any entry; its `kind` tells what its body holds. */
export type Entry = { [K in Kind]: EntryOf<K> }[Kind]

/** Whether an entry is of a kind; narrows its type. */
export function isKind<K extends Kind>(entry: Entry, kind: K): entry is Extract<Entry, { kind: K }> {
  return entry.kind === kind
}
