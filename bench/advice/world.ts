/**
 * One boat's life, event by event, under whatever is decided at each job: the clocks go from one event to the next, and
 * what happens first is done. It shares no line with the product's simulator, allows lives that are not Weibull, and stops
 * at every job to be told whether to mend or to replace. Numbers in round brackets are sentences of
 * `docs/life-model.md`.
 *
 * Left out, and refused by `plainModes`: months that differ, services, hidden modes, wear, starts, soot, used sets, and
 * remedies other than renewal. Giving up is not among the choices.
 *
 * @module
 */

import { exponential, happens, type Name, poisson, uniform } from './chance.js'
import {
  bookAt,
  closeOutage,
  costOf,
  daysAYear,
  emptyPurse,
  type Life,
  type Outage,
  takeOut,
} from './ledger.js'
import { dateOf, type NotedLook, noteRenewal, type SetLog } from './log.js'
import {
  detectionOf,
  drawn,
  hoursPerYear,
  lifeOf,
  type Nature,
  type PlainMode,
  plainModes,
  scaleLogs,
} from './nature.js'
import { drawnSupply, estimateOf, type Supply, tripsOf, workOf } from './work.js'

/** A job that is about to be done. */
export interface Question {
  /** Years from now. */
  readonly at: number
  /** Parts in it by number; the first is where it began. */
  readonly parts: readonly number[]
  /** Modes that failed, or the one that was found. */
  readonly modes: readonly number[]
  /** Found before it failed. */
  readonly planned: boolean
  /** Whether the set is down with it. */
  readonly isDown: boolean
  /** What it should come to, before overrun (28). */
  readonly estimate: number
  readonly log: SetLog
  /** On the meter. */
  readonly hours: number
  /** All that the life has cost so far, discounted; no argument, but what was expected is held against what came. */
  readonly spent: number
  /** Looks of the present life of a mode that were noted, the latest last. */
  readonly looks: (mode: number) => NotedLook[]
  readonly modesOf: readonly PlainMode[]
}

export type Answer = 'mend' | 'replace'

export interface HowLived {
  /** Which of the boat's lives. */
  readonly life: number
  /** A set is replaced, failed or not, as soon as it is so old, or has run so long, or at a date. */
  readonly replaceAt?: { readonly ageYears?: number; readonly hours?: number; readonly year?: number }
}

const SOUND = 0
const DEFECTIVE = 1
const rounding = 1e-6
const mostEvents = 100_000
/** What draws are for, within a life of a part. */
const FOR = {
  onset: 1,
  delay: 2,
  quality: 3,
  seen: 4,
  made: 5,
  rest: 6,
  link: 7,
  supply: 8,
  price: 9,
  workshop: 10,
  overrun: 11,
  intrusion: 12,
  fault: 13,
  set: 14,
} as const

interface ModeNow {
  readonly plain: PlainMode
  readonly number: number
  /** On its own clock since its last renewal. */
  age: number
  onset: number
  since: number
  delay: number
  state: number
  /** Running hours of the part up to which its looks have been followed. */
  looked: number
  found: {
    readonly at: number
    readonly supply: Supply
    readonly rested: boolean
  } | null
  left: boolean
  /** When and by what the defect was seen. */
  seen: { readonly at: number; readonly check: string } | null
}

interface PartNow {
  /** Lives begun in this set before the present one. */
  life: number
  hours: number
  quality: number
  readonly modes: ModeNow[]
}

interface Fault {
  readonly mode: number
  hoursLeft: number
}

export interface World {
  readonly nature: Nature
  readonly how: HowLived
  readonly plain: readonly PlainMode[]
  t: number
  set: number
  fittedAt: number
  hours: number
  guaranteeUntil: number
  parts: PartNow[]
  modes: ModeNow[]
  scales: Float64Array
  faults: Fault[]
  outage: Outage | null
  log: SetLog
  events: number
  readonly purse: Life
}

/** Plays one life from the set's first day to the horizon; money and days count from now on. */
export function* live(nature: Nature, how: HowLived): Generator<Question, Life, Answer> {
  const world = newWorld(nature, how)
  const { horizonYears } = nature.model
  for (;;) {
    const next = nextOf(world)
    if (next.at >= horizonYears) break
    advance(world, Math.max(next.at, world.t))
    if (++world.events > mostEvents) throw new Error('cannot tell: more than 100000 events in one life')
    const steps = next.happen()
    if (steps !== undefined) yield* steps
  }
  advance(world, horizonYears)
  bookAt(world, 'resale', -worth(world))
  closeOutage(world)
  return world.purse
}

