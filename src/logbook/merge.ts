/**
 * Two copies of a logbook made one, and what a copy shows to be missing.
 *
 * @module
 */

import { shown } from '../catalogue/problem.js'
import type { Entry } from './kinds.js'
import type { Problem } from './problems.js'

/** An entry as it is kept. */
export interface KeptText {
  readonly id: string
  readonly text: string
}

/** What a merge adds, or why it is refused. */
export type Merged<T extends KeptText> =
  | { readonly ok: true; readonly added: readonly T[]; readonly alreadyHeld: number }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/**
 * The union of two copies by id. The same id with another text is refused and named: neither copy can be right for both.
 */
export function mergeCopies<T extends KeptText>(
  held: (id: string) => string | undefined,
  incoming: readonly T[],
): Merged<T> {
  const added = new Map<string, T>()
  const problems: Problem[] = []
  for (const copy of incoming) {
    const before = held(copy.id) ?? added.get(copy.id)?.text
    if (before === undefined) added.set(copy.id, copy)
    else if (before !== copy.text) {
      const allowed = `the text already held under this id: ${shown(before)}`
      problems.push({ code: 'same-id-other-text', path: copy.id, found: shown(copy.text), allowed })
    }
  }
  if (problems.length > 0) return { ok: false, problems }
  return { ok: true, added: [...added.values()], alreadyHeld: incoming.length - added.size }
}

/** Entries that a device must have written and that are not here. */
export interface Gap {
  readonly boat: string
  readonly device: string
  readonly first: number
  readonly last: number
}

/** One count of a device that stands on several entries: a device was set back, or two go by one name. */
export interface DoubledCount {
  readonly boat: string
  readonly device: string
  readonly n: number
  readonly ids: readonly string[]
}

/** Each device counts the entries it writes for a boat from 1 without gaps; says where that does not hold. */
export function countsOfDevices(entries: readonly Entry[]): {
  readonly gaps: readonly Gap[]
  readonly doubled: readonly DoubledCount[]
} {
  const gaps: Gap[] = []
  const doubled: DoubledCount[] = []
  for (const counts of countsByDevice(entries)) {
    let expected = 1
    for (const { boat, device, n, ids } of counts) {
      if (n > expected) gaps.push({ boat, device, first: expected, last: n - 1 })
      if (ids.length > 1) doubled.push({ boat, device, n, ids })
      expected = n + 1
    }
  }
  return { gaps, doubled }
}

/** For each device of a boat its counts in rising order, each with the entries that bear it. */
function countsByDevice(entries: readonly Entry[]): Iterable<readonly DoubledCount[]> {
  const devices = new Map<string, Map<number, DoubledCount & { ids: string[] }>>()
  for (const { boat, device, n, id } of entries) {
    const key = `${boat} ${device}`
    const counts = devices.get(key) ?? new Map<number, DoubledCount & { ids: string[] }>()
    devices.set(key, counts)
    const count = counts.get(n)
    if (count === undefined) counts.set(n, { boat, device, n, ids: [id] })
    else count.ids.push(id)
  }
  return [...devices.values()].map((counts) => [...counts.values()].sort((a, b) => a.n - b.n))
}
