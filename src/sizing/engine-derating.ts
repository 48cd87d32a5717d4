/**
 * What an engine gives in the air that it gets.
 *
 * @module
 */

import type { Aspiration, SizingLimits } from '../catalogue/sizing-schema.js'
import { requireWithin } from '../units/require.js'

/** The air at the intake of an engine, and the coolant of its charge cooler. */
export interface IntakeAir {
  /** Total pressure. [kPa] */
  readonly pressureKPa: number
  readonly temperatureC: number
  /** Relative humidity, 0 to 1. */
  readonly humidity: number
  readonly chargeCoolantC: number
}

/** Factors on the rating and on the fuel for each kilowatt-hour. */
export interface Derating {
  /** Ratio of indicated power. */
  readonly indicated: number
  readonly power: number
  readonly specificFuel: number
}

/**
 * Pressure of saturated water vapour. [kPa] `0.61094 · exp(17.625 t / (t + 243.04))`, t [°C], −40 to 100.
 *
 * Source: Magnus form; held: recalled. At 25 °C 3.16, where the standard's table prints 3.17.
 */
export function saturationKPa(temperatureC: number): number {
  requireWithin('temperatureC', temperatureC, -40, 100, '°C')
  return 0.61094 * Math.exp((17.625 * temperatureC) / (temperatureC + 243.04))
}

/**
 * Pressure of the standard atmosphere. [kPa] `101.325 (1 − 2.25577·10⁻⁵ h)^5.25588`, h [m], −500 to 6,000.
 *
 * Source: international standard atmosphere; held: recalled.
 */
export function standardPressureKPa(altitudeM: number): number {
  requireWithin('altitudeM', altitudeM, -500, 6000, 'm')
  return 101.325 * (1 - 2.25577e-5 * altitudeM) ** 5.25588
}

/**
 * Derating of an engine. `α = k − 0.7 (1 − k)(1/η − 1)`, `β = k/α`,
 * `k = [(p − aφp_s)/(p_r − aφ_r p_sr)]^m (T_r/T)^n (T_cr/T_c)^s`, p pressure [kPa], φ humidity, p_s saturation [kPa], T
 * intake and T_c coolant temperature [K], η mechanical efficiency; a, m, n, s by the kind of engine. Not capped at 1.
 *
 * Source: ISO 3046-1; held: recalled.
 *
 * @throws RangeError if the air is out of its span, or the engine would give nothing.
 */
export function engineDerating(
  { reference, derating }: Pick<SizingLimits['engine'], 'reference' | 'derating'>,
  of: { readonly aspiration: Aspiration; readonly air: IntakeAir; readonly mechanicalEfficiency: number },
): Derating {
  const { air, mechanicalEfficiency } = of
  requireWithin('pressureKPa', air.pressureKPa, 40, 110, 'kPa')
  requireWithin('temperatureC', air.temperatureC, -40, 90, '°C')
  requireWithin('humidity', air.humidity, 0, 1, '')
  requireWithin('mechanicalEfficiency', mechanicalEfficiency, 0.5, 1, '')
  const { humidityShare, pressure, temperature, chargeCoolant } = derating.find(
    ({ id }) => id === of.aspiration,
  )!
  const dry = (here: IntakeAir) =>
    here.pressureKPa - humidityShare * here.humidity * saturationKPa(here.temperatureC)
  const kelvin = (celsius: number) => celsius + 273
  const k =
    (dry(air) / dry(reference)) ** pressure *
    (kelvin(reference.temperatureC) / kelvin(air.temperatureC)) ** temperature *
    (kelvin(reference.chargeCoolantC) / kelvin(air.chargeCoolantC)) ** chargeCoolant
  const power = k - 0.7 * (1 - k) * (1 / mechanicalEfficiency - 1)
  requireWithin('power', power, 0.05, 2, 'of the rating')
  return { indicated: k, power, specificFuel: k / power }
}

/** Mean effective pressure of a four-stroke engine. [bar] `1200 · P / (V · n)`, P shaft [kW], V swept [l], n [1/min]. Derived. */
export function meanPressureBar(of: {
  readonly shaftKW: number
  readonly sweptLitres: number
  readonly rpm: number
}): number {
  return (1200 * of.shaftKW) / (of.sweptLitres * of.rpm)
}

/**
 * Share of the rating that an engine takes in one step. `min(1, b₀/b)`, b its mean effective pressure at rating and b₀ that
 * up to which all can be taken [bar].
 *
 * Source: practice, fitted to the guide curves of ISO 3046-4 and ISO 8528-5; held: recalled, and weakly.
 */
export function firstStepShare(of: {
  readonly meanPressureBar: number
  readonly fullUpToBar: number
}): number {
  return Math.min(1, of.fullUpToBar / of.meanPressureBar)
}

/**
 * Frequency after a step of load, as a share of that before, while the governor has not answered. `√(1 − ΔP t/H)`, ΔP the
 * step per unit of the base of H, t [s], H [s]. 0 where the set would stall.
 *
 * Source: derived from the energy of the rotating parts.
 */
export function frequencyAfterStep(of: {
  readonly stepShare: number
  readonly seconds: number
  readonly inertiaSeconds: number
}): number {
  return Math.sqrt(Math.max(0, 1 - (of.stepShare * of.seconds) / of.inertiaSeconds))
}

/** Constant of inertia. [s] `H = ½ J ω² / S`, J [kg m²], ω from n [1/min], S [kVA]. Derived. */
export function inertiaSeconds(of: {
  readonly inertiaKgM2: number
  readonly rpm: number
  readonly kVA: number
}): number {
  const omega = (2 * Math.PI * of.rpm) / 60
  return (0.5 * of.inertiaKgM2 * omega * omega) / (1000 * of.kVA)
}
