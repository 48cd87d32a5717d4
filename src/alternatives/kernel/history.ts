/**
 * The history under way: the state of every mode and part, the clocks, the outage, the money so far.
 *
 * @module
 */

import { HOURS, YEARS } from '../codes'
import * as K from '../kept-at'
import { beginDraws } from './draws'
import * as model from './model'
import * as modes from './modes'
import * as parts from './parts'
import { clearQueue, push } from './queue'
import * as use from './use'

export const SOUND: u8 = 0
export const DEFECTIVE: u8 = 1
export const FAILED_UNNOTICED: u8 = 2
/** A visible failure, from its event to its mend (which is the same moment), or standing since before now. */
export const FAILED: u8 = 3

/** Kinds of event, in the high bits of an event's code; the low 16 bits are a mode or a part. */
export const ONSET = 0
export const FAILS = 1
export const FOUND_DEFECTIVE = 2
export const FOUND_FAILED = 3
export const SERVICE = 4
export const INTRUSION = 5
export const PIECE_COMES = 6
export const REPLACE_LATER = 7
export const SHOWS = 8
export const FITTING_OUT = 9
const clockShift = 24
const kindShift = 16

const keptCount = K.derates + 1

export class History {
  /** Seed and number of the history in one. */
  key: i64 = 0
  alternative: i32 = 0
  /** Set number: 0 the present one. */
  set: i32 = 0
  /** Candidate fitted, −1 the present set. */
  candidate: i32 = -1
  boatLog: f64 = 0
  kappa: f64 = 1
  partPriceFactor: f64 = 1
  labourFactor: f64 = 1
  lowLoadShare: f64 = 0
  /** Money for a running hour of the set in place. */
  fuelPrice: f64 = 0
  guaranteeUntil: f64 = -1
  /** Time at which the set in place had no age; for resale. [years] */
  setBorn: f64 = 0
  gaveUpAt: f64 = -1
  /** Last moment asked for, and the calendar's running hours then. */
  askedAt: f64 = -1
  hoursThen: f64 = 0
  lostHours: f64 = 0
  lostStarts: f64 = 0
  /** How often the clocks have stood still. */
  pauses: i32 = 0
  downFrom: f64 = -1
  downUntil: f64 = -1
  downPrice: f64 = 0
  downDays: f64 = 0
  openLow: i32 = 0
  openHigh: i32 = 0
  /** Whether a stop began the outage under way, and whether it is still short of a day. */
  downIsStop: bool = false
  downIsSameDay: bool = false

  /** Of each mode: θ·ηx·quality per unit of the running clock. */
  scale: StaticArray<f64> = new StaticArray<f64>(modes.count)
  /** The same without quality. */
  scaleAsNew: StaticArray<f64> = new StaticArray<f64>(modes.count)
  /** Clock position at which the mode had no (virtual) age. */
  birth: StaticArray<f64> = new StaticArray<f64>(modes.count)
  /** Running hours, and time, of the last renewal: the phase of checks. */
  birthHours: StaticArray<f64> = new StaticArray<f64>(modes.count)
  birthTime: StaticArray<f64> = new StaticArray<f64>(modes.count)
  onsetAt: StaticArray<f64> = new StaticArray<f64>(modes.count)
  /** Position on the delay's clock at which a defective mode fails. */
  failsAt: StaticArray<f64> = new StaticArray<f64>(modes.count)
  state: StaticArray<u8> = new StaticArray<u8>(modes.count)
  life: StaticArray<i32> = new StaticArray<i32>(modes.count)
  stamp: StaticArray<i32> = new StaticArray<i32>(modes.count)
  patches: StaticArray<i32> = new StaticArray<i32>(modes.count)
  /** The supply that was ordered for it, and when. */
  orderedAs: StaticArray<i32> = new StaticArray<i32>(modes.count)
  orderedAt: StaticArray<f64> = new StaticArray<f64>(modes.count)
  wear: StaticArray<f64> = new StaticArray<f64>(modes.count)

  /** Of each part: jobs done; services that fell due, and the word that says whether the next is done. */
  jobs: StaticArray<i32> = new StaticArray<i32>(parts.count)
  /** Supplies drawn for it: an order that is not given and the job that follows are two. */
  supplies: StaticArray<i32> = new StaticArray<i32>(parts.count)
  services: StaticArray<i32> = new StaticArray<i32>(parts.count)
  serviceWord: StaticArray<u32> = new StaticArray<u32>(parts.count)
  serviceStamp: StaticArray<i32> = new StaticArray<i32>(parts.count)
  servicedHours: StaticArray<f64> = new StaticArray<f64>(parts.count)
  servicedTime: StaticArray<f64> = new StaticArray<f64>(parts.count)

  sums: StaticArray<f64> = new StaticArray<f64>(keptCount)
  years: StaticArray<f64> = new StaticArray<f64>(<i32>Math.ceil(model.horizonYears) + 1)
}

export let h = changetype<History>(0)

