/**
 * Lives of a part played from the set's first day, for the many parts whose fitting date nobody knows.
 *
 * @module
 */

import { hazard } from './lives.js'
import { detectionQuantiles, detectionSteps } from './mode-life.js'
import { mendMode, renewPart, runLife, within } from './play-life.js'
import type { LoggedEvent, PlayedPart, Span } from './play-part.js'
import {
  DEFECTIVE,
  FAILED,
  makePlay,
  nextUniform,
  type Play,
  type PlayRules,
  SOUND,
  startDraws,
} from './play-state.js'
import { normalQuantile } from './special-normal.js'
import { readingAt } from './track.js'

/** Played lives in columns; entry `life · modes + mode` for what belongs to a mode. */
export interface PlayedLives {
  readonly count: number
  readonly lnTheta: Float64Array
  readonly state: Uint8Array
  readonly age: Float64Array
  readonly since: Float64Array
  readonly ageHours: Float64Array
  readonly serviceYears: Float64Array
  readonly serviceHours: Float64Array
  /** Chance of what is entered, given the life. */
  readonly weight: Float64Array
  /** Entry `life · symptoms + symptom`: state of the mode just then. */
  readonly atSymptom: Uint8Array
  readonly symptoms: number
  /** Entry `life · spans + span`: stops expected in the counted span. */
  readonly stopsSeen: Float64Array
}

/** How many lives to play, and from which on (so that more can be added to those already played). */
export interface PlayOrder {
  readonly seed: number
  readonly from: number
  readonly count: number
  /** ln κ of each life, life `from` first. */
  readonly lnKappa: Float64Array
  /** Tells sets apart that are played from one seed. */
  readonly set: number
}

/** Chance that the log of a part is not complete where its owner says so: its spans then say nothing. Practice. */
const chanceOfGaps = 0.02
/** Share of lives played with gaps; they weigh the less for it, so that something is left where spans clash. */
const shareWithGaps = 0.25
/** Second key word, apart from the simulator's (a history, under 2²⁴). */
const playedKey = 0x91000000

/** Plays lives of a part from the first day to now, each weighted by what the log says of it. */
export function playPart(prepared: PlayedPart, order: PlayOrder): PlayedLives {
  const modes = prepared.part.modes.length
  const symptoms = prepared.events.reduce((most, event) => Math.max(most, event.symptom + 1), 0)
  const lives: PlayedLives = {
    count: order.count,
    lnTheta: new Float64Array(order.count * modes),
    state: new Uint8Array(order.count * modes),
    age: new Float64Array(order.count * modes),
    since: new Float64Array(order.count * modes),
    ageHours: new Float64Array(order.count * modes),
    serviceYears: new Float64Array(order.count),
    serviceHours: new Float64Array(order.count),
    weight: new Float64Array(order.count),
    atSymptom: new Uint8Array(order.count * symptoms),
    symptoms,
    stopsSeen: new Float64Array(order.count * prepared.counted.length),
  }
  const log: LogState = { prepared, lives, life: 0, weight: 1, logged: 0, work: [], stops: [] }
  const play = makePlay(prepared, [order.seed | 0, playedKey | (order.set << 12) | prepared.index])
  const rules = rulesOfLog(log)
  for (let life = 0; life < order.count; life++) {
    startDraws(play, order.from + life)
    startLog(play, log, life)
    for (let m = 0; m < modes; m++) {
      const lnTheta = order.lnKappa[life]! + prepared.modes[m]!.logSd * normalQuantile(nextUniform(play))
      lives.lnTheta[life * modes + m] = lnTheta
      play.theta[m] = Math.exp(lnTheta)
    }
    renewPart(play, 0)
    runLife(play, rules, prepared.use.years)
    if (prepared.broken >= 0 && log.weight > 0) log.weight *= chanceOfStandingBroken(play, prepared.broken)
    keep(play, log)
  }
  return lives
}

/** What the log makes of the life in play. */
interface LogState {
  readonly prepared: PlayedPart
  readonly lives: PlayedLives
  life: number
  weight: number
  /** Events of the log already passed. */
  logged: number
  work: readonly Span[]
  stops: readonly Span[]
}

function startLog(play: Play, log: LogState, life: number): void {
  const { prepared } = log
  log.life = life
  log.logged = 0
  log.weight = 1
  if (prepared.work.length + prepared.stops.length === 0) return
  const gaps = nextUniform(play) < shareWithGaps
  log.work = gaps ? [] : prepared.work
  log.stops = gaps ? [] : prepared.stops
  log.weight = gaps ? chanceOfGaps / shareWithGaps : (1 - chanceOfGaps) / (1 - shareWithGaps)
}

