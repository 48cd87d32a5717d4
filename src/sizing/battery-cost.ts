/**
 * What a battery and an inverter cost and last, in place of a set or beside one.
 *
 * @module
 */

import { batteryKinds, converterEfficiency, lifetimeKWh, peukertAh } from './battery.js'
import type { Bank } from './battery-day.js'

/** What is bought. */
export interface BatteryOffer {
  readonly kind: keyof typeof batteryKinds
  readonly ratedKWh: number
  readonly inverterKW: number
  /** On the alternating-current side. */
  readonly chargeKW: number
  readonly sunWatts: number
}

/** Prices beside the bank's: inverter-charger by its kW, panels fitted by their W, and wiring and fitting as a share of all. Source: practice, compiler's guess. */
const prices = { perInverterKW: 450, perSunWatt: 1.6, fittingShare: 0.3 }
/** How long inverter and panels last. [years] Source: practice, compiler's guess. */
const otherYears = 12
/** The hours over which banks are rated. Source: practice. */
const ratedHours = 20

/** Bought for so much, to last so long. */
export interface BatteryCost {
  readonly price: number
  readonly bankYears: number
  /** Whether wear or age ends it. */
  readonly endedBy: 'cycles' | 'years'
  readonly perYear: number
  /** Of a kWh taken out of the cells, where wear ends it. */
  readonly wearPerKWh: number
}

/** The bank as it may be used, at the mean current at which it is drawn down. */
export function bankOf(offer: BatteryOffer, meanKW: number): Bank {
  const { depth, cellEfficiency, exponent } = batteryKinds[offer.kind]
  // capacities in kWh stand for Ah, and kW for A: the volts cancel
  const amps = Math.max(meanKW / converterEfficiency.inverter, offer.ratedKWh / ratedHours)
  const held = peukertAh({ ratedAh: offer.ratedKWh, ratedHours, amps, exponent })
  return {
    usableKWh: depth * held,
    chargeKW: offer.chargeKW,
    inverterKW: offer.inverterKW,
    chargeEfficiency: converterEfficiency.charger * cellEfficiency,
    inverterEfficiency: converterEfficiency.inverter,
    startBelow: 0.1,
    stopAbove: 0.95,
  }
}

/**
 * Price, life and the two as an amount a year: `bank / min(N·B·D / (E·d), calendar) + other / 12`, E taken out on each of d
 * days a year [kWh]. Money as the catalogue's, times `priceFactor`.
 *
 * Source: derived, from the practice figures of the kind.
 */
export function batteryCost(
  offer: BatteryOffer,
  use: { readonly drawnKWhPerDay: number; readonly daysPerYear: number; readonly priceFactor: number },
): BatteryCost {
  const kind = batteryKinds[offer.kind]
  const fitted = use.priceFactor * (1 + prices.fittingShare)
  const bank = fitted * kind.pricePerKWh * offer.ratedKWh
  const other = fitted * (prices.perInverterKW * offer.inverterKW + prices.perSunWatt * offer.sunWatts)
  const lifeKWh = lifetimeKWh({ ratedKWh: offer.ratedKWh, depth: kind.depth, cycles: kind.cycles })
  const perYearKWh = use.drawnKWhPerDay * use.daysPerYear
  const byCycles = perYearKWh > 0 ? lifeKWh / perYearKWh : Number.POSITIVE_INFINITY
  const bankYears = Math.min(byCycles, kind.calendarYears)
  return {
    price: bank + other,
    bankYears,
    endedBy: byCycles < kind.calendarYears ? 'cycles' : 'years',
    perYear: bank / bankYears + other / otherYears,
    wearPerKWh: lifeKWh > 0 ? bank / lifeKWh : 0,
  }
}
