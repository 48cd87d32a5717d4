/**
 * A battery and an inverter carry the boat, with sun and shore; a set, where there is one, starts when they fall short.
 *
 * @module
 */

/** The battery as the program uses it: what may be taken out, and what its charger and inverter pass. */
export interface Bank {
  readonly usableKWh: number
  /** On the alternating-current side. [kW] */
  readonly chargeKW: number
  readonly inverterKW: number
  /** From the charger's input into the cells, and from the cells to the inverter's output: 0 to 1. */
  readonly chargeEfficiency: number
  readonly inverterEfficiency: number
  /** Charge at which the set is started, and at which it is stopped, as shares of what may be used. */
  readonly startBelow: number
  readonly stopAbove: number
}

export interface BankDay {
  readonly slotHours: number
  /** [kW], slot by slot. */
  readonly wantedKW: readonly number[]
  readonly solarKW: readonly number[]
  readonly shoreKW: readonly number[]
  /** Left out: none aboard. */
  readonly set?: { readonly mostKW: number; readonly lowKW: number }
}

/** Where the power of one slot came from and went. [kW] */
export interface BankSlot {
  readonly setKW: number
  readonly sunKW: number
  readonly shoreKW: number
  readonly chargeKW: number
  readonly inverterKW: number
  readonly unmetKW: number
  /** Sun that nothing took. */
  readonly lostKW: number
  /** At the end of the slot. [kWh] */
  readonly levelKWh: number
}

/** Means of a day, once the days repeat. */
export interface BankTotals {
  readonly hours: number
  readonly starts: number
  readonly lowHours: number
  readonly setKWh: number
  readonly shoreKWh: number
  readonly sunKWh: number
  /** Taken out of the cells. [kWh] */
  readonly drawnKWh: number
  readonly unmetKWh: number
  /** Slots of the day in which something was unmet, as hours. */
  readonly unmetHours: number
}

/** Days that are played for the start to be forgotten, and those that are counted. */
const days = { forgotten: 10, counted: 10 }
const tiny = 1e-9

/**
 * Plays equal days one after another.
 *
 * In each slot the sun serves first, then the shore, then the inverter; what they cannot carry starts the set, and so does
 * a low charge. While the set runs it carries everything and charges, until the charge is high again.
 */
export function playBank(bank: Bank, day: BankDay): BankTotals & { readonly slots: readonly BankSlot[] } {
  let state: State = { levelKWh: bank.usableKWh / 2, isOn: false }
  let last: BankSlot[] = []
  const sums = {
    hours: 0,
    starts: 0,
    lowHours: 0,
    setKWh: 0,
    shoreKWh: 0,
    sunKWh: 0,
    drawnKWh: 0,
    unmetKWh: 0,
    unmetHours: 0,
  }
  for (let count = 0; count < days.forgotten + days.counted; count++) {
    last = []
    for (let t = 0; t < day.wantedKW.length; t++) {
      const before = state.isOn
      const slot = bankSlot(bank, day, { slot: t, ...state })
      state = { levelKWh: slot.levelKWh, isOn: slot.setKW > tiny }
      last.push(slot)
      if (count < days.forgotten) continue
      const h = day.slotHours
      if (state.isOn) sums.hours += h
      if (state.isOn && !before) sums.starts += 1
      if (state.isOn && slot.setKW < (day.set?.lowKW ?? 0) - tiny) sums.lowHours += h
      sums.setKWh += slot.setKW * h
      sums.shoreKWh += slot.shoreKW * h
      sums.sunKWh += slot.sunKW * h
      sums.drawnKWh += (slot.inverterKW / bank.inverterEfficiency) * h
      sums.unmetKWh += slot.unmetKW * h
      if (slot.unmetKW > tiny) sums.unmetHours += h
    }
  }
  const means = Object.fromEntries(Object.entries(sums).map(([name, sum]) => [name, sum / days.counted]))
  return { ...(means as unknown as BankTotals), slots: last }
}

interface State {
  readonly levelKWh: number
  readonly isOn: boolean
}

/**
 * One slot. What comes in is what goes out: `set + sun + shore + inverter = wanted − unmet + charge`, and the level rises by
 * `(charge·η − inverter/η′)·h`.
 */
export function bankSlot(bank: Bank, day: BankDay, at: State & { readonly slot: number }): BankSlot {
  const h = day.slotHours
  const wanted = day.wantedKW[at.slot]!
  const sun = day.solarKW[at.slot]!
  const sunDirect = Math.min(sun, wanted)
  const shoreDirect = Math.min(day.shoreKW[at.slot]!, wanted - sunDirect)
  const rest = wanted - sunDirect - shoreDirect
  const canGiveKW = Math.min(bank.inverterKW, (at.levelKWh * bank.inverterEfficiency) / h)
  const isFull = at.levelKWh >= bank.stopAbove * bank.usableKWh
  const isLow = at.levelKWh < bank.startBelow * bank.usableKWh
  const fallsShort = rest > canGiveKW + tiny
  const isOn = day.set !== undefined && (fallsShort || isLow || (at.isOn && !isFull))
  const setLoad = isOn ? Math.min(rest, day.set!.mostKW) : 0
  const inverterKW = Math.min(canGiveKW, rest - setLoad)
  const roomKW = Math.max(0, (bank.usableKWh - at.levelKWh) / (bank.chargeEfficiency * h))
  const mayCharge = inverterKW > tiny ? 0 : Math.min(bank.chargeKW, roomKW)
  const sunCharge = Math.min(sun - sunDirect, mayCharge)
  const shoreCharge = Math.min(day.shoreKW[at.slot]! - shoreDirect, mayCharge - sunCharge)
  const setCharge = isOn ? Math.min(day.set!.mostKW - setLoad, mayCharge - sunCharge - shoreCharge) : 0
  const chargeKW = sunCharge + shoreCharge + setCharge
  return {
    setKW: setLoad + setCharge,
    sunKW: sunDirect + sunCharge,
    shoreKW: shoreDirect + shoreCharge,
    chargeKW,
    inverterKW,
    unmetKW: Math.max(0, rest - setLoad - inverterKW),
    lostKW: sun - sunDirect - sunCharge,
    levelKWh: at.levelKWh + (chargeKW * bank.chargeEfficiency - inverterKW / bank.inverterEfficiency) * h,
  }
}
