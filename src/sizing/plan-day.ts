/**
 * A day to be planned: what must be carried, what may wait, and what running the set costs.
 *
 * @module
 */

/** Something done in one go, once in the day: a wash, a dive bottle. */
export interface Batch {
  readonly id: string
  readonly name?: string
  /** Mean while it runs, and the most it takes meanwhile; left out: the same. */
  readonly kW: number
  readonly mostKW?: number
  /** Whole slots that it runs, without a break. */
  readonly slots: number
  /** First slot in which it may begin, and the last in which it may still run; left out: the day's. */
  readonly first?: number
  readonly last?: number
  /** Part of its slots that it runs on the mean of all days, where slots have parts; left out: all. */
  readonly share?: number
  /** Begins at least one slot after this batch began. */
  readonly after?: string
}

/** Something that fills a store, and may stop and go on: hot water, a water tank, a holding plate. */
export interface Store {
  readonly id: string
  readonly name?: string
  readonly kW: number
  /** What an hour of running puts in, in the store's own unit. */
  readonly perHour: number
  readonly unit: 'kWh' | 'l' | 'h'
  /** What it holds, what it may not fall below, what is in it as the day begins and must be as it ends; these two left out: the same, and open. */
  readonly holds: number
  readonly least: number
  readonly begins?: number
  readonly ends?: number
  /** What is drawn from it, slot by slot. */
  readonly drawn: readonly number[]
  /** Runs whole slots only; otherwise it cuts out by itself within a slot. */
  readonly wholeSlots?: boolean
}

/** What must be put into a store in a day, and what may be at the most; an open day ends with no less than it began with. */
export function needOf({ drawn, begins, ends, least, holds }: Store): {
  readonly least: number
  readonly most?: number
} {
  const taken = drawn.reduce((sum, each) => sum + each, 0)
  if (begins === undefined) return { least: taken }
  return { least: Math.max(0, Math.max(least, ends ?? least) - begins + taken), most: holds - begins + taken }
}

/** A battery that can carry what is wanted while the set is silent. */
export interface PlanBattery {
  /** What may be used of it. [kWh] */
  readonly usableKWh: number
  readonly beginsKWh: number
  /** Charger, on its alternating-current side, and inverter, likewise. [kW] */
  readonly chargeKW: number
  readonly inverterKW: number
  /** From the charger's input into the battery, and from the battery to the inverter's output: 0 to 1. */
  readonly chargeEfficiency: number
  readonly inverterEfficiency: number
  /** Wear of a kWh taken out, in the unit of the costs. */
  readonly wearPerKWh: number
}

/** What running costs, in litres of fuel or what is worth as much. */
export interface RunCosts {
  readonly perHour: number
  readonly perKWh: number
  readonly perStart: number
  /** On top, for an hour under the low limit. */
  readonly perLowHour: number
}

export interface RunDay {
  /** [h] */
  readonly slotHours: number
  /** Carried whenever it is wanted. [kW] */
  readonly baseKW: readonly number[]
  /** The most of it that has to be left room for, slot by slot; left out: the mean. [kW] */
  readonly baseMostKW?: readonly number[]
  /** The set may run for part of a slot: days that stand for the mean of many. */
  readonly partSlots?: boolean
  /** Then: the part of each slot that the base needs; left out: the whole of it. */
  readonly baseShare?: readonly number[]
  readonly batches: readonly Batch[]
  readonly stores: readonly Store[]
  /** The set may be loaded up to `mostKW`; below `lowKW` an hour is a low one. */
  readonly set: { readonly ratingKW: number; readonly mostKW: number; readonly lowKW: number }
  readonly costs: RunCosts
  /** Slots in which the set is to be silent. */
  readonly quiet?: readonly boolean[]
  readonly battery?: PlanBattery
  /** From the sun, on the alternating-current side; what nothing takes is lost. [kW] */
  readonly solarKW?: readonly number[]
  /** What the shore can give, and what a kWh of it costs in the unit of the costs. [kW] */
  readonly shore?: { readonly mostKW: readonly number[]; readonly perKWh: number }
}

/** Whether anything but the set can carry what is wanted. */
export function standsIn({ battery, solarKW, shore }: RunDay): boolean {
  return battery !== undefined || solarKW !== undefined || shore !== undefined
}

/** Something wrong with a day, in the form of all problems. */
export interface DayProblem {
  readonly code: string
  readonly path: string
  readonly found: string
  readonly allowed: string
}

