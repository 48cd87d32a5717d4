/**
 * A day as a programme: its unknowns, and the rows that hold them together.
 *
 * @module
 */

import { type RunDay, standsIn } from './plan-day.js'
import { type Drawing, type LaidStore, layAfter, layBatch, layStore } from './plan-lay-uses.js'
import { addChoice, addColumn, emptyProgramme, type Programme, type Row, type Term } from './plan-milp.js'
import { roomAt, roomFor } from './plan-room.js'

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

/**
 * The programme of a day. Where the set may run for part of a slot, h is that part, l what of
 * it is at low load: `h ≤ y`, `g ≤ most·h`, `g ≥ low·(h − l)`, `l ≤ w`, `l ≥ h + w − 1`; whatever runs takes its own part of h.
 */
export function layDown(day: RunDay): Laid {
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
        [lowPart[t]!, set.lowKW],
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
      put(
        [
          [lowPart[t]!, 1],
          [low[t]!, -1],
        ],
        { most: 0 },
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
      if (one.runs.length > 0) put([...one.runs, [on[t]!, -1]], { most: 0 })
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
    const room = roomAt(day, t)
    put(base > 0 ? most[t]! : [...most[t]!, [on[t]!, -room]], { most: base > 0 ? room : 0 })
    for (const { among, atMost } of roomFor(alone[t]!, room)) {
      put([...among.flatMap((one) => one.runs), [on[t]!, -atMost]], { most: 0 })
      if (part) put([...among.flatMap((one) => one.share), [running[t]!, -atMost]], { most: 0 })
    }
  }
  return { programme, on, running, set: output, batches, stores, ...power.columns }
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
