/**
 * A day as it is run, by a plan or by habit: what each slot carries, and what it comes to.
 *
 * @module
 */

import type { RunDay } from './plan-day.js'

/** When what may wait is done, and what the battery does meanwhile. */
export interface Choices {
  /** Slot in which each batch begins. */
  readonly batches: Readonly<Record<string, number>>
  /** Share of each slot that each store is being filled, 0 to 1. */
  readonly stores: Readonly<Record<string, readonly number[]>>
  /** What is in each store as the day begins, where the day leaves that open. */
  readonly begins?: Readonly<Record<string, number>>
  /** Part of each slot that the set runs; left out: all of it, where it runs. */
  readonly onShare?: readonly number[]
  /** What the set gives; left out: whatever is wanted. [kW] */
  readonly setKW?: readonly number[]
  /** Into the charger and out of the inverter. [kW] */
  readonly chargeKW?: readonly number[]
  readonly inverterKW?: readonly number[]
  readonly shoreKW?: readonly number[]
}

export interface RunSlot {
  readonly setKW: number
  readonly isOn: boolean
  /** Part of the slot. */
  readonly onShare: number
  readonly isLow: boolean
  /** Carried, without charging. [kW] */
  readonly wantedKW: number
  readonly chargeKW: number
  readonly inverterKW: number
  readonly shoreKW: number
  readonly solarKW: number
}

/** Totals of a day. Costs are in the day's unit: litres of fuel, or what is worth as much. */
export interface DayTotals {
  readonly hours: number
  readonly starts: number
  readonly lowHours: number
  /** Of the hours; 0 where the set does not run. */
  readonly lowLoadShare: number
  readonly kWh: number
  readonly fuelLitres: number
  readonly cost: number
}

export interface RunOfDay extends DayTotals {
  readonly slots: readonly RunSlot[]
  /** What each batch and store draws, slot by slot. [kW] */
  readonly running: Readonly<Record<string, readonly number[]>>
  /** What is in each store at the ends of the slots, and in the battery. */
  readonly levels: Readonly<Record<string, readonly number[]>>
  readonly batteryKWh?: readonly number[]
  /** Slots in which more is wanted than the set may carry, or a store runs low. */
  readonly short: readonly { readonly slot: number; readonly what: string }[]
}

/** A tolerance on kW, far below what any meter tells. */
const tiny = 1e-6

/** Plays a day through. Loads, levels and costs are reckoned anew from the choices alone. */
export function runOf(day: RunDay, choices: Choices): RunOfDay {
  const slots = day.baseKW.length
  const running: Record<string, readonly number[]> = {}
  for (const batch of day.batches) {
    const begins = choices.batches[batch.id] ?? 0
    running[batch.id] = each(slots, (t) => (t >= begins && t < begins + batch.slots ? batch.kW : 0))
  }
  const levels: Record<string, readonly number[]> = {}
  const short: { slot: number; what: string }[] = []
  for (const store of day.stores) {
    const asked = choices.stores[store.id] ?? []
    let level = store.begins ?? choices.begins?.[store.id] ?? store.holds
    const share: number[] = []
    levels[store.id] = each(slots, (t) => {
      const drawn = store.drawn[t] ?? 0
      const room = store.holds - level + drawn
      const fills = Math.min(asked[t] ?? 0, Math.max(0, room / (store.perHour * day.slotHours)))
      share.push(fills)
      level += fills * store.perHour * day.slotHours - drawn
      if (level < store.least - tiny) short.push({ slot: t, what: store.id })
      return level
    })
    running[store.id] = share.map((part) => part * store.kW)
  }
  const perSlot = each(slots, (t) => slotOf(day, choices, { running, slot: t }))
  perSlot.forEach(({ setKW, onShare }, slot) => {
    if (setKW > onShare * day.set.mostKW + 1e-4) short.push({ slot, what: 'set' })
  })
  return {
    ...totalsOf(day, perSlot),
    slots: perSlot,
    running,
    levels,
    ...(day.battery === undefined ? {} : { batteryKWh: batteryOf(day, perSlot) }),
    short,
  }
}

