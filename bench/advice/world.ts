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

import { fail, mendFound, replace, worth } from './jobs.js'
import { bookAt, closeOutage, daysAYear, type Life } from './ledger.js'
import { hoursToLook, look } from './looks.js'
import type { Nature } from './nature.js'
import {
  type Answer,
  beginDefect,
  DEFECTIVE,
  type HowLived,
  type ModeNow,
  newWorld,
  type Question,
  rateNow,
  rounding,
  SOUND,
  type Steps,
  type World,
} from './state.js'

const mostEvents = 100_000

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
