/**
 * A day as a programme: its unknowns, and the rows that hold them together.
 *
 * @module
 */

import type { Batch, RunDay, Store } from './plan-day.js'
import { addChoice, addColumn, emptyProgramme, type Programme, type Row, type Term } from './plan-milp.js'

/** Share of a slot under which nothing is started that cuts out by itself. */
const leastShare = 0.02
/** A set that runs with a battery beside it gives at least this share of what it may: it never only turns over. */
const leastLoad = 0.05

/** The programme of a day, and which of its variables are what. */
export interface Laid {
  readonly programme: Programme
  readonly on: readonly number[]
  /** For what part of the slot; without parts the same as whether. */
  readonly running: readonly number[]
  readonly set: readonly number[]
  readonly batches: ReadonlyMap<string, readonly (number | undefined)[]>
  readonly stores: ReadonlyMap<string, LaidStore>
  readonly charge?: readonly number[]
  readonly inverter?: readonly number[]
  readonly shore?: readonly number[]
}

function ones(columns: readonly number[]): Term[] {
  return columns.map((column) => [column, 1])
}

/**
 * The programme of a day, where told with so many slots on. Where the set may run for part of a slot, h is that part, l what of
 * it is at low load: `h ≤ y`, `g ≤ most·h`, `g ≥ low·(h − w)`, `l ≥ h + w − 1`; whatever runs takes its own part of h.
 */
export function layDown(day: RunDay, hours?: number): Laid {
  const programme = emptyProgramme()
  const { set, costs, slotHours, quiet } = day
  const slots = day.baseKW.map((_, t) => t)
  const part = day.partSlots === true
  const hourCost = costs.perHour * slotHours
  const on = slots.map((t) => addChoice(programme, part ? 0 : hourCost, !quiet?.[t]))
  const running = part ? slots.map(() => addColumn(programme, { cost: hourCost, to: 1 })) : on
  const output = slots.map(() => addColumn(programme, { cost: costs.perKWh * slotHours, to: set.mostKW }))
  const start = slots.map(() => addColumn(programme, { cost: costs.perStart, to: 1 }))
  const low = slots.map(() => addChoice(programme, part ? 0 : costs.perLowHour * slotHours))
  const lowPart = part
    ? slots.map(() => addColumn(programme, { cost: costs.perLowHour * slotHours, to: 1 }))
    : low
  const wanted: Term[][] = slots.map(() => [])
  const runs: Term[][] = slots.map(() => [])
  const most: Term[][] = slots.map(() => [])
  const alone: Drawing[][] = slots.map(() => [])
  const at = { wanted, runs, most, alone }
  const batches = new Map(day.batches.map((batch) => [batch.id, layBatch(programme, batch, { day, ...at })]))
  for (const batch of day.batches) layAfter(programme, batch, batches)
  const stores = new Map(day.stores.map((store) => [store.id, layStore(programme, store, { day, ...at })]))
  const power = layPower(programme, day)
  for (const t of slots) {
    const base = day.baseKW[t]!
    const before = t > 0 ? on[t - 1] : undefined
    const put = (terms: Term[], bounds: Pick<Row, 'least' | 'most'>) =>
      programme.rows.push({ terms, ...bounds })
    put([[output[t]!, 1], ...power.gives[t]!, ...negative(wanted[t]!)], { least: base, most: base })
    put(
      [
        [output[t]!, 1],
        [running[t]!, -set.mostKW],
      ],
      { most: 0 },
    )
    put(
      [
        [output[t]!, 1],
        [running[t]!, -set.lowKW],
        [low[t]!, set.lowKW],
      ],
      { least: 0 },
    )
    put(
      [
        [low[t]!, 1],
        [on[t]!, -1],
      ],
      { most: 0 },
    )
    put([[start[t]!, 1], [on[t]!, -1], ...(before === undefined ? [] : [[before, 1] as Term])], { least: 0 })
    put(
      [
        [start[t]!, 1],
        [on[t]!, -1],
      ],
      { most: 0 },
    )
    if (before !== undefined)
      put(
        [
          [start[t]!, 1],
          [before, 1],
        ],
        { most: 1 },
      )
    if (part) {
      put(
        [
          [running[t]!, 1],
          [on[t]!, -1],
        ],
        { most: 0 },
      )
      put(
        [
          [lowPart[t]!, 1],
          [running[t]!, -1],
          [low[t]!, -1],
        ],
        { least: -1 },
      )
      // between two slots with the set on it runs right through
      const after = on[t + 1]
      if (before !== undefined && after !== undefined) {
        put(
          [
            [running[t]!, 1],
            [before, -1],
            [on[t]!, -1],
            [after, -1],
          ],
          { least: -2 },
        )
      }
    }
    if (power.canStandIn) {
      put(
        [
          [output[t]!, 1],
          [running[t]!, -leastLoad * set.mostKW],
        ],
        { least: 0 },
      )
      continue
    }
    put([...runs[t]!, [on[t]!, -1]], { least: base > 0 ? -1 : 0 })
    // what runs has the set on: said one by one, so that halves of it cannot hide in a half of the set
    for (const one of alone[t]!) {
      put([...one.runs, [on[t]!, -1]], { most: 0 })
      if (part) put([...one.share, [running[t]!, -1]], { most: 0 })
    }
    const all = alone[t]!.reduce((sum, { kW }) => sum + kW, base)
    if (all < set.lowKW && !part)
      put(
        [
          [low[t]!, 1],
          [on[t]!, -1],
        ],
        { least: 0 },
      )
    if (base > 0) put([[on[t]!, 1]], { least: 1 })
    if (base > 0 && part) put([[running[t]!, 1]], { least: day.baseShare?.[t] ?? 1 })
    // what cuts out by itself may all be in at once
    const room = Math.max(0, set.mostKW - (day.baseMostKW?.[t] ?? base))
    put(base > 0 ? most[t]! : [...most[t]!, [on[t]!, -room]], { most: base > 0 ? room : 0 })
  }
  if (hours !== undefined) {
    programme.rows.push({ terms: ones(on), least: hours, most: hours })
    if (hours > 0) programme.rows.push({ terms: ones(start), least: 1 })
  }
  return { programme, on, running, set: output, batches, stores, ...power.columns }
}

