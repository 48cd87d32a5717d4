/**
 * How a set begins: the present one and a used one from tables of what may be true of it, a new one with every life at nought.
 *
 * @module
 */

import { HOURS, YEARS } from '../codes'
import * as K from '../kept-at'
import * as purpose from '../purpose'
import { normalFrom } from './amounts'
import { draw, uniformFrom, WHOLE_SET, word0, word1 } from './draws'
import {
  codeOf,
  DEFECTIVE,
  FAILED_UNNOTICED,
  h,
  INTRUSION,
  ONSET,
  position,
  SOUND,
  schedule,
} from './history'
import {
  delayLeft,
  fallDue,
  power,
  restartService,
  scheduleFinding,
  scheduleFirstOnset,
  scheduleService,
  wearOthers,
} from './life'
import * as model from './model'
import * as modes from './modes'
import * as parts from './parts'
import { bytes, countOf, doubles, floats } from './sections'
import * as use from './use'

/** Entries of each table. */
const steps = 1024

/** Tables of what may be true of a set, and what the history under way drew from them. */
class States {
  kappaLog: StaticArray<f64> = doubles('states.kappaLog')
  kappaWeight: StaticArray<f64> = doubles('states.kappaWeight')
  nodes: i32 = countOf('states.kappaLog')
  joint: StaticArray<u8> = bytes('states.joint')
  thetas: StaticArray<f32> = floats('states.theta')
  states: StaticArray<u8> = bytes('states.state')
  ages: StaticArray<f32> = floats('states.age')
  sinces: StaticArray<f32> = floats('states.since')
  agesHours: StaticArray<f32> = floats('states.ageHours')
  servicesYears: StaticArray<f32> = floats('states.serviceYears')
  servicesHours: StaticArray<f32> = floats('states.serviceHours')

  /** Seed and number of the history that drew what follows; −1 for none. */
  history: i64 = -1
  node: i32 = 0
  /** Of each mode. */
  entry: StaticArray<i32> = new StaticArray<i32>(modes.count)
  onsetWord: StaticArray<u32> = new StaticArray<u32>(modes.count)
  theta: StaticArray<f64> = new StaticArray<f64>(modes.count)
  state: StaticArray<u8> = new StaticArray<u8>(modes.count)
  age: StaticArray<f64> = new StaticArray<f64>(modes.count)
  since: StaticArray<f64> = new StaticArray<f64>(modes.count)
  ageHours: StaticArray<f64> = new StaticArray<f64>(modes.count)
  /** Chance of no onset before the horizon, of a set that begins now: a history that draws less needs no power function. */
  quiet: StaticArray<f64> = new StaticArray<f64>(modes.count)
  /** Of each part. */
  serviceIndex: StaticArray<i32> = new StaticArray<i32>(parts.count)
}

let present = changetype<States>(0)
/** Of candidates that are bought used; null for others. */
let ofCandidate = changetype<StaticArray<States | null>>(0)

export function readPresent(candidates: i32): void {
  present = new States()
  ofCandidate = new StaticArray<States | null>(candidates)
}

/** What the last history began with was drawn under a model that is no more in hand. */
export function forgetStart(): void {
  if (changetype<usize>(present) !== 0) present.history = -1
}

export function readCandidate(candidate: i32): void {
  ofCandidate[candidate] = new States()
}

/** The present set, from its posterior. */
export function startPresent(): void {
  drawPresent()
  startFromTables(present, 0)
}

/** Draws what is true of the present set; its states are drawn once for all alternatives of a history. */
export function drawPresent(): void {
  draw(0, WHOLE_SET, 0, purpose.kappa, 0)
  const node = nodeAt(present, uniformFrom(word0))
  const log = present.kappaLog[node]
  const variance = model.boatLogSd * model.boatLogSd + model.setLogSd * model.setLogSd
  // Given b + g, b is normal about its share of the sum.
  h.boatLog =
    variance === 0
      ? 0
      : (log * model.boatLogSd * model.boatLogSd) / variance +
        ((model.boatLogSd * model.setLogSd) / Math.sqrt(variance)) * normalFrom(word1)
  h.kappa = Math.exp(log)
  h.sums[K.kappaLog] = log
  if (present.history !== h.key) drawStart(present, node)
}

/** What was drawn of the present set, by mode: its state, since when it is defective, and its scale. */
export function presentStates(): StaticArray<u8> {
  return present.state
}

