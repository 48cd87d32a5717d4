/**
 * A part made ready to be played: its modes on the use of its time, the care it has, and what the log says of it.
 *
 * @module
 */

import { leastOnsets } from './least-onset.js'
import type { LifeMode, LifeModel, LifePart, Outcome } from './life-model.js'
import { detectionQuantiles, type ModeLife, modeLifeOf } from './mode-life.js'
import { type Look, looksOf } from './mode-looks.js'
import { completeAges, trackSinceFitting, type UseTrack, yearlyRates } from './track.js'

/** A part made ready to be played. What the play asks for at every step is told flat, in one form for all parts. */
export interface PlayedPart {
  readonly part: LifePart
  readonly index: number
  readonly lives: readonly ModeLife[]
  readonly modes: readonly PlayedMode[]
  /** Per mode: the table of its shape. */
  readonly leastOnsets: readonly Float64Array[]
  readonly service: PlayedService
  /** Modes that the service clears; all if it renews the part. */
  readonly cleared: readonly number[]
  /** Per mode: the most its clock can run from one service to the next; infinite where nothing bounds it. */
  readonly longestInterval: readonly number[]
  readonly use: UseTrack
  /** Begun at the fitting of the piece that is still in place: no life in which it was renewed counts. */
  readonly sinceFitting: boolean
  /** Of the piece in place, in all lives played. */
  readonly quality: number
  readonly checks: readonly (readonly PlayedCheck[])[]
  readonly events: readonly LoggedEvent[]
  /** Modes cleared at known times, in their order. */
  readonly clearings: readonly { readonly time: number; readonly mode: number }[]
  /** Spans of time since the first day in which nothing entered means nothing done, or no stop. */
  readonly work: readonly Span[]
  readonly stops: readonly Span[]
  /** Spans over which stops are to be counted, because the owner told how many were not entered. */
  readonly counted: readonly Span[]
  /** Those of them with any: there a stop need not be entered, whatever else is complete. */
  readonly untold: readonly Span[]
  readonly broken: number
}

export interface PlayedMode {
  readonly hidden: boolean
  readonly stops: number
  readonly logSd: number
  /** What a mend leaves; a patch of what has no delay clears it. */
  readonly outcome: Outcome
  readonly agesLess: number
  readonly delayFactor: number
}

export interface PlayedService {
  readonly everyHours: number
  readonly everyYears: number
  readonly diligence: number
  readonly renews: boolean
  /** It does something to the modes, so that it is work to be entered. */
  readonly acts: boolean
}

export interface Span {
  readonly from: number
  readonly to: number
}

