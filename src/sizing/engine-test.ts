/**
 * What an engine gives in its air by the correction of engine tests: a second opinion on the derating of a rating.
 *
 * @module
 */

import type { Aspiration, SizingLimits } from '../catalogue/sizing-schema.js'
import { requireWithin } from '../units/require.js'
import { type IntakeAir, saturationKPa } from './engine-derating.js'

type TestCorrection = SizingLimits['engine']['testCorrection']

/** Fuel of one cycle for each litre of swept volume, of a four-stroke engine. [mg/l] `10⁶ m / (30 n V)`, m [kg/h], n [1/min], V [l]. Derived. */
export function fuelOfCycle(of: {
  readonly kgPerHour: number
  readonly rpm: number
  readonly sweptLitres: number
}): number {
  return (1e6 * of.kgPerHour) / (30 * of.rpm * of.sweptLitres)
}

/**
 * How much the air counts. `f_m = 0.036 q − 1.14`, q the fuel of a cycle for each litre over the ratio of boost [mg/l], 37.2 to
 * 65; 0.2 below, 1.2 above.
 *
 * Source: SAE J1349 through a workshop manual; held: quoted.
 */
export function engineFactor(
  { fuelSlope, fuelLess, fuelFrom, fuelTo, factorBelow, factorAbove }: TestCorrection,
  fuelMgPerLitre: number,
): number {
  if (fuelMgPerLitre < fuelFrom) return factorBelow
  if (fuelMgPerLitre > fuelTo) return factorAbove
  return fuelSlope * fuelMgPerLitre - fuelLess
}

/**
 * Power at reference conditions over that in the air at hand. `α = [(99 / p)^a (T / 298)^b]^f_m`, p dry pressure [kPa], T intake
 * [K], a and b by the kind of engine. Undefined where it is out of its span, 0.9 to 1.1.
 *
 * Source: SAE J1349 and ISO 1585 through a workshop manual, held: quoted; exponents recalled.
 */
export function testCorrection(
  correction: TestCorrection,
  of: { readonly aspiration: Aspiration; readonly air: IntakeAir; readonly factor: number },
): number | undefined {
  const { air, factor } = of
  requireWithin('temperatureC', air.temperatureC, -40, 90, '°C')
  const { pressure, temperature } = correction.exponents.find(({ id }) => id === of.aspiration)!
  const dryKPa = air.pressureKPa - air.humidity * saturationKPa(air.temperatureC)
  const kelvin = (celsius: number) => celsius + 273
  const atmosphere =
    (correction.dryPressureKPa / dryKPa) ** pressure *
    (kelvin(air.temperatureC) / kelvin(correction.temperatureC)) ** temperature
  const alpha = atmosphere ** factor
  return alpha >= correction.validFrom && alpha <= correction.validTo ? alpha : undefined
}