function newWorld(nature: Nature, how: HowLived): World {
  const plain = plainModes(nature.model)
  const world: World = {
    nature,
    how,
    plain,
    t: -nature.ageYears,
    set: -1,
    fittedAt: 0,
    hours: 0,
    guaranteeUntil: Number.NEGATIVE_INFINITY,
    parts: [],
    modes: [],
    scales: new Float64Array(0),
    faults: [],
    outage: null,
    log: { set: 0, fittedAt: 0, parts: [], meter: [] },
    events: 0,
    purse: emptyPurse(),
  }
  fitSet(world)
  return world
}

/** A set with every part new. */
function fitSet(world: World): void {
  const { nature, plain, t } = world
  world.set += 1
  world.fittedAt = t
  world.hours = 0
  world.faults = []
  world.scales = scaleLogs(nature, plain, { set: world.set, life: world.how.life }).map(Math.exp)
  world.modes = plain.map((mode, number) => ({
    plain: mode,
    number,
    age: 0,
    onset: 0,
    since: 0,
    delay: 0,
    state: SOUND,
    looked: 0,
    found: null,
    left: false,
    seen: null,
  }))
  world.parts = nature.model.parts.map((_, p) => ({
    life: 0,
    hours: 0,
    quality: 1,
    modes: world.modes.filter((mode) => mode.plain.part === p),
  }))
  world.log = {
    set: world.set,
    fittedAt: t,
    parts: world.parts.map(() => ({ fittedAt: t, fittedHours: 0, quality: 1, pastLives: [] })),
    meter: [{ at: t, hours: 0 }],
  }
  for (const mode of world.modes) beginLife(world, mode)
}

/** The name of what is drawn for the present life of a part. */
function nameOf(world: World, part: number, ...rest: number[]): Name {
  return [world.nature.seed, 2, world.how.life, world.set, part, world.parts[part]!.life, ...rest]
}

function ofMode(world: World, mode: ModeNow, ...rest: number[]): Name {
  return nameOf(world, mode.plain.part, mode.number, ...rest)
}

function beginLife(world: World, mode: ModeNow): void {
  const { plain, number } = mode
  mode.age = 0
  mode.state = SOUND
  mode.looked = 0
  mode.since = 0
  mode.found = null
  mode.left = false
  mode.seen = null
  const scale = plain.onsetScale * world.scales[number]! * world.parts[plain.part]!.quality
  mode.onset = scale * lifeOf(world.nature.law, plain.shape, ofMode(world, mode, FOR.onset))
}

function beginDefect(world: World, mode: ModeNow): void {
  mode.state = DEFECTIVE
  mode.since = 0
  mode.looked = world.parts[mode.plain.part]!.hours
  mode.delay = mode.plain.delay === null ? 0 : drawn(mode.plain.delay, ofMode(world, mode, FOR.delay))
}

/** Running hours a year, the set being up. */
function rateNow(world: World): number {
  if (world.outage !== null) return 0
  return world.t < 0 ? world.nature.pastHoursPerYear : hoursPerYear(world.nature.model)
}

type Steps = Generator<Question, void, Answer>

interface Coming {
  readonly at: number
  /** What comes of it may lead to jobs. */
  readonly happen: () => Steps | undefined
}

/** What happens next; of two at one time the one named first. */
function nextOf(world: World): Coming {
  const rate = rateNow(world)
  const after = (left: number, perYear: number) =>
    perYear > 0 ? world.t + Math.max(0, left) / perYear : Number.POSITIVE_INFINITY
  let at = world.t < 0 ? 0 : Number.POSITIVE_INFINITY
  let happen: Coming['happen'] = now
  const offer = (when: number, then: Coming['happen']) => {
    if (when < at) {
      at = when
      happen = then
    }
  }
  const due = dueAt(world, rate)
  offer(due, () => replaceOnDate(world))
  for (const mode of world.modes) {
    const own = mode.plain.byHours ? rate : 1
    if (mode.found !== null) offer(mode.found.at, () => mendFound(world, mode))
    if (mode.state === SOUND) {
      offer(after(mode.onset - mode.age, own), () => arise(world, mode))
      continue
    }
    // (16) A set at rest does not fail by that defect.
    if (mode.found?.rested !== true)
      offer(after(mode.delay - mode.since, own), () => fail(world, mode, { intruded: false }))
    if (mode.found === null && !mode.left)
      offer(after(hoursToLook(world, mode), rate), () => look(world, mode))
  }
  for (const fault of world.faults) {
    offer(after(fault.hoursLeft, rate), () => {
      world.faults = world.faults.filter((one) => one !== fault)
      return fail(world, world.modes[fault.mode]!, { intruded: true })
    })
  }
  if (world.outage !== null)
    offer(world.outage.end, () => {
      closeOutage(world)
      return undefined
    })
  return { at, happen }
}

