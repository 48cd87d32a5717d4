/**
 * How far the voltage dips when a motor starts.
 *
 * The alternator stands for its transient reactance: after the first cycles that governs, and the regulator begins to help
 * only after 50 to 100 ms (NEMA MG 1 part 32; held: recalled).
 *
 * @module
 */

import { requireWithin } from '../units/require.js'

/** What starts, and the alternator that it starts on. */
export interface MotorStart {
  /** Apparent power of the start at nominal voltage. [kVA] */
  readonly startKVA: number
  /** Power factor meanwhile; 0 gives the simple form, slightly too dark. */
  readonly startPowerFactor: number
  /** Rating of the alternator. [kVA] */
  readonly setKVA: number
  /** Transient reactance, per unit of that rating. */
  readonly reactance: number
}

/** What runs already. */
export interface Running {
  readonly kW: number
  readonly kvar: number
}

/**
 * Dip as a share of the voltage before. `d = 1 − |1 + jX·y₀| / |1 + jX(y₀ + y)|`, y = (S_s / S_g)(cos φ − j sin φ) the
 * start, y₀ = (P − jQ) / S_g what runs, both as constant impedances per unit; X the transient reactance per unit.
 * Set 0.1 to 500 kVA, start 0 to 1000 kVA, X 0.01 to 1.
 *
 * Source: derived from two impedances in series.
 */
export function voltageDip(start: MotorStart, running: Running = { kW: 0, kvar: 0 }): number {
  requireWithin('setKVA', start.setKVA, 0.1, 500, 'kVA')
  requireWithin('startKVA', start.startKVA, 0, 1000, 'kVA')
  requireWithin('startPowerFactor', start.startPowerFactor, 0, 1, '')
  requireWithin('reactance', start.reactance, 0.01, 1, '')
  const { active, reactive } = ofStart(start)
  const before = Math.hypot(1 + running.kvar * ofSet(start), running.kW * ofSet(start))
  const after = Math.hypot(1 + running.kvar * ofSet(start) + reactive, running.kW * ofSet(start) + active)
  return 1 - before / after
}

/** X · y of the start, active and reactive. */
function ofStart(start: MotorStart): { readonly active: number; readonly reactive: number } {
  const { startKVA, startPowerFactor: cos } = start
  const size = ofSet(start) * startKVA
  return { active: size * cos, reactive: size * Math.sqrt(1 - cos * cos) }
}

/** X per kVA. */
function ofSet({ reactance, setKVA }: MotorStart): number {
  return reactance / setKVA
}

/** Between two values, neither of them within. */
export interface Span {
  readonly above: number
  readonly below: number
}

/**
 * The reactive power already running [kvar] between which and which the dip exceeds a limit, at so much active power [kW];
 * undefined where it never does. What draws reactive power already has had its field raised for it, so the lower end is
 * below nought in all that is met aboard. Solves `u² + a² = k [(u + b)² + (a + c)²]` for u = 1 + XQ, with a = XP, b and c
 * the start's reactive and active parts and k = (1 − d)².
 *
 * Source: derived from `voltageDip`.
 */
export function reactiveExceeding(
  start: MotorStart,
  of: { readonly runningKW: number; readonly dip: number },
): Span | undefined {
  const { active: c, reactive: b } = ofStart(start)
  const a = of.runningKW * ofSet(start)
  const k = (1 - of.dip) ** 2
  const half = (k * b) / (1 - k)
  const rest = (a * a - k * b * b - k * (a + c) ** 2) / (1 - k)
  const inside = half * half - rest
  if (inside <= 0) return undefined
  const root = Math.sqrt(inside)
  return { above: (half - root - 1) / ofSet(start), below: (half + root - 1) / ofSet(start) }
}

/** Dip of a start with nothing running and in phase. `d = S_s / (S_s + S_g / X)`. NEMA MG 1 part 32; held: recalled. */
export function simpleDip(start: Omit<MotorStart, 'startPowerFactor'>): number {
  return voltageDip({ ...start, startPowerFactor: 0 })
}

/** Largest start that keeps to a dip. [kVA] `S_s = d / (1 − d) · S_g / X`. Source: derived. */
export function largestStartKVA(of: {
  readonly dip: number
  readonly setKVA: number
  readonly reactance: number
}): number {
  requireWithin('dip', of.dip, 0, 0.99, '')
  return ((of.dip / (1 - of.dip)) * of.setKVA) / of.reactance
}

/** Smallest alternator on which a start keeps to a dip. [kVA] `S_g = X · S_s (1 − d) / d`. Source: derived. */
export function smallestSetKVA(of: {
  readonly dip: number
  readonly startKVA: number
  readonly reactance: number
}): number {
  requireWithin('dip', of.dip, 0.001, 1, '')
  return (of.reactance * of.startKVA * (1 - of.dip)) / of.dip
}

/** Torque left to a motor. `(1 − d)²` of its own. Source: derived. */
export function torqueLeft(dip: number): number {
  return (1 - dip) ** 2
}

/** Active power that a start takes at the dip. [kW] `S_s · cos φ · (1 − d)²`. Source: derived. */
export function startKW(start: MotorStart, running?: Running): number {
  return start.startKVA * start.startPowerFactor * torqueLeft(voltageDip(start, running))
}

/**
 * A reactance per unit at another frequency, rating and voltage. `X' = X · f'/f · S'/S · (V/V')²`.
 *
 * Source: derived.
 */
export function reactanceAt(
  of: { readonly reactance: number; readonly hertz: number; readonly kVA: number; readonly volts: number },
  to: { readonly hertz: number; readonly kVA: number; readonly volts: number },
): number {
  return of.reactance * (to.hertz / of.hertz) * (to.kVA / of.kVA) * (of.volts / to.volts) ** 2
}
