/**
 * One history under way: the state of every mode and part, the clocks, the outage, the money so far.
 *
 * @module
 */

import type { Alternative } from '../forecast/life-model.js'
import { type Draws, makeDraws, restartDraws } from './draws.js'
import { HOURS, type Program, YEARS } from './program.js'
import { clear, makeQueue, push, type Queue } from './queue.js'
import { timeOfTotal, totalAt } from './use.js'

export const SOUND = 0
export const DEFECTIVE = 1
export const FAILED_UNNOTICED = 2
/** A visible failure, from its event to its mend (which is the same moment), or standing since before now. */
export const FAILED = 3

/** Quantities kept of each history, in this order; money is discounted unless it says otherwise. */
export const kept = [
  'cost',
  'now',
  'failures',
  'planned',
  'upkeep',
  'fuel',
  'power',
  'intrusion',
  'replacement',
  'giveUp',
  'resale',
  /** Overrun factor of the quote: what one unit on the quote costs. */
  'quoteFactor',
  'ownHours',
  'paidHours',
  'trips',
  /** Not discounted. [days] */
  'daysWithout',
  'stops',
  'sameDayStops',
  'dangers',
  /** Not discounted: the dearest of the years from now. */
  'largestYear',
  /** First replacement; −1 if none. [years] */
  'replacedAt',
  'replacements',
  /** First visible failure: mode (−1 none), when, and what its event cost (not discounted). */
  'firstMode',
  'firstTime',
  'firstCost',
  /** What could be learnt of the present set: ln κ, and the cost put at risk by the states drawn of the job's parts and of the others. */
  'kappaLog',
  'riskOfJob',
  'riskOfOthers',
] as const
export type Kept = (typeof kept)[number]
export const K = Object.fromEntries(kept.map((name, i) => [name, i])) as Record<Kept, number>

/** Kinds of event, in the high bits of an event's code; the low 16 bits are a mode or a part. */
export const event = {
  onset: 0,
  fails: 1,
  foundDefective: 2,
  foundFailed: 3,
  service: 4,
  intrusion: 5,
  pieceComes: 6,
  replaceLater: 7,
  shows: 8,
  fittingOut: 9,
} as const
const clockShift = 24
const kindShift = 16

/** What a set that starts from tables drew: of each mode its entry, the chance of no onset before the horizon, and the word that says when it comes. */
export interface StartDraws {
  /** Number of the history that drew it, −1 for none. */
  history: number
  node: number
  readonly entry: Int32Array
  readonly quiet: Float32Array
  readonly onsetWord: Uint32Array
  /** Of each part: which of the times since its last service. */
  readonly serviceIndex: Int32Array
}

export interface History {
  readonly program: Program
  readonly queue: Queue
  readonly draws: Draws
  alternative: Alternative
  horizon: number
  interest: number
  /** Set number: 0 the present one. */
  set: number
  /** Candidate fitted, −1 the present set. */
  candidate: number
  boatLog: number
  kappa: number
  partPriceFactor: number
  labourFactor: number
  lowLoadShare: number
  /** Money for a running hour of the set in place. */
  fuelPrice: number
  guaranteeUntil: number
  /** Time at which the set in place had no age; for resale. [years] */
  setBorn: number
  gaveUpAt: number
  /** θ·ηx·quality per unit of the running clock. */
  readonly scale: Float64Array
  /** The same without quality. */
  readonly scaleAsNew: Float64Array
  /** Clock position at which the mode had no (virtual) age. */
  readonly birth: Float64Array
  /** Effective running hours, and time, of the last renewal: the phase of checks. */
  readonly birthHours: Float64Array
  readonly birthTime: Float64Array
  readonly onsetAt: Float64Array
  readonly presentStart: StartDraws
  readonly usedStart: StartDraws
  /** Position on the delay's clock at which a defective mode fails. */
  readonly failsAt: Float64Array
  readonly state: Uint8Array
  readonly life: Int32Array
  readonly stamp: Int32Array
  readonly patches: Int32Array
  readonly wear: Float64Array
  readonly jobs: Int32Array
  /** Services that fell due, and the word that says whether the next is done. */
  readonly services: Int32Array
  readonly serviceWord: Uint32Array
  readonly serviceStamp: Int32Array
  readonly servicedHours: Float64Array
  readonly servicedTime: Float64Array
  /** Last moment asked for, and the calendar's running hours then. */
  askedAt: number
  hoursThen: number
  lostHours: number
  lostStarts: number
  /** How often the clocks have stood still. */
  pauses: number
  downFrom: number
  downUntil: number
  downPrice: number
  downDays: number
  openLow: number
  openHigh: number
  /** Whether a stop began the outage under way, and whether it is still short of a day. */
  downIsStop: boolean
  downIsSameDay: boolean
  intrusions: number
  readonly sums: Float64Array
  readonly years: Float64Array
  /** Counted over the histories of one alternative. */
  failuresOfMode: Float64Array
  failuresOfDanger: Float64Array
}

