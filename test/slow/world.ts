/**
 * The state of one history of the slow simulator, and the smallest steps it takes: lives begun, clocks moved, money booked.
 *
 * Numbers in round brackets are sentences of `docs/life-model.md`.
 *
 * @module
 */

import type { Alternative, Candidate, LifeModel } from '../../src/forecast/life-model.js'
import { drawDelay, drawOnset, hoursAYear, type ModeNow, type PartNow, sootFactor, sum } from './life.js'
import { type Chance, weibull } from './random.js'

export const daysAYear = 365.25
const mostEvents = 100_000

export interface Outage {
  readonly begin: number
  end: number
  days: number
  readonly stop: boolean
  /** Access groups opened by its jobs. */
  readonly groups: Set<string>
}

/** A fault that shows after some more running hours (26). */
export interface Fault {
  readonly part: PartNow
  readonly mode: ModeNow
  hoursLeft: number
}

export type Purse =
  | 'now'
  | 'failure'
  | 'planned'
  | 'upkeep'
  | 'fuel'
  | 'power'
  | 'intrusion'
  | 'replacement'
  | 'giveUp'
  | 'resale'

export interface Tally {
  readonly costs: Record<Purse, number>
  readonly byYear: number[]
  daysWithoutPower: number
  stops: number
  sameDayStops: number
  derates: number
  plannedJobs: number
  services: number
  replaced: number
  gaveUp: boolean
  readonly dangers: Record<string, number>
  readonly failures: Record<string, number>
  first: { of: string; atYears: number; cost: number } | null
}

export interface World {
  readonly model: LifeModel
  readonly alternative: Alternative
  readonly chance: Chance
  t: number
  /** Months begun since January of the first year, so that floor(startMonth + 12 t) never has to be rounded. */
  monthCount: number
  /** Whole years gone. */
  year: number
  parts: PartNow[]
  /** The boat’s part of ln κ; stays when the set is replaced. */
  readonly boatLog: number
  candidate: Candidate | null
  fittedAt: number
  ageWhenFitted: number
  /** Whether the replacement at a later year is still to come (28). */
  laterToCome: boolean
  outage: Outage | null
  /** Put in by work, or built in. */
  faults: Fault[]
  events: number
  readonly tally: Tally
  /** Ages the parts of a used set to the day it is fitted (30). */
  readonly age: (world: World, candidate: Candidate) => void
}

export function emptyTally(): Tally {
  return {
    costs: {
      now: 0,
      failure: 0,
      planned: 0,
      upkeep: 0,
      fuel: 0,
      power: 0,
      intrusion: 0,
      replacement: 0,
      giveUp: 0,
      resale: 0,
    },
    byYear: [],
    daysWithoutPower: 0,
    stops: 0,
    sameDayStops: 0,
    derates: 0,
    plannedJobs: 0,
    services: 0,
    replaced: 0,
    gaveUp: false,
    dangers: {},
    failures: {},
    first: null,
  }
}

/** (1) Month of the year now. */
export const monthNow = (world: World) => ((world.monthCount % 12) + 12) % 12

export const isDown = (world: World) => world.outage !== null

/** (2) */
export const isLayUp = (world: World) => world.model.use.hoursByMonth[monthNow(world)] === 0

/** (2, 3, 6) Growth of a clock per year, now. */
export function clockRate(world: World, clock: 'hours' | 'years' | 'starts'): number {
  if (clock === 'years') return 1
  if (isDown(world) || world.tally.gaveUp) return 0
  const { hoursByMonth, startsByMonth } = world.model.use
  return 12 * (clock === 'hours' ? hoursByMonth : startsByMonth)[monthNow(world)]!
}

export function modeRate(world: World, mode: ModeNow): number {
  const share = world.candidate?.lowLoadShare ?? world.model.use.lowLoadShare
  return clockRate(world, mode.model.clock) * sootFactor(mode.model, share)
}

/** A mode begins a new life (25); with `quality` only when something was fitted. */
export function beginLife(world: World, mode: ModeNow, quality = mode.quality): void {
  mode.quality = quality
  mode.age = 0
  mode.hours = 0
  mode.years = 0
  makeSound(world, mode)
}

