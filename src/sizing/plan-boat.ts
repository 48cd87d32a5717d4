/**
 * A boat's usual day, to be planned: from her list of loads and from when the set runs today.
 *
 * @module
 */

import {
  type CatalogueLoad,
  type LoadRules,
  type Occasion,
  occasions,
  type Season,
} from '../catalogue/load-schema.js'
import { demandOf, switchedOn } from './demand.js'
import { activeOf } from './demand-grid.js'
import { powerPoints, shareBelow } from './demand-points.js'
import type { Habits, HouseRule, Load } from './load-type.js'
import type { RecordedDay } from './measured-summary.js'
import { windowOf } from './occasion-clock.js'
import { type Batch, loadLimits, type RunCosts, type RunDay, type Store, usualCosts } from './plan-day.js'
import type { DayTotals } from './plan-run.js'

export interface BoatDayQuestion {
  readonly loads: readonly Load[]
  readonly rules: readonly HouseRule[]
  readonly loadRules: LoadRules
  /** Groups of the catalogue's loads by their ids. */
  readonly groups: ReadonlyMap<string, CatalogueLoad['group']>
  readonly habits: Habits
  readonly season: Season
  readonly ratingKW: number
  /** Litres an hour for each kW of rating, and for each kWh. */
  readonly fuel: { readonly litresPerHourPerRatedKW: number; readonly litresPerKWh: number }
  /** Hours from and until which the set is silent. [h of the day] */
  readonly quiet?: { readonly from: number; readonly until: number }
  /** As the log tells them. */
  readonly startsPerHour?: number
  /** The day as a meter recorded it, in the place of what the list says of today and of what cannot wait. */
  readonly recorded?: RecordedDay
  readonly twoLegs: boolean
}

export interface BoatDay {
  readonly day: RunDay
  readonly habit: HabitDay
  readonly assumed: readonly string[]
}

/** How the day goes today: the set runs for its occasions, and whatever is switched on then runs. */
export interface HabitDay extends DayTotals {
  /** Mean over each slot, by the clock. [kW] */
  readonly kWBySlot: readonly number[]
}

/** Occasions that the clock holds to, if something that cannot wait is wanted on them. */
const held: readonly Occasion[] = ['day', 'cooking', 'evening', 'night']
/** What cannot wait is a reason to start the set where it draws so much of its rating; less rides along. Practice. */
const reasonShare = 0.05
const slotHours = 1
const slots = 24 / slotHours
/** Of what a cold store needs in a day, what it holds at once: so it is filled at least twice. Practice. */
const coldHolds = 0.6
/** Hours at which hot water is drawn. Practice. */
const hotWaterAt = [7, 19]
/** A start, and an hour at low load, are counted as so many litres for a set of 8 kW, and in proportion. Practice. */
const countedAtKW = 8

/** Costs of a set of a rating, in litres of fuel. */
export function runCosts(ratingKW: number, fuel: BoatDayQuestion['fuel'] = usualCosts): RunCosts {
  return {
    perHour: fuel.litresPerHourPerRatedKW * ratingKW,
    perKWh: fuel.litresPerKWh,
    perStart: (usualCosts.litresPerStart * ratingKW) / countedAtKW,
    perLowHour: (usualCosts.litresPerLowHour * ratingKW) / countedAtKW,
  }
}

/** The day as it could be planned, and as it goes today. The energy of what can wait is what it takes today. */
export function boatDay(question: BoatDayQuestion): BoatDay {
  const { loads, season, ratingKW, fuel, quiet } = question
  const waits = loads.filter(({ canWait, season: wanted }) => wanted === 'all' && waiting.has(canWait))
  const stays = loads.filter((load) => !waits.includes(load))
  const mostKW = loadLimits.most * ratingKW
  const { baseKW, baseMostKW, baseShare, reasons } =
    question.recorded === undefined
      ? listedBase(question, stays, mostKW)
      : recordedBase(question.recorded, { question, waits, mostKW })
  const batches: Batch[] = []
  const stores: Store[] = []
  for (const load of waits) {
    const runHours = runHoursOf(load, question)
    if (runHours < leastHours / 4) continue
    if (load.canWait === 'to-another-hour' && onHoursOf(load) <= longestBatch)
      batches.push(batchOf(load, { runHours, duty: dutyOf(load, season) }, batches))
    else stores.push(storeOf(load, runHours, question.groups.get(load.is ?? '')))
  }
  const day: RunDay = {
    slotHours,
    baseKW,
    baseMostKW,
    baseShare,
    partSlots: true,
    batches,
    stores,
    set: { ratingKW, mostKW, lowKW: loadLimits.low * ratingKW },
    costs: runCosts(ratingKW, fuel),
    ...(quiet === undefined ? {} : { quiet: baseKW.map((_, slot) => isWithin(slot * slotHours, quiet)) }),
  }
  return { day, habit: habitDay(question, day), assumed: assumedOf(question, waits, reasons) }
}