/** Nothing happens, but from here on it counts. */
function now(): undefined {}

function advance(world: World, until: number): void {
  const span = until - world.t
  const hours = rateNow(world) * span
  if (world.outage !== null) {
    const counted = until - Math.max(0, world.t)
    if (counted > 0) {
      const days = counted * daysAYear * world.nature.model.use.powerNeededByMonth[0]!
      world.outage.days += days
      world.purse.daysWithout += days
    }
  }
  for (const fault of world.faults) fault.hoursLeft -= hours
  for (const part of world.parts) part.hours += hours
  for (const mode of world.modes) {
    const own = mode.plain.byHours ? hours : span
    mode.age += own
    if (mode.state === DEFECTIVE) mode.since += own
  }
  world.hours += hours
  world.t = until
  if (span > 0) world.log.meter.push({ at: until, hours: world.hours })
}

/** When a rule that goes by age, hours or date replaces the set; never before now. */
function dueAt(world: World, rate: number): number {
  const { replaceAt } = world.how
  if (replaceAt === undefined) return Number.POSITIVE_INFINITY
  const { ageYears = Number.POSITIVE_INFINITY, hours = Number.POSITIVE_INFINITY, year } = replaceAt
  const byHours =
    world.hours >= hours - rounding
      ? world.t
      : rate > 0
        ? world.t + (hours - world.hours) / rate
        : Number.POSITIVE_INFINITY
  const byDate = year !== undefined && world.set === 0 ? year : Number.POSITIVE_INFINITY
  return Math.max(0, Math.min(world.fittedAt + ageYears, byHours, byDate))
}

function replaceOnDate(world: World): undefined {
  replace(world, { lead: world.outage !== null, stop: false })
}

/** (7) Without a delay the onset is the failure. */
function arise(world: World, mode: ModeNow): Steps | undefined {
  if (mode.plain.delay === null) return fail(world, mode, { intruded: false })
  beginDefect(world, mode)
  return undefined
}

/** (13) Hours until a defective mode is next looked at in any way. */
function hoursToLook(world: World, mode: ModeNow): number {
  const { hours } = world.parts[mode.plain.part]!
  let least = Number.POSITIVE_INFINITY
  for (const check of mode.plain.checks) {
    const multiple = Math.floor(mode.looked / check.every + rounding) + 1
    least = Math.min(least, multiple * check.every - hours)
  }
  return least
}

/** (13, 14, 16) */
function look(world: World, mode: ModeNow): undefined {
  const { hours } = world.parts[mode.plain.part]!
  const { looked } = mode
  mode.looked = hours
  for (const [c, check] of mode.plain.checks.entries()) {
    const multiple = Math.floor(looked / check.every + rounding) + 1
    if (multiple * check.every - hours > rounding * check.every) continue
    if (!happens(ofMode(world, mode, FOR.made, c, multiple), check.diligence)) continue
    const good = detectionOf(check.detection, uniform(ofMode(world, mode, FOR.quality, c)))
    if (!happens(ofMode(world, mode, FOR.seen, c, multiple), good)) continue
    const supply = supplyOf(world, mode.plain.part, 'found')
    const wait = supply.days / daysAYear
    const yearly = mode.plain.byHours
      ? world.t < 0
        ? world.nature.pastHoursPerYear
        : hoursPerYear(world.nature.model)
      : 1
    const found = { at: world.t + wait, supply }
    mode.seen = { at: world.t, check: check.id }
    if ((mode.delay - mode.since) / yearly > wait) mode.found = { ...found, rested: false }
    else if (happens(ofMode(world, mode, FOR.rest), world.nature.model.care.restChance)) {
      takeOut(world, { years: wait, stop: false })
      mode.found = { ...found, rested: true }
    } else mode.left = true
    return
  }
}