/** The mode is sound at the age that it has. */
export function makeSound(world: World, mode: ModeNow): void {
  mode.state = 'sound'
  forgetDefect(mode)
  drawOnset(world.chance, mode)
}

/** (13) Looks go by running hours, or by the calendar where the year has none. */
export function lookedAtByCalendar(world: World): boolean {
  return hoursAYear(world.model) === 0
}

/** Age of a mode on the clock of its looks. */
export function lookAge(world: World, mode: ModeNow): number {
  return lookedAtByCalendar(world) ? mode.years : mode.hours
}

/** (10) The defect begins now. */
export function beginDefect(world: World, mode: ModeNow): void {
  mode.state = 'defective'
  forgetDefect(mode)
  mode.looked = lookAge(world, mode)
  mode.delay = drawDelay(world.chance, mode.model)
}

export function forgetDefect(mode: ModeNow): void {
  mode.since = 0
  mode.looks = new Map()
  mode.found = null
  mode.left = false
}

/** (15) The part has been renewed or served: both counters start again. */
export function restartService(part: PartNow): void {
  part.serviceHours = 0
  part.serviceYears = 0
}

/** (27) Sets every factor to what stands asleep now, and moves the onsets of sound modes accordingly. */
export function settleWear(world: World): void {
  const acting = world.parts
    .flatMap((part) => part.modes)
    .filter((mode) => mode.state === 'asleep')
    .flatMap((mode) => mode.model.wear)
  for (const part of world.parts) {
    for (const mode of part.modes) {
      let factor = 1
      for (const link of acting) {
        if (link.part === part.model.id && link.mode === mode.model.id) factor *= link.factor
      }
      if (factor === mode.wear) continue
      if (mode.state === 'sound') {
        const { shape } = mode.model
        const scale = mode.theta * mode.onsetScale * mode.quality
        const used = (mode.age / scale) ** shape
        const end = (mode.onset / scale) ** shape
        mode.onset = scale * (used + ((end - used) * mode.wear) / factor) ** (1 / shape)
      }
      mode.wear = factor
    }
  }
}

/** (26) A fault in one of the visible modes of the part, to show some running hours from now. */
export function putFaultIn(world: World, part: PartNow): void {
  const visible = part.modes.filter((mode) => !mode.model.hidden)
  if (visible.length === 0) return
  const mode = visible[Math.floor(world.chance.uniform() * visible.length)]!
  const { shape, scaleHours } = world.model.intrusion.onset
  world.faults.push({ part, mode, hoursLeft: weibull(world.chance, { shape, scale: scaleHours }) })
}

/** (32) Money at one moment, discounted; `atYears` differs from now only for the middle of an outage. */
export function book(world: World, purse: Purse, money: number, atYears = world.t): void {
  world.tally.costs[purse] += money * Math.exp(-world.model.realInterestPerYear * atYears)
  if (purse !== 'power' && purse !== 'resale') {
    world.tally.byYear[world.year] = (world.tally.byYear[world.year] ?? 0) + money
  }
}

interface Flow {
  readonly perYear: number
  readonly until: number
  /** Money that leaves the owner’s hand, unlike the price of a day without power. */
  readonly paid: boolean
}

/** Money that flows evenly from now until `until`: ∫ e^(−rt) dt of it. */
function bookFlow(world: World, purse: Purse, flow: Flow): void {
  if (flow.perYear === 0) return
  const r = world.model.realInterestPerYear
  const span = flow.until - world.t
  const weight = r === 0 ? span : (Math.exp(-r * world.t) - Math.exp(-r * flow.until)) / r
  world.tally.costs[purse] += flow.perYear * weight
  if (flow.paid) world.tally.byYear[world.year] = (world.tally.byYear[world.year] ?? 0) + flow.perYear * span
}

