/**
 * Failures with what follows from them, the jobs that they and finds lead to, and new sets. Numbers in round brackets are
 * sentences of `docs/life-model.md`.
 *
 * @module
 */

import { exponential, happens, type Name, poisson, uniform } from './chance.js'
import { bookAt, costOf, daysAYear, takeOut } from './ledger.js'
import { noteRenewal } from './log.js'
import { notedLooks, supplyOf } from './looks.js'
import { drawn } from './nature.js'
import {
  beginDefect,
  beginLife,
  type Fault,
  FOR,
  fitSet,
  type ModeNow,
  nameOf,
  ofMode,
  SOUND,
  type Steps,
  type World,
} from './state.js'
import { estimateOf, type Supply, tripsOf, workOf } from './work.js'

/** (16) The piece is there. */
export function* mendFound(world: World, mode: ModeNow): Steps {
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
export function* fail(world: World, root: ModeNow, how: { readonly intruded: boolean }): Steps {
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
export function replace(world: World, how: { readonly lead: boolean; readonly stop: boolean }): void {
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
export function worth(world: World): number {
  const { model, ageYears } = world.nature
  const resale = world.set === 0 ? model.set.resale : model.candidates[0]!.resale
  if (resale === undefined) return 0
  const age = world.set === 0 ? ageYears + world.t : world.t - world.fittedAt
  const running = Math.max(resale.least, resale.newPrice * resale.share * Math.exp(-resale.fallPerYear * age))
  return running * (world.outage !== null ? resale.deadShare : 1)
}