/** (21) Ordered when something is found, or once it has failed: two different draws. */
function supplyOf(world: World, part: number, when: 'found' | 'failed'): Supply {
  const { repair } = world.nature.model.parts[part]!
  const name = nameOf(world, part, FOR.supply, when === 'found' ? 1 : 0)
  return drawnSupply(repair, { t: Math.max(0, world.t), name })
}

/** (16) The piece is there. */
function* mendFound(world: World, mode: ModeNow): Steps {
  yield* doJob(world, {
    parts: [mode.plain.part],
    modes: [mode.number],
    planned: true,
    stops: false,
    purse: 'planned',
    ordered: mode.found!.supply,
  })
}

/** (18, 19) A failure with all that follows from it. */
function* fail(world: World, root: ModeNow, how: { readonly intruded: boolean }): Steps {
  const wasDown = world.outage !== null
  const struck = new Map<number, ModeNow>([[root.plain.part, root]])
  const queue = [root]
  for (let failed = queue.shift(); failed !== undefined; failed = queue.shift()) {
    for (const [l, link] of failed.plain.links.entries()) {
      if (struck.has(link.part)) continue
      if (!happens(ofMode(world, failed, FOR.link, l), link.chance)) continue
      const target = world.modes[link.mode]!
      if (link.startsDefect && target.plain.delay !== null) {
        if (target.state === SOUND) beginDefect(world, target)
        continue
      }
      if (link.startsDefect && target.state !== SOUND) continue
      struck.set(link.part, target)
      queue.push(target)
    }
  }
  const modes = [...struck.values()]
  const stops = modes.some(({ plain }) => plain.stops) && !wasDown
  if (world.t >= 0) world.purse.failures += modes.length
  yield* doJob(world, {
    parts: [...struck.keys()],
    modes: modes.map(({ number }) => number),
    planned: false,
    stops,
    purse: how.intruded ? 'intrusion' : 'failures',
  })
}

interface Job {
  readonly parts: readonly number[]
  readonly modes: readonly number[]
  readonly planned: boolean
  readonly stops: boolean
  readonly purse: 'planned' | 'failures' | 'intrusion'
  readonly ordered?: Supply
}

/** (20 to 22, 25, 26, 28) */
function* doJob(world: World, job: Job): Steps {
  const { nature, parts, log } = world
  const { model } = nature
  const free = world.t < world.guaranteeUntil
  const joins = !job.planned && world.outage !== null
  if (!free && world.t >= 0) {
    const answer = yield {
      at: world.t,
      parts: job.parts,
      modes: job.modes,
      planned: job.planned,
      isDown: job.stops || world.outage !== null,
      estimate: estimateOf(model, job.parts),
      log,
      hours: world.hours,
      spent: costOf(world.purse),
      looks: (mode) => notedLooks(world, world.modes[mode]!),
      modesOf: world.plain,
    }
    if (answer === 'replace') {
      replace(world, { lead: job.stops || world.outage !== null, stop: job.stops })
      return
    }
  }
  const supplies = job.parts.map((part) => job.ordered ?? supplyOf(world, part, 'failed'))
  let pieces = 0
  let waitDays = 0
  let workshopDays = 0
  job.parts.forEach((part, k) => {
    const { repair } = model.parts[part]!
    pieces += drawn(repair.price, nameOf(world, part, FOR.price)) * supplies[k]!.priceFactor
    if (!job.planned) waitDays = Math.max(waitDays, supplies[k]!.days)
    workshopDays = Math.max(workshopDays, drawn(repair.workshopDays, nameOf(world, part, FOR.workshop)))
  })
  const work = workOf(model, job.parts, joins ? world.outage!.groups : new Set())
  const { labour } = model
  const hands = work.owner * labour.ownPerHour + work.paid * labour.paidPerHour
  const travel = joins ? 0 : tripsOf(model, job.parts) * labour.perTrip
  const overrun = drawn(labour.overrun, nameOf(world, job.parts[0]!, FOR.overrun))
  bookAt(world, job.purse, free ? 0 : (pieces + hands + travel) * overrun)
  const wait = waitDays / daysAYear
  const days = (workshopDays + (work.owner + work.paid) / labour.hoursPerDay) / daysAYear
  if (joins) world.outage!.end = Math.max(world.outage!.end, world.t + wait) + days
  else takeOut(world, { years: job.stops ? wait + days : days, stop: job.stops })
  for (const group of work.opened) world.outage?.groups.add(group)
  const faults = job.parts.map((part) => faultOf(world, part))
  job.parts.forEach((part, k) => {
    const failed = world.modes[job.modes[k]!]!
    const ended = job.planned
      ? { defective: failed.plain.id }
      : k === 0 && job.purse === 'failures'
        ? { failed: failed.plain.id }
        : ('sound' as const)
    const { quality } = supplies[k]!
    const noted = world.set > 0 || world.t >= -nature.logYears
    noteRenewal(log, part, { at: world.t, hours: world.hours, quality, ended, noted })
    const now = parts[part]!
    now.life += 1
    now.hours = 0
    now.quality = quality
    for (const mode of now.modes) beginLife(world, mode)
  })
  for (const fault of faults) if (fault !== null) world.faults.push(fault)
}