export interface PlayedCheck {
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

/**
 * What a part is to be played on to find what it is like now: the whole past where nobody knows when it was fitted; the
 * time since its fitting where a service may have cleared modes since; null where its ages tell enough.
 */
export function playedPast(
  part: LifePart,
  past: UseTrack,
): { readonly use: UseTrack; readonly sinceFitting: boolean } | null {
  if (part.age === 'unknown') return { use: past, sinceFitting: false }
  const { service } = part
  if (service === undefined || service.renews || service.clears.length === 0) return null
  const ages = completeAges(past, part.age)
  const { everyHours = Infinity, everyYears = Infinity } = service
  const fellDue = ages.years > 0 && (ages.years > everyYears || ages.hours > everyHours)
  return fellDue ? { use: trackSinceFitting({ past, ages }), sinceFitting: true } : null
}

/** Makes a part ready. Without `evidence` nothing of what the log says is taken along. */
export function preparePart(
  model: LifeModel,
  index: number,
  how: {
    readonly use: UseTrack
    readonly sinceFitting?: boolean
    readonly hourLifeFactor: number
    readonly evidence: boolean
  },
): PlayedPart {
  const part = model.parts[index]!
  const { use, evidence, sinceFitting = false } = how
  const { letDowns } = model.setFactor
  const rates = yearlyRates(model)
  const quality = evidence ? part.quality : 1
  const lives = part.modes.map((mode) => {
    const life = modeLifeOf(mode, { rates, lowLoadShare: use.lowLoadShare })
    const factor = (mode.clock === 'hours' ? how.hourLifeFactor : 1) * quality
    return { ...life, onsetScale: life.onsetScale * factor }
  })
  const spans = (of: 'work' | 'stops') =>
    evidence ? part.complete.flatMap((span) => (span.of === of ? [spanAgo(use, span)] : [])) : []
  const service = serviceOf(part)
  return {
    part,
    index,
    lives,
    modes: part.modes.map(playedMode),
    leastOnsets: lives.map(({ shape }) => leastOnsets(shape)),
    service,
    cleared: part.modes.flatMap(({ id }, m) =>
      service.renews || part.service?.clears.includes(id) ? [m] : [],
    ),
    longestInterval: lives.map((life) => longestInterval(life, service)),
    use,
    sinceFitting,
    quality,
    checks: part.modes.map((mode) => checksOf(model, mode, evidence)),
    events: evidence ? eventsOf(model, part, use) : [],
    clearings: evidence ? clearingsOf(part, use) : [],
    work: spans('work'),
    stops: spans('stops'),
    counted: evidence && !sinceFitting ? letDowns.map((span) => spanAgo(use, span)) : [],
    untold: evidence ? letDowns.filter(({ count }) => count > 0).map((span) => spanAgo(use, span)) : [],
    broken: evidence ? part.modes.findIndex((mode) => mode.id === part.broken) : -1,
  }
}

function playedMode({ hidden, stops, logSd, delay, remedy }: LifeMode): PlayedMode {
  const { outcome, agesLess, delayFactor } = remedy
  const noDelay = outcome === 'patched' && delay === undefined
  return { hidden, stops, logSd, outcome: noDelay ? 'cleared' : outcome, agesLess, delayFactor }
}

function serviceOf({ service }: LifePart): PlayedService {
  const renews = service?.renews ?? false
  return {
    everyHours: service?.everyHours ?? Infinity,
    everyYears: service?.everyYears ?? Infinity,
    diligence: service?.diligence ?? 0,
    renews,
    acts: renews || (service?.clears.length ?? 0) > 0,
  }
}

function clearingsOf(part: LifePart, use: UseTrack): PlayedPart['clearings'] {
  return part.modes
    .flatMap(({ clearedYearsAgo: ago }, mode) =>
      ago === undefined || ago > use.years ? [] : [{ time: use.years - ago, mode }],
    )
    .sort((a, b) => a.time - b.time)
}

/** Above what rounding may add. */
const above = 1 + 1e-9

function longestInterval(life: ModeLife, service: PlayedService): number {
  if (life.clock === 'years') return service.everyYears * above
  return life.clock === 'hours' ? service.everyHours * life.pace * above : Infinity
}

function spanAgo(use: UseTrack, span: { readonly fromYearsAgo: number; readonly toYearsAgo: number }): Span {
  return {
    from: use.years - Math.max(span.fromYearsAgo, span.toYearsAgo),
    to: use.years - Math.min(span.fromYearsAgo, span.toYearsAgo),
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

function eventsOf(model: LifeModel, part: LifePart, use: UseTrack): LoggedEvent[] {
  const events: LoggedEvent[] = []
  part.modes.forEach((mode, m) => {
    const regular = mode.checks.filter(({ check }) => model.checks.some(({ id }) => id === check))
    for (const look of looksOf(mode)) {
      const check = 'check' in look.seen ? look.seen.check : undefined
      events.push({
        time: use.years - look.yearsAgo,
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
      if (mode >= 0) events.push({ time: use.years - seen.yearsAgo, mode, check: -1, symptom: symptom++ })
    }
  }
  return events.sort((a, b) => a.time - b.time)
}
