/**
 * A recording in the form in which it is kept, and what is read off it.
 *
 * @module
 */

import { firstDay, type LogDate } from '../logbook/dates.js'
import { type Body, type Entry, isKind } from '../logbook/kinds.js'
import { type Folded, stepKW } from './measured-fold.js'
import type { HowMeasured } from './measured-table.js'

export type MeasuredBody = Body<'measured'>

/** The latest recording of what the set gives, as far as a day. */
export function recordingOf(
  entries: readonly Entry[],
  of: { readonly set: string; readonly asOf: LogDate },
): MeasuredBody | undefined {
  return entries
    .filter((entry) => isKind(entry, 'measured'))
    .findLast((entry) => entry.set === of.set && entry.body.of === 'set' && firstDay(entry.from) <= of.asOf)
    ?.body
}

/** Share of the time at which a load of so much or more is drawn. */
export interface CurvePoint {
  readonly kW: number
  readonly share: number
}

/** What an entry says of a recording. Seconds are whole, so that the entry stays short. */
export function measuredBody(
  folded: Folded,
  read: Pick<HowMeasured, 'columns' | 'assumed' | 'rows' | 'badRows'>,
  about: Pick<MeasuredBody, 'of' | 'file' | 'source'>,
): MeasuredBody {
  const { mostKVA, mostLegKW } = folded
  return {
    ...about,
    rows: read.rows,
    badRows: read.badRows,
    coveredS: Math.round(folded.coveredS),
    gapS: Math.round(folded.gapS),
    days: folded.days,
    starts: folded.starts,
    energyKwh: rounded(folded.kWh),
    mostKw: rounded(folded.mostKW),
    ...(mostKVA === undefined ? {} : { mostKva: rounded(mostKVA) }),
    ...(mostLegKW === undefined ? {} : { mostLegKw: mostLegKW.map(rounded) }),
    stepKw: stepKW,
    hours: folded.seconds.map(withoutEnd),
    columns: read.columns.map(({ field, heading, unit }) =>
      `${field} from "${heading}"${unit === '' ? '' : `, ${unit}`}`.slice(0, 200),
    ),
    ...(read.assumed.length === 0 ? {} : { assumed: [...read.assumed] }),
  }
}

function rounded(value: number): number {
  return Math.round(value * 1000) / 1000
}

function withoutEnd(seconds: Float64Array): number[] {
  const list = Array.from(seconds, Math.round)
  return list.slice(0, list.findLastIndex((each) => each > 0) + 1)
}

/** Seconds at each step of power, over all hours of the day or some of them. */
export function secondsByStep(body: MeasuredBody, hours?: readonly number[]): number[] {
  const sums: number[] = []
  body.hours.forEach((list, hour) => {
    if (hours !== undefined && !hours.includes(hour)) return
    list.forEach((each, step) => {
      sums[step] = (sums[step] ?? 0) + each
    })
  })
  return Array.from(sums, (sum) => sum ?? 0)
}

/** Chances of each step while power is drawn at all: time under one step counts as the set standing still. */
export function chancesWhileOn(body: MeasuredBody, hours?: readonly number[]): number[] {
  const [, ...on] = secondsByStep(body, hours)
  const total = on.reduce((sum, each) => sum + each, 0)
  return total === 0 ? [] : [0, ...on.map((each) => each / total)]
}

/** The load-duration curve of chances by steps, in falling order of the load; the middle of each step taken, or its beginning. */
export function curveOf(
  chances: readonly number[],
  ofStepKW: number,
  at: 'middle' | 'beginning' = 'middle',
): CurvePoint[] {
  const inStep = at === 'middle' ? 0.5 : 0
  const curve: CurvePoint[] = []
  let share = 0
  for (let step = chances.length - 1; step >= 0; step--) {
    if (!(chances[step]! > 0)) continue
    share += chances[step]!
    curve.push({ kW: (step + inStep) * ofStepKW, share: Math.min(1, share) })
  }
  return curve
}

/** Load that is drawn, or more, for a share of the time; 0 where there is none. [kW] */
export function loadAt(curve: readonly CurvePoint[], share: number): number {
  return curve.find((point) => point.share >= share - 1e-12)?.kW ?? 0
}

/** How a recorded day goes: means over the days of the recording. */
export interface RecordedDay {
  /** With power drawn. [h/d] */
  readonly hours: number
  readonly starts: number
  readonly kWh: number
  readonly meanKW: number
  /** Share of the running hours under three tenths of the rating. */
  readonly lowLoadShare: number
  /** Share of the days with power drawn, by hour of the day. */
  readonly onByHour: readonly number[]
  /** Mean while power is drawn, by hour of the day. [kW] */
  readonly meanByHour: readonly number[]
  /** Exceeded one hour in twenty while power is drawn, by hour of the day. [kW] */
  readonly p95ByHour: readonly number[]
}

/**
 * What a day of the recording comes to. Where the recording covers only part of its days, such as a meter that the set itself
 * feeds, the time it does not cover counts as standing still.
 */
export function recordedDay(body: MeasuredBody, ratingKW: number): RecordedDay {
  const { stepKw, days } = body
  const middle = (step: number) => (step + 0.5) * stepKw
  const on = body.hours.map((list) => list.slice(1).reduce((sum, each) => sum + each, 0))
  const energy = body.hours.map((list) =>
    list.reduce((sum, each, step) => sum + (step === 0 ? 0 : each * middle(step)), 0),
  )
  const onS = on.reduce((sum, each) => sum + each, 0)
  const lowS = secondsByStep(body).reduce(
    (sum, each, step) => sum + (step > 0 && middle(step) < 0.3 * ratingKW ? each : 0),
    0,
  )
  return {
    hours: onS / 3600 / days,
    starts: body.starts / days,
    kWh: body.energyKwh / days,
    meanKW: onS > 0 ? energy.reduce((sum, each) => sum + each, 0) / onS : 0,
    lowLoadShare: onS > 0 ? lowS / onS : 0,
    onByHour: on.map((each) => Math.min(1, each / (3600 * days))),
    meanByHour: energy.map((each, hour) => (on[hour]! > 0 ? each / on[hour]! : 0)),
    p95ByHour: on.map((_, hour) => loadAt(curveOf(chancesWhileOn(body, [hour]), stepKw), 0.05)),
  }
}
