/**
 * A second, slow simulator of the life model, to hold the fast one to: it moves the clocks from one event to the next,
 * looks through everything that may happen for what happens first, and does that. Its meaning is
 * `docs/life-model.md`, whose sentences are given in round brackets; it shares no line with the simulator it checks.
 *
 * @module
 */

import type { Candidate, LifeModel } from '../../src/forecast/life-model.js'
import type { Posterior } from '../../src/forecast/posterior-type.js'
import { isWatched, look, mendFound, nextLook, nextService, serve } from './care.js'
import { fail, failByItself, fitOut } from './event.js'
import { type ModeNow, type PartNow, sum } from './life.js'
import { actNow } from './now.js'
import { candidateOf, replace, worth } from './policy.js'
import { type Chance, chanceOf } from './random.js'
import { type PastUse, startFrom } from './start.js'
import {
  advance,
  beginDefect,
  book,
  clockRate,
  closeOutage,
  countEvent,
  emptyTally,
  type Fault,
  isDown,
  isLayUp,
  modeRate,
  settleWear,
  type World,
} from './world.js'

/** What one history came to. Money is discounted except in `largestYearCost` and `first.cost`. */
export interface SlowHistory {
  readonly presentCost: number
  readonly nowCost: number
  readonly failureCost: number
  readonly plannedCost: number
  readonly upkeepCost: number
  readonly fuelCost: number
  readonly powerCost: number
  readonly intrusionCost: number
  readonly replacementCost: number
  readonly giveUpCost: number
  /** Taken in, so negative. */
  readonly resaleCost: number
  /** All that is paid in the dearest year from now, not discounted, without power and resale. */
  readonly largestYearCost: number
  readonly daysWithoutPower: number
  /** Without the same-day stops, which are counted apart (24). */
  readonly stops: number
  readonly sameDayStops: number
  readonly derates: number
  readonly plannedJobs: number
  readonly services: number
  readonly replaced: number
  readonly gaveUp: number
  /** Expected events, by danger. */
  readonly dangers: Readonly<Record<string, number>>
  /** By `part/mode`. */
  readonly failures: Readonly<Record<string, number>>
  readonly first: { readonly of: string; readonly atYears: number; readonly cost: number } | null
}

export interface MeanAndError {
  readonly mean: number
  readonly standardError: number
}

export interface SlowResult {
  readonly seed: number
  readonly histories: readonly SlowHistory[]
  /** Every number of a history; those by danger, by mode and by first failure as `dangers.…`, `failures.…`, `first.…`. */
  readonly means: Readonly<Record<string, MeanAndError>>
}

/** Plays histories of one alternative, each with a stream of chance of its own. */
export function simulateSlowly(
  model: LifeModel,
  posterior: Posterior | null,
  alternativeId: string,
  run: { readonly seed: number; readonly histories: number },
): SlowResult {
  const alternative = model.alternatives.find((one) => one.id === alternativeId)
  if (alternative === undefined)
    throw new Error(`alternative must be one of the model; found ${alternativeId}`)
  const histories: SlowHistory[] = []
  for (let number = 0; number < run.histories; number++) {
    const chance = chanceOf(run.seed, number)
    const start = startFrom(model, posterior, { chance, playPart })
    const world = newWorld(model, chance, { ...start, alternative })
    settleWear(world)
    actNow(world)
    play(world)
    histories.push(historyOf(world))
  }
  return { seed: run.seed, histories, means: meansOf(histories) }
}

function newWorld(
  model: LifeModel,
  chance: Chance,
  start: Pick<World, 'boatLog' | 'parts' | 'alternative'>,
): World {
  return {
    ...start,
    model,
    chance,
    t: 0,
    monthCount: Math.floor(model.startMonth),
    year: 0,
    candidate: null,
    fittedAt: 0,
    ageWhenFitted: 0,
    laterToCome: start.alternative.replaceLater !== undefined,
    outage: null,
    faults: [],
    events: 0,
    tally: emptyTally(),
    age: ageUsedSet,
  }
}

/** Something that may happen, and when it does if nothing else comes before. */
type Coming =
  | { readonly at: number; readonly what: 'month' | 'year' | 'replacement' | 'outage over' | 'nothing' }
  | { readonly at: number; readonly what: 'service'; readonly part: PartNow }
  | {
      readonly at: number
      readonly what: 'onset' | 'failure' | 'look' | 'piece there'
      readonly part: PartNow
      readonly mode: ModeNow
    }
  | { readonly at: number; readonly what: 'fault shows'; readonly part: PartNow; readonly fault: Fault }

