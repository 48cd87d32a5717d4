/**
 * Heat through an exchanger.
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
