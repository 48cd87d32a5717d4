/**
 * Units as meters show them, and the change from one to another of the same kind.
 *
 * @module
 */

/** in the first unit of its kind = shown · factor + offset */
interface Shown {
  readonly kind: string
  readonly factor: number
  readonly offset?: number
}

/**
 * What a meter may show. Factors are exact by definition, but for columns of mercury at 0 °C and water at 4 °C:
 * 3.38638864 and 0.24908891 kPa an inch; recalled. A gallon is the American one.
 */
const meterUnits = {
  ohm: { kind: 'resistance', factor: 1 },
  mohm: { kind: 'resistance', factor: 1e-3 },
  kohm: { kind: 'resistance', factor: 1e3 },
  Mohm: { kind: 'resistance', factor: 1e6 },
  Gohm: { kind: 'resistance', factor: 1e9 },
  V: { kind: 'voltage', factor: 1 },
  mV: { kind: 'voltage', factor: 1e-3 },
  kV: { kind: 'voltage', factor: 1e3 },
  A: { kind: 'current', factor: 1 },
  mA: { kind: 'current', factor: 1e-3 },
  uA: { kind: 'current', factor: 1e-6 },
  uF: { kind: 'capacity', factor: 1 },
  nF: { kind: 'capacity', factor: 1e-3 },
  mF: { kind: 'capacity', factor: 1e3 },
  Hz: { kind: 'frequency', factor: 1 },
  rpm: { kind: 'speed', factor: 1 },
  'l/min': { kind: 'flow', factor: 1 },
  'gal/min': { kind: 'flow', factor: 3.785411784 },
  W: { kind: 'power', factor: 1 },
  kW: { kind: 'power', factor: 1e3 },
  hp: { kind: 'power', factor: 745.6998715822702 },
  kVA: { kind: 'apparent', factor: 1 },
  C: { kind: 'temperature', factor: 1 },
  F: { kind: 'temperature', factor: 5 / 9, offset: -160 / 9 },
  K: { kind: 'difference', factor: 1 },
  kPa: { kind: 'pressure', factor: 1 },
  bar: { kind: 'pressure', factor: 100 },
  mbar: { kind: 'pressure', factor: 0.1 },
  psi: { kind: 'pressure', factor: 6.894757293168361 },
  inHg: { kind: 'pressure', factor: 3.38638864 },
  mmHg: { kind: 'pressure', factor: 0.13332239 },
  inH2O: { kind: 'pressure', factor: 0.24908891 },
  'mm/s': { kind: 'vibration', factor: 1 },
  'in/s': { kind: 'vibration', factor: 25.4 },
  mm: { kind: 'length', factor: 1 },
  m: { kind: 'length', factor: 1000 },
  ft: { kind: 'length', factor: 304.8 },
  mm2: { kind: 'area', factor: 1 },
  s: { kind: 'time', factor: 1 },
  ms: { kind: 'time', factor: 1e-3 },
  min: { kind: 'time', factor: 60 },
  h: { kind: 'time', factor: 3600 },
  '%': { kind: 'share', factor: 1 },
  ppm: { kind: 'content', factor: 1 },
  '1': { kind: 'number', factor: 1 },
} as const satisfies Readonly<Record<string, Shown>>

export type MeterUnit = keyof typeof meterUnits

/** Whether a unit is one that a meter shows. */
export function isMeterUnit(unit: string): unit is MeterUnit {
  return Object.hasOwn(meterUnits, unit)
}

/**
 * A reading in another unit of the same kind, without the digits that only the change put there.
 *
 * @throws RangeError if the two measure different things.
 */
export function inUnit(reading: { readonly value: number; readonly unit: MeterUnit }, to: MeterUnit): number {
  if (reading.unit === to) return reading.value
  const from: Shown = meterUnits[reading.unit]
  const other: Shown = meterUnits[to]
  if (from.kind !== other.kind) throw new RangeError(`to must be a ${from.kind}; found ${to}`)
  const value = (reading.value * from.factor + (from.offset ?? 0) - (other.offset ?? 0)) / other.factor
  return Number(value.toPrecision(12))
}
