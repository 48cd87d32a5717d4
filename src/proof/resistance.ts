/**
 * Resistance of windings, and capacitors that excite them.
 *
 * @module
 */

/** Temperature at which the resistance of a metal would be nought, below nought. [°C] Copper and aluminium by two books each. */
export const zeroResistanceC = {
  /** UL and engineering texts; seen. */
  copper: 234.5,
  /** IEC 60034-1; recalled. */
  copperIec: 235,
  /** Conductor grade, UL; seen. */
  aluminium: 225,
  /** Cable standards; seen. */
  aluminiumCable: 228,
} as const

/** Resistance at another temperature. [Ω] `R2 = R1 (K + T2)/(K + T1)`, T in °C, K of the metal. */
export function resistanceAt(at: {
  readonly ohm: number
  readonly fromC: number
  readonly toC: number
  readonly zeroC?: number
}): number {
  const k = at.zeroC ?? zeroResistanceC.copper
  return (at.ohm * (k + at.toC)) / (k + at.fromC)
}

/** Mean temperature of a hot winding, from its resistance cold and hot. [°C] `T2 = (R2/R1)(K + T1) − K` */
export function windingTemperature(at: {
  readonly coldOhm: number
  readonly coldC: number
  readonly hotOhm: number
}): number {
  const k = zeroResistanceC.copper
  return (at.hotOhm / at.coldOhm) * (k + at.coldC) - k
}

/** Largest difference from the mean, of the mean. [%] `100 · max|Ri − mean| / mean` */
export function imbalancePercent(values: readonly number[]): number {
  const mean = meanOf(values)
  if (mean === 0) return 0
  const most = Math.max(...values.map((value) => Math.abs(value - mean)))
  return Number(((100 * most) / mean).toPrecision(12))
}

export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

/** Current that a capacitor takes. [A] `I = 2π f C V`, C in farads. */
export function capacitorAmps(at: {
  readonly uF: number
  readonly volts: number
  readonly hertz: number
}): number {
  return 2 * Math.PI * at.hertz * at.uF * 1e-6 * at.volts
}

/** Volts of a capacitor-excited set off its speed, below saturation: between the first and the second power of speed. [V] */
export function capacitorSetVolts(at: {
  readonly ratedV: number
  readonly ratedHz: number
  readonly hertz: number
}): { readonly linear: number; readonly squared: number } {
  const share = at.hertz / at.ratedHz
  return { linear: at.ratedV * share, squared: at.ratedV * share ** 2 }
}