function rulesOfLog(log: LogState): PlayRules {
  const { events, counted, untold, modes, service, sinceFitting } = log.prepared
  return {
    before: (play, time) => {
      while (log.logged < events.length && events[log.logged]!.time <= time) {
        const event = events[log.logged++]!
        if (event.time > 0) weigh(play, log, event)
      }
    },
    checked: (play, { mode, check, time, chance }) => {
      if (!within(log.work, time)) {
        // what is still in place was not renewed
        if (sinceFitting && modes[mode]!.outcome === 'renewed') log.weight *= 1 - chance
        else if (nextUniform(play) < chance) mendMode(play, mode, time)
      } else if (!check.entered) log.weight *= 1 - chance
    },
    failed: (play, m, time) => {
      const mode = modes[m]!
      if (mode.hidden) {
        play.state[m] = FAILED
        play.turns[m] = Infinity
        return
      }
      counted.forEach((span, s) => {
        if (time >= span.from && time <= span.to) {
          log.lives.stopsSeen[log.life * counted.length + s]! += mode.stops
        }
      })
      const untoldStop = within(untold, time)
      if (within(log.work, time) && !(mode.outcome === 'cleared' && untoldStop)) log.weight = 0
      else if (sinceFitting && mode.outcome === 'renewed') log.weight = 0
      else if (within(log.stops, time) && !untoldStop) log.weight *= 1 - mode.stops
      mendMode(play, m, time)
    },
    serviced: (play, time) => {
      if (!service.acts || !within(log.work, time)) return nextUniform(play) < service.diligence
      log.weight *= 1 - service.diligence
      return false
    },
    over: () => log.weight <= 0,
  }
}

function weigh(play: Play, log: LogState, event: LoggedEvent): void {
  const { mode, look } = event
  const state = play.state[mode]!
  if (event.symptom >= 0) {
    log.lives.atSymptom[log.life * log.lives.symptoms + event.symptom] = state
    return
  }
  if (look === undefined) return
  if (!('check' in look)) {
    log.weight *= state === SOUND ? look.sound : state === DEFECTIVE ? look.defective : look.failed
    return
  }
  let seen = look.falseAlarm
  if (state !== SOUND) {
    const table = detectionQuantiles(state === DEFECTIVE ? look.detection : look.detectionFailed)
    const regular = event.check >= 0
    const step = regular
      ? play.quality[mode * play.checkRow + event.check]!
      : Math.floor(nextUniform(play) * detectionSteps)
    seen = table[step]!
  }
  log.weight *= look.defect ? seen : 1 - seen
}

/** Rate of failing just now, as things stand; for a hidden mode whether it has failed. */
function chanceOfStandingBroken(play: Play, m: number): number {
  const { use, lives } = play.prepared
  const life = lives[m]!
  const now = use.years
  if (life.hidden) return play.state[m] === FAILED ? 1 : 0
  if (life.delay.kind === 'none') {
    const age = readingAt(use, life.clock, now) * life.pace - play.birth[m]!
    const scale = play.theta[m]! * life.onsetScale
    return age > 0 ? hazard({ kind: 'weibull', shape: life.shape, scale }, age) : 0
  }
  if (play.state[m] !== DEFECTIVE) return 0
  const since = readingAt(use, life.delayClock, now) - readingAt(use, life.delayClock, play.onset[m]!)
  return since > 0 ? hazard(life.delay, since) : 0
}

function keep(play: Play, log: LogState): void {
  const { lives, life, prepared } = log
  const { use } = prepared
  const now = use.years
  lives.weight[life] = log.weight
  const hours = readingAt(use, 'hours', now)
  for (let m = 0; m < play.modes; m++) {
    const at = life * play.modes + m
    const mode = prepared.lives[m]!
    lives.state[at] = play.state[m]!
    lives.age[at] = Math.max(0, readingAt(use, mode.clock, now) * mode.pace - play.birth[m]!)
    lives.ageHours[at] = Math.max(0, hours - play.birthHours[m]!)
    if (play.state[m] !== SOUND) {
      lives.since[at] = readingAt(use, mode.delayClock, now) - readingAt(use, mode.delayClock, play.onset[m]!)
    }
  }
  lives.serviceYears[life] = now - play.servicedTime
  lives.serviceHours[life] = hours - play.servicedHours
}
