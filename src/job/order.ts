/**
 * Pieces by what entries say of them: ordered, received, checked against the old.
 *
 * @module
 */

import { byDate } from '../logbook/current.js'
import { lastDay } from '../logbook/dates.js'
import { type Entry, type EntryOf, isKind } from '../logbook/kinds.js'

/** A part, or a small piece that goes with it. */
export interface PieceName {
  readonly part: string
  readonly piece?: string | undefined
}

/** What entries say of one piece, added up. */
export interface Tally {
  readonly ordered: number
  readonly received: number
  /** Held against the old: like it, and not. */
  readonly fits: number
  readonly misfits: number
  /** Of the latest that does not fit: what differs. */
  readonly differs?: string
  /** The latest number under which it was ordered or came. */
  readonly number?: string
  readonly supplier?: string
  /** When what is still to come is expected. */
  readonly expected?: string
  /** Oldest first. */
  readonly entries: readonly string[]
}

/** Where a piece stands, from nothing at all to being like the old one. */
export const pieceStates = ['missing', 'ordered', 'received', 'does-not-fit', 'fits'] as const
export type PieceState = (typeof pieceStates)[number]

export const nothingOrdered: Tally = { ordered: 0, received: 0, fits: 0, misfits: 0, entries: [] }

/**
 * Where a piece stands of which so many are needed. Enough that fit: `fits`. Else what has come and is not looked at goes
 * first, then what is on its way, which may be there in place of one that did not fit.
 */
export function stateOf({ ordered, received, fits, misfits }: Tally, needed: number): PieceState {
  if (fits >= needed) return 'fits'
  if (received > fits + misfits) return 'received'
  if (ordered > Math.max(received, fits + misfits)) return 'ordered'
  return misfits > 0 ? 'does-not-fit' : 'missing'
}

/** A key under which a piece is looked up. */
export function pieceKey({ part, piece }: PieceName): string {
  return piece === undefined ? part : `${part}/${piece}`
}

export interface TalliedOrders {
  /** Left out: of every job and of none. */
  readonly job?: string | undefined
  /** So many are meant where a line does not say. */
  readonly usual: (piece: PieceName) => number
}

/**
 * What the entries of a set say of pieces, by their keys. An order that names another job does not count; what was renewed
 * since has used up what had come before.
 */
export function talliesOf(
  entries: readonly Entry[],
  set: string,
  { job, usual }: TalliedOrders,
): ReadonlyMap<string, Tally> {
  const tallies = new Map<string, Tally>()
  for (const entry of byDate(entries.filter((one) => one.set === set))) {
    if (isKind(entry, 'work')) useUp(tallies, entry)
    if (!isKind(entry, 'order') || (job !== undefined && (entry.body.job ?? job) !== job)) continue
    for (const line of entry.body.lines) {
      const key = pieceKey(line)
      tallies.set(
        key,
        added(tallies.get(key) ?? nothingOrdered, entry, { ...line, count: line.count ?? usual(line) }),
      )
    }
  }
  return tallies
}

type Line = EntryOf<'order'>['body']['lines'][number] & { readonly count: number }

function added(before: Tally, { id, body }: EntryOf<'order'>, line: Line): Tally {
  const { state, supplier, expected } = body
  const { count, number, fits, differs } = line
  const { expected: expectedBefore, ...rest } = before
  const due = state === 'ordered' ? (expected ?? expectedBefore) : expectedBefore
  const counts = {
    ordered: before.ordered + (state === 'ordered' ? count : 0),
    received: before.received + (state === 'received' ? count : 0),
    fits: before.fits + (fits === true ? count : 0),
    misfits: before.misfits + (fits === false ? count : 0),
  }
  const isToCome = counts.ordered > counts.received
  return {
    ...rest,
    ...counts,
    ...(differs === undefined ? {} : { differs }),
    ...(number === undefined ? {} : { number }),
    ...(supplier === undefined ? {} : { supplier }),
    ...(due === undefined || !isToCome ? {} : { expected: due }),
    entries: [...before.entries, id],
  }
}

/** A part that was renewed has taken its pieces with it. */
function useUp(tallies: Map<string, Tally>, { body }: EntryOf<'work'>): void {
  for (const { part, did } of body.parts) {
    if (did !== 'renewed') continue
    for (const key of [...tallies.keys()]) if (key === part || key.startsWith(`${part}/`)) tallies.delete(key)
  }
}

/** Whether what is on its way should have come by a day. */
export function isLate({ expected }: Tally, today: string): boolean {
  return expected !== undefined && lastDay(expected) < today
}
