/**
 * What may wait, as unknowns and rows of a day's programme: batches and stores.
 *
 * @module
 */

import { type Batch, type RunDay, type Store, standsIn } from './plan-day.js'
import { addChoice, addColumn, type Programme, type Row, type Term } from './plan-milp.js'
import { fitsAnyway, roomAt } from './plan-room.js'

/** Share of a slot under which nothing is started that cuts out by itself. */
export const leastShare = 0.02

/** One batch or store in a slot. */
export interface Drawing {
  readonly runs: readonly Term[]
  /** For what part of the slot. */
  readonly share: readonly Term[]
  readonly kW: number
  /** What room has to be left for while it runs. */
  readonly mostKW: number
}

/** What the rows of a day gather, slot by slot. */
export interface Into {
  readonly day: RunDay
  readonly wanted: readonly Term[][]
  readonly runs: readonly Term[][]
  readonly most: readonly Term[][]
  /** Of each batch and store, what says that it runs. */
  readonly alone: readonly Drawing[][]
}

/** A yes-or-no for each slot in which the batch may begin; one of them is yes. */
export function layBatch(
  programme: Programme,
  batch: Batch,
  { day, wanted, runs, most, alone }: Into,
): (number | undefined)[] {
  const slots = day.baseKW.length
  const { first = 0, last = slots - 1 } = batch
  const running: Term[][] = day.baseKW.map(() => [])
  const begins = day.baseKW.map((_, t) =>
    t >= first && t + batch.slots - 1 <= last ? addChoice(programme) : undefined,
  )
  begins.forEach((column, t) => {
    if (column === undefined) return
    for (let at = t; at < t + batch.slots; at++) {
      wanted[at]!.push([column, batch.kW])
      most[at]!.push([column, batch.mostKW ?? batch.kW])
      runs[at]!.push([column, 1])
      running[at]!.push([column, 1])
    }
  })
  running.forEach((terms, t) => {
    if (terms.length > 0)
      alone[t]!.push({
        runs: terms,
        share: terms.map(([column]) => [column, batch.share ?? 1]),
        kW: batch.kW,
        mostKW: batch.mostKW ?? batch.kW,
      })
  })
  programme.rows.push({
    terms: begins.flatMap((column): Term[] => (column === undefined ? [] : [[column, 1]])),
    least: 1,
    most: 1,
  })
  return begins
}

/** Whoever comes after begins at least one slot later: for each slot, begun by t only if the other was begun by t − 1. */
export function layAfter(
  programme: Programme,
  batch: Batch,
  batches: ReadonlyMap<string, readonly (number | undefined)[]>,
): void {
  const before = batch.after === undefined ? undefined : batches.get(batch.after)
  const own = batches.get(batch.id)!
  if (before === undefined) return
  own.forEach((_, t) => {
    const begun = (list: readonly (number | undefined)[], until: number, factor: number): Term[] =>
      list.slice(0, until).flatMap((column): Term[] => (column === undefined ? [] : [[column, factor]]))
    programme.rows.push({ terms: [...begun(before, t, 1), ...begun(own, t + 1, -1)], least: 0 })
  })
}

/** Whether, and for what share of each slot, a store is filled; its level stays between the least and what it holds. */
export function layStore(
  programme: Programme,
  store: Store,
  { day, wanted, runs, most, alone }: Into,
): LaidStore {
  const last = day.baseKW.length - 1
  const isOpen = store.begins === undefined
  const begins = isOpen ? addColumn(programme, { from: store.least, to: store.holds }) : undefined
  const level: Term[] = begins === undefined ? [] : [[begins, 1]]
  const before = store.begins ?? 0
  let drawn = 0
  const shares = day.baseKW.map((_, t) => {
    const share = layShare(programme, store, { day, wanted, runs, most, alone, at: t })
    level.push([share, store.perHour * day.slotHours])
    drawn += store.drawn[t] ?? 0
    const isLast = t === last
    // between two draws it only rises: the least is told after a draw, the most before one
    const isDrawn = (slot: number) => (store.drawn[slot] ?? 0) > 0
    if (!isLast && !isDrawn(t) && !isDrawn(t + 1)) return share
    const least = isLast ? Math.max(store.least, store.ends ?? store.least) : store.least
    programme.rows.push({
      terms: [...level],
      ...(isLast || isDrawn(t) ? { least: least - before + drawn } : {}),
      ...(isLast || isDrawn(t + 1) ? { most: store.holds - before + drawn } : {}),
    })
    return share
  })
  // an open day ends as it began
  if (isOpen) programme.rows.push({ terms: level.slice(1), least: drawn })
  return { shares, begins }
}

/**
 * For what share of a slot a store is filled. Where the slot has parts, and there is room for it whatever else runs, nothing more
 * has to be known; else a yes-or-no says whether it is filled at all.
 */
function layShare(
  programme: Programme,
  store: Store,
  { day, wanted, runs, most, alone, at }: Into & { readonly at: number },
): number {
  const { kW } = store
  if (store.wholeSlots) {
    const chosen = addChoice(programme)
    wanted[at]!.push([chosen, kW])
    most[at]!.push([chosen, kW])
    runs[at]!.push([chosen, 1])
    alone[at]!.push({ runs: [[chosen, 1]], share: [[chosen, 1]], kW, mostKW: kW })
    return chosen
  }
  const share = addColumn(programme, { to: day.quiet?.[at] && !standsIn(day) ? 0 : 1 })
  wanted[at]!.push([share, kW])
  if (day.partSlots && (standsIn(day) || fitsAnyway(day, store, roomAt(day, at)))) {
    runs[at]!.push([share, 1 / leastShare])
    alone[at]!.push({ runs: [], share: [[share, 1]], kW, mostKW: 0 })
    return share
  }
  const chosen = addChoice(programme)
  const put = (factor: number, bounds: Pick<Row, 'least' | 'most'>) =>
    programme.rows.push({
      terms: [
        [share, 1],
        [chosen, -factor],
      ],
      ...bounds,
    })
  put(1, { most: 0 })
  put(leastShare, { least: 0 })
  most[at]!.push([chosen, kW])
  runs[at]!.push([chosen, 1])
  alone[at]!.push({ runs: [[chosen, 1]], share: [[share, 1]], kW, mostKW: kW })
  return share
}

export interface LaidStore {
  readonly shares: readonly number[]
  readonly begins: number | undefined
}
