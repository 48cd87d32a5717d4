/**
 * The best plan of a day that only the set carries, found by what cannot be better.
 *
 * Days are told apart by how many slots are on in how many runs, then by how the runs are made up, then by the hours in which
 * they stand. For each lot a programme with fewer rows says what it costs at the least; the lot with the lowest is opened
 * first. What is found when the lowest is a whole plan is the optimum: nothing that is left can cost less.
 *
 * Slots of which only the number matters need no unknowns for where they stand, so that these programmes are small, and
 * hours that are alike cannot change places in them.
 *
 * @module
 */

import type { Highs } from 'highs'
import { branched } from './plan-branch.js'
import { type Cell, type Depth, type FitsAnyway, type LaidCells, layCells } from './plan-cells.js'
import { needOf, type RunDay } from './plan-day.js'
import { type Optimum, optimumOf, type Programme } from './plan-milp.js'
import {
  byForm,
  cellsOf,
  holdsOut,
  type Kind,
  kindsOf,
  type Pattern,
  patternsOf,
  someCells,
} from './plan-patterns.js'
import { fitsAnyway } from './plan-room.js'
import type { Choices } from './plan-run.js'

export type Searched =
  | { readonly ok: true; readonly choices: Choices; readonly cost: number }
  | Extract<Optimum, { ok: false }>
  /** Too many lots: another way must be gone. What was found costs so much. */
  | { readonly ok: false; readonly why: 'too-many'; readonly best?: Found }

/** A plan, and its cost. */
export interface Found {
  readonly choices: Choices
  readonly cost: number
}

/** A lot of days that cost so much at the least; among equals the one that is told most of is opened first. */
interface Lot {
  readonly least: number
  readonly told: number
  readonly open: () => void
}

/** Rounding of the solver's sums. */
const tiny = 1e-7
/** Beyond these the day is left to one programme of the whole. */
const most = { patterns: 20_000, programmes: 2_000, branches: 60 }
/** Patterns of a form on which its own answer is tried as it stands. */
const tried = 8
/** With more forms than this of one kind it pays to ask first what the kind costs, whole. */
const few = 40

