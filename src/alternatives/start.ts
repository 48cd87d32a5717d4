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
  isBeyond,
  K,
  position,
  SOUND,
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

/**
 * Fields of one starting state of one mode, side by side, so that a history reads one line of memory for each mode.
 * `quiet` is the chance of no onset before the horizon: a history that draws less needs no power function.
 */
const record = { theta: 0, age: 1, since: 2, ageHours: 3, state: 4, quiet: 5, length: 8 } as const
/** No chance: `quiet` of a mode that is not sound now. */
const notQuiet = 2

/** Starting states of each posterior, and of each program's use ahead; filled as they are first drawn. */
const recordsOf = new WeakMap<UseAhead, Map<Posterior, Float32Array>>()

function records(h: History, posterior: Posterior): Float32Array {
  const { use } = h.program
  let known = recordsOf.get(use)
  if (known === undefined) recordsOf.set(use, (known = new Map()))
  let table = known.get(posterior)
  if (table === undefined) known.set(posterior, (table = new Float32Array(posterior.theta.length * record.length)))
  return table
}

function fillRecord(h: History, m: number, posterior: Posterior, table: Float32Array, entry: number): void {
  const at = entry * record.length
  const theta = posterior.theta[entry]!
  const age = posterior.age[entry]!
  table[at + record.theta] = theta
  table[at + record.age] = age
  table[at + record.since] = posterior.since[entry]!
  table[at + record.ageHours] = posterior.ageHours[entry]!
  table[at + record.state] = posterior.state[entry]!
  table[at + record.quiet] = posterior.state[entry] === SOUND ? quietChance(h, m, theta, age) : notQuiet
}

/** The present set, from its posterior. */
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
  startFromTables(h, posterior, node, 0)
}

/** A used set, fitted at `t`: any past that its age allows. */
export function startUsed(h: History, t: number, posterior: Posterior): void {
  const log = Math.log(h.kappa)
  let node = 0
  for (let n = 1; n < posterior.kappaLog.length; n++) {
    if (Math.abs(posterior.kappaLog[n]! - log) < Math.abs(posterior.kappaLog[node]! - log)) node = n
  }
  startFromTables(h, posterior, node, t)
}

/** A new set, fitted at `t`. */
export function startNew(h: History, t: number): void {
  const { modes, parts } = h.program
  const longer = hourLife(h)
  for (let m = 0; m < modes.count; m++) {
    draw(h.draws, h.set, m, 0, purpose.scale, 0)
    const own = modes.logSd[m] === 0 ? 1 : Math.exp(modes.logSd[m]! * normalFrom(h.draws.words[0]!))
    const factor = modes.clock[m] === HOURS ? longer : 1
    setScale(h, m, h.kappa * own * factor)
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

/** Factor on the hour-clock scales of the set in place. */
function hourLife(h: History): number {
  return h.candidate >= 0 ? h.program.model.candidates[h.candidate]!.hourLifeFactor : 1
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

function startFromTables(h: History, posterior: Posterior, node: number, t: number): void {
  const { modes, parts } = h.program
  for (let p = 0; p < parts.count; p++) {
    const first = parts.modeFrom[p]!
    const joint = posterior.joint[p] === 1
    let index = 0
    for (let m = first; m < parts.modeFrom[p + 1]!; m++) {
      draw(h.draws, h.set, m, 0, purpose.start, 0)
      if (m === first || !joint) index = h.draws.words[0]! >>> 22
      startMode(h, m, t, {
        posterior,
        entry: (node * modes.count + m) * POSTERIOR_STEPS + index,
        onsetWord: h.draws.words[1]!,
      })
    }
    startService(h, p, t, { posterior, node, index: joint ? index : -1 })
  }
  // Only when every mode has its life can one that stands failed wear the others.
  for (let m = 0; m < modes.count; m++) {
    if (h.state[m] === FAILED_UNNOTICED) wearOthers(h, m, t, true)
  }
}

function startMode(
  h: History,
  m: number,
  t: number,
  from: { readonly posterior: Posterior; readonly entry: number; readonly onsetWord: number },
): void {
  const { modes } = h.program
  const { posterior, entry, onsetWord } = from
  const clock = modes.clock[m]!
  setScale(h, m, posterior.theta[entry]! * (clock === HOURS ? hourLife(h) : 1))
  h.wear[m] = 1
  h.life[m] = 0
  h.stamp[m]!++
  h.state[m] = posterior.state[entry]!
  h.birth[m] = position(h, clock, t) - posterior.age[entry]! / sootRate(h, m)
  h.birthHours[m] = position(h, HOURS, t) - posterior.ageHours[entry]!
  h.birthTime[m] = clock === YEARS ? h.birth[m]! : t
  h.onsetAt[m] = Number.POSITIVE_INFINITY
  if (h.state[m] === SOUND) {
    startSound(h, m, t, from)
    return
  }
  if (h.set === 0) bookRisk(h, m, 1)
  if (h.state[m] === DEFECTIVE) {
    fallDue(h, m, t, delayLeft(h, m, onsetWord, posterior.since[entry]!))
    scheduleFinding(h, m, t, purpose.check)
  } else {
    scheduleFinding(h, m, t, purpose.checkFailed)
  }
}

function startSound(
  h: History,
  m: number,
  t: number,
  from: { readonly posterior: Posterior; readonly entry: number; readonly onsetWord: number },
): void {
  const { modes, use } = h.program
  const { posterior, entry, onsetWord } = from
  const shape = modes.shape[m]!
  const scale = h.scale[m]!
  const clock = modes.clock[m]!
  const age = position(h, clock, t) - h.birth[m]!
  const u = uniformFrom(onsetWord)
  const worn = h.program.isWorn[m] === 1
  if (t === 0 && !worn) {
    const table = thresholdsOf(posterior)
    if (table[entry]! < 0) {
      const end =
        clock === YEARS
          ? h.horizon
          : clock === HOURS
            ? use.hours[use.horizonMonth]!
            : use.starts[use.horizonMonth]!
      table[entry] = Math.exp((age / scale) ** shape - ((age + end) / scale) ** shape)
    }
    if (h.set === 0) bookRisk(h, m, 1 - table[entry]!)
    if (u < table[entry]!) return
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

function startService(
  h: History,
  part: number,
  t: number,
  from: { readonly posterior: Posterior; readonly node: number; readonly index: number },
): void {
  const { parts } = h.program
  if (parts.serviced[part] === 0) return
  let { index } = from
  if (index < 0) {
    draw(h.draws, h.set, parts.modeFrom[part]!, 0, purpose.serviceStart, 0)
    index = h.draws.words[0]! >>> 22
  }
  const entry = (from.node * parts.count + part) * POSTERIOR_STEPS + index
  h.serviceStamp[part]!++
  h.servicedTime[part] = t - from.posterior.serviceYears[entry]!
  h.servicedHours[part] = position(h, HOURS, t) - from.posterior.serviceHours[entry]!
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
