/**
 * Hours to open ways in, each opened once however many jobs share it.
 *
 * @module
 */

import type { Access } from './file-schema.js'
import type { Part, WorkHours } from './part-schema.js'

/** All ways that must be open, those included in others with them; each once. */
export function openedWays(access: readonly Access[], ids: readonly string[]): Access[] {
  const opened = new Map<string, Access>()
  const waiting = [...ids]
  while (waiting.length > 0) {
    const id = waiting.pop() as string
    if (opened.has(id)) continue
    const way = access.find((candidate) => candidate.id === id)
    if (way === undefined) throw new RangeError(`way in must be one of the catalogue; found ${id}`)
    opened.set(id, way)
    waiting.push(...way.includes)
  }
  return [...opened.values()]
}

/** Hours to open these ways and close them again. [h] */
export function openingHours(access: readonly Access[], ids: readonly string[]): WorkHours {
  const ways = openedWays(access, ids)
  return {
    owner: ways.reduce((sum, way) => sum + way.setUpHours.owner, 0),
    paid: ways.reduce((sum, way) => sum + way.setUpHours.paid, 0),
  }
}

/** Hours of work on a part once it is laid bare: its own hours less those of opening. [h] */
export function handsOnHours(access: readonly Access[], part: Pick<Part, 'access' | 'hours'>): WorkHours {
  const opening = openingHours(access, part.access.opens)
  return {
    owner: Math.max(0, part.hours.owner - opening.owner),
    paid: Math.max(0, part.hours.paid - opening.paid),
  }
}
