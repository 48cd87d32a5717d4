/**
 * The slots of a day that may be on together: how many, in how many runs, and which.
 *
 * @module
 */

import type { Cell } from './plan-cells.js'
import { needOf, type RunDay } from './plan-day.js'
import { roomAt } from './plan-room.js'

/** So many slots on, in so many runs of them. */
export interface Kind {
  readonly slots: number
  readonly runs: number
}

/** Slots in rising order. */
export type Pattern = readonly number[]

/** Every kind of day with the least that it can cost: by its starts, and by the hours that it cannot do without. */
export function kindsOf(day: RunDay): readonly (Kind & { readonly least: number })[] {
  const held = day.baseKW.filter((kW) => kW > 0).length
  const open = day.baseKW.filter((kW, t) => kW > 0 || !day.quiet?.[t]).length
  const hours = leastSlots(day)
  const fixed = energyCost(day)
  const kinds: (Kind & { least: number })[] = []
  for (let slots = Math.max(1, held); slots <= open; slots++) {
    for (let runs = 1; runs <= slots; runs++) {
      const on = day.partSlots ? Math.max(hours, slots - 2 * runs) : slots
      const least = fixed + day.costs.perStart * runs + day.costs.perHour * day.slotHours * on
      kinds.push({ slots, runs, least })
    }
  }
  return kinds
}

/** What is wanted whatever is chosen, in the unit of the costs. */
function energyCost({ baseKW, batches, stores, slotHours, costs }: RunDay): number {
  const filled = stores.map((store) => (store.kW * needOf(store).least) / store.perHour)
  const wanted = baseKW.concat(batches.map(({ kW, slots }) => kW * slots))
  return costs.perKWh * (slotHours * sum(wanted) + sum(filled))
}

/** Slots, in parts of them, that what runs longest takes. */
function leastSlots({ baseKW, baseShare, batches, stores, slotHours }: RunDay): number {
  return Math.max(
    sum(baseKW.map((kW, t) => (kW > 0 ? (baseShare?.[t] ?? 1) : 0))),
    ...batches.map(({ slots, share = 1 }) => slots * share),
    ...stores.map((store) => needOf(store).least / (store.perHour * slotHours)),
  )
}

/** All patterns of a kind: what cannot wait is in each, and no silent slot is. Undefined where there are more than so many. */
export function patternsOf(day: RunDay, kind: Kind, most: number): Pattern[] | undefined {
  const { baseKW, quiet } = day
  const isHeld = (t: number) => (baseKW[t] ?? 0) > 0
  const isOpen = (t: number) => t < baseKW.length && (isHeld(t) || !quiet?.[t])
  const heldFrom = baseKW.map((_, t) => baseKW.slice(t).filter((kW) => kW > 0).length).concat(0, 0)
  const found: number[][] = []
  /** Puts further runs into the slots from t on, each a slot or more behind the one before. */
  const extend = (on: readonly number[], t: number, left: Kind): void => {
    if (found.length > most || heldFrom[Math.min(t, baseKW.length)]! > left.slots) return
    if (left.runs === 0) {
      if (left.slots === 0) found.push([...on])
      return
    }
    for (let from = t; from < baseKW.length && heldFrom[from] === heldFrom[t]; from++) {
      const run: number[] = []
      while (run.length <= left.slots - left.runs && isOpen(from + run.length)) {
        run.push(from + run.length)
        const next = from + run.length
        if (isHeld(next)) continue
        extend([...on, ...run], next + 1, { slots: left.slots - run.length, runs: left.runs - 1 })
      }
    }
  }
  extend([], 0, kind)
  return found.length > most ? undefined : found
}

/**
 * The patterns told apart by what their runs are made of, whatever hour of the day they stand in; and, unless something has to
 * come after something else, whichever run comes first and whichever end of it.
 */
export function byForm(day: RunDay, patterns: readonly Pattern[]): Pattern[][] {
  const isOrdered = day.batches.some(({ after }) => after !== undefined)
  const forms = new Map<string, Pattern[]>()
  for (const pattern of patterns) {
    const runs = runsOf(day, pattern)
    const form = (isOrdered ? runs : runs.map(eitherWay).sort()).join('|')
    const alike = forms.get(form)
    if (alike === undefined) forms.set(form, [pattern])
    else alike.push(pattern)
  }
  return [...forms.values()]
}

/** What each run is made of, slot by slot. */
function runsOf(day: RunDay, pattern: Pattern): string[][] {
  const runs: string[][] = []
  for (const { run, baseKW, baseShare, roomKW } of cellsOf(day, pattern)) {
    runs[run] ??= []
    runs[run].push(`${baseKW} ${baseShare} ${roomKW}`)
  }
  return runs
}

function eitherWay(run: readonly string[]): string {
  return [run.join(), [...run].reverse().join()].sort()[0]!
}

/** The slots of a pattern, and how they stand together. */
export function cellsOf(day: RunDay, pattern: Pattern): Cell[] {
  let run = 0
  return pattern.map((slot, at) => {
    const isJoined = pattern[at - 1] === slot - 1
    if (at > 0 && !isJoined) run++
    return { ...cellAt(day, slot), run, isInner: isJoined && pattern[at + 1] === slot + 1 }
  })
}

/** So many slots of which no more is told: those of what cannot wait, and others. */
export function someCells(day: RunDay, count: number): Cell[] {
  const held = day.baseKW.flatMap((kW, t) => (kW > 0 ? [cellAt(day, t)] : []))
  const free = day.baseKW.flatMap((kW, t) => (kW > 0 || day.quiet?.[t] ? [] : [cellAt(day, t)]))
  const roomiest = free.reduce<Cell | undefined>(
    (most, cell) => (most === undefined || cell.roomKW > most.roomKW ? cell : most),
    undefined,
  )
  return held.concat(Array.from({ length: count - held.length }, () => roomiest!))
}

function cellAt(day: RunDay, slot: number): Cell {
  const baseKW = day.baseKW[slot]!
  const baseShare = baseKW > 0 ? (day.baseShare?.[slot] ?? 1) : 0
  return { slot, run: 0, isInner: false, baseKW, baseShare, roomKW: roomAt(day, slot) }
}

/** Days that are played from full stores: how they begin then is as much as they can ever begin with. */
const daysPlayed = 3

/** Whether stores that are filled all the time with the set on hold out. None of a pattern's plans does better. */
export function holdsOut(day: RunDay, pattern: Pattern): boolean {
  const on = new Set(pattern)
  return day.stores.every((store) => {
    let level = store.begins ?? store.holds
    for (let played = 0; played < (store.begins === undefined ? daysPlayed : 1); played++) {
      for (let t = 0; t < day.baseKW.length; t++) {
        const filled = on.has(t) ? store.perHour * day.slotHours : 0
        level = Math.min(store.holds, level + filled - (store.drawn[t] ?? 0))
        if (level < store.least - 1e-7) return false
      }
    }
    return true
  })
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}
