/**
 * How a set begins: the present one and a used one from tables of what may be true of it, a new one with every life at nought.
 *
 * @module
 */

import { POSTERIOR_STEPS, type Posterior } from '../forecast/posterior-type.js'
import { normalFrom } from './amounts.js'
import { draw, purpose, uniformFrom, WHOLE_SET } from './draws.js'
import {
  codeOf,
  DEFECTIVE,
  event,
  FAILED_UNNOTICED,
  type History,
  K,
  position,
  SOUND,
  type StartDraws,
  schedule,
} from './history.js'
import {
  delayLeft,
  fallDue,
  restartService,
  scheduleFinding,
  scheduleFirstOnset,
  scheduleService,
  wearOthers,
} from './life.js'
import { HOURS, YEARS } from './program.js'
import type { UseAhead } from './use.js'

/**
 * Fields of one starting state of one mode, side by side, so that a history reads one line of memory for each mode.
 * `quiet` is the chance of no onset before the horizon: a history that draws less needs no power function.
 */
const record = { theta: 0, age: 1, since: 2, ageHours: 3, state: 4, quiet: 5, length: 8 } as const
/** Starting states of each posterior, and of each program's use ahead; filled as they are first drawn. */
const recordsOf = new WeakMap<UseAhead, Map<Posterior, Float32Array>>()

function records(h: History, posterior: Posterior): Float32Array {
  const { use } = h.program
  const known = recordsOf.get(use) ?? new Map<Posterior, Float32Array>()
  recordsOf.set(use, known)
  const table = known.get(posterior) ?? new Float32Array(posterior.theta.length * record.length)
  known.set(posterior, table)
  return table
}

function fillRecord(h: History, m: number, entry: number, posterior: Posterior, table: Float32Array): void {
  const at = entry * record.length
  const theta = posterior.theta[entry]!
  table[at + record.theta] = theta
  table[at + record.age] = posterior.age[entry]!
  table[at + record.since] = posterior.since[entry]!
  table[at + record.ageHours] = posterior.ageHours[entry]!
  table[at + record.state] = posterior.state[entry]!
  setScale(h, m, theta * hourLife(h, m))
  table[at + record.quiet] = quietChance(h, m, posterior.age[entry]! / sootRate(h, m))
}

/** Chance that a sound mode of an age has no onset from now to the horizon, if no outage comes between. */
function quietChance(h: History, m: number, age: number): number {
  const { modes, use } = h.program
  const clock = modes.clock[m]!
  const shape = modes.shape[m]!
  const scale = h.scale[m]!
  const month = use.horizonMonth
  const end = clock === YEARS ? h.horizon : clock === HOURS ? use.hours[month]! : use.starts[month]!
  return Math.exp((age / scale) ** shape - ((age + end) / scale) ** shape)
}

/** The present set, from its posterior; what it draws is drawn once for all alternatives of a history. */
export function startPresent(h: History): void {
  const { posterior, model } = h.program
  draw(h.draws, 0, WHOLE_SET, 0, purpose.kappa, 0)
  const node = nodeAt(posterior.kappaWeight, uniformFrom(h.draws.words[0]!))
  const { boatLogSd, setLogSd } = model.setFactor
  const log = posterior.kappaLog[node]!
  const variance = boatLogSd ** 2 + setLogSd ** 2
  // Given b + g, b is normal about its share of the sum.
  h.boatLog =
    variance === 0
      ? 0
      : (log * boatLogSd ** 2) / variance +
        ((boatLogSd * setLogSd) / Math.sqrt(variance)) * normalFrom(h.draws.words[1]!)
  h.kappa = Math.exp(log)
  h.sums[K.kappaLog] = log
  const start = h.presentStart
  const table = records(h, posterior)
  if (start.history !== h.draws.history) drawStart(h, { start, node, posterior, table })
  startFromTables(h, { start, posterior, table, t: 0 })
}

/** A used set, fitted at `t`: any past that its age allows. */
export function startUsed(h: History, t: number, posterior: Posterior): void {
  const log = Math.log(h.kappa)
  let node = 0
  for (let n = 1; n < posterior.kappaLog.length; n++) {
    if (Math.abs(posterior.kappaLog[n]! - log) < Math.abs(posterior.kappaLog[node]! - log)) node = n
  }
  const start = h.usedStart
  const table = records(h, posterior)
  drawStart(h, { start, node, posterior, table })
  startFromTables(h, { start, posterior, table, t })
}