function slotOf(
  day: RunDay,
  choices: Choices,
  { running, slot }: { readonly running: Readonly<Record<string, readonly number[]>>; readonly slot: number },
): RunSlot {
  const wantedKW = Object.values(running).reduce((sum, kW) => sum + kW[slot]!, day.baseKW[slot]!)
  const chargeKW = choices.chargeKW?.[slot] ?? 0
  const inverterKW = choices.inverterKW?.[slot] ?? 0
  const shoreKW = choices.shoreKW?.[slot] ?? 0
  const rest = Math.max(0, wantedKW + chargeKW - inverterKW - shoreKW)
  const solarKW = Math.min(day.solarKW?.[slot] ?? 0, rest)
  const setKW = choices.setKW?.[slot] ?? rest - solarKW
  const isOn = setKW > tiny
  const onShare = isOn ? (choices.onShare?.[slot] ?? 1) : 0
  return {
    setKW: isOn ? setKW : 0,
    isOn,
    onShare,
    isLow: isOn && setKW < onShare * day.set.lowKW - tiny,
    wantedKW,
    chargeKW,
    inverterKW,
    shoreKW,
    solarKW: Math.min(day.solarKW?.[slot] ?? 0, Math.max(0, rest - (isOn ? setKW : 0))),
  }
}

/** Charge of the battery at the ends of the slots: in by the charger, out by the inverter, each with its loss. */
function batteryOf(day: RunDay, slots: readonly RunSlot[]): number[] {
  const battery = day.battery!
  let level = battery.beginsKWh
  return slots.map(({ chargeKW, inverterKW }) => {
    level += (chargeKW * battery.chargeEfficiency - inverterKW / battery.inverterEfficiency) * day.slotHours
    return level
  })
}

/**
 * Sums of a day. `cost = Σ on·h·(perHour + low·perLowHour) + perKWh·kWh + perStart·starts + wear + shore`; fuel is the hours'
 * and the energy's part of it alone.
 */
function totalsOf({ slotHours, costs, battery, shore }: RunDay, slots: readonly RunSlot[]): DayTotals {
  const sum = (of: (slot: RunSlot, at: number) => number) =>
    slots.reduce((total, slot, at) => total + of(slot, at), 0)
  const hours = slotHours * sum(({ onShare }) => onShare)
  const lowHours = slotHours * sum(({ isLow, onShare }) => (isLow ? onShare : 0))
  const starts = sum(({ isOn }, at) => (isOn && !slots[at - 1]?.isOn ? 1 : 0))
  const kWh = slotHours * sum(({ setKW }) => setKW)
  const fuelLitres = costs.perHour * hours + costs.perKWh * kWh
  const drawnKWh =
    battery === undefined ? 0 : (slotHours * sum(({ inverterKW }) => inverterKW)) / battery.inverterEfficiency
  const shoreKWh = slotHours * sum(({ shoreKW }) => shoreKW)
  return {
    hours,
    starts,
    lowHours,
    lowLoadShare: hours > 0 ? lowHours / hours : 0,
    kWh,
    fuelLitres,
    cost:
      fuelLitres +
      costs.perStart * starts +
      costs.perLowHour * lowHours +
      (battery?.wearPerKWh ?? 0) * drawnKWh +
      (shore?.perKWh ?? 0) * shoreKWh,
  }
}

/** How full tanks and stores are that are drawn from, as a slot ends: shares of what they hold. */
export function heldIn(
  day: RunDay,
  run: Pick<RunOfDay, 'levels'>,
  slot: number,
): { readonly name: string; readonly share: number }[] {
  return day.stores
    .filter(({ drawn, holds }) => holds > 0 && drawn.some((amount) => amount > 0))
    .map(({ id, name, holds }) => ({ name: name ?? id, share: (run.levels[id]?.[slot] ?? 0) / holds }))
}

function each<T>(count: number, of: (at: number) => T): T[] {
  return Array.from({ length: count }, (_, at) => of(at))
}