/** Fuel and other costs of a set that is new or healthy: 0.06 l/h for each kW of rating and 0.27 l for a kWh. A start is counted as 0.2 l, an hour under 30 % load as 0.25 l for a set of 8 kW. Source: practice, compiler's judgement. */
export const usualCosts = {
  litresPerHourPerRatedKW: 0.06,
  litresPerKWh: 0.27,
  litresPerStart: 0.2,
  litresPerLowHour: 0.25,
}
/** A set is planned up to nine tenths of its rating; under three tenths the load is low. Source: practice; the low limit as in NFPA 110 8.4.2, quoted. */
export const loadLimits = { most: 0.9, low: 0.3 }

/** Everything in a day that cannot be, before any plan is tried. */
export function dayProblems(day: RunDay): DayProblem[] {
  const { baseKW, set, quiet } = day
  const slots = baseKW.length
  const problems: DayProblem[] = []
  const say = (code: string, path: string, found: string, allowed: string) =>
    problems.push({ code, path, found, allowed })
  if (slots < 1 || slots > 96) say('out-of-range', 'baseKW', `${slots} slots`, '1 to 96 slots')
  const lengths = {
    baseMostKW: day.baseMostKW,
    baseShare: day.baseShare,
    quiet,
    solarKW: day.solarKW,
    'shore.mostKW': day.shore?.mostKW,
  }
  for (const [path, list] of Object.entries(lengths)) {
    if (list !== undefined && list.length !== slots)
      say('wrong-length', path, `${list.length} slots`, `${slots} slots`)
  }
  const ids = [...day.batches, ...day.stores].map(({ id }) => id)
  for (const id of new Set(ids.filter((one, at) => ids.indexOf(one) < at))) {
    say('named-twice', 'batches', id, 'each id once')
  }
  for (const batch of day.batches) batchProblems(batch, day, say)
  for (const store of day.stores) storeProblems(store, day, say)
  const canStandIn = standsIn(day)
  baseKW.forEach((kW, slot) => {
    if (!(kW >= 0)) say('out-of-range', `baseKW.${slot}`, `${kW} kW`, '0 kW or more')
    if (canStandIn) return
    if (kW > set.mostKW + 1e-9)
      say('too-much', `baseKW.${slot}`, `${kW} kW`, `at most ${set.mostKW} kW, nine tenths of the set`)
    if (kW > 0 && quiet?.[slot])
      say('quiet', `baseKW.${slot}`, `${kW} kW wanted`, 'nothing while the set is to be silent')
  })
  return problems
}

type Say = (code: string, path: string, found: string, allowed: string) => void

function batchProblems(batch: Batch, day: RunDay, say: Say): void {
  const path = `batches.${batch.id}`
  const slots = day.baseKW.length
  if (!Number.isInteger(batch.slots) || batch.slots < 1)
    say('out-of-range', `${path}.slots`, `${batch.slots}`, 'a whole number from 1')
  if ((batch.mostKW ?? batch.kW) > day.set.mostKW + 1e-9 && day.battery === undefined) {
    say(
      'too-much',
      `${path}.kW`,
      `${batch.mostKW ?? batch.kW} kW`,
      `at most ${day.set.mostKW} kW, nine tenths of the set`,
    )
  }
  if (batch.after !== undefined && !day.batches.some(({ id }) => id === batch.after)) {
    say('unknown', `${path}.after`, batch.after, 'the id of another batch')
  }
  const { first = 0, last = slots - 1 } = batch
  if (first < 0 || last >= slots || last - first + 1 < batch.slots) {
    say('too-short', `${path}`, `slots ${first} to ${last}`, `${batch.slots} slots within the day's ${slots}`)
  }
}

function storeProblems(store: Store, day: RunDay, say: Say): void {
  const path = `stores.${store.id}`
  const { holds, least, begins, ends, drawn } = store
  if (drawn.length !== day.baseKW.length)
    say('wrong-length', `${path}.drawn`, `${drawn.length} slots`, `${day.baseKW.length} slots`)
  if (!(store.perHour > 0)) say('out-of-range', `${path}.perHour`, `${store.perHour}`, 'more than 0')
  for (const [field, value] of Object.entries({ begins, ends })) {
    if (value === undefined) continue
    if (value < least - 1e-9 || value > holds + 1e-9)
      say('out-of-range', `${path}.${field}`, `${value}`, `${least} to ${holds}`)
  }
  if (store.kW > day.set.mostKW + 1e-9 && day.battery === undefined) {
    say('too-much', `${path}.kW`, `${store.kW} kW`, `at most ${day.set.mostKW} kW, nine tenths of the set`)
  }
}
