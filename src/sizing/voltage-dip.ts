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

/** A start on an alternator, but for one of the two. */
type Bearing = Pick<MotorStart, 'startPowerFactor' | 'reactance'> & { readonly dip: number }

/**
 * Start that keeps to a dip with nothing running, over the rating of the alternator. `(√(1/(1 − d)² − cos² φ) − sin φ) / X`; in
 * phase, φ = 90°, `d / ((1 − d) X)`.
 *
 * Source: derived from `voltageDip`.
 */
function startOverSet({ dip, reactance, startPowerFactor: cos }: Bearing): number {
  requireWithin('dip', dip, 0.001, 0.99, '')
  requireWithin('startPowerFactor', cos, 0, 1, '')
  return (Math.sqrt((1 - dip) ** -2 - cos * cos) - Math.sqrt(1 - cos * cos)) / reactance
}

/** Largest start that keeps to a dip. [kVA] Source: derived. */
export function largestStartKVA(of: Bearing & Pick<MotorStart, 'setKVA'>): number {
  return startOverSet(of) * of.setKVA
}

/** Smallest alternator on which a start keeps to a dip. [kVA] Source: derived. */
export function smallestSetKVA(of: Bearing & Pick<MotorStart, 'startKVA'>): number {
  return of.startKVA / startOverSet(of)
}

/** Two starts on one alternator at once: active and reactive power are added apart. */
export function startsTogether(one: MotorStart, other: MotorStart): MotorStart {
  const active = one.startKVA * one.startPowerFactor + other.startKVA * other.startPowerFactor
  const reactive = [one, other].reduce(
    (sum, { startKVA, startPowerFactor: cos }) => sum + startKVA * Math.sqrt(1 - cos * cos),
    0,
  )
  const startKVA = Math.hypot(active, reactive)
  return { ...one, startKVA, startPowerFactor: startKVA > 0 ? Math.min(1, active / startKVA) : 0 }
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
 * A reactance per unit at another frequency and on another rating, the voltage the same. `X' = X · f'/f · S'/S`.
 *
 * Source: derived.
 */
export function reactanceAt(
  of: { readonly reactance: number; readonly hertz: number; readonly kVA: number },
  to: { readonly hertz: number; readonly kVA: number },
): number {
  return of.reactance * (to.hertz / of.hertz) * (to.kVA / of.kVA)
}