/** The least cost, proved, and a plan that has it. */
export function searchPlan(
  highs: Highs,
  day: RunDay,
  limit: { readonly seconds: number; readonly programmes?: number },
): Searched {
  const fits = fittingIn(day)
  const fixed = fixedCost(day)
  const counted = new Map<number, number>()
  const settled = new Map<number, { readonly cost: number; readonly isExact: boolean }>()
  const lots: Lot[] = []
  let best: Found | undefined
  let stopped: Extract<Searched, { ok: false }> | undefined
  let solved = 0

  const known = () => best?.cost ?? Number.POSITIVE_INFINITY
  const count = () => {
    if (++solved > (limit.programmes ?? most.programmes))
      stopped ??= { ok: false, why: 'too-many', ...(best === undefined ? {} : { best }) }
  }
  /** What the programme comes to, with what is the same whatever is chosen. */
  const told = (found: Optimum, runs: number): Solved => {
    if (!found.ok && found.why !== 'infeasible') stopped ??= found
    if (!found.ok) return { cost: Number.POSITIVE_INFINITY }
    return { cost: found.cost + fixed + day.costs.perStart * runs, values: found.values }
  }
  const relaxedCost = (programme: Programme, runs: number): Solved => {
    count()
    return told(optimumOf(highs, relaxed(programme), limit), runs)
  }
  /** Whole; where nothing costs less than the best known it may be told so instead. */
  const wholeCost = (programme: Programme, runs: number): Solved => {
    count()
    const below = known() - fixed - day.costs.perStart * runs
    const found = branched(highs, programme, { below, most: most.branches })
    return told(found ?? optimumOf(highs, programme, { ...limit, effort: 'little' }), runs)
  }
  const put = (lot: Lot): void => {
    if (lot.least < known() - tiny) lots.push(lot)
  }
  const lay = (cells: readonly Cell[], depth: Depth) => layCells(day, { cells, depth, fits })
  const keep = (cells: readonly Cell[], laid: LaidCells, { cost, values }: Solved): void => {
    if (values === undefined || cost >= known()) return
    best = { cost, choices: choicesOf(day, { cells, laid, values }) }
  }

  const openKind = (kind: Kind, least: number): void => {
    if (!counted.has(kind.slots)) {
      const { cost } = relaxedCost(lay(someCells(day, kind.slots), 'count').programme, 0)
      counted.set(kind.slots, cost)
    }
    const bound = Math.max(least, counted.get(kind.slots)! + day.costs.perStart * kind.runs)
    put({ least: bound, told: 1, open: () => openPatterns(kind, bound) })
  }
  const openPatterns = (kind: Kind, least: number): void => {
    const patterns = patternsOf(day, kind, most.patterns)
    if (patterns === undefined)
      stopped ??= { ok: false, why: 'too-many', ...(best === undefined ? {} : { best }) }
    const forms = byForm(day, patterns ?? [])
    const bound = forms.length > few ? Math.max(least, settleCount(kind)) : least
    for (const alike of forms)
      put({ least: bound, told: 2, open: () => openForm(alike, { kind, least: bound }) })
  }
  /** What so many slots cost, whole; or what is known already, where it is no less than that. */
  const settleCount = ({ slots, runs }: Kind): number => {
    const starts = day.costs.perStart * runs
    const before = settled.get(slots)
    if (before !== undefined && (before.isExact || before.cost + starts >= known() - tiny))
      return before.cost + starts
    const { cost, values } = wholeCost(lay(someCells(day, slots), 'count').programme, runs)
    const found = Math.min(cost, known())
    settled.set(slots, { cost: found - starts, isExact: values !== undefined })
    return found
  }
  const openForm = (alike: readonly Pattern[], { kind, least }: Told): void => {
    const patterns = alike.filter((pattern) => holdsOut(day, pattern))
    if (patterns.length === 0) return
    const laid = lay(cellsOf(day, patterns[0]!), 'runs')
    const bound = Math.max(least, relaxedCost(laid.programme, kind.runs).cost)
    put({ least: bound, told: 3, open: () => settleForm(patterns, { kind, least: bound }, laid) })
  }
  const settleForm = (patterns: readonly Pattern[], { kind, least }: Told, laid: LaidCells): void => {
    const found = wholeCost(laid.programme, kind.runs)
    if (found.values === undefined) return
    const bound = Math.max(least, found.cost)
    for (const pattern of patterns.slice(0, tried)) {
      const cells = cellsOf(day, pattern)
      const there = lay(cells, 'slots')
      const same = withWholes(there.programme, wholesOf(laid.programme, found.values))
      if (same === undefined) break
      const whole = relaxedCost(same, kind.runs)
      keep(cells, there, whole)
      if (whole.cost <= bound + tiny) return
    }
    put({ least: bound, told: 4, open: () => openPattern(patterns, { kind, least: bound }) })
  }
  const openPattern = ([first, ...others]: readonly Pattern[], { kind, least }: Told): void => {
    if (first === undefined) return
    put({ least, told: 4, open: () => openPattern(others, { kind, least }) })
    const cells = cellsOf(day, first)
    const laid = lay(cells, 'slots')
    const bound = Math.max(least, relaxedCost(laid.programme, kind.runs).cost)
    const settle = () => keep(cells, laid, wholeCost(laid.programme, kind.runs))
    put({ least: bound, told: 5, open: settle })
  }

  if (wantsNothing(day)) return { ok: true, cost: 0, choices: nothing(day) }
  for (const { least, ...kind } of kindsOf(day)) put({ least, told: 0, open: () => openKind(kind, least) })
  for (let lot = take(lots, best); lot !== undefined && stopped === undefined; lot = take(lots, best)) {
    if (lot.least >= known() - tiny) break
    lot.open()
  }
  if (stopped !== undefined) return stopped
  if (best === undefined) return { ok: false, why: 'infeasible', words: 'nothing meets all that is asked' }
  return { ok: true, ...best }
}

interface Told {
  readonly kind: Kind
  readonly least: number
}