export function makeHistory(program: Program, seed: number): History {
  const modes = program.modes.count
  const parts = program.parts.count
  const { model } = program
  return {
    program,
    queue: makeQueue(model.horizonYears),
    draws: makeDraws(seed),
    alternative: model.alternatives[0]!,
    horizon: model.horizonYears,
    interest: model.realInterestPerYear,
    set: 0,
    candidate: -1,
    boatLog: 0,
    kappa: 1,
    partPriceFactor: 1,
    labourFactor: 1,
    lowLoadShare: 0,
    fuelPrice: 0,
    guaranteeUntil: -1,
    setBorn: 0,
    gaveUpAt: -1,
    scale: new Float64Array(modes),
    scaleAsNew: new Float64Array(modes),
    birth: new Float64Array(modes),
    birthHours: new Float64Array(modes),
    birthTime: new Float64Array(modes),
    onsetAt: new Float64Array(modes),
    presentStart: makeStartDraws(modes, parts),
    usedStart: makeStartDraws(modes, parts),
    failsAt: new Float64Array(modes),
    state: new Uint8Array(modes),
    life: new Int32Array(modes),
    stamp: new Int32Array(modes),
    patches: new Int32Array(modes),
    wear: new Float64Array(modes),
    jobs: new Int32Array(parts),
    services: new Int32Array(parts),
    serviceWord: new Uint32Array(parts),
    serviceStamp: new Int32Array(parts),
    servicedHours: new Float64Array(parts),
    servicedTime: new Float64Array(parts),
    askedAt: -1,
    hoursThen: 0,
    lostHours: 0,
    lostStarts: 0,
    pauses: 0,
    downFrom: -1,
    downUntil: -1,
    downPrice: 0,
    downDays: 0,
    openLow: 0,
    openHigh: 0,
    downIsStop: false,
    downIsSameDay: false,
    intrusions: 0,
    sums: new Float64Array(kept.length),
    years: new Float64Array(Math.ceil(model.horizonYears) + 1),
    failuresOfMode: new Float64Array(modes),
    failuresOfDanger: new Float64Array(program.dangerKinds.length),
  }
}

function makeStartDraws(modes: number, parts: number): StartDraws {
  return {
    history: -1,
    node: 0,
    entry: new Int32Array(modes),
    quiet: new Float32Array(modes),
    onsetWord: new Uint32Array(modes),
    serviceIndex: new Int32Array(parts),
  }
}

/** Puts a history back to its beginning, before any draw. */
export function resetHistory(h: History, alternative: Alternative, number: number): void {
  const { model } = h.program
  clear(h.queue)
  restartDraws(h.draws, number)
  h.alternative = alternative
  h.set = 0
  h.candidate = -1
  h.partPriceFactor = 1
  h.labourFactor = 1
  h.lowLoadShare = model.use.lowLoadShare
  h.fuelPrice = model.fuelPerHour
  h.guaranteeUntil = -1
  h.setBorn = -model.set.ageYears
  h.gaveUpAt = -1
  h.life.fill(0)
  h.stamp.fill(0)
  h.patches.fill(0)
  h.wear.fill(1)
  h.jobs.fill(0)
  h.services.fill(0)
  h.serviceStamp.fill(0)
  h.lostHours = 0
  h.lostStarts = 0
  h.pauses = 0
  h.downFrom = -1
  h.downUntil = -1
  h.downPrice = 0
  h.downDays = 0
  h.intrusions = 0
  h.sums.fill(0)
  h.years.fill(0)
  h.sums[K.replacedAt] = -1
  h.sums[K.firstMode] = -1
}

/** Where a clock of the set stands at `t`; hours and starts stand still in an outage. */
export function position(h: History, clock: number, t: number): number {
  if (clock === YEARS) return t
  const at = Math.max(t, h.downUntil)
  if (clock === HOURS) return hoursAt(h, at) - h.lostHours
  const { use } = h.program
  return totalAt(use, use.starts, at) - h.lostStarts
}

/** Running hours of the calendar at `t`; the last answer is kept, because one event asks for the same moment often. */
function hoursAt(h: History, t: number): number {
  if (t !== h.askedAt) {
    const { use } = h.program
    h.askedAt = t
    h.hoursThen = totalAt(use, use.hours, t)
  }
  return h.hoursThen
}

/** When a clock reaches a position, if no more outages come. */
export function timeAt(h: History, clock: number, due: number): number {
  const { use } = h.program
  if (clock === YEARS) return due
  return clock === HOURS
    ? timeOfTotal(use, use.hours, use.hourMonths, due + h.lostHours)
    : timeOfTotal(use, use.starts, use.startMonths, due + h.lostStarts)
}

/** Whether a clock reaches `due` only at the horizon or past it, for certain; cheaper than asking when. */
export function isBeyond(h: History, clock: number, due: number): boolean {
  const { use } = h.program
  if (clock === YEARS) return due >= h.horizon
  const end = use.horizonMonth
  return clock === HOURS ? due + h.lostHours > use.hours[end]! : due + h.lostStarts > use.starts[end]!
}

/** Kind, index and clock of an event in one number. */
export function codeOf(kind: number, index: number, clock: number): number {
  return (clock << clockShift) | (kind << kindShift) | index
}

/** Puts an event into the queue, unless it falls on the horizon or past it. Loose numbers: this is the innermost loop. */
export function schedule(h: History, code: number, stamp: number, due: number, notBefore: number): void {
  const clock = code >> clockShift
  if (isBeyond(h, clock, due)) return
  scheduleAt(h, code, stamp, due, Math.max(timeAt(h, clock, due), notBefore))
}

/** The same where the time at which it falls due is known already. */
export function scheduleAt(h: History, code: number, stamp: number, due: number, t: number): void {
  if (t < h.horizon) push(h.queue, t, code, stamp, due, h.pauses)
}

export function kindOf(code: number): number {
  return (code >> kindShift) & 0xff
}

export function indexOf(code: number): number {
  return code & 0xffff
}

export function clockOf(code: number): number {
  return code >> clockShift
}

export function discount(h: History, t: number): number {
  return h.interest === 0 ? 1 : Math.exp(-h.interest * t)
}

/** Books money that is paid at `t` under a heading. */
export function pay(h: History, heading: number, t: number, amount: number): void {
  h.sums[heading]! += amount * discount(h, t)
  h.years[Math.floor(t)]! += amount
}
