/**
 * A life model compiled into columns of numbers, so that the innermost loops touch nothing else.
 *
 * @module
 */

import type { Alternative, Clock, LifeModel, LifePart, Outcome, Repair } from '../forecast/life-model.js'
import { detectionQuantiles, detectionSteps, modeLifeOf } from '../forecast/mode-life.js'
import type { Posterior } from '../forecast/posterior-type.js'
import { yearlyRates } from '../forecast/track.js'
import { type Amounts, amountsOf, meanAmount } from './amounts.js'
import {
  CLEARED,
  HOURS,
  LOGNORMAL_DELAY,
  NO_DELAY,
  PATCHED,
  RECONDITIONED,
  RENEWED,
  STARTS,
  sliceShift,
  WEIBULL_DELAY,
  YEARS,
} from './codes.js'
import { calendarAhead, type UseAhead } from './use.js'

const clockCode: Record<Clock, number> = { hours: HOURS, years: YEARS, starts: STARTS }

/** Higher is stronger: a part that is in an event for several reasons takes the strongest. */
export const outcomeCode: Record<Outcome, number> = {
  patched: PATCHED,
  cleared: CLEARED,
  reconditioned: RECONDITIONED,
  renewed: RENEWED,
}

/** Rows of a list of lists: row i is from[i] … from[i + 1] − 1. */
type RowStarts = Int32Array

export interface ModeColumns {
  readonly count: number
  readonly part: Int32Array
  readonly clock: Uint8Array
  readonly shape: Float64Array
  /** Row of a mode's shape in `leastOnset`. */
  readonly leastOnsetRow: Int32Array
  /** Per shape: the least onset, in scales, of each of 256 equal slices of the uniform draw; exact, never above it. */
  readonly leastOnset: Float64Array
  /** Scale of the onset ηx on the mode's clock. */
  readonly onsetScale: Float64Array
  readonly logSd: Float64Array
  readonly delayKind: Uint8Array
  readonly delayClock: Uint8Array
  readonly delayLevel: Float64Array
  readonly delaySpread: Float64Array
  readonly hidden: Uint8Array
  readonly stops: Float64Array
  readonly derates: Float64Array
  readonly soot: Float64Array
  readonly outcome: Uint8Array
  readonly agesLess: Float64Array
  readonly delayFactor: Float64Array
  readonly repair: Int32Array
  readonly checkFrom: RowStarts
  /** Row in `looksPerLog` of each check at a defect, and at a failure unnoticed. */
  readonly checkLooks: Int32Array
  readonly checkLooksFailed: Int32Array
  /** Running hours between looks, or years where the boat's sets never run. */
  readonly checkEvery: Float64Array
  readonly linkFrom: RowStarts
  readonly linkPart: Int32Array
  readonly linkMode: Int32Array
  readonly linkChance: Float64Array
  readonly linkStartsDefect: Uint8Array
  readonly linkGuard: Int32Array
  readonly linkGuardEffect: Float64Array
  readonly wearFrom: RowStarts
  readonly wearMode: Int32Array
  readonly wearFactor: Float64Array
  readonly dangerFrom: RowStarts
  readonly dangerKind: Int32Array
}

export interface RepairColumns {
  readonly price: Amounts
  readonly hours: Float64Array
  readonly byOwner: Uint8Array
  readonly trips: Float64Array
  readonly workshop: Amounts
  readonly wrongPart: Float64Array
  readonly intrusion: Float64Array
  readonly lastLikelier: Float64Array
  readonly supplyFrom: RowStarts
  readonly supplyChance: Float64Array
  readonly supplyDays: Amounts
  readonly supplyPrice: Float64Array
  readonly supplyQuality: Float64Array
}

export interface PartColumns {
  readonly count: number
  /** Of the piece in place now; a renewal brings one as good as new. */
  readonly presentQuality: Float64Array
  readonly modeFrom: RowStarts
  readonly repair: Int32Array
  /** Access groups as bits, with all they include. */
  readonly accessLow: Int32Array
  readonly accessHigh: Int32Array
  readonly serviced: Uint8Array
  readonly serviceHours: Float64Array
  readonly serviceYears: Float64Array
  readonly serviceDiligence: Float64Array
  readonly serviceRenews: Uint8Array
  readonly servicePrice: Float64Array
  readonly serviceWork: Float64Array
  readonly serviceByOwner: Uint8Array
  readonly clearsFrom: RowStarts
  readonly clearsMode: Int32Array
  readonly broken: Int32Array
  /** Parts whose access shares a group with this one's, itself among them: where work on it may put a fault. */
  readonly nearFrom: RowStarts
  readonly nearPart: Int32Array
}