/** Moves every clock to `until`; nothing happens in between and no rate changes. */
export function advance(world: World, until: number): void {
  const { model, tally } = world
  const span = until - world.t
  const hours = clockRate(world, 'hours') * span
  if (tally.gaveUp) {
    // (31)
    const { costPerYear, daysWithoutPerYear } = model.giveUp
    const priceOfDay = lastSlope(model) * (sum(model.powerLoss.byMonth) / 12)
    bookFlow(world, 'giveUp', { perYear: costPerYear, until, paid: true })
    bookFlow(world, 'giveUp', { perYear: daysWithoutPerYear * priceOfDay, until, paid: false })
    tally.daysWithoutPower += daysWithoutPerYear * span
  } else {
    // (32)
    bookFlow(world, 'upkeep', { perYear: model.upkeepPerYear, until, paid: true })
    const perHour = world.candidate?.fuelPerHour ?? model.fuelPerHour
    bookFlow(world, 'fuel', { perYear: perHour * clockRate(world, 'hours'), until, paid: true })
    if (world.outage !== null) {
      // (23)
      const days = span * daysAYear * model.use.powerNeededByMonth[monthNow(world)]!
      world.outage.days += days
      tally.daysWithoutPower += days
    }
    for (const fault of world.faults) fault.hoursLeft -= hours
    for (const part of world.parts) {
      part.serviceHours += hours
      part.serviceYears += span
      for (const mode of part.modes) {
        mode.age += modeRate(world, mode) * span
        mode.hours += hours
        mode.years += span
        if (mode.state === 'defective' && mode.model.delay !== undefined) {
          mode.since += clockRate(world, mode.model.delay.clock) * span
        }
      }
    }
  }
  world.t = until
}

/** (23) The price of being without, from (0, 0). */
function curveOf(model: LifeModel): readonly { readonly days: number; readonly cost: number }[] {
  return [{ days: 0, cost: 0 }, ...model.powerLoss.curve]
}

/** Slope of the last segment that has a length. */
function lastSlope(model: LifeModel): number {
  const curve = curveOf(model)
  const last = curve[curve.length - 1]!
  const before = curve[curve.length - 2]!
  return last.days > before.days ? (last.cost - before.cost) / (last.days - before.days) : 0
}

/** (23) */
function outagePrice(model: LifeModel, days: number): number {
  if (days <= 0) return 0
  const curve = curveOf(model)
  for (let k = 1; k < curve.length; k++) {
    const low = curve[k - 1]!
    const high = curve[k]!
    if (days <= high.days && high.days > low.days) {
      return low.cost + ((high.cost - low.cost) * (days - low.days)) / (high.days - low.days)
    }
  }
  const last = curve[curve.length - 1]!
  return last.cost + (days - last.days) * lastSlope(model)
}

/** (22) The set is out from now on for this long; overlapping outages are one. A stop counts only if the set was up. */
export function takeOut(world: World, outage: { readonly years: number; readonly stop: boolean }): void {
  const end = world.t + outage.years
  if (world.outage !== null) {
    world.outage.end = Math.max(world.outage.end, end)
    return
  }
  if (outage.stop) world.tally.stops += 1
  if (outage.years > 0) {
    const { stop } = outage
    world.outage = { begin: world.t, end, days: 0, stop, groups: new Set() }
  } else if (outage.stop) {
    world.tally.sameDayStops += 1
  }
}

/** The outage is over, or is cut here by the horizon or by giving up: its price (23), and whether it was of one day (24). */
export function closeOutage(world: World, how: { readonly givenUp: boolean } = { givenUp: false }): void {
  const outage = world.outage
  if (outage === null) return
  const until = Math.min(outage.end, world.t)
  const begun = Math.floor(world.model.startMonth + 12 * outage.begin + 1e-9)
  const price = outagePrice(world.model, outage.days) * world.model.powerLoss.byMonth[begun % 12]!
  book(world, 'power', price, (outage.begin + until) / 2)
  if (outage.stop && !how.givenUp && (outage.end - outage.begin) * daysAYear < 1)
    world.tally.sameDayStops += 1
  world.outage = null
}

/** (33) */
export function countEvent(world: World, part: PartNow | null): void {
  world.events += 1
  if (world.events > mostEvents) {
    throw new Error(
      `cannot tell: more than ${mostEvents} events in one history, the last at ${part?.model.id}`,
    )
  }
}

/** (30) Whether jobs are free. */
export function underGuarantee(world: World): boolean {
  return world.candidate !== null && world.t < world.fittedAt + world.candidate.guaranteeYears
}
