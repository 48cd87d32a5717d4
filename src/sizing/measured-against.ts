/**
 * A recording and the list of loads against each other.
 *
 * @module
 */

import { stepW } from './demand-grid.js'
import { chancesWhileOn, curveOf, loadAt, type MeasuredBody } from './measured-summary.js'

/** Mean, even chance, one hour in twenty, one in a hundred, and the most. [kW] */
export interface CurvePoints {
  readonly mean: number
  readonly p50: number
  readonly p95: number
  readonly p99: number
  readonly most: number
}

export interface AgainstList {
  readonly measuredKW: CurvePoints
  readonly listKW: CurvePoints
  /** Measured over listed mean. */
  readonly factor: number
  /** Where the curves lie furthest apart: the load, and the two shares of the time. */
  readonly widest: { readonly kW: number; readonly measured: number; readonly list: number }
}

/** Chances by steps of power while the set runs; of a recording, while power is drawn. */
interface Chances {
  readonly chances: readonly number[]
  readonly stepKW: number
  /** Where in its step a load lies: the middle for what a meter showed, the beginning for what was rounded to steps. */
  readonly at: 'middle' | 'beginning'
}

/** Compares two load-duration curves. */
export function againstList(measured: Chances & { readonly mostKW: number }, list: Chances): AgainstList {
  let widest = { kW: 0, measured: 1, list: 1 }
  const top = Math.max(measured.chances.length * measured.stepKW, list.chances.length * list.stepKW)
  for (let kW = 0; kW <= top; kW += measured.stepKW) {
    const here = { kW, measured: shareFrom(measured, kW), list: shareFrom(list, kW) }
    if (Math.abs(here.measured - here.list) > Math.abs(widest.measured - widest.list)) widest = here
  }
  const measuredKW = { ...pointsOf(measured), most: measured.mostKW }
  const listKW = pointsOf(list)
  return { measuredKW, listKW, factor: listKW.mean > 0 ? measuredKW.mean / listKW.mean : 1, widest }
}

/** A recording against the active power of the list, by steps of 100 W; undefined where either draws nothing. */
export function recordingAgainst(recording: MeasuredBody, active: Float64Array): AgainstList | undefined {
  const chances = Array.from(active)
  const measured = chancesWhileOn(recording)
  if (chances.length <= 1 || measured.length === 0) return undefined
  return againstList(
    { chances: measured, stepKW: recording.stepKw, at: 'middle', mostKW: recording.mostKw },
    { chances, stepKW: stepW / 1000, at: 'beginning' },
  )
}

function shareFrom(of: Chances, kW: number): number {
  return of.chances.reduce((sum, chance, step) => sum + (loadOf(of, step) >= kW ? chance : 0), 0)
}

function loadOf({ stepKW, at }: Chances, step: number): number {
  return (step + (at === 'middle' ? 0.5 : 0)) * stepKW
}

function pointsOf(of: Chances): CurvePoints {
  const curve = curveOf(of.chances, of.stepKW, of.at)
  return {
    mean: of.chances.reduce((sum, chance, step) => sum + chance * loadOf(of, step), 0),
    p50: loadAt(curve, 0.5),
    p95: loadAt(curve, 0.05),
    p99: loadAt(curve, 0.01),
    most: curve[0]?.kW ?? 0,
  }
}
