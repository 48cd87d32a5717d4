/**
 * Slots that are known to be on, as a programme: who runs in which of them, and for how long the set runs in each.
 *
 * The hours of a day can be told at three depths: how many slots are on, how they stand together in runs, and which of the
 * day they are. Each depth only adds rows, so that what one comes to is never more than the next.
 *
 * @module
 */

import { type Batch, needOf, type RunDay, type Store } from './plan-day.js'
import { type Drawing, layAfter, leastShare } from './plan-lay-uses.js'
import { addChoice, addColumn, emptyProgramme, type Programme, type Row, type Term } from './plan-milp.js'
import { roomFor } from './plan-room.js'

/** A slot in which the set is on. */
export interface Cell {
  /** Which of the day; counts only where that is told. */
  readonly slot: number
  /** Which run it stands in. */
  readonly run: number
  /** Between two others of its run: the set runs right through it. */
  readonly isInner: boolean
  readonly baseKW: number
  /** The part of it that the base needs. */
  readonly baseShare: number
  /** What there is room for beside the base. */
  readonly roomKW: number
}

/** How much of the cells is told. */
export type Depth = 'count' | 'runs' | 'slots'

export interface LaidCells {
  readonly programme: Programme
  readonly running: readonly number[]
  readonly batches: ReadonlyMap<string, readonly (number | undefined)[]>
  readonly shares: ReadonlyMap<string, readonly number[]>
  /** What is in the stores of an open day as it begins. */
  readonly begins: ReadonlyMap<string, number>
}

/** Whether a store may be filled beside whatever of the others there is room for. */
export type FitsAnyway = (store: Store, roomKW: number) => boolean

interface Into {
  readonly day: RunDay
  readonly cells: readonly Cell[]
  readonly depth: Depth
  readonly fits: FitsAnyway
  readonly programme: Programme
  /** Cell by cell: what is drawn, what says that something runs, what it may draw at the most, and who. */
  readonly wanted: readonly Term[][]
  readonly runs: readonly Term[][]
  readonly most: readonly Term[][]
  readonly alone: readonly Drawing[][]
}

/**
 * The programme of cells. Its cost is that of hours, of low load and of what stores draw; a start for each run, and the energy
 * of base and batches, are the same whatever is chosen and are left out. Unknowns of a cell: h the part that the set runs, l
 * what of it is at low load, w whether any is, x of each batch whether it begins there, b and u of each store whether and how
 * long it fills; rows as those of the whole day.
 */
export function layCells(
  day: RunDay,
  { cells, depth, fits }: Pick<Into, 'cells' | 'depth' | 'fits'>,
): LaidCells {
  const programme = emptyProgramme()
  const lists = <T>(): T[][] => cells.map(() => [])
  const into: Into = {
    ...{ day, cells, depth, fits, programme },
    ...{ wanted: lists<Term>(), runs: lists<Term>(), most: lists<Term>(), alone: lists<Drawing>() },
  }
  const running = cells.map((cell) =>
    addColumn(programme, {
      cost: day.costs.perHour * day.slotHours,
      from: day.partSlots && !cell.isInner ? cell.baseShare : 1,
      to: 1,
    }),
  )
  const batches = new Map(day.batches.map((batch) => [batch.id, layBatch(batch, into)]))
  if (depth !== 'count') for (const batch of day.batches) layAfter(programme, batch, batches)
  const begins = new Map<string, number>()
  const shares = new Map(day.stores.map((store) => [store.id, layStore(store, into, begins)]))
  cells.forEach((cell, at) => {
    layLoad(cell, into, { at, hour: running[at]! })
    layRoom(cell, into, { at, hour: running[at]! })
  })
  return { programme, running, batches, shares, begins }
}

function put({ programme }: Into, terms: Term[], bounds: Pick<Row, 'least' | 'most'>): void {
  programme.rows.push({ terms, ...bounds })
}

/** A yes-or-no for each cell in which the batch may begin. Where only the number of cells is told, for each that it runs in. */
function layBatch(batch: Batch, into: Into): (number | undefined)[] {
  const { day, cells, depth, programme } = into
  const length = depth === 'count' ? 1 : batch.slots
  const { first = 0, last = day.baseKW.length - 1 } = batch
  const running: Term[][] = cells.map(() => [])
  const begins = cells.map(({ run, slot }, at) => {
    if (cells[at + length - 1]?.run !== run) return undefined
    if (depth === 'slots' && (slot < first || slot + length - 1 > last)) return undefined
    const column = addChoice(programme)
    for (let on = at; on < at + length; on++) running[on]!.push([column, 1])
    return column
  })
  const times = depth === 'count' ? batch.slots : 1
  const terms = begins.flatMap((column): Term[] => (column === undefined ? [] : [[column, 1]]))
  put(into, terms, { least: times, most: times })
  running.forEach((runs, at) => {
    if (runs.length === 0) return
    const scaled = (factor: number) => runs.map(([column]): Term => [column, factor])
    const mostKW = batch.mostKW ?? batch.kW
    into.wanted[at]!.push(...scaled(batch.kW))
    into.most[at]!.push(...scaled(mostKW))
    into.runs[at]!.push(...runs)
    into.alone[at]!.push({ runs, share: scaled(batch.share ?? 1), kW: batch.kW, mostKW })
  })
  return begins
}

/** For what share of each cell a store is filled, and what is in it meanwhile. */
function layStore(store: Store, into: Into, begins: Map<string, number>): number[] {
  const { day, depth } = into
  const shares = into.cells.map((_, at) => layShare(store, into, at))
  const filled = store.perHour * day.slotHours
  const need = needOf(store)
  put(
    into,
    shares.map((share) => [share, filled]),
    need,
  )
  if (depth === 'runs') layRuns(store, into, shares)
  if (depth === 'slots') layLevels(store, into, { shares, begins })
  return shares
}

