/**
 * Batteries, chargers, sun and shore: one formula each.
 *
 * @module
 */

import { requireWithin } from '../units/require.js'

/** What a battery of a kind takes and lasts. */
export interface BatteryKind {
  /** Share of the capacity that is used. */
  readonly depth: number
  /** Such cycles before four fifths of the capacity are left. */
  readonly cycles: number
  /** However little it is used. [years] */
  readonly calendarYears: number
  /** Out of the cells over into them. */
  readonly cellEfficiency: number
  /** Peukert's exponent. */
  readonly exponent: number
  readonly pricePerKWh: number
}

/**
 * Depth, cycles, years, efficiency and exponent. Source: practice, save the cycles of the two of lead, quoted from a
 * seller's comparison page and therefore on the kind side; prices and the calendar life of lead are the compiler's guess.
 */
export const batteryKinds = {
  lithium: {
    depth: 0.8,
    cycles: 3000,
    calendarYears: 13,
    cellEfficiency: 0.94,
    exponent: 1.03,
    pricePerKWh: 600,
  },
  'lead-sealed': {
    depth: 0.5,
    cycles: 600,
    calendarYears: 7,
    cellEfficiency: 0.8,
    exponent: 1.12,
    pricePerKWh: 250,
  },
  'lead-open': {
    depth: 0.5,
    cycles: 350,
    calendarYears: 6,
    cellEfficiency: 0.8,
    exponent: 1.25,
    pricePerKWh: 180,
  },
} as const satisfies Readonly<Record<string, BatteryKind>>

/** Of what stands between battery and socket. Source: practice. */
export const converterEfficiency = { charger: 0.9, inverter: 0.92 }
/** What lies flat on a deck gives of its rating times the hours of full sun. Source: practice. */
export const deckPerformance = 0.7

/**
 * Capacity left at a discharge faster than the one it is rated at. [Ah] `C · (C / (I·H))^(k−1)`, C the rated capacity [Ah]
 * over H hours, I the current [A], k Peukert's exponent, 1 to 2. Never more than C.
 *
 * Source: Peukert's law, recalled.
 */
export function peukertAh(bank: {
  readonly ratedAh: number
  readonly ratedHours: number
  readonly amps: number
  readonly exponent: number
}): number {
  requireWithin('exponent', bank.exponent, 1, 2, '')
  const ratedAmps = bank.ratedAh / bank.ratedHours
  return bank.ratedAh * Math.min(1, (ratedAmps / bank.amps) ** (bank.exponent - 1))
}

/** Rated capacity for so much at the sockets. [kWh] `E / (η·D)`, η the inverter's efficiency, D the depth. Source: derived. */
export function bankKWh(wanted: {
  readonly socketKWh: number
  readonly inverterEfficiency: number
  readonly depth: number
}): number {
  return wanted.socketKWh / (wanted.inverterEfficiency * wanted.depth)
}

/** Cycle life as energy out of the bank. [kWh] `B·D·N`. Source: derived. */
export function lifetimeKWh(bank: {
  readonly ratedKWh: number
  readonly depth: number
  readonly cycles: number
}): number {
  return bank.ratedKWh * bank.depth * bank.cycles
}

/** Energy of a day's sun. [kWh] `W·h·p / 1000`: rating [W], hours of full sun, share that is got of it. Source: derived. */
export function sunKWhPerDay(panels: {
  readonly watts: number
  readonly fullSunHours: number
  readonly performance: number
}): number {
  return (panels.watts * panels.fullSunHours * panels.performance) / 1000
}

/** What a shore inlet gives. [kVA] `A·V / 1000`. Source: definition. */
export function shoreKVA(inlet: { readonly amps: number; readonly volts: number }): number {
  return (inlet.amps * inlet.volts) / 1000
}
