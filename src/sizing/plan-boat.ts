/**
 * A boat's usual day, to be planned: from her list of loads and from when the set runs today.
 *
 * @module
 */

import type { CatalogueLoad, LoadRules, Occasion, Season } from '../catalogue/load-schema.js'
import { demandOf } from './demand.js'
import { powerPoints } from './demand-points.js'
import type { Habits, HouseRule, Load } from './load-type.js'
import { type Batch, loadLimits, type RunCosts, type RunDay, type Store, usualCosts } from './plan-day.js'
import type { Choices } from './plan-run.js'

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
  /** What a meter showed over what the list says: loads that cannot wait are multiplied by it. */
  readonly correction?: number
  readonly twoLegs: boolean
}

export interface BoatDay {
  readonly day: RunDay
  /** How it goes today: each thing when its occasion is. */
  readonly habit: Choices
  readonly assumed: readonly string[]
}

/** When each occasion is, by the clock; those within others fall in their middle. Practice. */
const clockOf: Readonly<Record<Occasion, { readonly from: number; readonly hours: number }>> = {
  day: { from: 8, hours: 10 },
  evening: { from: 20, hours: 3 },
  night: { from: 23, hours: 9 },
  cooking: { from: 18, hours: 2 },
  laundry: { from: 10, hours: 3 },
  charging: { from: 14, hours: 4 },
}
/** Occasions whose loads cannot wait: the set has to run as long as it does today. */
const must: readonly Occasion[] = ['day', 'cooking', 'evening', 'night']
const hoursOfDay = 24
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

/** The day as it could be planned, and as it goes today. */
export function boatDay(question: BoatDayQuestion): BoatDay {
  const { loads, habits, season, ratingKW, fuel, quiet } = question
  const waits = loads.filter(({ canWait, season: wanted }) => wanted === 'all' && waiting.has(canWait))
  const stays = loads.filter((load) => !waits.includes(load))
  const wanted = new Map(must.map((occasion) => [occasion, hoursFrom(occasion, habits)]))
  const demands = new Map(
    must.flatMap((occasion) => {
      if (wanted.get(occasion)!.length === 0) return []
      const demand = demandOf({
        ...question,
        loads: stays,
        rules: rulesAmong(question.rules, stays),
        occasion,
        season,
      })
      return [[occasion, { meanKW: demand.meanW / 1000, mostKW: powerPoints(demand.whole).kW.p95 }] as const]
    }),
  )
  const occasionAt = (hour: number) => must.findLast((occasion) => wanted.get(occasion)!.includes(hour))
  const factor = question.correction ?? 1
  const of = (hour: number) => {
    const occasion = occasionAt(hour)
    return occasion === undefined ? undefined : demands.get(occasion)
  }
  const hours = Array.from({ length: hoursOfDay }, (_, hour) => hour)
  const mostKW = loadLimits.most * ratingKW
  // a set that is wanted gives something, however little the list says
  const baseKW = hours.map((hour) =>
    of(hour) === undefined ? 0 : Math.max(leastBaseKW, factor * of(hour)!.meanKW),
  )
  const baseMostKW = hours.map((hour) =>
    Math.max(baseKW[hour]!, Math.min(mostKW, factor * (of(hour)?.mostKW ?? 0))),
  )
  const batches: Batch[] = []
  const stores: Store[] = []
  const habit: { batches: Record<string, number>; stores: Record<string, number[]> } = {
    batches: {},
    stores: {},
  }
  for (const load of waits) {
    const need = needOf(load, season)
    const own = occasionsOf(load)
    if (need.onHours <= 0 || own.length === 0) continue
    const usual = own.flatMap((occasion) => windowOf(occasion))
    if (load.canWait === 'to-another-hour') {
      const batch = batchOf(load, need, batches)
      batches.push(batch)
      habit.batches[load.id] = Math.min(hoursOfDay - batch.slots, usual[0]!)
    } else {
      stores.push(storeOf(load, need, question.groups.get(load.is ?? '')))
      habit.stores[load.id] = fillIn(need.runHours, usual)
    }
  }
  const day: RunDay = {
    slotHours: 1,
    baseKW,
    baseMostKW,
    batches,
    stores,
    set: { ratingKW, mostKW, lowKW: loadLimits.low * ratingKW },
    costs: runCosts(ratingKW, fuel),
    ...(quiet === undefined ? {} : { quiet: hours.map((hour) => isWithin(hour, quiet)) }),
  }
  return { day, habit, assumed: assumedOf(question, waits) }
}