/** From t = 0 to the horizon. */
function play(world: World): void {
  const { horizonYears } = world.model
  for (;;) {
    let next: Coming = { at: Infinity, what: 'nothing' }
    for (const coming of allComing(world)) if (coming.at < next.at) next = coming
    if (next.at >= horizonYears) break
    advance(world, Math.max(next.at, world.t))
    countEvent(world, 'part' in next ? next.part : null)
    happen(world, next)
  }
  advance(world, horizonYears)
  if (world.tally.gaveUp) return
  // (32) What the set fetches; then the outage that is still running is priced as far as the horizon.
  book(world, 'resale', -worth(world, { dead: isDown(world) }))
  closeOutage(world)
}

/** Everything that may happen next. Of two at one time the first in the list comes first. */
function allComing(world: World): Coming[] {
  const list: Coming[] = [
    { at: (world.monthCount + 1 - world.model.startMonth) / 12, what: 'month' },
    { at: world.year + 1, what: 'year' },
  ]
  if (world.tally.gaveUp) return list
  if (world.laterToCome) list.push({ at: world.alternative.replaceLater!.year, what: 'replacement' })
  for (const part of world.parts) {
    if (part.model.service !== undefined) list.push({ at: nextService(world, part), what: 'service', part })
    for (const mode of part.modes) listMode(world, list, part, mode)
  }
  const rate = clockRate(world, 'hours')
  for (const fault of world.faults) {
    list.push({ at: after(world, fault.hoursLeft, rate), what: 'fault shows', part: fault.part, fault })
  }
  // Last, so that a piece that comes as a rest ends is fitted before the set is up again.
  if (world.outage !== null) list.push({ at: world.outage.end, what: 'outage over' })
  return list
}

function listMode(world: World, list: Coming[], part: PartNow, mode: ModeNow): void {
  if (mode.found !== null) list.push({ at: mode.found.at, what: 'piece there', part, mode })
  if (mode.state === 'sound') {
    list.push({ at: after(world, mode.onset - mode.age, modeRate(world, mode)), what: 'onset', part, mode })
  }
  // (16) A set at rest does not fail by that defect.
  if (mode.state === 'defective' && mode.found?.rested !== true) {
    const rate = clockRate(world, mode.model.delay!.clock)
    list.push({ at: after(world, mode.delay - mode.since, rate), what: 'failure', part, mode })
  }
  if (isWatched(mode)) list.push({ at: nextLook(world, mode), what: 'look', part, mode })
}

/** When a clock that runs at this rate has run this far. */
function after(world: World, left: number, rate: number): number {
  return rate > 0 ? world.t + Math.max(0, left) / rate : Infinity
}

function happen(world: World, coming: Coming): void {
  switch (coming.what) {
    case 'nothing':
      return
    case 'month': {
      const wasLayUp = isLayUp(world)
      world.monthCount += 1
      if (wasLayUp && !isLayUp(world) && !world.tally.gaveUp) fitOut(world)
      return
    }
    case 'year':
      world.year += 1
      return
    case 'replacement':
      // (28)
      world.laterToCome = false
      replace(world, candidateOf(world, world.alternative.replaceLater!.with), {
        lead: isDown(world),
        stop: false,
      })
      settleWear(world)
      return
    case 'service':
      serve(world, coming.part)
      return
    case 'piece there':
      mendFound(world, coming.part, coming.mode)
      return
    case 'onset':
      // (7) Without a delay the onset is the failure.
      if (coming.mode.model.delay === undefined) failByItself(world, coming.part, coming.mode)
      else beginDefect(world, coming.mode)
      return
    case 'failure':
      failByItself(world, coming.part, coming.mode)
      return
    case 'look':
      look(world, coming.part, coming.mode)
      return
    case 'fault shows': {
      // (26)
      const { fault } = coming
      world.faults = world.faults.filter((one) => one !== fault)
      fail(world, { part: fault.part, mode: fault.mode, intruded: true })
      return
    }
    case 'outage over':
      closeOutage(world)
  }
}

/** (30, 38) Plays the parts of a used set from its first day to the day it is fitted, its use even. */
function ageUsedSet(world: World, candidate: Candidate): void {
  const { chance, boatLog, parts, model } = world
  const lowLoadShare = candidate.lowLoadShare ?? model.use.lowLoadShare
  playParts({ model, chance, boatLog, parts }, { ...candidate.used!, lowLoadShare })
}

