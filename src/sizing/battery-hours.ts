/**
 * Where the power of each hour comes from and goes to, with a battery beside the set or in its place.
 *
 * @module
 */

import type { BankSlot } from './battery-day.js'
import type { RunOfDay } from './plan-run.js'

/** One slot of the day: `set + sun + shore + out = wanted − unmet + into`. [kW] */
export interface BatteryHour {
  /** As the slot begins. [h of the day] */
  readonly hour: number
  readonly wantedKW: number
  readonly setKW: number
  readonly sunKW: number
  readonly shoreKW: number
  /** Out of the inverter, and into the charger. */
  readonly outKW: number
  readonly intoKW: number
  readonly unmetKW: number
  /** In the battery as the slot ends, of what may be used. [kWh] */
  readonly levelKWh: number
}

/** The planned day with the set and the battery beside each other. */
export function hoursBeside(run: RunOfDay, slotHours: number): BatteryHour[] {
  return run.slots.map(({ wantedKW, setKW, solarKW, shoreKW, inverterKW, chargeKW }, t) => ({
    ...{ hour: t * slotHours, wantedKW, setKW, sunKW: solarKW, shoreKW },
    ...{ outKW: inverterKW, intoKW: chargeKW, unmetKW: 0, levelKWh: run.batteryKWh?.[t] ?? 0 },
  }))
}

/** The same uses with no set. */
export function hoursAlone(
  slots: readonly BankSlot[],
  of: { readonly wantedKW: readonly number[]; readonly slotHours: number },
): BatteryHour[] {
  return slots.map(({ setKW, sunKW, shoreKW, inverterKW, chargeKW, unmetKW, levelKWh }, t) => ({
    ...{ hour: t * of.slotHours, wantedKW: of.wantedKW[t]!, setKW, sunKW, shoreKW },
    ...{ outKW: inverterKW, intoKW: chargeKW, unmetKW, levelKWh },
  }))
}
