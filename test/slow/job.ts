/**
 * One job of the slow simulator: what it costs, how long the set is out, and how its parts stand afterwards.
 *
 * @module
 */

import type { LifeModel, Outcome, Repair } from '../../src/forecast/life-model.js'
import { drawDelay, type ModeNow, type PartNow, type Supply } from './life.js'
import { doInstead, repairLimit } from './policy.js'
import { type Chance, drawAmount, happens, lognormal, meanAmount, pick } from './random.js'
import {
  beginLife,
  book,
  daysAYear,
  isDown,
  lookAge,
  makeSound,
  type Purse,
  putFaultIn,
  restartService,
  settleWear,
  takeOut,
  underGuarantee,
  type World,
} from './world.js'

/** A part in a job: by modes that failed or were found, or plainly damaged. */
export interface Member {
  readonly part: PartNow
  readonly modes: readonly ModeNow[]
  readonly plain: boolean
}

/** What is done to a part, and what doing it takes. */
export interface Mend {
  readonly part: PartNow
  /** The modes it is done to; `renewed` and `reconditioned` reach them all. */
  readonly modes: readonly ModeNow[]
  readonly outcome: Outcome
  readonly agesLess: number
  readonly repair: Repair
}

export interface Job {
  readonly unplanned: boolean
  readonly stops: boolean
  readonly purse: Purse
  /** Before the first day of use: the set is not wanted meanwhile (17). */
  readonly ashore?: boolean
  /** The piece that has come, where it was ordered before. */
  readonly ordered?: Supply | null
}

const strength: Record<Outcome, number> = { patched: 0, cleared: 1, reconditioned: 2, renewed: 3 }

/** (25) The strongest of the reasons for which a part is in the event. */
export function mendOf(member: Member): Mend {
  const { part } = member
  let best: Mend | null = member.plain
    ? { part, modes: part.modes, outcome: 'renewed', agesLess: 1, repair: part.model.repair }
    : null
  for (const mode of member.modes) {
    const { remedy, delay } = mode.model
    // Nothing can be patched that gives no warning: it would fail again at once.
    const outcome = remedy.outcome === 'patched' && delay === undefined ? 'cleared' : remedy.outcome
    if (best !== null && strength[outcome] <= strength[best.outcome]) continue
    const repair = remedy.repair ?? part.model.repair
    best = { part, modes: member.modes, outcome, agesLess: remedy.agesLess, repair }
  }
  return best!
}

/** Sentences 20 to 22 and 25 to 28. Gives the money of the job, not discounted. */
export function doJob(world: World, members: readonly Member[], job: Job): number {
  const mends = members.map(mendOf)
  const free = underGuarantee(world)
  const joins = job.unplanned && isDown(world)
  // (28)
  if (!free && estimate(world, mends) > repairLimit(world)) {
    doInstead(world, { stops: job.stops })
    settleWear(world)
    return 0
  }
  const { chance, model } = world
  const { labour } = model

  // (20, 21)
  const supplies = mends.map((mend) => {
    if (mend.outcome === 'cleared') return null
    return job.ordered === undefined ? drawSupply(chance, mend.repair, world.t) : job.ordered
  })
  let pieces = 0
  let waitDays = 0
  let workshopDays = 0
  mends.forEach((mend, k) => {
    const supply = supplies[k]
    if (mend.outcome !== 'cleared') {
      pieces += drawAmount(chance, mend.repair.price) * (supply?.priceFactor ?? 1)
    }
    if (job.unplanned) waitDays = Math.max(waitDays, supply?.days ?? 0)
    workshopDays = Math.max(workshopDays, drawAmount(chance, mend.repair.workshopDays))
  })
  const work = workOf(world, mends, joins)
  const overrun = lognormal(chance, labour.overrun)
  const money = free ? 0 : priceOf(world, { pieces, work, trips: joins ? 0 : tripsOf(mends) }) * overrun

  // (22)
  const waitYears = waitDays / daysAYear
  const workYears = (workshopDays + (work.owner + work.paid) / labour.hoursPerDay) / daysAYear
  if (joins) {
    const outage = world.outage!
    outage.end = Math.max(outage.end, world.t + waitYears) + workYears
  } else if (job.ashore !== true) {
    takeOut(world, { years: job.stops ? waitYears + workYears : workYears, stop: job.stops })
  }
  for (const group of work.opened) world.outage?.groups.add(group)

  mends.forEach((mend, k) => {
    applyMend(world, mend, { quality: supplies[k]?.quality ?? 1 })
  })
  settleWear(world)
  for (const mend of mends) intrude(world, [mend.part], mend.repair.intrusionChance)
  book(world, job.purse, money)
  return money
}

