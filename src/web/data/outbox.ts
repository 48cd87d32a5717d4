/**
 * What of this browser the server does not have yet, as the screens see it.
 *
 * @module
 */

import { type Outgoing, readOutbox } from './browser-store.js'
import { setWaiting } from './log.js'
import { type Live, live } from './value.js'

export type { Outgoing }

/** For each boat in the order of its counts. */
export const outgoing: Live<readonly Outgoing[]> = live<readonly Outgoing[]>([])

/** Reads the outbox anew, after this tab or another one changed it. */
export async function reloadOutbox(): Promise<void> {
  const items = await readOutbox()
  const boats = new Set([...outgoing.get(), ...items].map(({ boat }) => boat))
  outgoing.set(items)
  for (const boat of boats) {
    const waiting = items.filter((item) => item.boat === boat && item.refused === undefined)
    setWaiting(
      boat,
      waiting.map(({ entry }) => entry),
    )
  }
}