function layShare(store: Store, into: Into, at: number): number {
  const { day, programme } = into
  const { kW } = store
  const cost = day.costs.perKWh * day.slotHours * kW
  const says = (one: { readonly share: number; readonly chosen: number }) => {
    into.most[at]!.push([one.chosen, kW])
    into.runs[at]!.push([one.chosen, 1])
    into.alone[at]!.push({ runs: [[one.chosen, 1]], share: [[one.share, 1]], kW, mostKW: kW })
  }
  if (store.wholeSlots) {
    const chosen = addChoice(programme, cost)
    into.wanted[at]!.push([chosen, kW])
    says({ share: chosen, chosen })
    return chosen
  }
  const share = addColumn(programme, { to: 1, cost })
  into.wanted[at]!.push([share, kW])
  if (day.partSlots && into.fits(store, into.cells[at]!.roomKW)) {
    into.runs[at]!.push([share, 1 / leastShare])
    into.alone[at]!.push({ runs: [], share: [[share, 1]], kW, mostKW: 0 })
    return share
  }
  const chosen = addChoice(programme)
  const held = (factor: number): Term[] => [
    [share, 1],
    [chosen, -factor],
  ]
  put(into, held(1), { most: 0 })
  put(into, held(leastShare), { least: 0 })
  says({ share, chosen })
  return share
}

/** One run puts no more into a store than there is room for and is drawn meanwhile, at the most. */
function layRuns(store: Store, into: Into, shares: readonly number[]): void {
  const filled = store.perHour * into.day.slotHours
  for (const run of new Set(into.cells.map((cell) => cell.run))) {
    const own = shares.filter((_, at) => into.cells[at]!.run === run)
    const most = store.holds - store.least + mostDrawn(store.drawn, own.length)
    if (most < filled * own.length)
      put(
        into,
        own.map((share) => [share, filled]),
        { most },
      )
  }
}

/** The most that is drawn in so many slots on end. */
function mostDrawn(drawn: readonly number[], length: number): number {
  const sums = drawn.map((_, t) => drawn.slice(t, t + length).reduce((sum, each) => sum + each, 0))
  return Math.max(0, ...sums)
}

/** The level is at its most as a cell ends, and at its least before the next begins. */
function layLevels(
  store: Store,
  into: Into,
  { shares, begins }: { readonly shares: readonly number[]; readonly begins: Map<string, number> },
): void {
  const { day, cells, programme } = into
  const isOpen = store.begins === undefined
  const begin = isOpen ? addColumn(programme, { from: store.least, to: store.holds }) : undefined
  if (begin !== undefined) begins.set(store.id, begin)
  const level: Term[] = begin === undefined ? [] : [[begin, 1]]
  const cellAt = new Map(cells.map(({ slot }, at) => [slot, at]))
  let fixed = store.begins ?? 0
  for (let slot = 0; slot < day.baseKW.length; slot++) {
    const at = cellAt.get(slot)
    if (at !== undefined) level.push([shares[at]!, store.perHour * day.slotHours])
    fixed -= store.drawn[slot] ?? 0
    const isLeast = slot === day.baseKW.length - 1 || cellAt.has(slot + 1)
    if (at === undefined && !isLeast) continue
    put(into, [...level], {
      ...(isLeast ? { least: store.least - fixed } : {}),
      ...(at === undefined ? {} : { most: store.holds - fixed }),
    })
  }
}

/** What is drawn against what the set gives, and at low load. */
function layLoad(
  { baseKW, isInner }: Cell,
  into: Into,
  { at, hour }: { readonly at: number; readonly hour: number },
): void {
  const { day, programme } = into
  const { set, costs, slotHours } = day
  const lowCost = costs.perLowHour * slotHours
  const isWhole = !day.partSlots || isInner
  const low = addChoice(programme, isWhole ? lowCost : 0)
  const lowPart = isWhole ? low : addColumn(programme, { cost: lowCost, to: 1 })
  const drawn = into.wanted[at]!
  put(into, [...drawn, [hour, -set.mostKW]], { most: -baseKW })
  put(into, [...drawn, [hour, -set.lowKW], [lowPart, set.lowKW]], { least: -baseKW })
  if (isWhole) return
  put(
    into,
    [
      [lowPart, 1],
      [hour, -1],
      [low, -1],
    ],
    { least: -1 },
  )
  put(
    into,
    [
      [lowPart, 1],
      [low, -1],
    ],
    { most: 0 },
  )
}

/** Who may run at once, and that the set runs as long as each of them, and for something. */
function layRoom(
  { baseKW, roomKW }: Cell,
  into: Into,
  { at, hour }: { readonly at: number; readonly hour: number },
): void {
  const { day, depth } = into
  const alone = into.alone[at]!
  if (depth !== 'count' && !(baseKW > 0)) put(into, into.runs[at]!, { least: 1 })
  const withHour = (terms: readonly Term[], factor: number) =>
    put(into, [...terms, [hour, -factor]], { most: 0 })
  if (day.partSlots) for (const { share } of alone) withHour(share, 1)
  if (alone.reduce((sum, { mostKW }) => sum + mostKW, 0) <= roomKW) return
  put(into, into.most[at]!, { most: roomKW })
  for (const { among, atMost } of roomFor(alone, roomKW)) {
    put(
      into,
      among.flatMap(({ runs }) => runs),
      { most: atMost },
    )
    if (day.partSlots)
      withHour(
        among.flatMap(({ share }) => share),
        atMost,
      )
  }
}