/** Infinite where nothing meets the rows, or nothing costs less than what is known. */
interface Solved {
  readonly cost: number
  readonly values?: Float64Array
}

/** The lot with the lowest bound; as long as no plan is known, that of which most is told. */
function take(lots: Lot[], best: Found | undefined): Lot | undefined {
  const isSooner = (one: Lot, other: Lot) =>
    (best === undefined && one.told !== other.told) || Math.abs(one.least - other.least) < tiny
      ? one.told > other.told || (one.told === other.told && one.least < other.least - tiny)
      : one.least < other.least
  let at = -1
  lots.forEach((lot, i) => {
    if (at < 0 || isSooner(lot, lots[at]!)) at = i
  })
  return at < 0 ? undefined : lots.splice(at, 1)[0]
}

/** Energy of what is wanted whatever is chosen, without the stores, in the unit of the costs. */
function fixedCost({ baseKW, batches, slotHours, costs }: RunDay): number {
  const kWh = [...baseKW, ...batches.map(({ kW, slots }) => kW * slots)]
  return costs.perKWh * slotHours * kWh.reduce((sum, each) => sum + each, 0)
}

function fittingIn(day: RunDay): FitsAnyway {
  const known = new Map<string, boolean>()
  return (store, roomKW) => {
    const key = `${store.id} ${roomKW}`
    const found = known.get(key) ?? fitsAnyway(day, store, roomKW)
    known.set(key, found)
    return found
  }
}

function wantsNothing(day: RunDay): boolean {
  const wants = day.baseKW.some((kW) => kW > 0) || day.batches.length > 0
  return !wants && day.stores.every((store) => needOf(store).least < tiny) && holdsOut(day, [])
}

function nothing(day: RunDay): Choices {
  const none = () => day.baseKW.map(() => 0)
  return {
    batches: {},
    stores: Object.fromEntries(day.stores.map(({ id }) => [id, none()])),
    onShare: none(),
  }
}

function relaxed({ columns, rows }: Programme): Programme {
  return { columns: columns.map(({ whole: _, ...column }) => column), rows }
}

function wholesOf({ columns }: Programme, values: Float64Array): number[] {
  return columns.flatMap(({ whole }, at) => (whole ? [Math.round(values[at]!)] : []))
}

/** The programme with its yes-and-no given, in their order; undefined where they are not as many. */
function withWholes({ columns, rows }: Programme, wholes: readonly number[]): Programme | undefined {
  if (columns.filter(({ whole }) => whole).length !== wholes.length) return undefined
  let next = 0
  const given = columns.map((column) => {
    if (!column.whole) return column
    const value = wholes[next++]!
    return { ...column, from: value, to: value }
  })
  return { columns: given, rows }
}

/** The yes-and-no of a plan, by the hours of the day. */
function choicesOf(
  day: RunDay,
  of: { readonly cells: readonly Cell[]; readonly laid: LaidCells; readonly values: Float64Array },
): Choices {
  const { cells, laid, values } = of
  const overDay = (columns: readonly number[], read: (value: number) => number) => {
    const slots = day.baseKW.map(() => 0)
    columns.forEach((column, at) => {
      slots[cells[at]!.slot] = read(values[column]!)
    })
    return slots
  }
  const asShare = (share: number) => (share < 1e-6 ? 0 : Math.min(1, share))
  const begun = (columns: readonly (number | undefined)[]) =>
    cells[columns.findIndex((column) => column !== undefined && values[column]! > 0.5)]!.slot
  const stores = day.stores.map(({ id, wholeSlots }) => {
    const read = wholeSlots ? Math.round : asShare
    return [id, overDay(laid.shares.get(id)!, read)] as const
  })
  return {
    batches: Object.fromEntries([...laid.batches].map(([id, columns]) => [id, begun(columns)])),
    stores: Object.fromEntries(stores),
    ...(laid.begins.size === 0
      ? {}
      : { begins: Object.fromEntries([...laid.begins].map(([id, column]) => [id, values[column]!])) }),
    ...(day.partSlots ? { onShare: overDay(laid.running, asShare) } : {}),
  }
}
