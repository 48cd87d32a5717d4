/**
 * Lives of a part played from the set's first day, for the many parts whose fitting date nobody knows.
 *
 * @module
 */

import type { LifeMode, LifeModel, LifePart } from './life-model.js'
import { hazard } from './lives.js'
import { detectionQuantiles, detectionSteps, type ModeLife, modeLifeOf } from './mode-life.js'
import type { Look } from './mode-likelihood.js'
import { normalQuantile } from './special-normal.js'
import { threefry2x32, uniformOfWord } from './threefry.js'
import { type PastUse, readingAt, timeOfReading, yearlyRates } from './track.js'

/** A part made ready to be played. */
export interface PlayedPart {
  readonly part: LifePart
  readonly index: number
  readonly lives: readonly ModeLife[]
  readonly past: PastUse
  readonly checks: readonly (readonly PlayedCheck[])[]
  readonly events: readonly LoggedEvent[]
  /** Spans of time since the first day in which nothing entered means nothing done, or no stop. */
  readonly work: readonly Span[]
  readonly stops: readonly Span[]
  /** Spans over which stops are to be counted, because the owner told how many were not entered. */
  readonly counted: readonly Span[]
  /** Those of them with any: there a stop need not be entered, whatever else is complete. */
  readonly untold: readonly Span[]
  readonly broken: number
}

export interface Span {
  readonly from: number
  readonly to: number
}

interface PlayedCheck {
  readonly id: string
  readonly everyHours: number
  readonly diligence: number
  readonly detected: Float64Array
  readonly detectedFailed: Float64Array
  /** Looks by this check are entered, so those in a complete span are the whole of them. */
  readonly entered: boolean
}

/** What the log says of a mode at a moment: a look to weigh, or a symptom before which the state is to be kept. */
export interface LoggedEvent {
  readonly time: number
  readonly mode: number
  readonly look?: Look['seen']
  /** For looks by a check: its place among the mode's checks, −1 if it is not a regular one. */
  readonly check: number
  readonly symptom: number
}

