/**
 * Lives of a part played ahead from what it is like now, with the care and the services to come.
 *
 * @module
 */

import type { LifeModel } from './life-model.js'
import { residualQuantile } from './lives.js'
import { meanAmount } from './odds-cost.js'
import { mendMode, runLife, startChecks } from './play-life.js'
import { drawOnset } from './play-onset.js'
import { type PlayedPart, preparePart } from './play-part.js'
import { setServiceDue } from './play-service.js'
import { FAILED, makePlay, nextUniform, type Play, type PlayRules, SOUND, startDraws } from './play-state.js'
import { POSTERIOR_STEPS, type Posterior } from './posterior-type.js'
import { timeOfReading, type UseTrack, withGuides } from './track.js'

/** The use to come: running totals month by month, and which months are lay-up. */
export interface UseToCome {
  readonly track: UseTrack
  readonly laidUp: Uint8Array
}

/** What became of the lives of one part at one node of κ. All are means over the lives. */
export interface NodeOdds {
  /** Chance of a failure met in service by each span. */
  readonly failing: Float64Array
  readonly stopping: Float64Array
  /** Failures in the first year by mode, hidden ones when they fail. */
  readonly failures: Float64Array
  /** Chance now, by mode. */
  readonly defective: Float64Array
  readonly asleep: Float64Array
}

const daysPerYear = 365.25
const monthsPerYear = 12
/** Second key word, apart from those of the past and of the simulator. */
const aheadKey = 0xb1000000

/** Use month by month over some years, from the start month on. */
export function useToCome(model: LifeModel, years: number): UseToCome {
  const { hoursByMonth, startsByMonth, lowLoadShare } = model.use
  const first = Math.floor(model.startMonth)
  const partOfFirst = first + 1 - model.startMonth
  const months = Math.ceil(years * monthsPerYear) + 1
  const time = new Float64Array(months + 1)
  const hours = new Float64Array(months + 1)
  const starts = new Float64Array(months + 1)
  const laidUp = new Uint8Array(months)
  for (let k = 0; k < months; k++) {
    const month = (first + k) % monthsPerYear
    const length = k === 0 ? partOfFirst : 1
    time[k + 1] = time[k]! + length / monthsPerYear
    hours[k + 1] = hours[k]! + length * hoursByMonth[month]!
    starts[k + 1] = starts[k]! + length * startsByMonth[month]!
    laidUp[k] = hoursByMonth[month]! > 0 ? 0 : 1
  }
  const yearly = (values: readonly number[]) => values.reduce((a, b) => a + b, 0)
  const track = withGuides({
    years: time[months]!,
    time,
    hours,
    starts,
    hoursPerYear: yearly(hoursByMonth),
    startsPerYear: yearly(startsByMonth),
    lowLoadShare,
  })
  return { track, laidUp }
}

/**
 * Plays one part ahead at every node of κ, `livesPerNode` lives each, from the starting states of the posterior.
 *
 * A failure in lay-up shows at the next day of use, unless it is met at fitting out. A defect found in time is
 * mended when its piece is there; found too late, the set is rested with the stated chance, else it fails.
 * No part hears of another, and nothing stands still while the set is down.
 */
export function playAhead(
  model: LifeModel,
  index: number,
  how: {
    readonly posterior: Posterior
    readonly firstMode: number
    readonly use: UseToCome
    readonly spans: readonly number[]
    readonly livesPerNode: number
    readonly seed: number
  },
): NodeOdds[] {
  const prepared = preparePart(model, index, { use: how.use.track, hourLifeFactor: 1, evidence: false })
  const broken = prepared.part.modes.findIndex(({ id }) => id === prepared.part.broken)
  const { posterior } = how
  return Array.from(posterior.kappaLog, (_, node) => {
    const counts = newCounts({ modes: prepared.part.modes.length, spans: how.spans.length })
    const ahead: Ahead = {
      model,
      prepared,
      counts,
      use: how.use,
      broken,
      deferred: new Uint8Array(prepared.part.modes.length),
      failed: 0,
      stopped: 0,
    }
    const play = makePlay(prepared, [how.seed | 0, aheadKey | (node << 12) | index])
    const rules = rulesAhead(ahead)
    const start = { ...how, model, node, index, broken, counts }
    for (let life = 0; life < how.livesPerNode; life++) {
      startDraws(play, life)
      ahead.failed = Infinity
      ahead.stopped = Infinity
      ahead.deferred.fill(0)
      placeAtStart(play, start, Math.floor((life / how.livesPerNode) * POSTERIOR_STEPS))
      runLife(play, rules, how.spans[how.spans.length - 1]!)
      how.spans.forEach((span, s) => {
        if (ahead.failed <= span) counts.failing[s]!++
        if (ahead.stopped <= span) counts.stopping[s]!++
      })
    }
    for (const column of Object.values(counts)) {
      for (let k = 0; k < column.length; k++) column[k]! /= how.livesPerNode
    }
    return counts
  })
}

function newCounts({ modes, spans }: { readonly modes: number; readonly spans: number }): NodeOdds {
  return {
    failing: new Float64Array(spans),
    stopping: new Float64Array(spans),
    failures: new Float64Array(modes),
    defective: new Float64Array(modes),
    asleep: new Float64Array(modes),
  }
}

