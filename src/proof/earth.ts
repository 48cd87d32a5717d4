/**
 * Currents that leak, earths that carry them, and what they do to a body.
 *
 * @module
 */

/** Highest resistance to earth at which a device still keeps metal below a touch voltage. [Ω] `V / I` */
export function highestEarthOhm(at: { readonly touchV: number; readonly tripMa: number }): number {
  return (1000 * at.touchV) / at.tripMa
}

/** Leak that trips a device. [Ω] `V / I` */
export function trippingLeakOhm(at: { readonly volts: number; readonly tripMa: number }): number {
  return (1000 * at.volts) / at.tripMa
}

/**
 * Longest time an interrupter for people may take. [s] `(20 / I)^1.43`, I in mA.
 *
 * Source: UL 943; recalled.
 */
export function groundFaultSeconds(ma: number): number {
  return (20 / ma) ** 1.43
}

/** Current that a fault drives round its loop. [A] `V / R`, R of winding, line and bond together. */
export function faultAmps(at: { readonly volts: number; readonly loopOhm: number }): number {
  return at.volts / at.loopOhm
}

/** Current through a body. [mA] `1000 V / Z` */
export function bodyMilliamp(at: { readonly volts: number; readonly ohm: number }): number {
  return (1000 * at.volts) / at.ohm
}

/**
 * Current that a body of 50 kg bears for a time, of 0.03 to 3 s. [mA] `116 / √t`
 *
 * Source: IEEE 80; recalled. None outside that span.
 */
export function bearableMilliamp(seconds: number): number | undefined {
  return seconds < 0.03 || seconds > 3 ? undefined : 116 / Math.sqrt(seconds)
}

/** Current through a filter's capacitor. [mA] `1000 · 2π f C V` */
export function capacitorLeakMilliamp(at: {
  readonly uF: number
  readonly volts: number
  readonly hertz: number
}): number {
  return 2 * Math.PI * at.hertz * at.uF * 1e-3 * at.volts
}

/** What a meter reads of a source behind a resistance. [V] `V · Rm / (Rs + Rm)` */
export function seenVolts(at: {
  readonly sourceV: number
  readonly seriesOhm: number
  readonly meterOhm: number
}): number {
  return (at.sourceV * at.meterOhm) / (at.seriesOhm + at.meterOhm)
}

/** What a meter of a resistance reads. */
export interface LoadedVolts {
  readonly volts: number
  readonly meterOhm: number
}

/**
 * What metal is live from, told by two meters that load it differently: `Z = (V1 − V2) / (V2/R2 − V1/R1)`, and with no meter on
 * it `V = V1 (1 + Z/R1)`. Z as a resistance; it is nought where the volts do not fall. None where the second meter takes no current worth
 * the name.
 */
export function sourceBehind({
  light,
  heavy,
}: {
  /** On the meter that draws little, and on the one that draws more. */
  readonly light: LoadedVolts
  readonly heavy: LoadedVolts
}): { readonly volts: number; readonly ohm: number } | undefined {
  const moreAmps = heavy.volts / heavy.meterOhm - light.volts / light.meterOhm
  if (moreAmps <= 0) return undefined
  const ohm = Math.max(0, (light.volts - heavy.volts) / moreAmps)
  return { volts: light.volts * (1 + ohm / light.meterOhm), ohm }
}

/** Share of a load's current that goes by the earth where neutral and earth are joined twice. [A] `I · Rn / (Rn + Re)` */
export function earthAmps(at: {
  readonly loadA: number
  readonly neutralOhm: number
  readonly earthOhm: number
}): number {
  return (at.loadA * at.neutralOhm) / (at.neutralOhm + at.earthOhm)
}