interface Drawing {
  readonly runs: readonly Term[]
  /** For what part of the slot. */
  readonly share: readonly Term[]
  readonly kW: number
}

interface Into {
  readonly day: RunDay
  readonly wanted: readonly Term[][]
  readonly runs: readonly Term[][]
  readonly most: readonly Term[][]
  /** Of each batch and store, what says that it runs. */
  readonly alone: readonly Drawing[][]
}

/** A yes-or-no for each slot in which the batch may begin; one of them is yes. */
function layBatch(
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
function layAfter(
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
function layStore(programme: Programme, store: Store, { day, wanted, runs, most, alone }: Into): LaidStore {
  const last = day.baseKW.length - 1
  const isOpen = store.begins === undefined
  const begins = isOpen ? addColumn(programme, { from: store.least, to: store.holds }) : undefined
  const level: Term[] = begins === undefined ? [] : [[begins, 1]]
  const before = store.begins ?? 0
  let drawn = 0
  const shares = day.baseKW.map((_, t) => {
    const chosen = addChoice(programme)
    const share = store.wholeSlots ? chosen : addColumn(programme, { to: 1 })
    if (!store.wholeSlots) {
      programme.rows.push({
        terms: [
          [share, 1],
          [chosen, -1],
        ],
        most: 0,
      })
      programme.rows.push({
        terms: [
          [share, 1],
          [chosen, -leastShare],
        ],
        least: 0,
      })
    }
    wanted[t]!.push([share, store.kW])
    most[t]!.push([chosen, store.kW])
    runs[t]!.push([chosen, 1])
    alone[t]!.push({ runs: [[chosen, 1]], share: [[share, 1]], kW: store.kW })
    level.push([share, store.perHour * day.slotHours])
    drawn += store.drawn[t] ?? 0
    const least = t === last ? Math.max(store.least, store.ends ?? store.least) : store.least
    programme.rows.push({
      terms: [...level],
      least: least - before + drawn,
      most: store.holds - before + drawn,
    })
    return share
  })
  // an open day ends as it began
  if (isOpen) programme.rows.push({ terms: level.slice(1), least: drawn })
  return { shares, begins }
}

export interface LaidStore {
  readonly shares: readonly number[]
  readonly begins: number | undefined
}

/** Battery, sun and shore: what each may give slot by slot. */
function layPower(programme: Programme, day: RunDay) {
  const { battery, solarKW, shore, slotHours } = day
  const gives: Term[][] = day.baseKW.map(() => [])
  const columns: { charge?: number[]; inverter?: number[]; shore?: number[] } = {}
  if (solarKW !== undefined)
    for (const [t, kW] of solarKW.entries()) gives[t]!.push([addColumn(programme, { to: kW }), 1])
  if (shore !== undefined) {
    columns.shore = shore.mostKW.map((kW) => addColumn(programme, { to: kW, cost: shore.perKWh * slotHours }))
    for (const [t, column] of columns.shore.entries()) gives[t]!.push([column, 1])
  }
  if (battery !== undefined) {
    const wear = (battery.wearPerKWh * slotHours) / battery.inverterEfficiency
    columns.charge = day.baseKW.map(() => addColumn(programme, { to: battery.chargeKW }))
    columns.inverter = day.baseKW.map(() => addColumn(programme, { to: battery.inverterKW, cost: wear }))
    const level: Term[] = []
    day.baseKW.forEach((_, t) => {
      gives[t]!.push([columns.inverter![t]!, 1], [columns.charge![t]!, -1])
      level.push([columns.charge![t]!, battery.chargeEfficiency * slotHours])
      level.push([columns.inverter![t]!, -slotHours / battery.inverterEfficiency])
      const least = t === day.baseKW.length - 1 ? 0 : -battery.beginsKWh
      programme.rows.push({ terms: [...level], least, most: battery.usableKWh - battery.beginsKWh })
    })
  }
  return { gives, columns, canStandIn: standsIn(day) }
}

function negative(terms: readonly Term[]): Term[] {
  return terms.map(([column, factor]) => [column, -factor])
}

/** Whether anything but the set can carry what is wanted. */
export function standsIn({ battery, solarKW, shore }: RunDay): boolean {
  return battery !== undefined || solarKW !== undefined || shore !== undefined
}