/** A new set, fitted at `t`. */
export function startNew(h: History, t: number): void {
  const { modes, parts } = h.program
  for (let m = 0; m < modes.count; m++) {
    draw(h.draws, h.set, m, 0, purpose.scale, 0)
    const own = modes.logSd[m] === 0 ? 1 : Math.exp(modes.logSd[m]! * normalFrom(h.draws.words[0]!))
    setScale(h, m, h.kappa * own * hourLife(h, m))
    h.wear[m] = 1
    h.life[m] = 0
    h.stamp[m]!++
    h.state[m] = SOUND
    h.birth[m] = position(h, modes.clock[m]!, t)
    h.birthHours[m] = position(h, HOURS, t)
    h.birthTime[m] = t
    draw(h.draws, h.set, m, 0, purpose.start, 0)
    scheduleFirstOnset(h, m, t, h.draws.words[1]!)
  }
  for (let p = 0; p < parts.count; p++) restartService(h, p, t)
}

/** Factor on the scale of a mode in the set in place: candidates may stretch the hour clocks. */
function hourLife(h: History, m: number): number {
  if (h.candidate < 0 || h.program.modes.clock[m] !== HOURS) return 1
  return h.program.model.candidates[h.candidate]!.hourLifeFactor
}

/** Hour clocks that soot speeds up are kept in running hours: the scale shrinks instead. */
function setScale(h: History, m: number, theta: number): void {
  const { modes } = h.program
  h.scaleAsNew[m] = (theta * modes.onsetScale[m]!) / sootRate(h, m)
  h.scale[m] = h.scaleAsNew[m]!
}

export function sootRate(h: History, m: number): number {
  return 1 + h.lowLoadShare * (h.program.modes.soot[m]! - 1)
}

function startFromTables(
  h: History,
  from: {
    readonly start: StartDraws
    readonly posterior: Posterior
    readonly table: Float32Array
    readonly t: number
  },
): void {
  const { modes, parts } = h.program
  const { start, posterior, table, t } = from
  for (let p = 0; p < parts.count; p++) {
    for (let m = parts.modeFrom[p]!; m < parts.modeFrom[p + 1]!; m++) startMode(h, m, t, start, table)
    startService(h, p, t, start, posterior)
  }
  // Only when every mode has its life can one that stands failed wear the others.
  for (let m = 0; m < modes.count; m++) {
    if (h.state[m] === FAILED_UNNOTICED) wearOthers(h, m, t, true)
  }
}

/** Draws which entry of the tables each mode starts from: one index for all modes of a part that belong together. */
function drawStart(
  h: History,
  from: {
    readonly start: StartDraws
    readonly node: number
    readonly posterior: Posterior
    readonly table: Float32Array
  },
): void {
  const { modes, parts } = h.program
  const { start, node, posterior, table } = from
  start.history = h.draws.history
  start.node = node
  for (let p = 0; p < parts.count; p++) {
    const first = parts.modeFrom[p]!
    const joint = posterior.joint[p] === 1
    let index = 0
    for (let m = first; m < parts.modeFrom[p + 1]!; m++) {
      draw(h.draws, h.set, m, 0, purpose.start, 0)
      if (m === first || !joint) index = h.draws.words[0]! >>> 22
      if (m === first) start.serviceIndex[p] = joint ? index : h.draws.words[0]! & (POSTERIOR_STEPS - 1)
      start.entry[m] = (node * modes.count + m) * POSTERIOR_STEPS + index
      start.onsetWord[m] = h.draws.words[1]!
    }
  }
  fetchRecords(h, start, posterior, table)
}

/** Reads one number of every record in a loop that does nothing else, so that their waits for memory overlap. */
function fetchRecords(h: History, start: StartDraws, posterior: Posterior, table: Float32Array): void {
  const { entry, quiet } = start
  let missing = 0
  for (let m = 0; m < entry.length; m++) {
    quiet[m] = table[entry[m]! * record.length + record.quiet]!
    if (quiet[m] === 0) missing++
  }
  if (missing === 0) return
  for (let m = 0; m < entry.length; m++) {
    if (table[entry[m]! * record.length + record.theta] === 0) fillRecord(h, m, entry[m]!, posterior, table)
    quiet[m] = table[entry[m]! * record.length + record.quiet]!
  }
}

