/**
 * What a conductor carries, what it loses, and the breaker that guards it.
 *
 * @module
 */

import type { Limit, Limits } from './limits.js'

/** Gauges of the table, thick ones last. [AWG] */
export const gauges = ['16', '14', '12', '10', '8', '6', '4', '2', '1'] as const
/** Insulation of the table. [°C] */
export const insulations = ['60', '75', '80', '90', '105', '125', '200'] as const

/** Full-load current. [A] one phase `S/V`, three `S/(√3 V)`, S in VA. */
export function fullLoadAmps(at: {
  readonly kVA: number
  readonly volts: number
  readonly phases: number
}): number {
  return (1000 * at.kVA) / (at.volts * (at.phases === 3 ? Math.sqrt(3) : 1))
}

/** Drop of volts along a feeder. [V] one phase `2 L I r`, three `√3 L I r`; L one way in m, r in Ω/m. */
export function dropVolts(at: {
  readonly metres: number
  readonly amps: number
  readonly ohmPerMetre: number
  readonly phases: number
}): number {
  return (at.phases === 3 ? Math.sqrt(3) : 2) * at.metres * at.amps * at.ohmPerMetre
}

/** Current that a conductor may carry where it lies, with every limit that counts. [A] */
export function allowableAmps(
  at: {
    readonly gauge: string
    readonly insulation: string
    readonly engineSpace: boolean
    readonly bundled: number
  },
  limits: Limits,
): { readonly amps: number; readonly limits: readonly Limit[] } {
  const table = limits(`wire-${at.gauge}-at-${at.insulation}`)
  const space = at.engineSpace ? [limits(`engine-space-${at.insulation}`)] : []
  const least = [25, 7, 4, 3].find((count) => at.bundled >= count)
  const bundle = least === undefined ? [] : [limits(`bundle-${least}`)]
  const factors = [...space, ...bundle]
  return {
    amps: factors.reduce((amps, { value }) => amps * value, table.value),
    limits: [table, ...factors],
  }
}