export function presentSince(): StaticArray<f64> {
  return present.since
}

export function presentScales(): StaticArray<f64> {
  return present.theta
}

/** A used set, fitted at `t`: any past that its age allows. */
export function startUsed(t: f64, states: States): void {
  const log = Math.log(h.kappa)
  let node = 0
  for (let n = 1; n < states.nodes; n++) {
    if (Math.abs(states.kappaLog[n] - log) < Math.abs(states.kappaLog[node] - log)) node = n
  }
  drawStart(states, node)
  startFromTables(states, t)
}

/** Another set, as the candidate fitted is bought. */
export function startCandidate(t: f64): void {
  const states = ofCandidate[h.candidate]
  if (states !== null) startUsed(t, states)
  else startNew(t)
}

/** A new set, fitted at `t`. */
function startNew(t: f64): void {
  for (let m = 0; m < modes.count; m++) {
    draw(h.set, m, 0, purpose.scale, 0)
    const own = modes.logSd[m] === 0 ? 1 : Math.exp(modes.logSd[m] * normalFrom(word0))
    setScale(m, h.kappa * own * hourLife(m))
    h.wear[m] = 1
    h.life[m] = 0
    h.stamp[m]++
    h.state[m] = SOUND
    h.birth[m] = position(modes.clock[m], t)
    h.birthHours[m] = position(HOURS, t)
    h.birthTime[m] = t
    draw(h.set, m, 0, purpose.start, 0)
    scheduleFirstOnset(m, t, word1)
  }
  for (let p = 0; p < parts.count; p++) restartService(p, t)
}

/** Factor on the scale of a mode in the set in place: candidates may stretch the hour clocks. */
function hourLife(m: i32): f64 {
  return h.candidate < 0 || modes.clock[m] !== HOURS ? 1 : model.hourLifeFactor[h.candidate]
}

/** Hour clocks that soot speeds up are kept in running hours: the scale shrinks instead. */
function setScale(m: i32, theta: f64): void {
  h.scaleAsNew[m] = (theta * modes.onsetScale[m]) / sootRate(m)
  h.scale[m] = h.scaleAsNew[m]
}

function sootRate(m: i32): f64 {
  return 1 + h.lowLoadShare * (modes.soot[m] - 1)
}

function startFromTables(states: States, t: f64): void {
  for (let p = 0; p < parts.count; p++) {
    for (let m = parts.modeFrom[p]; m < parts.modeFrom[p + 1]; m++) startMode(states, m, t)
    startService(states, p, t)
  }
  // Only when every mode has its life can one that stands failed wear the others.
  for (let m = 0; m < modes.count; m++) {
    if (h.state[m] === FAILED_UNNOTICED) wearOthers(m, t, true)
  }
}

/** Draws which entry of the tables each mode starts from: one index for all modes of a part that belong together. */
function drawStart(states: States, node: i32): void {
  states.history = h.key
  states.node = node
  for (let p = 0; p < parts.count; p++) {
    const first = parts.modeFrom[p]
    const joint = states.joint[p] === 1
    let index = 0
    for (let m = first; m < parts.modeFrom[p + 1]; m++) {
      draw(h.set, m, 0, purpose.start, 0)
      if (m === first || !joint) index = word0 >>> 22
      if (m === first) states.serviceIndex[p] = joint ? index : word0 & (steps - 1)
      states.entry[m] = (node * modes.count + m) * steps + index
      states.onsetWord[m] = word1
    }
  }
  fetch(states)
}

/** Reads table after table in loops that do nothing else, so that their waits for memory overlap. */
function fetch(states: States): void {
  const entry = states.entry
  for (let m = 0; m < modes.count; m++) states.theta[m] = states.thetas[entry[m]]
  for (let m = 0; m < modes.count; m++) states.state[m] = states.states[entry[m]]
  for (let m = 0; m < modes.count; m++) states.age[m] = states.ages[entry[m]]
  for (let m = 0; m < modes.count; m++) states.since[m] = states.sinces[entry[m]]
  for (let m = 0; m < modes.count; m++) states.ageHours[m] = states.agesHours[entry[m]]
  for (let m = 0; m < modes.count; m++) {
    setScale(m, states.theta[m] * hourLife(m))
    states.quiet[m] = quietChance(m, states.age[m] / sootRate(m))
  }
}