/** The compiled life model. */
export interface Program {
  readonly model: LifeModel
  readonly use: UseAhead
  readonly modes: ModeColumns
  readonly parts: PartColumns
  readonly repairs: RepairColumns
  readonly accessHours: Float64Array
  /** 1 for modes that another one may wear. */
  readonly isWorn: Uint8Array
  /** Rows of 256 equally likely checks: 1 / ln(1 − chance that one look finds it), so that ln u times it counts the looks that miss. */
  readonly looksPerLog: Float64Array
  readonly dangerKinds: readonly string[]
  readonly dangerChance: Float64Array
  readonly posterior: Posterior
  /** Starting states of used candidates, by candidate index. */
  readonly used: ReadonlyMap<number, Posterior>
  readonly alternatives: readonly Alternative[]
  /** 1 for modes of parts that a quoted job puts right. */
  readonly isQuoted: Uint8Array
  /** What a failure of each mode by itself costs about: mean pieces and hands, for the index of what is at risk. */
  readonly costAtRisk: Float64Array
}

/** Compiles a life model; its cross-references must have been checked. */
export function compile(
  model: LifeModel,
  posterior: Posterior,
  used: ReadonlyMap<number, Posterior> = new Map(),
): Program {
  const use = calendarAhead(model)
  const partIndex = new Map(model.parts.map((part, i) => [part.id, i]))
  const modeIndex = new Map<string, number>()
  for (const part of model.parts)
    for (const mode of part.modes) modeIndex.set(`${part.id} ${mode.id}`, modeIndex.size)
  const repairs: Repair[] = []
  const looks: Looks[] = []
  const dangerKinds = [...new Set(model.parts.flatMap((part) => part.modes.flatMap((mode) => mode.dangers)))]
  const modes = modeColumns({ model, use, partIndex, modeIndex, repairs, looks, dangerKinds })
  const parts = partColumns({ model, modeIndex, repairs })
  return {
    model,
    use,
    modes,
    parts,
    repairs: repairColumns(repairs),
    accessHours: Float64Array.from(model.access, (group) => group.hours),
    isWorn: Uint8Array.from({ length: modes.count }, (_, m) => (modes.wearMode.includes(m) ? 1 : 0)),
    looksPerLog: Float64Array.from(looks.flatMap(looksPerLog)),
    dangerKinds,
    dangerChance: Float64Array.from(dangerKinds, (kind) => model.dangers[kind] ?? 0),
    posterior,
    used,
    alternatives: model.alternatives,
    ...atRisk(model),
  }
}

/** Weights of the index that stands for what could be learnt of the states of the parts. */
function atRisk(model: LifeModel): Pick<Program, 'isQuoted' | 'costAtRisk'> {
  const quoted = new Set(
    model.alternatives.flatMap(({ now }) =>
      typeof now === 'object' && 'parts' in now && now.quote ? now.parts.map(({ part }) => part) : [],
    ),
  )
  const all = model.parts.flatMap((part) => part.modes.map((mode) => ({ part, mode })))
  const repairs = all.map(({ part, mode }) => mode.remedy.repair ?? part.repair)
  const prices = amountsOf(repairs.map((repair) => repair.price))
  const { paidPerHour, ownPerHour } = model.labour
  return {
    isQuoted: Uint8Array.from(all, ({ part }) => (quoted.has(part.id) ? 1 : 0)),
    costAtRisk: Float64Array.from(repairs, (repair, m) => {
      const rate = repair.by === 'owner' ? ownPerHour : paidPerHour
      return meanAmount(prices, m) + repair.hours * rate
    }),
  }
}

/** How a check looks: how good it is on average, and how often it is really made. */
interface Looks {
  readonly detection: number
  readonly diligence: number
}

function looksPerLog({ detection, diligence }: Looks): number[] {
  return [...detectionQuantiles(detection)].map((good) => 1 / Math.log1p(-good * diligence))
}

interface ModeSources {
  readonly model: LifeModel
  readonly use: UseAhead
  readonly partIndex: ReadonlyMap<string, number>
  readonly modeIndex: ReadonlyMap<string, number>
  /** Filled here. */
  readonly repairs: Repair[]
  /** Filled here: each once. */
  readonly looks: Looks[]
  readonly dangerKinds: readonly string[]
}

