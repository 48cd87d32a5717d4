/**
 * A recording in the form in which it is kept, and what is read off it.
 *
 * @module
 */

import type { Body } from '../logbook/kinds.js'
import { type Folded, stepKW } from './measured-fold.js'
import type { HowMeasured } from './measured-table.js'

export type MeasuredBody = Body<'measured'>

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

/** The load-duration curve of chances by steps, the middle of each taken, in falling order of the load. */
export function curveOf(chances: readonly number[], ofStepKW: number): CurvePoint[] {
  const curve: CurvePoint[] = []
  let share = 0
  for (let step = chances.length - 1; step >= 0; step--) {
    if (!(chances[step]! > 0)) continue
    share += chances[step]!
    curve.push({ kW: (step + 0.5) * ofStepKW, share: Math.min(1, share) })
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
  }
}

/** The recording and the list of loads against each other. */
export interface AgainstList {
  readonly measuredKW: {
    readonly mean: number
    readonly p50: number
    readonly p95: number
    readonly p99: number
    readonly most: number
  }
  readonly listKW: {
    readonly mean: number
    readonly p50: number
    readonly p95: number
    readonly p99: number
    readonly most: number
  }
  /** Measured over listed mean: by so much the list is corrected. */
  readonly factor: number
  /** Where the curves lie furthest apart: the load, and the two shares of the time. */
  readonly widest: { readonly kW: number; readonly measured: number; readonly list: number }
}

/** Compares two load-duration curves, of chances by step while power is drawn. */
export function againstList(
  measured: { readonly chances: readonly number[]; readonly stepKW: number; readonly mostKW: number },
  list: { readonly chances: readonly number[]; readonly stepKW: number },
): AgainstList {
  const points = (chances: readonly number[], step: number, most?: number) => {
    const curve = curveOf(chances, step)
    const mean = chances.reduce((sum, chance, at) => sum + chance * (at + 0.5) * step, 0)
    return {
      mean,
      p50: loadAt(curve, 0.5),
      p95: loadAt(curve, 0.05),
      p99: loadAt(curve, 0.01),
      most: most ?? curve[0]?.kW ?? 0,
    }
  }
  const above = (chances: readonly number[], step: number, kW: number) =>
    chances.reduce((sum, chance, at) => sum + ((at + 0.5) * step >= kW ? chance : 0), 0)
  let widest = { kW: 0, measured: 1, list: 1 }
  const top = Math.max(measured.chances.length * measured.stepKW, list.chances.length * list.stepKW)
  for (let kW = 0; kW <= top; kW += measured.stepKW) {
    const here = {
      kW,
      measured: above(measured.chances, measured.stepKW, kW),
      list: above(list.chances, list.stepKW, kW),
    }
    if (Math.abs(here.measured - here.list) > Math.abs(widest.measured - widest.list)) widest = here
  }
  const measuredKW = points(measured.chances, measured.stepKW, measured.mostKW)
  const listKW = points(list.chances, list.stepKW)
  return { measuredKW, listKW, factor: listKW.mean > 0 ? measuredKW.mean / listKW.mean : 1, widest }
}
