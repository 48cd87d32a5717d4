/**
 * Heat through an exchanger, and what is left of it in the exhaust.
 *
 * @module
 */

/** Temperatures at the four ends of an exchanger. [°C] */
export interface FourTemperatures {
  readonly coolantInC: number
  readonly coolantOutC: number
  readonly seaInC: number
  readonly seaOutC: number
}

/** Mean of two temperature differences along an exchanger. [K] `(a − b) / ln(a / b)`, and a where they are alike. */
export function logMeanKelvin(ends: { readonly one: number; readonly other: number }): number {
  const { one, other } = ends
  return Math.abs(one - other) < 1e-9 * Math.max(one, other) ? one : (one - other) / Math.log(one / other)
}

/** What four temperatures tell without a flow meter, counterflow. */
export interface ExchangerState {
  /** [K] */
  readonly seaRise: number
  /** [K] */
  readonly coolantDrop: number
  /** [K] */
  readonly logMean: number
  /** Transfer units of the sea side: `(T_co − T_ci) / LMTD`. [1] */
  readonly transferUnits: number
}

/** Four temperatures worked out. */
export function exchangerState(at: FourTemperatures): ExchangerState {
  const seaRise = at.seaOutC - at.seaInC
  const logMean = logMeanKelvin({ one: at.coolantInC - at.seaOutC, other: at.coolantOutC - at.seaInC })
  return { seaRise, coolantDrop: at.coolantInC - at.coolantOutC, logMean, transferUnits: seaRise / logMean }
}

/** Heat transfer of an exchanger. [kW/K] `q / LMTD` */
export function transferKwPerKelvin(at: { readonly heatKw: number; readonly logMean: number }): number {
  return at.heatKw / at.logMean
}

/** Flow of water that takes up a heat. [kg/s] `q / (c ΔT)`, c in kJ/kgK. */
export function waterKgPerSecond(at: {
  readonly heatKw: number
  readonly riseK: number
  readonly heatCapacity: number
}): number {
  return at.heatKw / (at.heatCapacity * at.riseK)
}

/**
 * Wet exhaust if none of the water turned to vapour. [°C] `(m_w c_w T_w + m_g c_g T_g) / (m_w c_w + m_g c_g)`
 * It bounds the temperature from above.
 */
export function dryMixC(at: {
  readonly waterKgPerSecond: number
  readonly waterC: number
  readonly gasKgPerSecond: number
  readonly gasC: number
  readonly waterHeatCapacity: number
  readonly gasHeatCapacity: number
}): number {
  const water = at.waterKgPerSecond * at.waterHeatCapacity
  const gas = at.gasKgPerSecond * at.gasHeatCapacity
  return (water * at.waterC + gas * at.gasC) / (water + gas)
}

/** Pressure of a column of water that stands in a lift. [kPa] `ρ g h / 1000` */
export function columnKpa(at: { readonly metres: number; readonly density: number }): number {
  return (at.density * 9.80665 * at.metres) / 1000
}