/** What cannot wait, slot by slot. */
interface Base {
  readonly baseKW: number[]
  readonly baseMostKW: number[]
  readonly baseShare: number[]
  /** Why the set runs by the clock, in words. */
  readonly reasons: readonly string[]
}

/** What the list says cannot wait, on the occasions that the clock holds to. */
function listedBase(question: BoatDayQuestion, stays: readonly Load[], mostKW: number): Base {
  const { habits, season, ratingKW } = question
  const base: Base & { readonly reasons: string[] } = { ...emptyBase(), reasons: [] }
  for (const occasion of held) {
    const setHours = habits.setHours[occasion]
    if (setHours < leastHours || stays.length === 0) continue
    const rules = rulesAmong(question.rules, stays)
    const demand = demandOf({ ...question, loads: stays, rules, occasion, season })
    const meanKW = demand.meanW / 1000
    if (meanKW < reasonShare * ratingKW) continue
    base.reasons.push(occasion)
    const mostHere = Math.min(mostKW, powerPoints(demand.whole).kW.p95)
    let left = setHours
    for (const slot of windowOf(occasion, habits)) {
      const share = Math.min(1, left / slotHours)
      base.baseShare[slot] = share
      base.baseKW[slot] = Math.min(mostKW, meanKW) * share
      base.baseMostKW[slot] = Math.max(base.baseKW[slot]!, mostHere)
      left -= slotHours
      if (left < leastHours) break
    }
  }
  return base
}

/** Hours that the set runs in on at least so many of the recorded days are held by the clock. Practice. */
const heldOnDays = 0.5

/** What was recorded, less what the loads that can wait take in the same hours today. */
function recordedBase(
  { onByHour, meanByHour, p95ByHour }: RecordedDay,
  of: { readonly question: BoatDayQuestion; readonly waits: readonly Load[]; readonly mostKW: number },
): Base {
  const { question, waits, mostKW } = of
  const { kWBySlot: waitingKW } = todayOf({
    ...question,
    loads: waits,
    rules: rulesAmong(question.rules, waits),
  })
  const base = emptyBase()
  const hours: number[] = []
  onByHour.forEach((share, hour) => {
    if (share < heldOnDays) return
    const kW = Math.min(mostKW, meanByHour[hour]!) * share - waitingKW[hour]!
    if (kW < reasonShare * question.ratingKW * share) return
    hours.push(hour)
    base.baseShare[hour] = share
    base.baseKW[hour] = kW
    base.baseMostKW[hour] = Math.max(kW, Math.min(mostKW, p95ByHour[hour]! - waitingKW[hour]!))
  })
  return { ...base, reasons: hours.map((hour) => `${hour}:00`) }
}

function emptyBase(): Omit<Base, 'reasons'> {
  const none = (): number[] => Array(slots).fill(0)
  return { baseKW: none(), baseMostKW: none(), baseShare: none() }
}

/** What is switched on for longer is taken to bear a break. [h] Practice. */
const longestBatch = 3
/** Less of a day than this is no part of it. [h] */
const leastHours = 0.1
const waiting: ReadonlySet<Load['canWait']> = new Set(['to-another-hour', 'in-pieces', 'turned-down'])

/** Hours at full power that a load runs today: of each occasion with the set running, its share switched on and its duty. */
function runHoursOf(load: Load, { habits, loadRules, season }: BoatDayQuestion): number {
  const duty = dutyOf(load, season)
  return occasions.reduce(
    (sum, occasion) => sum + habits.setHours[occasion] * switchedOn(load, loadRules, occasion) * duty,
    0,
  )
}

/** Share of the time on while switched on, on the mean of easy and hard weather. */
function dutyOf({ duty }: Load, season: Season): number {
  return (duty[season].easy + duty[season].hard) / 2
}

/** Today, with what it costs: as the list tells, or as recorded. */
function habitDay(question: BoatDayQuestion, { set, costs }: RunDay): HabitDay {
  const { recorded, startsPerHour } = question
  const today = recorded === undefined ? todayOf(question, set.lowKW) : asRecorded(recorded)
  const { hours, lowHours, kWh } = today
  const starts = recorded?.starts ?? (startsPerHour === undefined ? today.occasions : startsPerHour * hours)
  const fuelLitres = costs.perHour * hours + costs.perKWh * kWh
  return {
    hours,
    starts,
    lowHours,
    lowLoadShare: hours > 0 ? lowHours / hours : 0,
    kWh,
    fuelLitres,
    cost: fuelLitres + costs.perStart * starts + costs.perLowHour * lowHours,
    kWBySlot: today.kWBySlot.map((kW) => Math.min(set.mostKW, kW)),
  }
}