function modeColumns(sources: ModeSources): ModeColumns {
  const { model, use, partIndex, modeIndex, repairs, looks, dangerKinds } = sources
  const all = model.parts.flatMap((part, p) => part.modes.map((mode) => ({ part, p, mode })))
  const number = (read: (entry: (typeof all)[number]) => number) => Float64Array.from(all, read)
  const code = (read: (entry: (typeof all)[number]) => number) => Uint8Array.from(all, read)
  const rowOf = (detection: number, diligence: number): number => {
    const found = looks.findIndex((row) => row.detection === detection && row.diligence === diligence)
    return (found >= 0 ? found : looks.push({ detection, diligence }) - 1) * detectionSteps
  }
  const past = { rates: yearlyRates(model), lowLoadShare: 0 }
  const checkOf = new Map(model.checks.map((check) => [check.id, check]))
  const checks = all.map(({ mode }) => mode.checks.filter(({ check }) => checkOf.has(check)))
  const everyCheck = checks.flat().map((check) => ({ ...check, ...checkOf.get(check.check)! }))
  const links = all.map(({ mode }) => mode.links)
  const wear = all.map(({ mode }) => mode.wear)
  const dangers = all.map(({ mode }) => mode.dangers)
  return {
    count: all.length,
    part: Int32Array.from(all, ({ p }) => p),
    clock: code(({ mode }) => clockCode[mode.clock]),
    shape: number(({ mode }) => mode.shape),
    ...leastOnsets(all.map(({ mode }) => mode.shape)),
    onsetScale: number(({ mode }) => modeLifeOf(mode, past).onsetScale),
    logSd: number(({ mode }) => mode.logSd),
    delayKind: code(({ mode }) =>
      mode.delay === undefined ? NO_DELAY : 'median' in mode.delay ? LOGNORMAL_DELAY : WEIBULL_DELAY,
    ),
    delayClock: code(({ mode }) => (mode.delay === undefined ? YEARS : clockCode[mode.delay.clock])),
    delayLevel: number(({ mode: { delay } }) =>
      !delay ? 0 : 'median' in delay ? delay.median : delay.scale,
    ),
    delaySpread: number(({ mode: { delay } }) =>
      !delay ? 0 : 'median' in delay ? delay.logSd : delay.shape,
    ),
    hidden: code(({ mode }) => (mode.hidden ? 1 : 0)),
    stops: number(({ mode }) => mode.stops),
    derates: number(({ mode }) => mode.derates),
    soot: number(({ mode }) => (mode.clock === 'hours' ? mode.soot : 1)),
    // Nothing can be patched that gives no warning: it would fail again at once.
    outcome: code(({ mode: { remedy, delay } }) =>
      remedy.outcome === 'patched' && delay === undefined ? CLEARED : outcomeCode[remedy.outcome],
    ),
    agesLess: number(({ mode }) => mode.remedy.agesLess),
    delayFactor: number(({ mode }) => mode.remedy.delayFactor),
    repair: Int32Array.from(all, ({ part, mode }) => repairs.push(mode.remedy.repair ?? part.repair) - 1),
    checkFrom: rowStarts(checks),
    checkLooks: Int32Array.from(everyCheck, (check) => rowOf(check.detection, check.diligence)),
    checkLooksFailed: Int32Array.from(everyCheck, (check) =>
      rowOf(check.detectionFailed ?? check.detection, check.diligence),
    ),
    checkEvery: Float64Array.from(everyCheck, ({ everyHours }) =>
      use.hoursPerYear > 0 ? Math.min(everyHours, use.hoursPerYear) : 1,
    ),
    linkFrom: rowStarts(links),
    linkPart: Int32Array.from(links.flat(), (link) => partIndex.get(link.part)!),
    linkMode: Int32Array.from(links.flat(), (link) =>
      link.mode === undefined ? -1 : modeIndex.get(`${link.part} ${link.mode}`)!,
    ),
    linkChance: Float64Array.from(links.flat(), (link) => link.chance),
    linkStartsDefect: Uint8Array.from(links.flat(), (link) => (link.effect === 'starts-defect' ? 1 : 0)),
    linkGuard: Int32Array.from(links.flat(), (link) =>
      link.guard ? (partIndex.get(link.guard.part) ?? -1) : -1,
    ),
    linkGuardEffect: Float64Array.from(links.flat(), (link) => link.guard?.effectiveness ?? 0),
    wearFrom: rowStarts(wear),
    wearMode: Int32Array.from(wear.flat(), ({ part, mode }) => modeIndex.get(`${part} ${mode}`)!),
    wearFactor: Float64Array.from(wear.flat(), ({ factor }) => factor),
    dangerFrom: rowStarts(dangers),
    dangerKind: Int32Array.from(dangers.flat(), (kind) => dangerKinds.indexOf(kind)),
  }
}

/** Slices of a word in a row of `leastOnset`. */
const onsetSlices = 2 ** (32 - sliceShift)

/** No table of draws but a bound: draws that may fall before the horizon are worked out in full, so it has no bias. */
function leastOnsets(shapes: readonly number[]): Pick<ModeColumns, 'leastOnset' | 'leastOnsetRow'> {
  const distinct = [...new Set(shapes)]
  return {
    leastOnset: Float64Array.from(
      distinct.flatMap((shape) =>
        Array.from(
          { length: onsetSlices },
          (_, i) => (1 - 1e-9) * (-Math.log((i + 1) / onsetSlices)) ** (1 / shape),
        ),
      ),
    ),
    leastOnsetRow: Int32Array.from(shapes, (shape) => distinct.indexOf(shape) * onsetSlices),
  }
}