/** Counted over the histories of each alternative. */
export let failuresOfMode = changetype<StaticArray<f64>>(0)
export let failuresOfDanger = changetype<StaticArray<f64>>(0)

/** Makes room where there is not enough: what is taken is never given back. */
export function openHistory(alternatives: i32): void {
  const years = <i32>Math.ceil(model.horizonYears) + 1
  if (changetype<usize>(h) === 0 || h.years.length < years) h = new History()
  failuresOfMode = atLeast(failuresOfMode, alternatives * modes.count)
  failuresOfDanger = atLeast(failuresOfDanger, alternatives * model.dangerCount)
}

function atLeast(room: StaticArray<f64>, count: i32): StaticArray<f64> {
  return changetype<usize>(room) !== 0 && room.length >= count ? room : new StaticArray<f64>(count)
}

/** Puts a history back to its beginning, before any draw. */
export function resetHistory(seed: u32, number: u32, alternative: i32): void {
  clearQueue()
  beginDraws(seed, number)
  h.key = ((<i64>seed) << 32) | <i64>number
  h.alternative = alternative
  h.set = 0
  h.candidate = -1
  h.partPriceFactor = 1
  h.labourFactor = 1
  h.lowLoadShare = model.lowLoadShare
  h.fuelPrice = model.fuelPerHour
  h.guaranteeUntil = -1
  h.setBorn = -model.setAgeYears
  h.gaveUpAt = -1
  h.askedAt = -1
  h.lostHours = 0
  h.lostStarts = 0
  h.pauses = 0
  h.downFrom = -1
  h.downUntil = -1
  h.downPrice = 0
  h.downDays = 0
  h.downIsStop = false
  h.downIsSameDay = false
  empty(h.life, modes.count)
  empty(h.stamp, modes.count)
  empty(h.patches, modes.count)
  for (let m = 0; m < modes.count; m++) h.wear[m] = 1
  empty(h.jobs, parts.count)
  empty(h.supplies, parts.count)
  empty(h.services, parts.count)
  empty(h.serviceStamp, parts.count)
  empty(h.sums, keptCount)
  empty(h.years, <i32>Math.ceil(model.horizonYears) + 1)
  h.sums[K.replacedAt] = -1
  h.sums[K.firstMode] = -1
}

export function empty<T>(values: T, count: i32): void {
  memory.fill(changetype<usize>(values), 0, <usize>count * sizeof<valueof<T>>())
}

/** Where a clock of the set stands at `t`; hours and starts stand still in an outage. */
export function position(clock: i32, t: f64): f64 {
  if (clock === YEARS) return t
  const at = max(t, h.downUntil)
  return clock === HOURS ? hoursAt(at) - h.lostHours : use.totalAt(use.starts, at) - h.lostStarts
}

/** Running hours of the calendar at `t`; the last answer is kept, because one event asks for the same moment often. */
function hoursAt(t: f64): f64 {
  if (t !== h.askedAt) {
    h.askedAt = t
    h.hoursThen = use.totalAt(use.hours, t)
  }
  return h.hoursThen
}

/** When a clock reaches a position, if no more outages come. */
export function timeAt(clock: i32, due: f64): f64 {
  if (clock === YEARS) return due
  return clock === HOURS ? use.timeOfHours(due + h.lostHours) : use.timeOfStarts(due + h.lostStarts)
}

/** Whether a clock reaches `due` only at the horizon or past it, for certain; cheaper than asking when. */
export function isBeyond(clock: i32, due: f64): bool {
  if (clock === YEARS) return due >= model.horizonYears
  return clock === HOURS ? due + h.lostHours > use.hoursToHorizon : due + h.lostStarts > use.startsToHorizon
}

/** Kind, index and clock of an event in one number. */
export function codeOf(kind: i32, index: i32, clock: i32): i32 {
  return (clock << clockShift) | (kind << kindShift) | index
}

export function kindOf(code: i32): i32 {
  return (code >> kindShift) & 0xff
}

export function indexOf(code: i32): i32 {
  return code & 0xffff
}

export function clockOf(code: i32): i32 {
  return code >> clockShift
}

/** Puts an event into the queue, unless it falls on the horizon or past it. */
export function schedule(code: i32, stamp: i32, due: f64, notBefore: f64): void {
  const clock = clockOf(code)
  if (isBeyond(clock, due)) return
  scheduleAt(code, stamp, due, max(timeAt(clock, due), notBefore))
}

/** The same where the time at which it falls due is known already. */
export function scheduleAt(code: i32, stamp: i32, due: f64, t: f64): void {
  if (t < model.horizonYears) push(t, code, stamp, due, h.pauses)
}

export function discount(t: f64): f64 {
  return model.interest === 0 ? 1 : Math.exp(-model.interest * t)
}

/** Books money that is paid at `t` under a heading. */
export function pay(heading: i32, t: f64, amount: f64): void {
  h.sums[heading] += amount * discount(t)
  h.years[<i32>t] += amount
}
