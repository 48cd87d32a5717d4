/**
 * What an alternator gives where it stands and as it is linked.
 *
 * @module
 */

import type { SizingLimits } from '../catalogue/sizing-schema.js'
import { requireWithin } from '../units/require.js'

type Alternator = SizingLimits['alternator']

/**
 * Factor on the rating for heat and height. `(1 − 0.03 · max(0, t − 40)/5) · (1 − 0.03 · max(0, h − 1000)/500)`, t the air
 * [°C] up to 90, h [m] up to 5,000. The steps and shares stand in the catalogue.
 *
 * Source: operator manual of a small generator; held: seen.
 */
export function alternatorFactor(
  { heat, height }: Pick<Alternator, 'heat' | 'height'>,
  at: { readonly airC: number; readonly altitudeM: number },
): number {
  requireWithin('airC', at.airC, -40, 90, '°C')
  requireWithin('altitudeM', at.altitudeM, -500, 5000, 'm')
  const hot = 1 - (heat.perStepShare * Math.max(0, at.airC - heat.aboveC)) / heat.stepK
  const high = 1 - (height.perStepShare * Math.max(0, at.altitudeM - height.aboveM)) / height.stepM
  return hot * high
}

/**
 * The same from the losses alone, as a second opinion. `√((r − ΔT)/r)`, r the rise of the insulation class [K], ΔT how far
 * the air is above 40 °C [K].
 *
 * Source: derived, losses as the square of the current.
 */
export function factorByRise(of: { readonly riseK: number; readonly aboveK: number }): number {
  return Math.sqrt(Math.max(0, (of.riseK - Math.max(0, of.aboveK)) / of.riseK))
}

/** Rating of a three-phase end joined for one phase. [kVA] Its share by its own manual; else half, by the hottest coil. */
export function singlePhaseKVA(of: { readonly threePhaseKVA: number; readonly share: number }): number {
  requireWithin('share', of.share, 0, 1, '')
  return of.threePhaseKVA * of.share
}

/** Efficiency of a small alternator: straight between the catalogue's at 5 and at 25 kW, and level beyond. Practice. */
export function alternatorEfficiency(
  { efficiencyAt5KW, efficiencyAt25KW }: Pick<Alternator, 'efficiencyAt5KW' | 'efficiencyAt25KW'>,
  ratingKW: number,
): number {
  const share = Math.min(1, Math.max(0, (ratingKW - 5) / 20))
  return efficiencyAt5KW + share * (efficiencyAt25KW - efficiencyAt5KW)
}