/** Chance that a sound mode of an age has no onset from now to the horizon, if no outage comes between. */
function quietChance(m: i32, age: f64): f64 {
  const clock = modes.clock[m]
  const shape = modes.shape[m]
  const scale = h.scale[m]
  const end =
    clock === YEARS ? model.horizonYears : clock === HOURS ? use.hoursToHorizon : use.startsToHorizon
  return Math.exp(power(age / scale, shape) - power((age + end) / scale, shape))
}

/** A mode in the state that was drawn for it. */
function startMode(states: States, m: i32, t: f64): void {
  const clock = modes.clock[m]
  setScale(m, states.theta[m] * hourLife(m))
  // The tables tell of the piece in place; the next one is as good as new.
  if (h.set === 0) h.scaleAsNew[m] /= parts.presentQuality[modes.part[m]]
  h.wear[m] = 1
  h.life[m] = 0
  h.stamp[m]++
  h.state[m] = states.state[m]
  h.birth[m] = position(clock, t) - states.age[m] / sootRate(m)
  h.birthHours[m] = position(HOURS, t) - states.ageHours[m]
  h.birthTime[m] = clock === YEARS ? h.birth[m] : t
  h.onsetAt[m] = Infinity
  if (h.state[m] === SOUND) {
    startSound(states, m, t)
    return
  }
  if (h.set === 0) bookRisk(m, 1)
  if (h.state[m] === DEFECTIVE) {
    fallDue(m, t, delayLeft(m, states.onsetWord[m], states.since[m]))
    scheduleFinding(m, t, purpose.check)
  } else {
    scheduleFinding(m, t, purpose.checkFailed)
  }
}

function startSound(states: States, m: i32, t: f64): void {
  const u = uniformFrom(states.onsetWord[m])
  if (t === 0 && modes.isWorn[m] === 0) {
    const quiet = states.quiet[m]
    if (h.set === 0) bookRisk(m, 1 - quiet)
    if (u < quiet) return
  }
  const shape = modes.shape[m]
  const scale = h.scale[m]
  const clock = modes.clock[m]
  const age = position(clock, t) - h.birth[m]
  const end = power(age / scale, shape) - Math.log(u)
  h.onsetAt[m] = h.birth[m] + scale * power(end, 1 / shape)
  schedule(codeOf(ONSET, m, clock), h.stamp[m], h.onsetAt[m], t)
}

/** Adds to the index of what is at risk in the present set before the horizon. */
function bookRisk(m: i32, chance: f64): void {
  h.sums[modes.isQuoted[m] === 1 ? K.riskOfJob : K.riskOfOthers] += chance * modes.costAtRisk[m]
}

function startService(states: States, part: i32, t: f64): void {
  if (parts.serviced[part] === 0) return
  const entry = (states.node * parts.count + part) * steps + states.serviceIndex[part]
  h.serviceStamp[part]++
  h.servicedTime[part] = t - <f64>states.servicesYears[entry]
  h.servicedHours[part] = position(HOURS, t) - <f64>states.servicesHours[entry]
  scheduleService(part, t)
}

function nodeAt(states: States, u: f64): i32 {
  let sum: f64 = 0
  for (let n = 0; n < states.nodes - 1; n++) {
    sum += states.kappaWeight[n]
    if (u < sum) return n
  }
  return states.nodes - 1
}

/** Fault put in by the maker or by work: a mode that will fail some running hours later. */
export function plantFault(t: f64, mode: i32, onsetWord: u32): void {
  const hours = model.intrusionScaleHours * power(-Math.log(uniformFrom(onsetWord)), 1 / model.intrusionShape)
  schedule(codeOf(INTRUSION, mode, HOURS), h.set, position(HOURS, t) + hours, t)
}

/** A visible mode of a part, drawn evenly; −1 if all are hidden. */
export function visibleModeOf(part: i32, word: u32): i32 {
  let count = 0
  for (let m = parts.modeFrom[part]; m < parts.modeFrom[part + 1]; m++) if (modes.hidden[m] === 0) count++
  let pick = <i32>(uniformFrom(word) * <f64>count)
  for (let m = parts.modeFrom[part]; m < parts.modeFrom[part + 1]; m++) {
    if (modes.hidden[m] === 0 && pick-- === 0) return m
  }
  return -1
}
