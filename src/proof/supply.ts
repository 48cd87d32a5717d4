/**
 * Volts and frequency of a set: droop, regulation, dips, unbalance.
 *
 * @module
 */

import { imbalancePercent } from './resistance.js'

/** Frequency of a machine. [Hz] `f = n p / 120`, n in 1/min, p poles. */
export function hertzOf(at: { readonly rpm: number; readonly poles: number }): number {
  return (at.rpm * at.poles) / 120
}

/** Number of poles of a machine, from its rated frequency and speed. [1] `p = 120 f / n`, to the nearest pair. */
export function polesOf(at: { readonly hertz: number; readonly rpm: number }): number {
  return Math.round((60 * at.hertz) / at.rpm) * 2
}

/** Speed that makes a frequency. [1/min] `n = 120 f / p` */
export function rpmOf(at: { readonly hertz: number; readonly poles: number }): number {
  return (120 * at.hertz) / at.poles
}

/**
 * Droop. [%] `100 (f_noload − f_full) / f_rated`
 *
 * Source: UFGS 16263A and TM 9-6115-464-34, 4-14; seen.
 */
export function droopPercent(at: {
  readonly noLoadHz: number
  readonly fullLoadHz: number
  readonly ratedHz: number
}): number {
  return shareOf(at.noLoadHz - at.fullLoadHz, at.ratedHz)
}

/** Highest frequency unloaded that a droop allows. [Hz] */
export function highestNoLoadHz(at: { readonly ratedHz: number; readonly droopPercent: number }): number {
  return Number((at.ratedHz * (1 + at.droopPercent / 100)).toPrecision(12))
}

/**
 * Regulation. [%] `100 (V_noload − V_full) / V_full`
 *
 * Source: TM 9-6115-464-34, 4-13; seen.
 */
export function regulationPercent(at: { readonly noLoadV: number; readonly fullLoadV: number }): number {
  return shareOf(at.noLoadV - at.fullLoadV, at.fullLoadV)
}

/** Steady deviation of volts, either side. [%] `100 (V_max − V_min) / (2 V_rated)`. Source: ISO 8528-5; recalled. */
export function steadyVoltsPercent(at: {
  readonly highestV: number
  readonly lowestV: number
  readonly ratedV: number
}): number {
  return shareOf(at.highestV - at.lowestV, 2 * at.ratedV)
}

/** A share in percent, without the last digits of the division. [%] */
export function shareOf(part: number, whole: number): number {
  return Number(((100 * part) / whole).toPrecision(12))
}

/** Unbalance of line volts by NEMA MG 1: largest deviation from the mean, of the mean. [%] Not the spread over the mean, which overstates. */
export const unbalancePercent = imbalancePercent

/**
 * Unbalance as negative over positive sequence, from the three line volts. [%]
 * `b = ΣV⁴ / (ΣV²)²`, `100 √((1 − √(3 − 6b)) / (1 + √(3 − 6b)))`
 *
 * Source: IEC definition; recalled.
 */
export function sequenceUnbalancePercent(lines: readonly [number, number, number]): number {
  const most = Math.max(...lines)
  if (most === 0) return 0
  const squares = lines.map((line) => (line / most) ** 2)
  const sum = squares.reduce((all, one) => all + one, 0)
  const b = squares.reduce((all, one) => all + one ** 2, 0) / sum ** 2
  const root = Math.sqrt(Math.max(0, 3 - 6 * b))
  return 100 * Math.sqrt(Math.max(0, (1 - root) / (1 + root)))
}

/** Load after each step, and what each puts on. [kW] Shares of the rating in %. */
export function loadSteps(of: {
  readonly ratingKw: number
  readonly shares: readonly number[]
}): readonly { readonly kW: number; readonly by: number }[] {
  const loads = of.shares.map((share) => Number(((share * of.ratingKw) / 100).toPrecision(6)))
  return loads.map((kW, at) => ({ kW, by: Number((kW - (loads[at - 1] ?? 0)).toPrecision(6)) }))
}

/** Volts at two loads in series across both legs, as an open neutral leaves them. [V] */
export function openNeutralVolts(at: {
  readonly lineV: number
  readonly firstOhm: number
  readonly secondOhm: number
}): readonly [number, number] {
  const first = (at.lineV * at.firstOhm) / (at.firstOhm + at.secondOhm)
  return [first, at.lineV - first]
}