interface Today {
  readonly hours: number
  readonly lowHours: number
  readonly kWh: number
  readonly occasions: number
  readonly kWBySlot: readonly number[]
}

/** Every occasion with its hours and its demand. */
function todayOf(question: Omit<BoatDayQuestion, 'recorded'>, lowKW = 0): Today {
  const { habits, season } = question
  const kWBySlot: number[] = Array(slots).fill(0)
  const sums = { hours: 0, lowHours: 0, kWh: 0, occasions: 0 }
  for (const occasion of occasions) {
    const hours = habits.setHours[occasion]
    if (hours < leastHours) continue
    const demand = demandOf({ ...question, occasion, season })
    const meanKW = demand.meanW / 1000
    sums.hours += hours
    sums.kWh += hours * meanKW
    sums.lowHours += hours * shareBelow(activeOf(demand.whole), lowKW)
    sums.occasions += 1
    let left = hours
    for (const slot of windowOf(occasion, habits)) {
      const share = Math.min(1, left / slotHours)
      kWBySlot[slot]! += share * meanKW
      left -= slotHours
      if (left <= 0) break
    }
  }
  return { ...sums, kWBySlot }
}

function asRecorded({ hours, lowLoadShare, kWh, onByHour, meanByHour }: RecordedDay): Today {
  const kWBySlot = onByHour.map((share, hour) => share * meanByHour[hour]!)
  return { hours, lowHours: lowLoadShare * hours, kWh, occasions: 0, kWBySlot }
}

/** One go of whole slots, its energy spread over all days; a dryer comes after the washing. */
function batchOf(
  load: Load,
  { runHours, duty }: { readonly runHours: number; readonly duty: number },
  before: readonly Batch[],
): Batch {
  const length = Math.max(1, Math.min(slots, Math.round(onHoursOf(load) / slotHours)))
  const washing = isDryer(load) ? before.find(({ id }) => /wash/.test(id)) : undefined
  const mostKW = load.watts / 1000
  return {
    id: load.id,
    name: load.name,
    kW: Math.min(mostKW, (mostKW * runHours) / (length * slotHours)),
    mostKW,
    slots: length,
    share: Math.min(1, runHours / duty / (length * slotHours)),
    ...(washing === undefined ? {} : { after: washing.id }),
  }
}

function onHoursOf({ hours }: Load): number {
  return Object.values(hours).reduce((sum, each) => sum + each, 0)
}

function isDryer({ is = '', id }: Load): boolean {
  return is.startsWith('dryer') || /\bdryer\b/.test(id)
}

/** Hours of running as what is stored: hot water is drawn morning and evening, cold all day, the rest is wanted once a day. */
function storeOf(load: Load, runHours: number, group: CatalogueLoad['group'] | undefined): Store {
  const drawn = (of: (hour: number) => number) =>
    Array.from({ length: slots }, (_, slot) => of(slot * slotHours))
  const store = {
    id: load.id,
    name: load.name,
    kW: load.watts / 1000,
    perHour: 1,
    unit: 'h' as const,
    least: 0,
  }
  if (group === 'cold') return { ...store, holds: coldHolds * runHours, drawn: drawn(() => runHours / slots) }
  if (group === 'hot-water') {
    const each = runHours / hotWaterAt.length
    return { ...store, holds: runHours, drawn: drawn((hour) => (hotWaterAt.includes(hour) ? each : 0)) }
  }
  return { ...store, holds: runHours, begins: 0, ends: runHours, drawn: drawn(() => 0) }
}

function rulesAmong(rules: readonly HouseRule[], loads: readonly Load[]): HouseRule[] {
  const ids = new Set(loads.map(({ id }) => id))
  return rules.flatMap((rule) => {
    const left = rule.loads.filter((id) => ids.has(id))
    return left.length < 2 ? [] : [{ ...rule, loads: left }]
  })
}

function isWithin(hour: number, { from, until }: { readonly from: number; readonly until: number }): boolean {
  return from <= until ? hour >= from && hour < until : hour >= from || hour < until
}

function assumedOf(
  { season, recorded }: BoatDayQuestion,
  waits: readonly Load[],
  reasons: readonly string[],
): string[] {
  return [
    `a ${season} day; ${reasons.length === 0 ? 'nothing that cannot wait is reason enough to start the set' : `what cannot wait has the set run by the clock: ${reasons.join(', ')}`}`,
    'room is left for what loads that cannot wait draw one hour in twenty; what is not done every day counts with its share of the days',
    ...(waits.length === 0 ? ['nothing on the list can wait'] : []),
    ...(recorded === undefined
      ? []
      : [
          'today is as recorded; what cannot wait is what was drawn beyond the loads that can, in the hours in which the set runs on most days',
        ]),
  ]
}