function partColumns(sources: {
  readonly model: LifeModel
  readonly modeIndex: ReadonlyMap<string, number>
  readonly repairs: Repair[]
}): PartColumns {
  const { model, modeIndex, repairs } = sources
  const { parts } = model
  const access = parts.map((part) => accessBits(model, part.access))
  const near = parts.map((part, p) => {
    const sharing = parts.flatMap((other, q) =>
      other.access.some((group) => part.access.includes(group)) ? [q] : [],
    )
    return sharing.length > 0 ? sharing : [p]
  })
  const service = (read: (service: NonNullable<LifePart['service']>) => number, without: number) =>
    Float64Array.from(parts, (part) => (part.service ? read(part.service) : without))
  const clears = parts.map(
    (part) => part.service?.clears.map((mode) => modeIndex.get(`${part.id} ${mode}`)!) ?? [],
  )
  return {
    count: parts.length,
    presentQuality: Float64Array.from(parts, ({ quality }) => quality),
    modeFrom: rowStarts(parts.map((part) => part.modes)),
    repair: Int32Array.from(parts, (part) => repairs.push(part.repair) - 1),
    accessLow: Int32Array.from(access, ([low]) => low),
    accessHigh: Int32Array.from(access, ([, high]) => high),
    serviced: Uint8Array.from(parts, ({ service: s }) => (s && (s.everyHours || s.everyYears) ? 1 : 0)),
    serviceHours: service((s) => s.everyHours ?? Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY),
    serviceYears: service((s) => s.everyYears ?? Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY),
    serviceDiligence: service((s) => s.diligence, 0),
    serviceRenews: Uint8Array.from(parts, (part) => (part.service?.renews ? 1 : 0)),
    servicePrice: service((s) => s.price, 0),
    serviceWork: service((s) => s.hours, 0),
    serviceByOwner: Uint8Array.from(parts, (part) => (part.service?.by === 'owner' ? 1 : 0)),
    clearsFrom: rowStarts(clears),
    clearsMode: Int32Array.from(clears.flat()),
    broken: Int32Array.from(parts, (part) =>
      part.broken === undefined ? -1 : modeIndex.get(`${part.id} ${part.broken}`)!,
    ),
    nearFrom: rowStarts(near),
    nearPart: Int32Array.from(near.flat()),
  }
}

const bitsPerWord = 30

/** The access groups named and all that they include, as two words of 30 bits. */
function accessBits(model: LifeModel, ids: readonly string[]): [low: number, high: number] {
  const reached = new Set<string>()
  const reach = (group: string): void => {
    if (reached.has(group)) return
    reached.add(group)
    for (const included of model.access.find(({ id }) => id === group)?.includes ?? []) reach(included)
  }
  ids.forEach(reach)
  let low = 0
  let high = 0
  model.access.forEach(({ id }, i) => {
    if (!reached.has(id)) return
    if (i < bitsPerWord) low |= 1 << i
    else high |= 1 << (i - bitsPerWord)
  })
  return [low, high]
}

function repairColumns(list: readonly Repair[]): RepairColumns {
  const supplies = list.map((repair) => repair.supply)
  return {
    price: amountsOf(list.map((repair) => repair.price)),
    hours: Float64Array.from(list, (repair) => repair.hours),
    byOwner: Uint8Array.from(list, (repair) => (repair.by === 'owner' ? 1 : 0)),
    trips: Float64Array.from(list, (repair) => repair.trips),
    workshop: amountsOf(list.map((repair) => repair.workshopDays)),
    wrongPart: Float64Array.from(list, (repair) => repair.wrongPartChance),
    intrusion: Float64Array.from(list, (repair) => repair.intrusionChance),
    lastLikelier: Float64Array.from(list, (repair) => repair.lastLikelierPerYear),
    supplyFrom: rowStarts(supplies),
    supplyChance: Float64Array.from(supplies.flat(), (option) => option.chance),
    supplyDays: amountsOf(supplies.flat().map((option) => option.days)),
    supplyPrice: Float64Array.from(supplies.flat(), (option) => option.priceFactor),
    supplyQuality: Float64Array.from(supplies.flat(), (option) => option.quality),
  }
}

export function rowStarts(rows: readonly (readonly unknown[])[]): RowStarts {
  const from = new Int32Array(rows.length + 1)
  rows.forEach((row, i) => {
    from[i + 1] = from[i]! + row.length
  })
  return from
}
