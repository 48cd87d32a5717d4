/**
 * Heat through an exchanger of coolant and sea water, clean and fouled.
 *
 * @module
 */

import { requireWithin } from '../units/require.js'

/** How the two flows pass: against one another, or across, neither of them mixed. */
export type Passing = 'counterflow' | 'crossflow'

/** Capacity of the lesser flow over that of the greater, 0 to 1, and transfer units `U A / C_min`. */
export interface Exchanger {
  readonly passing: Passing
  readonly ratio: number
  readonly transferUnits: number
}

/**
 * Share of the greatest heat that could pass. Counterflow `(1 − e) / (1 − r e)`, e = exp(−N (1 − r)), and `N / (1 + N)` where
 * r = 1; crossflow `1 − exp{N^0.22 / r · [exp(−r N^0.78) − 1]}`, and `1 − exp(−N)` where r = 0. N 0 to 50.
 *
 * Source: a textbook of heat transfer, chapter on exchangers; held: recalled.
 */
export function effectiveness({ passing, ratio, transferUnits }: Exchanger): number {
  requireWithin('ratio', ratio, 0, 1, '')
  requireWithin('transferUnits', transferUnits, 0, 50, '')
  if (ratio < 1e-9) return -Math.expm1(-transferUnits)
  if (passing === 'crossflow') {
    return -Math.expm1((transferUnits ** 0.22 / ratio) * Math.expm1(-ratio * transferUnits ** 0.78))
  }
  if (1 - ratio < 1e-9) return transferUnits / (1 + transferUnits)
  const left = Math.exp(-transferUnits * (1 - ratio))
  return (1 - left) / (1 - ratio * left)
}

/** Transfer units at which an exchanger comes to an effectiveness: the span is halved. Undefined beyond what it can come to. */
export function transferUnitsFor(of: {
  readonly passing: Passing
  readonly ratio: number
  readonly effectiveness: number
}): number | undefined {
  const at = (transferUnits: number) => effectiveness({ ...of, transferUnits })
  let [low, high] = [0, 50]
  if (!(of.effectiveness >= 0 && of.effectiveness <= at(high))) return undefined
  for (let round = 0; round < 60; round += 1) {
    const middle = (low + high) / 2
    if (at(middle) < of.effectiveness) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** Heat transfer behind a layer of dirt. [kW/m²K] `1 / (1/U + R)`, U clean [kW/m²K], R [m²K/kW]. Derived, resistances in series. */
export function fouledTransfer(of: {
  readonly cleanKWPerM2K: number
  readonly foulingM2KPerKW: number
}): number {
  return 1 / (1 / of.cleanKWPerM2K + of.foulingM2KPerKW)
}
