/**
 * The same day with a battery and an inverter: beside the set, or in its place.
 *
 * @module
 */

import type { Highs } from 'highs'
import { bankKWh, batteryKinds, converterEfficiency, deckPerformance, sunKWhPerDay } from './battery.js'
import { type BatteryCost, type BatteryOffer, bankOf, batteryCost } from './battery-cost.js'
import { type BankSlot, type BankTotals, playBank } from './battery-day.js'
import { planDay } from './plan.js'
import type { DayProblem, RunDay } from './plan-day.js'
import type { RunOfDay } from './plan-run.js'

export interface BatteryQuestion {
  readonly offer: BatteryOffer
  /** Hours of full sun in a day. */
  readonly sunHours: number
  /** At hand all day; 0: none. [kW] */
  readonly shoreKW: number
  readonly daysPerYear: number
  readonly priceFactor: number
  readonly fuelPerLitre: number
}

export interface BatteryAlternative {
  /** With the set beside it, planned. */
  readonly beside?: RunOfDay
  readonly problems: readonly DayProblem[]
  readonly besideCost?: BatteryCost
  /** With no set: what the plan carries, carried by battery, sun and shore alone. */
  readonly alone: BankTotals & { readonly slots: readonly BankSlot[] }
  readonly aloneCost: BatteryCost
  readonly usableKWh: number
  /** Rated capacity that would hold all that a day takes at the sockets, once. */
  readonly wholeDayKWh: number
}

/** Sun from six to eighteen, as a half wave. Source: practice. */
const sunrise = 6
const sunset = 18

/** Power of the sun by the slot, so that the day's sum is what the panels give. [kW] */
export function sunByHour(day: Pick<RunDay, 'baseKW' | 'slotHours'>, kWhPerDay: number): number[] {
  const heights = day.baseKW.map((_, t) => {
    const hour = (t + 0.5) * day.slotHours
    return Math.max(0, Math.sin((Math.PI * (hour - sunrise)) / (sunset - sunrise)))
  })
  const sum = heights.reduce((total, height) => total + height, 0) * day.slotHours
  return heights.map((height) => (sum > 0 ? (kWhPerDay * height) / sum : 0))
}

/** What the battery makes of a day whose plan without it is known. */
export function batteryAlternative(
  highs: Highs,
  day: RunDay,
  { planned, question }: { readonly planned: RunOfDay; readonly question: BatteryQuestion },
): BatteryAlternative {
  const { offer, sunHours, shoreKW, daysPerYear, priceFactor, fuelPerLitre } = question
  const wantedKW = planned.slots.map((slot) => slot.wantedKW)
  const carried = wantedKW.filter((kW) => kW > 0)
  const meanKW = carried.reduce((sum, kW) => sum + kW, 0) / Math.max(1, carried.length)
  const bank = bankOf(offer, meanKW)
  const solarKW = sunByHour(
    day,
    sunKWhPerDay({ watts: offer.sunWatts, fullSunHours: sunHours, performance: deckPerformance }),
  )
  const costOf = (drawnKWhPerDay: number) => batteryCost(offer, { drawnKWhPerDay, daysPerYear, priceFactor })
  const beside = planDay(highs, {
    ...day,
    battery: {
      usableKWh: bank.usableKWh,
      beginsKWh: bank.usableKWh / 2,
      chargeKW: bank.chargeKW,
      inverterKW: bank.inverterKW,
      chargeEfficiency: bank.chargeEfficiency,
      inverterEfficiency: bank.inverterEfficiency,
      wearPerKWh: costOf(0).wearPerKWh / Math.max(0.01, fuelPerLitre),
    },
    solarKW,
    ...(shoreKW > 0 ? { shore: { mostKW: wantedKW.map(() => shoreKW), perKWh: shorePerKWh } } : {}),
  })
  const alone = playBank(bank, {
    slotHours: day.slotHours,
    wantedKW,
    solarKW,
    shoreKW: wantedKW.map(() => shoreKW),
  })
  return {
    ...(beside.ok
      ? {
          beside: beside.run,
          besideCost: costOf(drawnOf(beside.run, bank.inverterEfficiency) * day.slotHours),
        }
      : {}),
    problems: beside.ok ? [] : beside.problems,
    alone,
    aloneCost: costOf(alone.drawnKWh),
    usableKWh: bank.usableKWh,
    wholeDayKWh: bankKWh({
      socketKWh: day.slotHours * wantedKW.reduce((sum, kW) => sum + kW, 0),
      inverterEfficiency: converterEfficiency.inverter,
      depth: batteryKinds[offer.kind].depth,
    }),
  }
}

/** A kWh from the shore, as litres of fuel. Source: practice, compiler's guess: about a third of what the set's costs. */
const shorePerKWh = 0.15

function drawnOf(run: RunOfDay, efficiency: number): number {
  return run.slots.reduce((sum, { inverterKW }) => sum + inverterKW / efficiency, 0)
}