/** Played lives in columns; entry `life · modes + mode` for what belongs to a mode. */
export interface PlayedLives {
  readonly count: number
  readonly lnKappa: Float64Array
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

/** Chance that the log of a part is not complete where its owner says so: its spans then say nothing. Practice. */
const chanceOfGaps = 0.02
/** One life in so many is played with gaps, and weighs the less for it, so that something is left where spans clash. */
const gapsEvery = 4
/** A part that renews itself more often than this is not worth following; practice. */
const mostEvents = 20_000

/** Makes a part ready: its modes on this past, the care it had, and what the log says of it. */
export function preparePart(
  model: LifeModel,
  index: number,
  how: { readonly past: PastUse; readonly hourLifeFactor: number; readonly evidence: boolean },
): PlayedPart {
  const part = model.parts[index]!
  const { past, evidence } = how
  const { letDowns } = model.setFactor
  const rates = yearlyRates(model)
  const lives = part.modes.map((mode) => {
    const life = modeLifeOf(mode, { rates, lowLoadShare: past.lowLoadShare })
    return mode.clock === 'hours' ? { ...life, onsetScale: life.onsetScale * how.hourLifeFactor } : life
  })
  const spans = (of: 'work' | 'stops') =>
    evidence ? part.complete.flatMap((span) => (span.of === of ? [spanAgo(past, span)] : [])) : []
  return {
    part,
    index,
    lives,
    past,
    checks: part.modes.map((mode) => checksOf(model, mode, evidence)),
    events: evidence ? eventsOf(model, part, past) : [],
    work: spans('work'),
    stops: spans('stops'),
    counted: evidence ? letDowns.map((span) => spanAgo(past, span)) : [],
    untold: evidence ? letDowns.filter(({ count }) => count > 0).map((span) => spanAgo(past, span)) : [],
    broken: evidence ? part.modes.findIndex((mode) => mode.id === part.broken) : -1,
  }
}

function spanAgo(past: PastUse, span: { readonly fromYearsAgo: number; readonly toYearsAgo: number }): Span {
  return {
    from: past.years - Math.max(span.fromYearsAgo, span.toYearsAgo),
    to: past.years - Math.min(span.fromYearsAgo, span.toYearsAgo),
  }
}

function checksOf(model: LifeModel, mode: LifeMode, evidence: boolean): PlayedCheck[] {
  return mode.checks.flatMap((entry) => {
    const regular = model.checks.find((check) => check.id === entry.check)
    if (regular === undefined) return []
    return [
      {
        id: entry.check,
        everyHours: regular.everyHours,
        diligence: regular.diligence,
        detected: detectionQuantiles(entry.detection),
        detectedFailed: detectionQuantiles(entry.detectionFailed ?? entry.detection),
        entered: evidence && mode.observations.some((seen) => 'check' in seen && seen.check === entry.check),
      },
    ]
  })
}

function eventsOf(model: LifeModel, part: LifePart, past: PastUse): LoggedEvent[] {
  const events: LoggedEvent[] = []
  part.modes.forEach((mode, m) => {
    const regular = mode.checks.filter(({ check }) => model.checks.some(({ id }) => id === check))
    for (const look of looksOf(mode)) {
      const check = 'check' in look.seen ? look.seen.check : undefined
      events.push({
        time: past.years - look.yearsAgo,
        mode: m,
        look: look.seen,
        check: regular.findIndex((entry) => entry.check === check),
        symptom: -1,
      })
    }
  })
  let symptom = 0
  for (const seen of model.symptoms) {
    for (const entry of seen.modes) {
      if (entry.part !== part.id) continue
      const mode = part.modes.findIndex(({ id }) => id === entry.mode)
      if (mode >= 0) events.push({ time: past.years - seen.yearsAgo, mode, check: -1, symptom: symptom++ })
    }
  }
  return events.sort((a, b) => a.time - b.time)
}

/** The looks entered for a mode; one by a check the mode does not know says nothing. */
export function looksOf(mode: LifeMode): Look[] {
  return mode.observations.flatMap((entry): Look[] => {
    if ('likelihood' in entry) {
      const { sound, defective, failed } = entry.likelihood
      return [{ yearsAgo: entry.yearsAgo, seen: { sound, defective, failed: failed ?? defective } }]
    }
    const check = mode.checks.find(({ check }) => check === entry.check)
    if (check === undefined) return []
    const seen = {
      check: check.check,
      detection: check.detection,
      detectionFailed: check.detectionFailed ?? check.detection,
      falseAlarm: check.falseAlarm,
      defect: entry.seen,
    }
    return [{ yearsAgo: entry.yearsAgo, seen }]
  })
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

/** Plays lives of a part from the first day to now, each weighted by what the log says of it. */
export function playPart(prepared: PlayedPart, order: PlayOrder): PlayedLives {
  const modes = prepared.part.modes.length
  const symptoms = prepared.events.reduce((most, event) => Math.max(most, event.symptom + 1), 0)
  const lives: PlayedLives = {
    count: order.count,
    lnKappa: order.lnKappa,
    lnTheta: new Float64Array(order.count * modes),
    state: new Uint8Array(order.count * modes),
    age: new Float64Array(order.count * modes),
    since: new Float64Array(order.count * modes),
    ageHours: new Float64Array(order.count * modes),
    serviceYears: new Float64Array(order.count),
    serviceHours: new Float64Array(order.count),
    weight: new Float64Array(order.count).fill(1),
    atSymptom: new Uint8Array(order.count * symptoms),
    symptoms,
    stopsSeen: new Float64Array(order.count * prepared.counted.length),
  }
  const player = new Player(prepared, lives, order)
  for (let life = 0; life < order.count; life++) player.play(life)
  return lives
}

const SOUND = 0
const DEFECTIVE = 1
const FAILED = 2
/** First word of the counter's key, apart from any the simulator uses (its second key word is a history, under 2²⁴). */
const playedKey = 0x91000000

/** One part's lives, one after another; the state of the life in play is in the fields. */
class Player {
  private readonly modes: number
  private readonly words = new Uint32Array(2)
  private spare = -1
  private counter = 0
  private life = 0
  private weight = 1
  private readonly theta: Float64Array
  private readonly state: Uint8Array
  /** Reading of the mode's clock at its (virtual) birth, running hours and time at its last renewal. */
  private readonly birth: Float64Array
  private readonly birthHours: Float64Array
  private readonly birthTime: Float64Array
  /** Next thing that happens of itself: onset or failure. */
  private readonly turns: Float64Array
  private readonly onset: Float64Array
  /** Next check of a mode that is not sound, and which. */
  private readonly nextCheck: Float64Array
  private readonly checkCount: number
  private readonly quality: Int32Array
  private servicedTime = 0
  private servicedHours = 0
  private dueFromTime = 0
  private dueFromHours = 0
  private serviceDue = Infinity
  private work: readonly Span[] = []
  private stops: readonly Span[] = []

  constructor(
    private readonly prepared: PlayedPart,
    private readonly lives: PlayedLives,
    private readonly order: PlayOrder,
  ) {
    const modes = prepared.part.modes.length
    this.modes = modes
    this.theta = new Float64Array(modes)
    this.state = new Uint8Array(modes)
    this.birth = new Float64Array(modes)
    this.birthHours = new Float64Array(modes)
    this.birthTime = new Float64Array(modes)
    this.turns = new Float64Array(modes)
    this.onset = new Float64Array(modes)
    this.checkCount = Math.max(1, ...prepared.checks.map((checks) => checks.length))
    this.nextCheck = new Float64Array(modes * this.checkCount)
    this.quality = new Int32Array(modes * this.checkCount)
  }

  play(life: number): void {
    const { prepared, lives, modes } = this
    const now = prepared.past.years
    this.life = life
    this.counter = 0
    this.spare = -1
    this.weight = 1
    if (prepared.work.length + prepared.stops.length > 0) {
      const gaps = life % gapsEvery === 0
      this.work = gaps ? [] : prepared.work
      this.stops = gaps ? [] : prepared.stops
      this.weight = gaps ? chanceOfGaps * gapsEvery : (1 - chanceOfGaps) / (1 - 1 / gapsEvery)
    }
    for (let m = 0; m < modes; m++) {
      const lnTheta = lives.lnKappa[life]! + prepared.part.modes[m]!.logSd * normalQuantile(this.uniform())
      lives.lnTheta[life * modes + m] = lnTheta
      this.theta[m] = Math.exp(lnTheta)
    }
    for (let m = 0; m < modes; m++) this.begin(m, 0, 0)
    this.serviced(0)
    this.run(now)
    if (prepared.broken >= 0 && this.weight > 0) this.weight *= this.chanceOfStandingBroken(now)
    this.keep(now)
  }

  private run(now: number): void {
    const { events } = this.prepared
    let logged = 0
    for (let turn = 0; turn < mostEvents && this.weight > 0; turn++) {
      let time = this.serviceDue
      let what = -1
      let check = -1
      for (let m = 0; m < this.modes; m++) {
        if (this.turns[m]! < time) {
          time = this.turns[m]!
          what = m
          check = -1
        }
        if (this.state[m] === SOUND) continue
        for (let c = 0; c < this.prepared.checks[m]!.length; c++) {
          const at = this.nextCheck[m * this.checkCount + c]!
          if (at < time) {
            time = at
            what = m
            check = c
          }
        }
      }
      while (logged < events.length && events[logged]!.time <= time) {
        if (events[logged]!.time >= 0) this.weigh(events[logged]!)
        logged++
      }
      if (!(time < now)) return
      if (what < 0) this.service(time)
      else if (check >= 0) this.check(what, check, time)
      else if (this.state[what] === SOUND) this.becomeDefective(what, time)
      else this.fail(what, time)
    }
  }

  /** A new life of mode m at `time`, of which `virtualAge` is used up already. */
  private begin(m: number, time: number, virtualAge: number): void {
    const life = this.prepared.lives[m]!
    const { past } = this.prepared
    const scale = this.theta[m]! * life.onsetScale
    const reading = readingAt(past, life.clock, time) * life.pace
    let end = -Math.log(this.uniform())
    if (virtualAge > 0) end += (virtualAge / scale) ** life.shape
    this.state[m] = SOUND
    this.birth[m] = reading - virtualAge
    if (virtualAge === 0) {
      this.birthHours[m] = readingAt(past, 'hours', time)
      this.birthTime[m] = time
    }
    const at = this.birth[m]! + scale * end ** (1 / life.shape)
    this.turns[m] = Math.max(time, timeOfReading(past, life.clock, at / life.pace))
  }

  private becomeDefective(m: number, time: number): void {
    this.state[m] = DEFECTIVE
    this.onset[m] = time
    this.turns[m] = this.failureAfter(m, time, 1)
    const checks = this.prepared.checks[m]!
    for (let c = 0; c < checks.length; c++) {
      this.quality[m * this.checkCount + c] = Math.floor(this.uniform() * detectionSteps)
      this.nextCheck[m * this.checkCount + c] = this.checkAfter(m, checks[c]!, time)
    }
  }

  private failureAfter(m: number, time: number, factor: number): number {
    const { delay, delayClock } = this.prepared.lives[m]!
    if (delay.kind === 'none') return time
    const drawn =
      delay.kind === 'lognormal'
        ? delay.median * Math.exp(delay.logSd * normalQuantile(this.uniform()))
        : delay.scale * (-Math.log(this.uniform())) ** (1 / delay.shape)
    const { past } = this.prepared
    return timeOfReading(past, delayClock, readingAt(past, delayClock, time) + drawn * factor)
  }

  /** First time after `time` at which a check falls due: a multiple of its interval since the mode was renewed. */
  private checkAfter(m: number, check: PlayedCheck, time: number): number {
    const { past } = this.prepared
    if (!(past.hoursPerYear > 0)) return this.birthTime[m]! + Math.floor(time - this.birthTime[m]! + 1 + 1e-9)
    const every = Math.min(check.everyHours, past.hoursPerYear)
    const run = readingAt(past, 'hours', time) - this.birthHours[m]!
    return timeOfReading(past, 'hours', this.birthHours[m]! + every * Math.floor(run / every + 1 + 1e-9))
  }

  private check(m: number, c: number, time: number): void {
    const check = this.prepared.checks[m]![c]!
    const slot = m * this.checkCount + c
    this.nextCheck[slot] = Math.max(this.checkAfter(m, check, time), time + 1e-9)
    const table = this.state[m] === FAILED ? check.detectedFailed : check.detected
    const chance = check.diligence * table[this.quality[slot]!]!
    if (within(this.work, time)) {
      if (!check.entered) this.weight *= 1 - chance
    } else if (this.uniform() < chance) this.mend(m, time)
  }

  private fail(m: number, time: number): void {
    const mode = this.prepared.part.modes[m]!
    if (mode.hidden) {
      this.state[m] = FAILED
      this.turns[m] = Infinity
      return
    }
    const { counted, untold } = this.prepared
    for (let s = 0; s < counted.length; s++) {
      if (within([counted[s]!], time)) this.lives.stopsSeen[this.life * counted.length + s]! += mode.stops
    }
    const { work, stops } = this
    if (within(work, time) && !(mode.remedy.outcome === 'cleared' && within(untold, time))) this.weight = 0
    else if (within(stops, time) && !within(untold, time)) this.weight *= 1 - mode.stops
    this.mend(m, time)
  }

  private mend(m: number, time: number): void {
    const { remedy } = this.prepared.part.modes[m]!
    if (
      remedy.outcome === 'cleared' ||
      (remedy.outcome === 'patched' && this.prepared.lives[m]!.delay.kind === 'none')
    ) {
      this.begin(m, time, 0)
    } else if (remedy.outcome === 'patched') {
      this.state[m] = DEFECTIVE
      this.onset[m] = time
      this.turns[m] = this.failureAfter(m, time, remedy.delayFactor)
    } else if (remedy.outcome === 'reconditioned') {
      for (let k = 0; k < this.modes; k++) {
        const life = this.prepared.lives[k]!
        const age = readingAt(this.prepared.past, life.clock, time) * life.pace - this.birth[k]!
        this.begin(k, time, age * (1 - remedy.agesLess))
      }
    } else this.renew(time)
  }

  private renew(time: number): void {
    for (let m = 0; m < this.modes; m++) this.begin(m, time, 0)
    this.serviced(time)
  }

  private service(time: number): void {
    const service = this.prepared.part.service!
    const changes = service.renews || service.clears.length > 0
    let done: boolean
    if (changes && within(this.work, time)) {
      this.weight *= 1 - service.diligence
      done = false
    } else done = this.uniform() < service.diligence
    if (!done) {
      this.setDue(time)
      return
    }
    if (service.renews) this.renew(time)
    else {
      this.serviced(time)
      for (let m = 0; m < this.modes; m++) {
        if (service.clears.includes(this.prepared.part.modes[m]!.id)) this.begin(m, time, 0)
      }
    }
  }

  private serviced(time: number): void {
    this.servicedTime = time
    this.servicedHours = readingAt(this.prepared.past, 'hours', time)
    this.setDue(time)
  }

  private setDue(time: number): void {
    const { service } = this.prepared.part
    if (service === undefined) return
    this.dueFromTime = time
    this.dueFromHours = readingAt(this.prepared.past, 'hours', time)
    const byYears = this.dueFromTime + (service.everyYears ?? Infinity)
    const byHours =
      service.everyHours === undefined
        ? Infinity
        : timeOfReading(this.prepared.past, 'hours', this.dueFromHours + service.everyHours)
    this.serviceDue = Math.min(byYears, byHours)
  }

  private weigh(event: LoggedEvent): void {
    const { mode, look } = event
    const state = this.state[mode]!
    if (event.symptom >= 0) {
      this.lives.atSymptom[this.life * this.lives.symptoms + event.symptom] = state
      return
    }
    if (look === undefined) return
    if (!('check' in look)) {
      this.weight *= state === SOUND ? look.sound : state === DEFECTIVE ? look.defective : look.failed
      return
    }
    let seen = look.falseAlarm
    if (state !== SOUND) {
      const table = detectionQuantiles(state === DEFECTIVE ? look.detection : look.detectionFailed)
      const place =
        event.check >= 0
          ? this.quality[mode * this.checkCount + event.check]!
          : Math.floor(this.uniform() * detectionSteps)
      seen = table[place]!
    }
    this.weight *= look.defect ? seen : 1 - seen
  }

  /** Rate of failing just now, as things stand; for a hidden mode whether it has failed. */
  private chanceOfStandingBroken(now: number): number {
    const m = this.prepared.broken
    const life = this.prepared.lives[m]!
    const { past } = this.prepared
    if (life.hidden) return this.state[m] === FAILED ? 1 : 0
    if (life.delay.kind === 'none') {
      const age = readingAt(past, life.clock, now) * life.pace - this.birth[m]!
      const scale = this.theta[m]! * life.onsetScale
      return age > 0 ? hazard({ kind: 'weibull', shape: life.shape, scale }, age) : 0
    }
    if (this.state[m] !== DEFECTIVE) return 0
    const since = readingAt(past, life.delayClock, now) - readingAt(past, life.delayClock, this.onset[m]!)
    return since > 0 ? hazard(life.delay, since) : 0
  }

  private keep(now: number): void {
    const { lives, life, modes } = this
    const { past } = this.prepared
    lives.weight[life] = this.weight
    const hours = readingAt(past, 'hours', now)
    for (let m = 0; m < modes; m++) {
      const at = life * modes + m
      const mode = this.prepared.lives[m]!
      lives.state[at] = this.state[m]!
      lives.age[at] = Math.max(0, readingAt(past, mode.clock, now) * mode.pace - this.birth[m]!)
      lives.ageHours[at] = Math.max(0, hours - this.birthHours[m]!)
      if (this.state[m] !== SOUND) {
        lives.since[at] =
          readingAt(past, mode.delayClock, now) - readingAt(past, mode.delayClock, this.onset[m]!)
      }
    }
    lives.serviceYears[life] = now - this.servicedTime
    lives.serviceHours[life] = hours - this.servicedHours
  }

  /** Draws are numbered within a life; each cipher gives two. */
  private uniform(): number {
    if (this.spare >= 0) {
      const word = this.spare
      this.spare = -1
      return uniformOfWord(word)
    }
    const { order, prepared } = this
    threefry2x32(
      order.seed | 0,
      playedKey | (order.set << 12) | prepared.index,
      order.from + this.life,
      this.counter++,
      this.words,
    )
    this.spare = this.words[1]!
    return uniformOfWord(this.words[0]!)
  }
}

function within(spans: readonly Span[], time: number): boolean {
  for (const span of spans) if (time >= span.from && time <= span.to) return true
  return false
}