const leastBaseKW = 0.1
const waiting: ReadonlySet<Load['canWait']> = new Set(['to-another-hour', 'in-pieces', 'turned-down'])

/** The hours of the day in which the set runs for an occasion today, from its beginning on. */
function hoursFrom(occasion: Occasion, { setHours }: Habits): number[] {
  return windowOf(occasion).slice(0, Math.round(setHours[occasion]))
}

function windowOf(occasion: Occasion): number[] {
  const { from, hours } = clockOf[occasion]
  return Array.from({ length: hours }, (_, at) => (from + at) % hoursOfDay)
}

/** The occasions on which a load is switched on, the longest first. */
function occasionsOf({ hours }: Load): Occasion[] {
  return (Object.entries(hours) as [Occasion, number][])
    .filter(([, each]) => each > 0)
    .sort(([, a], [, b]) => b - a)
    .map(([occasion]) => occasion)
}

interface Need {
  /** Switched on, and drawing at full power, in a day. [h] */
  readonly onHours: number
  readonly runHours: number
}

function needOf({ hours, duty }: Load, season: Season): Need {
  const onHours = Object.values(hours).reduce((sum, each) => sum + each, 0)
  const share = (duty[season].easy + duty[season].hard) / 2
  return { onHours, runHours: onHours * share }
}

/** One go of whole hours; a dryer comes after the washing. */
function batchOf(load: Load, { onHours, runHours }: Need, before: readonly Batch[]): Batch {
  const slots = Math.max(1, Math.round(onHours))
  const washing = isDryer(load) ? before.find(({ id }) => /wash/.test(id)) : undefined
  return {
    id: load.id,
    name: load.name,
    kW: ((load.watts / 1000) * runHours) / slots,
    mostKW: load.watts / 1000,
    slots,
    ...(washing === undefined ? {} : { after: washing.id }),
  }
}

function isDryer({ is = '', id }: Load): boolean {
  return is.startsWith('dryer') || /\bdryer\b/.test(id)
}

/** Hours of running as what is stored: hot water is drawn morning and evening, cold all day, the rest is wanted once a day. */
function storeOf(load: Load, { runHours }: Need, group: CatalogueLoad['group'] | undefined): Store {
  const drawn = (of: (hour: number) => number) => Array.from({ length: hoursOfDay }, (_, hour) => of(hour))
  const store = {
    id: load.id,
    name: load.name,
    kW: load.watts / 1000,
    perHour: 1,
    unit: 'h' as const,
    least: 0,
  }
  if (group === 'cold') {
    const holds = Math.max(coldHolds * runHours, runHours / hoursOfDay)
    return { ...store, holds, drawn: drawn(() => runHours / hoursOfDay) }
  }
  if (group === 'hot-water') {
    const each = runHours / hotWaterAt.length
    return {
      ...store,
      holds: runHours,
      drawn: drawn((hour) => (hotWaterAt.includes(hour) ? each : 0)),
    }
  }
  return { ...store, holds: runHours, begins: 0, ends: runHours, drawn: drawn(() => 0) }
}

/** Filled in its usual hours, one after another, for as long as it needs. */
function fillIn(runHours: number, usual: readonly number[]): number[] {
  const share: number[] = Array(hoursOfDay).fill(0)
  let left = runHours
  for (const hour of usual) {
    share[hour] = Math.min(1, Math.max(share[hour]!, left))
    left -= 1
    if (left <= 0) break
  }
  return share
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

function assumedOf({ correction, season, habits }: BoatDayQuestion, waits: readonly Load[]): string[] {
  const wanted = must.filter((occasion) => Math.round(habits.setHours[occasion]) > 0)
  return [
    `a ${season} day; the set has to run for ${wanted.length === 0 ? 'nothing that cannot wait' : wanted.map((occasion) => `${Math.round(habits.setHours[occasion])} h of ${occasion}`).join(', ')}`,
    `room is left for what loads that cannot wait draw one hour in twenty`,
    ...(waits.length === 0 ? ['nothing on the list can wait'] : []),
    ...(correction === undefined
      ? []
      : [
          `loads that cannot wait are taken ${correction.toFixed(2)} times as the list says, after the meter`,
        ]),
  ]
}
