/**
 * Sea water, exhaust and air that a set needs.
 *
 * @module
 */

import type { SizingLimits } from '../catalogue/sizing-schema.js'
import { requireWithin } from '../units/require.js'
import { saturationKPa } from './engine-derating.js'

/** A liquid, as far as it carries heat. */
export interface Coolant {
  readonly kJPerKgK: number
  readonly kgPerM3: number
}

export function seaWater({ seaKJPerKgK, seaKgPerM3 }: SizingLimits['water']): Coolant {
  return { kJPerKgK: seaKJPerKgK, kgPerM3: seaKgPerM3 }
}

export function freshWater({ freshKJPerKgK, freshKgPerM3 }: SizingLimits['water']): Coolant {
  return { kJPerKgK: freshKJPerKgK, kgPerM3: freshKgPerM3 }
}

/** Flow that carries heat off. [l/min] `60000 · q / (c · ΔT · ρ)`, q [kW], ΔT [K]. Derived. */
export function flowLitresPerMinute(
  coolant: Coolant,
  of: { readonly heatKW: number; readonly riseK: number },
): number {
  requireWithin('riseK', of.riseK, 0.1, 100, 'K')
  return (60_000 * of.heatKW) / (coolant.kJPerKgK * of.riseK * coolant.kgPerM3)
}

const gravity = 9.80665

/** Pressure of a standing column. [kPa] `ρ g h`, h [m]. */
export function columnKPa({ kgPerM3 }: Coolant, heightM: number): number {
  return (kgPerM3 * gravity * heightM) / 1000
}

/** Height to which a back pressure lifts a full column. [m] */
export function liftM({ kgPerM3 }: Coolant, backPressureKPa: number): number {
  return (1000 * backPressureKPa) / (kgPerM3 * gravity)
}

/** What mixes in a wet exhaust. */
export interface WetExhaust {
  readonly waterKgPerS: number
  readonly waterC: number
  readonly waterKJPerKgK: number
  readonly gasKgPerS: number
  readonly gasC: number
  readonly gasKJPerKgK: number
}

/** Temperature if no water turned to steam, which is the most it can be. [°C] Mean of both by their heat capacities. Derived. */
export function dryMixC(of: WetExhaust): number {
  const water = of.waterKgPerS * of.waterKJPerKgK
  const gas = of.gasKgPerS * of.gasKJPerKgK
  return (water * of.waterC + gas * of.gasC) / (water + gas)
}

/** Heat of evaporation and water already in the gas. [kJ/kg, kg/kg] Practice. */
const steam = { kJPerKg: 2400, inGas: 0.055 }

/**
 * Temperature if the gas leaves saturated. [°C] Solves `m_g c_g (T_g − T) = m_w c_w (T − T_w) + m_g h max(0, w − w₀)`,
 * `w = 0.622 p_s / (101.325 − p_s)`, by halving.
 *
 * Source: derived; h 2,400 kJ/kg and w₀ 0.055 practice.
 */
export function saturatedMixC(of: WetExhaust): number {
  const gas = of.gasKgPerS * of.gasKJPerKgK
  const water = of.waterKgPerS * of.waterKJPerKgK
  const surplus = (t: number) => {
    const pressure = saturationKPa(t)
    const vapour = (0.622 * pressure) / (101.325 - pressure)
    return (
      gas * (of.gasC - t) -
      water * (t - of.waterC) -
      of.gasKgPerS * steam.kJPerKg * Math.max(0, vapour - steam.inGas)
    )
  }
  let [low, high] = [of.waterC, 99.9]
  for (let round = 0; round < 60; round += 1) {
    const middle = (low + high) / 2
    if (surplus(middle) > 0) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** Sea water at which the dry mix comes to a temperature. [kg/s] */
export function waterForMix(of: Omit<WetExhaust, 'waterKgPerS'>, mixC: number): number {
  return (of.gasKgPerS * of.gasKJPerKgK * (of.gasC - mixC)) / (of.waterKJPerKgK * (mixC - of.waterC))
}

/** Air that a four-stroke engine burns. [m³/h] `V · n/2 · η · 60/1000`, V swept [l], n [1/min], η volumetric. Derived. */
export function combustionM3PerHour(of: {
  readonly sweptLitres: number
  readonly rpm: number
  readonly volumetricEfficiency: number
}): number {
  return (of.sweptLitres / 1000) * (of.rpm / 2) * of.volumetricEfficiency * 60
}

/** Air at about 35 °C. Recalled. */
const air = { kgPerM3: 1.15, kJPerKgK: 1.005 }

/** Air that carries heat out of the engine space. [m³/h] `3600 · q / (ρ c ΔT)`, q [kW], ΔT [K]. Derived. */
export function coolingM3PerHour(of: { readonly heatKW: number; readonly riseK: number }): number {
  requireWithin('riseK', of.riseK, 0.1, 100, 'K')
  return (3600 * of.heatKW) / (air.kgPerM3 * air.kJPerKgK * of.riseK)
}

/** Mass of air. [kg] ρ at about 35 °C. */
export function airKg(m3: number): number {
  return air.kgPerM3 * m3
}

/** Free opening. [cm²] `10⁴ · V̇ / (3600 · v)`, V̇ [m³/h], v [m/s]. */
export function openingCm2(of: { readonly m3PerHour: number; readonly metresPerSecond: number }): number {
  return (1e4 * of.m3PerHour) / (3600 * of.metresPerSecond)
}
