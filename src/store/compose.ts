/**
 * New entries written on this machine: id, device and count are put to what a person entered.
 *
 * @module
 */

import { monotonicFactory } from 'ulid'
import type { Draft } from '../logbook/draft.js'
import { type Entry, presentVersion } from '../logbook/kinds.js'
import type { Store } from './store.js'

export type { Draft }

const nextId = monotonicFactory()

/** Entries from drafts, ready to be appended together. They are checked when they are appended, not here. */
export function compose(store: Store, drafts: readonly Draft[], now: Date): readonly Entry[] {
  const counts = new Map<string, number>()
  return drafts.map((draft) => {
    const n = (counts.get(draft.boat) ?? store.lastCount(draft.boat, store.device)) + 1
    counts.set(draft.boat, n)
    return {
      until: draft.from,
      corrects: [],
      ...draft,
      version: presentVersion,
      id: nextId(now.getTime()),
      noted: now.toISOString(),
      device: store.device,
      n,
    } as Entry
  })
}