/** A mode in the state of its record. */
function startMode(h: History, m: number, t: number, start: StartDraws, table: Float32Array): void {
  const { modes } = h.program
  const at = start.entry[m]! * record.length
  const clock = modes.clock[m]!
  setScale(h, m, table[at + record.theta]! * hourLife(h, m))
  h.wear[m] = 1
  h.life[m] = 0
  h.stamp[m]!++
  h.state[m] = table[at + record.state]!
  h.birth[m] = position(h, clock, t) - table[at + record.age]! / sootRate(h, m)
  h.birthHours[m] = position(h, HOURS, t) - table[at + record.ageHours]!
  h.birthTime[m] = clock === YEARS ? h.birth[m]! : t
  h.onsetAt[m] = Number.POSITIVE_INFINITY
  if (h.state[m] === SOUND) {
    startSound(h, m, t, start)
    return
  }
  if (h.set === 0) bookRisk(h, m, 1)
  if (h.state[m] === DEFECTIVE) {
    fallDue(h, m, t, delayLeft(h, m, start.onsetWord[m]!, table[at + record.since]!))
    scheduleFinding(h, m, t, purpose.check)
  } else {
    scheduleFinding(h, m, t, purpose.checkFailed)
  }
}

function startSound(h: History, m: number, t: number, start: StartDraws): void {
  const { modes } = h.program
  const quiet = start.quiet[m]!
  const u = uniformFrom(start.onsetWord[m]!)
  const shape = modes.shape[m]!
  const scale = h.scale[m]!
  const clock = modes.clock[m]!
  const age = position(h, clock, t) - h.birth[m]!
  if (t === 0 && h.program.isWorn[m] === 0) {
    if (h.set === 0) bookRisk(h, m, 1 - quiet)
    if (u < quiet) return
  }
  const end = (age / scale) ** shape - Math.log(u)
  h.onsetAt[m] = h.birth[m]! + scale * end ** (1 / shape)
  schedule(h, codeOf(event.onset, m, clock), h.stamp[m]!, h.onsetAt[m]!, t)
}

/** Adds to the index of what is at risk in the present set before the horizon. */
function bookRisk(h: History, m: number, chance: number): void {
  const { isQuoted, costAtRisk } = h.program
  h.sums[isQuoted[m] === 1 ? K.riskOfJob : K.riskOfOthers]! += chance * costAtRisk[m]!
}

function startService(h: History, part: number, t: number, start: StartDraws, posterior: Posterior): void {
  const { parts } = h.program
  if (parts.serviced[part] === 0) return
  const entry = (start.node * parts.count + part) * POSTERIOR_STEPS + start.serviceIndex[part]!
  h.serviceStamp[part]!++
  h.servicedTime[part] = t - posterior.serviceYears[entry]!
  h.servicedHours[part] = position(h, HOURS, t) - posterior.serviceHours[entry]!
  scheduleService(h, part, t)
}

function nodeAt(weights: Float64Array, u: number): number {
  let sum = 0
  for (let n = 0; n < weights.length - 1; n++) {
    sum += weights[n]!
    if (u < sum) return n
  }
  return weights.length - 1
}

/** Fault put in by the maker or by work: a mode that will fail some running hours later. */
export function plantFault(
  h: History,
  t: number,
  fault: { readonly mode: number; readonly onsetWord: number },
): void {
  const { shape, scaleHours } = h.program.model.intrusion.onset
  const hours = scaleHours * (-Math.log(uniformFrom(fault.onsetWord))) ** (1 / shape)
  schedule(h, codeOf(event.intrusion, fault.mode, HOURS), h.set, position(h, HOURS, t) + hours, t)
}

/** A visible mode of a part, drawn evenly; −1 if all are hidden. */
export function visibleModeOf(h: History, part: number, word: number): number {
  const { modes, parts } = h.program
  let count = 0
  for (let m = parts.modeFrom[part]!; m < parts.modeFrom[part + 1]!; m++) if (modes.hidden[m] === 0) count++
  let pick = Math.floor(uniformFrom(word) * count)
  for (let m = parts.modeFrom[part]!; m < parts.modeFrom[part + 1]!; m++) {
    if (modes.hidden[m] === 0 && pick-- === 0) return m
  }
  return -1
}
