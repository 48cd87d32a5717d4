/**
 * A part made ready to be played: its modes on the use of its time, the care it has, and what the log says of it.
 *
 * @module
 */

import { leastOnsets } from './least-onset.js'
import type { LifeMode, LifeModel, LifePart } from './life-model.js'
import { detectionQuantiles, type ModeLife, modeLifeOf } from './mode-life.js'
import { type Look, looksOf } from './mode-looks.js'
import { type UseTrack, yearlyRates } from './track.js'

/** A part made ready to be played. */
export interface PlayedPart {
  readonly part: LifePart
  readonly index: number
  readonly lives: readonly ModeLife[]
  /** Per mode: the table of its shape. */
  readonly leastOnsets: readonly Float64Array[]
  /** Modes that the service clears; all if it renews the part. */
  readonly cleared: readonly number[]
  /** Per mode: the most its clock can run from one service to the next; infinite where nothing bounds it. */
  readonly longestInterval: readonly number[]
  readonly use: UseTrack
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

/** Makes a part ready. Without `evidence` nothing of what the log says is taken along. */
export function preparePart(
  model: LifeModel,
  index: number,
  how: { readonly use: UseTrack; readonly hourLifeFactor: number; readonly evidence: boolean },
): PlayedPart {
  const part = model.parts[index]!
  const { use, evidence } = how
  const { letDowns } = model.setFactor
  const rates = yearlyRates(model)
  const lives = part.modes.map((mode) => {
    const life = modeLifeOf(mode, { rates, lowLoadShare: use.lowLoadShare })
    return mode.clock === 'hours' ? { ...life, onsetScale: life.onsetScale * how.hourLifeFactor } : life
  })
  const spans = (of: 'work' | 'stops') =>
    evidence ? part.complete.flatMap((span) => (span.of === of ? [spanAgo(use, span)] : [])) : []
  return {
    part,
    index,
    lives,
    leastOnsets: lives.map(({ shape }) => leastOnsets(shape)),
    cleared: part.modes.flatMap(({ id }, m) =>
      part.service?.renews || part.service?.clears.includes(id) ? [m] : [],
    ),
    longestInterval: lives.map((life) => longestInterval(life, part.service)),
    use,
    checks: part.modes.map((mode) => checksOf(model, mode, evidence)),
    events: evidence ? eventsOf(model, part, use) : [],
    work: spans('work'),
    stops: spans('stops'),
    counted: evidence ? letDowns.map((span) => spanAgo(use, span)) : [],
    untold: evidence ? letDowns.filter(({ count }) => count > 0).map((span) => spanAgo(use, span)) : [],
    broken: evidence ? part.modes.findIndex((mode) => mode.id === part.broken) : -1,
  }
}

/** Above what rounding may add. */
const above = 1 + 1e-9

function longestInterval(life: ModeLife, service: LifePart['service']): number {
  if (life.clock === 'years') return (service?.everyYears ?? Infinity) * above
  if (life.clock === 'hours') return (service?.everyHours ?? Infinity) * life.pace * above
  return Infinity
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
