/**
 * What a motor takes when it starts, from its letter, its nameplate or the tables.
 *
 * @module
 */

import type { Motors } from '../catalogue/load-schema.js'
import { requireWithin } from '../units/require.js'

/** One or three phases. */
export type Phases = 1 | 3

/** Locked-rotor apparent power per horsepower, from the lower end (with it) to the upper (without). [kVA/hp] */
export interface LetterBand {
  readonly from: number
  /** Undefined for the last letter, which has no upper end. */
  readonly below?: number
}

/**
 * The band of a code letter.
 *
 * Source: the motor tables of the catalogue (NEMA MG 1 10.37.2).
 *
 * @throws RangeError if no motor has that letter.
 */
export function letterBand(motors: Motors, letter: string): LetterBand {
  const row = motors.letters.find((one) => one.letter === letter)
  if (row === undefined) {
    const known = motors.letters.map((one) => one.letter).join(', ')
    throw new RangeError(`letter must be one of ${known}; found ${letter}`)
  }
  const { fromKVAPerHp: from, belowKVAPerHp: below } = row
  return below === undefined ? { from } : { from, below }
}

/** The letter in whose band a locked-rotor apparent power falls. [kVA/hp] 0 to 1000. */
export function letterOf(motors: Motors, kVAPerHp: number): string {
  requireWithin('kVAPerHp', kVAPerHp, 0, 1000, 'kVA/hp')
  const row = motors.letters.find(({ belowKVAPerHp = Infinity }) => kVAPerHp < belowKVAPerHp)
  return row!.letter
}

/**
 * Apparent power when starting. [VA] `1000 · hp · k`, k the letter's value [kVA/hp]: the upper end of the band, and for
 * the last letter its lower end.
 *
 * Source: NEMA MG 1 10.37.2, quoted.
 */
export function startVaOfLetter(
  motors: Motors,
  { horsepower, letter }: { readonly horsepower: number; readonly letter: string },
): number {
  requireWithin('horsepower', horsepower, 0.01, 200, 'hp')
  const { from, below = from } = letterBand(motors, letter)
  return 1000 * horsepower * below
}

/** Current on a line. [A] `I = S / (k · V)`, S [VA], V between lines [V], k = 1 for one phase and √3 for three. */
export function lineAmps(of: {
  readonly va: number
  readonly volts: number
  readonly phases: Phases
}): number {
  return of.va / (phaseFactor(of.phases) * of.volts)
}

/** Apparent power. [VA] `S = k · V · I`, V between lines [V], k = 1 for one phase and √3 for three. */
export function apparentVa(of: {
  readonly amps: number
  readonly volts: number
  readonly phases: Phases
}): number {
  return phaseFactor(of.phases) * of.volts * of.amps
}

/** Letter value of a motor. [kVA/hp] `k · V · I / (1000 · hp)`, I the locked-rotor current [A]. */
export function letterValue(of: {
  readonly lockedRotorA: number
  readonly volts: number
  readonly phases: Phases
  readonly horsepower: number
}): number {
  return apparentVa({ ...of, amps: of.lockedRotorA }) / (1000 * of.horsepower)
}

/** Full-load current of the tables for a motor of that power at that voltage [A]; undefined where they have none. */
export function fullLoadAmps(
  motors: Motors,
  of: { readonly horsepower: number; readonly volts: number; readonly phases: Phases },
): number | undefined {
  const table = of.phases === 1 ? motors.singlePhase : motors.threePhase
  const row = table.find(({ horsepower }) => Math.abs(horsepower - of.horsepower) < 1e-3)
  return row?.amps.find(({ volts }) => volts === of.volts)?.amps
}

/**
 * Locked-rotor current of a single-phase motor of which only the power is known [A]: six times the full-load current of
 * the table. Undefined where the table has no such motor.
 *
 * Source: National Electrical Code, table 430.251(A); held: recalled.
 */
export function lockedRotorAmps(
  motors: Motors,
  of: { readonly horsepower: number; readonly volts: number },
): number | undefined {
  const full = fullLoadAmps(motors, { ...of, phases: 1 })
  return full === undefined ? undefined : motors.lockedRotorTimesFullLoad.singlePhase * full
}

function phaseFactor(phases: Phases): number {
  return phases === 1 ? 1 : Math.sqrt(3)
}