/** (28) What is known of the price before the job: means, the first supply option, no overrun. */
function estimate(world: World, mends: readonly Mend[]): number {
  let pieces = 0
  for (const { outcome, repair } of mends) {
    if (outcome !== 'cleared') pieces += meanAmount(repair.price) * (repair.supply[0]?.priceFactor ?? 1)
  }
  return priceOf(world, { pieces, work: workOf(world, mends, false), trips: tripsOf(mends) })
}

interface Work {
  readonly owner: number
  readonly paid: number
  readonly opened: ReadonlySet<string>
}

/** (20) Hours on the parts and hours of opening, by who works. */
export function workOf(world: World, mends: readonly Mend[], joins: boolean): Work {
  let owner = 0
  let paid = 0
  for (const { repair } of mends) {
    if (repair.by === 'owner') owner += repair.hours
    else paid += repair.hours
  }
  const opened = new Set<string>()
  for (const { part } of mends) for (const id of part.model.access) open(world.model, id, opened)
  let opening = 0
  for (const group of world.model.access) {
    const isOpen = joins && world.outage!.groups.has(group.id)
    if (opened.has(group.id) && !isOpen) opening += group.hours
  }
  if (mends.every((mend) => mend.repair.by === 'owner')) {
    owner += opening * world.model.labour.ownerAccessFactor
  } else {
    paid += opening
  }
  return { owner, paid, opened }
}

function open(model: LifeModel, id: string, opened: Set<string>): void {
  if (opened.has(id)) return
  opened.add(id)
  for (const inner of model.access.find((group) => group.id === id)?.includes ?? [])
    open(model, inner, opened)
}

export function tripsOf(mends: readonly Mend[]): number {
  return Math.max(...mends.map((mend) => mend.repair.trips))
}

/** (20, 30) Before overrun. */
export function priceOf(world: World, job: { pieces: number; work: Work; trips: number }): number {
  const { labour } = world.model
  const { pieces, work, trips } = job
  const hands = work.owner * labour.ownPerHour + work.paid * labour.paidPerHour
  const partPriceFactor = world.candidate?.partPriceFactor ?? 1
  const labourFactor = world.candidate?.labourFactor ?? 1
  return pieces * partPriceFactor + hands * labourFactor + trips * labour.perTrip
}

/** (21) */
export function drawSupply(chance: Chance, repair: Repair, t: number): Supply | null {
  const options = repair.supply
  if (options.length === 0) return null
  const last = options[options.length - 1]!
  const lastChance = Math.min(1, last.chance + repair.lastLikelierPerYear * t)
  let chosen = last
  let u = chance.uniform()
  for (const option of options.slice(0, -1)) {
    u -= (option.chance * (1 - lastChance)) / (1 - last.chance)
    if (u < 0) {
      chosen = option
      break
    }
  }
  let days = drawAmount(chance, chosen.days)
  if (happens(chance, repair.wrongPartChance)) days += drawAmount(chance, chosen.days)
  return { priceFactor: chosen.priceFactor, quality: chosen.quality, days }
}

/** (25) */
export function applyMend(world: World, mend: Mend, fitted: { readonly quality: number }): void {
  const { part, modes, outcome } = mend
  if (outcome === 'renewed') {
    for (const mode of part.modes) beginLife(world, mode, fitted.quality)
    restartService(part)
    part.renewals += 1
  } else if (outcome === 'reconditioned') {
    for (const mode of part.modes) recondition(world, mode, mend.agesLess)
  } else {
    for (const mode of modes) {
      if (outcome === 'cleared') beginLife(world, mode)
      else patch(world, mode)
    }
  }
}

/** Kijima’s second model: a share of all age is taken away. */
export function recondition(world: World, mode: ModeNow, agesLess: number): void {
  mode.age *= 1 - agesLess
  makeSound(world, mode)
}

/** Still the same defect, with some of its time given back. */
export function patch(world: World, mode: ModeNow): void {
  mode.state = 'defective'
  mode.looked = lookAge(world, mode)
  mode.since = 0
  mode.found = null
  mode.left = false
  mode.delay = drawDelay(world.chance, mode.model) * mode.model.remedy.delayFactor
}

/** (26) Work on these parts puts a fault into one of them, or of those behind the same access. */
export function intrude(world: World, worked: readonly PartNow[], intrusionChance: number): void {
  if (!happens(world.chance, intrusionChance * (1 - world.model.intrusion.testsCatch))) return
  const groups = new Set(worked.flatMap((part) => part.model.access))
  const near = world.parts.filter(
    (part) => worked.includes(part) || part.model.access.some((group) => groups.has(group)),
  )
  putFaultIn(world, pick(world.chance, near))
}
