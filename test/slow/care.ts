/**
 * Looking after the set: checks, what is found by them, and services; sentences 13 to 16 of `docs/life-model.md`.
 *
 * @module
 */

import { doJob, drawSupply, mendOf } from './job.js'
import { hoursAYear, type ModeNow, type PartNow } from './life.js'
import { detectionAt, happens } from './random.js'
import {
  beginLife,
  book,
  clockRate,
  daysAYear,
  lookAge,
  lookedAtByCalendar,
  monthNow,
  restartService,
  settleWear,
  takeOut,
  type World,
} from './world.js'

type ModeCheck = ModeNow['model']['checks'][number]

/** Two moments on the clock of the looks that are one but for rounding, as a share of the interval. */
const rounding = 1e-6

/** (13) When this mode is next looked at in any way. */
export function nextLook(world: World, mode: ModeNow): number {
  const rate = lookedAtByCalendar(world) ? 1 : clockRate(world, 'hours')
  let next = Infinity
  for (const check of mode.model.checks) {
    const left = nextMultiple(world, mode, check) - lookAge(world, mode)
    // A season may end on the very hour of a look, so that the clock stands still when it is due.
    if (left <= rounding * lookInterval(world, check)) return world.t
    if (rate > 0) next = Math.min(next, world.t + left / rate)
  }
  return next
}

/** Age at which this look is due: the first multiple of its interval after the last time that the mode was looked at. */
function nextMultiple(world: World, mode: ModeNow, check: ModeCheck): number {
  const every = lookInterval(world, check)
  return (Math.floor(mode.looked / every + rounding) + 1) * every
}

/** In running hours, or in years where the year has none. */
function lookInterval(world: World, check: ModeCheck): number {
  if (lookedAtByCalendar(world)) return 1
  return Math.min(careOf(world, check).everyHours, hoursAYear(world.model))
}

function careOf(world: World, check: ModeCheck) {
  const care = world.model.checks.find((one) => one.id === check.check)
  if (care === undefined) throw new Error(`check must be one of the model; found ${check.check}`)
  return care
}

/**
 * Whether a look could come to anything: there is something to find (14), which neither waits for its piece nor was
 * left (16).
 */
export function isWatched(mode: ModeNow): boolean {
  return (mode.state === 'defective' || mode.state === 'asleep') && mode.found === null && !mode.left
}

/** (13, 14) Every look that falls on the moment that {@link nextLook} gave, until one of them finds something. */
export function look(world: World, part: PartNow, mode: ModeNow): void {
  const age = lookAge(world, mode)
  const due = mode.model.checks.filter(
    (check) => nextMultiple(world, mode, check) - age <= rounding * lookInterval(world, check),
  )
  mode.looked = age
  for (const check of due) {
    if (!isWatched(mode) || !happens(world.chance, careOf(world, check).diligence)) continue
    const quantile = mode.looks.get(check.check) ?? world.chance.uniform()
    mode.looks.set(check.check, quantile)
    const mean = mode.state === 'asleep' ? (check.detectionFailed ?? check.detection) : check.detection
    if (happens(world.chance, detectionAt(mean, quantile))) find(world, part, mode)
  }
}

/** (16) */
function find(world: World, part: PartNow, mode: ModeNow): void {
  const mend = mendOf({ part, modes: [mode], plain: false })
  const supply = mend.outcome === 'cleared' ? null : drawSupply(world.chance, mend.repair, world.t)
  const wait = (supply?.days ?? 0) / daysAYear
  const at = world.t + wait
  if (mode.state === 'asleep' || timeLeft(world, mode) > wait) {
    mode.found = { at, supply, rested: false }
  } else if (happens(world.chance, world.model.care.restChance)) {
    takeOut(world, { years: wait, stop: false })
    mode.found = { at, supply, rested: true }
  } else {
    mode.left = true
  }
}

/** (16) Years until the defect ends in failure if nothing takes the set out: month by month. */
function timeLeft(world: World, mode: ModeNow): number {
  const { startMonth, use } = world.model
  const clock = mode.model.delay?.clock ?? 'years'
  let left = mode.delay - mode.since
  if (clock === 'years') return left
  const byMonth = clock === 'hours' ? use.hoursByMonth : use.startsByMonth
  let t = world.t
  let month = monthNow(world)
  let count = world.monthCount
  for (let n = 0; n < 12 * 200; n++) {
    const until = (count + 1 - startMonth) / 12
    const rate = 12 * byMonth[month]!
    const grown = rate * (until - t)
    if (grown >= left) return t + left / rate - world.t
    left -= grown
    t = until
    count += 1
    month = (month + 1) % 12
  }
  return Infinity
}

/** (16) The piece is there. */
export function mendFound(world: World, part: PartNow, mode: ModeNow): void {
  const { supply } = mode.found!
  world.tally.plannedJobs += 1
  doJob(world, [{ part, modes: [mode], plain: false }], {
    unplanned: false,
    stops: false,
    purse: 'planned',
    ordered: supply,
  })
}

/** (15) When the service of a part is next due. */
export function nextService(world: World, part: PartNow): number {
  const { everyHours = Infinity, everyYears = Infinity } = part.model.service ?? {}
  const rate = clockRate(world, 'hours')
  const byHours = rate > 0 ? Math.max(0, everyHours - part.serviceHours) / rate : Infinity
  return world.t + Math.min(byHours, Math.max(0, everyYears - part.serviceYears))
}

/** (15) */
export function serve(world: World, part: PartNow): void {
  const service = part.model.service!
  restartService(part)
  if (!happens(world.chance, service.diligence)) return
  const { labour } = world.model
  const hourly = service.by === 'owner' ? labour.ownPerHour : labour.paidPerHour
  const pieces = service.price * (world.candidate?.partPriceFactor ?? 1)
  book(world, 'upkeep', pieces + service.hours * hourly * (world.candidate?.labourFactor ?? 1))
  world.tally.services += 1
  if (service.renews) part.renewals += 1
  for (const mode of part.modes) {
    if (service.renews) beginLife(world, mode, 1)
    else if (service.clears.includes(mode.model.id)) beginLife(world, mode)
  }
  settleWear(world)
}