interface Ahead {
  readonly model: LifeModel
  readonly prepared: PlayedPart
  readonly counts: NodeOdds
  readonly use: UseToCome
  /** Mode that stands failed now, −1 for none. */
  readonly broken: number
  /** Failed in lay-up, to show at the next day of use. */
  readonly deferred: Uint8Array
  /** Time of the first failure, and of the first stop, of the life in play. */
  failed: number
  stopped: number
}

/**
 * Puts a life at one of the starting states: entry `even` of the table for the first mode and for all that belong
 * together, any entry for the others.
 */
function placeAtStart(
  play: Play,
  at: {
    readonly model: LifeModel
    readonly posterior: Posterior
    readonly firstMode: number
    readonly node: number
    readonly index: number
    readonly broken: number
    readonly counts: NodeOdds
  },
  even: number,
): void {
  const { posterior, counts } = at
  const nodes = posterior.kappaLog.length
  const allModes = posterior.theta.length / nodes / POSTERIOR_STEPS
  const parts = at.model.parts.length
  const joint = posterior.joint[at.index] === 1
  play.presentQuality = play.prepared.part.quality
  const { use, lives } = play.prepared
  for (let m = 0; m < play.modes; m++) {
    const step = joint || m === 0 ? even : Math.floor(nextUniform(play) * POSTERIOR_STEPS)
    const entry = (at.node * allModes + at.firstMode + m) * POSTERIOR_STEPS + step
    const life = lives[m]!
    play.theta[m] = posterior.theta[entry]!
    play.state[m] = posterior.state[entry]!
    play.birth[m] = -posterior.age[entry]!
    play.birthHours[m] = -posterior.ageHours[entry]!
    play.birthTime[m] = life.clock === 'years' ? -posterior.age[entry]! : 0
    const since = posterior.since[entry]!
    play.onset[m] = 0
    if (play.state[m] === SOUND) drawOnset(play, m, { time: 0, usedAge: posterior.age[entry]! })
    else {
      const asleep = play.state[m] === FAILED
      play.turns[m] = asleep ? Infinity : 0
      if (!asleep && m !== at.broken && life.delay.kind !== 'none') {
        const left = residualQuantile(life.delay, { age: since, chance: nextUniform(play) })
        play.turns[m] = timeOfReading(use, life.delayClock, left)
      }
      startChecks(play, m, 0)
      if (asleep) counts.asleep[m]!++
      else counts.defective[m]!++
    }
  }
  const row = (at.node * parts + at.index) * POSTERIOR_STEPS
  const step = row + (joint ? even : Math.floor(nextUniform(play) * POSTERIOR_STEPS))
  const from = { time: -posterior.serviceYears[step]!, hours: -posterior.serviceHours[step]! }
  play.servicedTime = from.time
  play.servicedHours = from.hours
  setServiceDue(play, from)
  if (play.serviceDue < 0) play.serviceDue = 0
}

function rulesAhead(ahead: Ahead): PlayRules {
  const { model, prepared, counts, use } = ahead
  const { part } = prepared
  const waits = part.modes.map((mode) => meanWait(mode.remedy.repair ?? part.repair))
  return {
    before: () => undefined,
    checked: (play, { mode, time, chance }) => {
      if (nextUniform(play) >= chance) return
      const inTime = play.state[mode] === FAILED || play.turns[mode]! - time > waits[mode]!
      if (inTime || nextUniform(play) < model.care.restChance) mendMode(play, mode, time)
      else stopChecks(play, mode)
    },
    failed: (play, m, time) => {
      const mode = part.modes[m]!
      if (mode.hidden) {
        if (time <= 1) counts.failures[m]!++
        play.state[m] = FAILED
        play.turns[m] = Infinity
        return
      }
      const known = m === ahead.broken && time === 0
      if (!known && ahead.deferred[m] === 0 && isLaidUp(use, time)) {
        ahead.deferred[m] = 1
        play.turns[m] = nextUse(use, time)
        stopChecks(play, m)
        return
      }
      const planned = ahead.deferred[m] === 1 && nextUniform(play) < model.care.fittingOutShare
      ahead.deferred[m] = 0
      if (!planned) {
        if (time <= 1) counts.failures[m]!++
        ahead.failed = Math.min(ahead.failed, time)
        if (nextUniform(play) < mode.stops) ahead.stopped = Math.min(ahead.stopped, time)
      }
      mendMode(play, m, time)
    },
    serviced: (play) => nextUniform(play) < prepared.service.diligence,
    over: () => false,
  }
}

function stopChecks(play: Play, m: number): void {
  play.nextCheck.fill(Infinity, m * play.checkRow, (m + 1) * play.checkRow)
}

/** Mean days until the piece is there, in years. */
function meanWait(repair: LifeModel['parts'][number]['repair']): number {
  return repair.supply.reduce((sum, option) => sum + option.chance * meanAmount(option.days), 0) / daysPerYear
}

function isLaidUp(use: UseToCome, time: number): boolean {
  return use.laidUp[monthOf(use, time)] === 1
}

function nextUse(use: UseToCome, time: number): number {
  let month = monthOf(use, time)
  while (month < use.laidUp.length && use.laidUp[month] === 1) month++
  return month < use.laidUp.length ? use.track.time[month]! : Infinity
}

function monthOf(use: UseToCome, time: number): number {
  const { track, laidUp } = use
  let month = Math.min(laidUp.length - 1, Math.max(0, Math.floor(time * monthsPerYear)))
  while (month + 1 < laidUp.length && track.time[month + 1]! <= time) month++
  return month
}