/** (42) Plays one part from its fitting to now, its use even. */
function playPart(model: LifeModel, chance: Chance, part: PartNow, on: PastUse): void {
  playParts({ model, chance, boatLog: 0, parts: [part] }, on)
}

/** Plays parts, each by itself, as if nothing were around them: this care, these services, and every mend done at once. */
function playParts(of: Pick<World, 'model' | 'chance' | 'boatLog' | 'parts'>, on: PastUse): void {
  const { model, parts } = of
  const even = (total: number) => Array<number>(12).fill(total / on.years / 12)
  const ownModels = parts.map((part) => part.model)
  const past: LifeModel = {
    ...model,
    horizonYears: on.years,
    startMonth: 0,
    use: {
      ...model.use,
      hoursByMonth: even(Math.max(on.hours, 1e-6)),
      startsByMonth: even(on.starts),
      lowLoadShare: on.lowLoadShare,
    },
    parts: ownModels.map((part) => ({
      ...part,
      repair: atOnce(part.repair),
      modes: part.modes.map((mode) => ({
        ...mode,
        links: [],
        wear: [],
        remedy: { ...mode.remedy, repair: mode.remedy.repair && atOnce(mode.remedy.repair) },
      })),
    })),
    access: [],
  }
  setModels(parts, past.parts)
  play(newWorld(past, of.chance, { ...of, alternative: { id: 'past', now: 'leave' } }))
  setModels(parts, ownModels)
  for (const part of parts) for (const mode of part.modes) mode.found = null
}

function setModels(parts: readonly PartNow[], models: LifeModel['parts']): void {
  parts.forEach((part, k) => {
    part.model = models[k]!
    part.modes.forEach((mode, m) => {
      mode.model = part.model.modes[m]!
    })
  })
}

function atOnce(repair: LifeModel['parts'][number]['repair']): LifeModel['parts'][number]['repair'] {
  const supply = repair.supply.map((option) => ({ ...option, days: 0, quality: 1 }))
  return { ...repair, hours: 0, workshopDays: 0, intrusionChance: 0, lastLikelierPerYear: 0, supply }
}

function historyOf(world: World): SlowHistory {
  const { tally } = world
  const { costs } = tally
  return {
    presentCost: sum(Object.values(costs)),
    nowCost: costs.now,
    failureCost: costs.failure,
    plannedCost: costs.planned,
    upkeepCost: costs.upkeep,
    fuelCost: costs.fuel,
    powerCost: costs.power,
    intrusionCost: costs.intrusion,
    replacementCost: costs.replacement,
    giveUpCost: costs.giveUp,
    resaleCost: costs.resale,
    largestYearCost: Math.max(0, ...tally.byYear.map((cost) => cost ?? 0)),
    daysWithoutPower: tally.daysWithoutPower,
    stops: tally.stops - tally.sameDayStops,
    sameDayStops: tally.sameDayStops,
    derates: tally.derates,
    plannedJobs: tally.plannedJobs,
    services: tally.services,
    replaced: tally.replaced,
    gaveUp: tally.gaveUp ? 1 : 0,
    dangers: tally.dangers,
    failures: tally.failures,
    first: tally.first,
  }
}

/** Mean and standard error of every column; a danger or a mode that a history does not name counts nought there. */
function meansOf(histories: readonly SlowHistory[]): Record<string, MeanAndError> {
  const rows = histories.map((history) => {
    const row: Record<string, number> = {}
    for (const [name, value] of Object.entries(history)) if (typeof value === 'number') row[name] = value
    for (const [name, value] of Object.entries(history.dangers)) row[`dangers.${name}`] = value
    for (const [name, value] of Object.entries(history.failures)) row[`failures.${name}`] = value
    if (history.first !== null) row[`first.${history.first.of}`] = 1
    row.firstCost = history.first?.cost ?? 0
    return row
  })
  const names = new Set(rows.flatMap((row) => Object.keys(row)))
  const means: Record<string, MeanAndError> = {}
  for (const name of [...names].sort()) {
    const values = rows.map((row) => row[name] ?? 0)
    const mean = sum(values) / values.length
    const square = sum(values.map((value) => (value - mean) ** 2))
    means[name] = { mean, standardError: Math.sqrt(square / (values.length - 1) / values.length) }
  }
  return means
}