/** (26) The fault that this work puts in, if it does. */
function faultOf(world: World, part: number): Fault | null {
  const { model } = world.nature
  const { repair, access } = model.parts[part]!
  const chance = repair.intrusionChance * (1 - model.intrusion.testsCatch)
  if (!happens(nameOf(world, part, FOR.intrusion), chance)) return null
  const near = model.parts.flatMap((other, q) =>
    q === part || other.access.some((group) => access.includes(group)) ? [q] : [],
  )
  const name = nameOf(world, part, FOR.fault)
  return faultIn(world, near[Math.floor(uniform([...name, 0]) * near.length)]!, name)
}

function faultIn(world: World, part: number, name: Name): Fault {
  const { shape, scaleHours } = world.nature.model.intrusion.onset
  const { modes } = world.parts[part]!
  return {
    mode: modes[Math.floor(uniform([...name, 1]) * modes.length)]!.number,
    hoursLeft: scaleHours * exponential([...name, 2]) ** (1 / shape),
  }
}

/** (30) By the first candidate. */
function replace(world: World, how: { readonly lead: boolean; readonly stop: boolean }): void {
  const { nature, purse } = world
  const candidate = nature.model.candidates[0]!
  const name: Name = [nature.seed, 2, world.how.life, world.set + 1, -1, FOR.set]
  const money = drawn(candidate.price, [...name, 0]) + drawn(candidate.install, [...name, 1])
  bookAt(world, 'replacement', money - nature.model.set.salvageAtReplacement)
  const lead = how.lead ? drawn(candidate.leadDays, [...name, 2]) : 0
  takeOut(world, { years: (lead + drawn(candidate.installDays, [...name, 3])) / daysAYear, stop: how.stop })
  world.outage?.groups.clear()
  purse.replaced.push(world.t)
  fitSet(world)
  world.guaranteeUntil = world.t + candidate.guaranteeYears
  const built = poisson([...name, 4], candidate.infantFaults)
  for (let n = 0; n < built; n++) {
    const part = Math.floor(uniform([...name, 5, n]) * world.parts.length)
    world.faults.push(faultIn(world, part, [...name, 6, n]))
  }
}

/** (32) What the set fetches now. */
function worth(world: World): number {
  const { model, ageYears } = world.nature
  const resale = world.set === 0 ? model.set.resale : model.candidates[0]!.resale
  if (resale === undefined) return 0
  const age = world.set === 0 ? ageYears + world.t : world.t - world.fittedAt
  const running = Math.max(resale.least, resale.newPrice * resale.share * Math.exp(-resale.fallPerYear * age))
  return running * (world.outage !== null ? resale.deadShare : 1)
}

/** Looks noted of each check at most. */
const notedPerCheck = 2
/** Looks nearer to one another than this are one but for rounding. [years] */
const lookApart = 1e-6

/** Looks of the present life that were made: the latest of each check, and the one that found something. */
function notedLooks(world: World, mode: ModeNow): NotedLook[] {
  const { part } = mode.plain
  const { hours } = world.parts[part]!
  const { fittedHours } = world.log.parts[part]!
  const looks: NotedLook[] = []
  mode.plain.checks.forEach((check, c) => {
    let noted = 0
    for (let k = Math.floor(hours / check.every + rounding); k > 0 && noted < notedPerCheck; k--) {
      const at = dateOf(world.log, fittedHours + k * check.every)
      if (at <= -world.nature.logYears) break
      if (mode.seen !== null && at >= mode.seen.at - lookApart) continue
      if (!happens(ofMode(world, mode, FOR.made, c, k), check.diligence)) continue
      looks.push({ at, check: check.id, seen: false })
      noted++
    }
  })
  if (mode.seen !== null) looks.push({ ...mode.seen, seen: true })
  return looks.sort((a, b) => a.at - b.at)
}
