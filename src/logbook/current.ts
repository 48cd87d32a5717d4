/**
 * What the logbook says now: each entry in the form that its corrections gave it.
 *
 * @module
 */

import { compareInstants, firstDay, lastDay } from './dates.js'
import type { Entry } from './kinds.js'
import type { Problem } from './problems.js'

/** Corrections of one thing that do not know of one another. They stand side by side until one entry corrects them all. */
export interface Dispute {
  /** The latest noted first: that one is reckoned with. */
  readonly tips: readonly [Entry, ...Entry[]]
}

/** The logbook in its current form. */
export interface CurrentEntries {
  /** By date, then by when they were noted. Of a dispute, the one reckoned with. */
  readonly entries: readonly Entry[]
  readonly disputes: readonly Dispute[]
  /** Corrections of what is not there, and corrections that run in a circle. */
  readonly troubles: readonly Problem[]
}

/**
 * The current form of the entries of one boat.
 *
 * An entry that another one corrects gives way to it; an entry that voids takes what it corrects away with it. With `notedBy`
 * the answer is the one that could be given at that instant: what was noted later counts for nothing.
 */
export function currentEntries(
  all: readonly Entry[],
  options: { readonly notedBy?: string } = {},
): CurrentEntries {
  const { notedBy } = options
  const entries =
    notedBy === undefined ? all : all.filter(({ noted }) => compareInstants(noted, notedBy) <= 0)
  const correcting = entries.filter(({ corrects }) => corrects.length > 0)
  if (correcting.length === 0) return { entries: byDate(entries), disputes: [], troubles: [] }

  const byId = new Map(entries.map((entry) => [entry.id, entry]))
  const groups = groupsByCorrection(correcting, byId)
  const grouped = new Set(groups.flatMap((group) => group.map(({ id }) => id)))
  const standing = entries.filter(({ id }) => !grouped.has(id))
  const disputes: Dispute[] = []
  const troubles = missing(correcting, byId)
  for (const group of groups) {
    const { tips, circle } = tipsOf(group)
    if (circle.length > 0) troubles.push(circleProblem(circle))
    const [taken, ...others] = (tips.length > 0 ? tips : circle).sort(latestNotedFirst)
    if (taken === undefined) continue
    if (others.length > 0) disputes.push({ tips: [taken, ...others] })
    if (!taken.voids) standing.push(taken)
  }
  return {
    entries: byDate(standing),
    disputes: disputes.sort((a, b) => inOrderOf(a.tips[0].id, b.tips[0].id)),
    troubles: troubles.sort((a, b) => inOrderOf(a.path + a.found, b.path + b.found)),
  }
}

/** The entries that hang together by corrections, each group for itself. */
function groupsByCorrection(
  correcting: readonly Entry[],
  byId: ReadonlyMap<string, Entry>,
): readonly (readonly Entry[])[] {
  const neighbours = new Map<string, string[]>()
  const join = (id: string, other: string) => {
    const known = neighbours.get(id)
    if (known === undefined) neighbours.set(id, [other])
    else known.push(other)
  }
  for (const { id, corrects } of correcting) {
    for (const other of [id, ...corrects]) {
      join(id, other)
      join(other, id)
    }
  }
  const groups: Entry[][] = []
  const met = new Set<string>()
  for (const { id: start } of correcting) {
    if (met.has(start)) continue
    met.add(start)
    const ids = [start]
    for (const id of ids) {
      for (const other of neighbours.get(id) ?? []) {
        if (met.has(other)) continue
        met.add(other)
        ids.push(other)
      }
    }
    groups.push(ids.flatMap((id) => byId.get(id) ?? []))
  }
  return groups
}

/** Entries of a group that nothing corrects; and those left over when all else has been peeled off from there. */
function tipsOf(group: readonly Entry[]): { readonly tips: Entry[]; readonly circle: Entry[] } {
  const left = new Map(group.map((entry) => [entry.id, entry]))
  const correctors = new Map<string, number>()
  for (const { corrects } of group) {
    for (const id of corrects) correctors.set(id, (correctors.get(id) ?? 0) + 1)
  }
  const tips = group.filter(({ id }) => !correctors.has(id))
  const peeled = [...tips]
  for (const { id, corrects } of peeled) {
    left.delete(id)
    for (const older of corrects) {
      const others = (correctors.get(older) ?? 0) - 1
      correctors.set(older, others)
      const entry = left.get(older)
      if (others === 0 && entry !== undefined) peeled.push(entry)
    }
  }
  return { tips, circle: [...left.values()] }
}

function missing(correcting: readonly Entry[], byId: ReadonlyMap<string, Entry>): Problem[] {
  return correcting.flatMap((entry) =>
    entry.corrects
      .filter((id) => !byId.has(id))
      .map((id) => ({
        code: 'corrects-what-is-missing',
        path: entry.id,
        found: id,
        allowed: 'the id of an entry of this boat',
      })),
  )
}

function circleProblem(circle: readonly Entry[]): Problem {
  const ids = circle.map(({ id }) => id).sort()
  return {
    code: 'corrections-in-a-circle',
    path: ids[0] ?? '',
    found: ids.join(', '),
    allowed: 'corrections that lead back to one first entry',
  }
}

function latestNotedFirst(a: Entry, b: Entry): number {
  return compareInstants(b.noted, a.noted) || inOrderOf(b.id, a.id)
}

/** Ids order nothing in time; here they only make the answer one whatever order the entries came in. */
function inOrderOf(a: string, b: string): number {
  return a < b ? -1 : 1
}

/** In order of the first day each can mean, then the last, then when it was noted; ids only so that the order is one. */
export function byDate(entries: readonly Entry[]): Entry[] {
  return entries
    .map((entry) => ({
      entry,
      key: `${firstDay(entry.from)} ${lastDay(entry.until)} ${entry.noted.slice(0, -1)} ${entry.id}`,
    }))
    .sort((a, b) => (a.key < b.key ? -1 : 1))
    .map(({ entry }) => entry)
}
