/**
 * Power while a job is done: the months in which it is wanted, and what the days without it cost.
 *
 * @module
 */

import type { SetCatalogue } from '../catalogue/scale.js'
import { powerLossOf } from '../forecast/build-money.js'
import { useOf } from '../forecast/build-use.js'
import { dateOfDay } from '../logbook/dates.js'
import type { SetRegister } from '../register/register-types.js'
import { daysAhead, type Played, type Playing } from './calendar-play.js'
import { monthOf, outagePrices, type Power } from './calendar-price.js'

export interface CalendarMonth {
  readonly month: string
  readonly needShare: number
  /** Of a day of it that lies ahead: that the set gives power. */
  readonly chance: number
}

interface PowerFacts {
  /** Mean price of the days without power. */
  readonly price: (played: Played) => number
  /** Of all of them, and of one day more. */
  readonly mean: { readonly whole: number; readonly dayMore: number }
  readonly months: readonly CalendarMonth[]
  readonly assumed: readonly string[]
}

/** The set gives none from the day on which it is opened, or already, until all is ready. */
export function powerOf(
  { register, catalogue }: { readonly register: SetRegister; readonly catalogue: SetCatalogue },
  { playing, played }: { readonly playing: Playing; readonly played: Played },
): PowerFacts {
  const { steps } = playing.network
  const { today } = playing
  const assumed: string[] = []
  const { use } = useOf(register, catalogue)
  const needed = use.powerNeededByMonth ?? new Array<number>(12).fill(1)
  const loss = powerLossOf(register.terms, { catalogue, neededByMonth: needed, assumed })
  const power: Power = {
    loss: { curve: loss.curve ?? [{ days: 0, cost: 0 }], byMonth: loss.byMonth ?? needed },
    needed,
  }
  const priceOf = outagePrices(power, { first: today, count: daysAhead + 1 })
  const opening = steps.flatMap(({ opensSet }, i) => (opensSet ? [i] : []))
  const isDown =
    register.stops.some(({ open }) => open) || opening.some((i) => steps[i]!.progress.is !== 'to-do')
  if (opening.length === 0 && !isDown) {
    assumed.push('nothing of it is known to open the set: it is taken to give power all the time')
  }
  const outage = ({ starts, finish }: Played, h: number, more = 0) => {
    const from = isDown ? today : opening.reduce((least, i) => Math.min(least, starts[i]![h]!), Infinity)
    return { from, until: Math.min(finish[h]!, today + daysAhead) + more }
  }
  const meanPrice = (of: Played, more = 0) => meanOf(of.finish.map((_, h) => priceOf(outage(of, h, more))))
  const whole = meanPrice(played)
  return {
    price: meanPrice,
    mean: { whole, dayMore: meanPrice(played, 1) - whole },
    months: monthsOf({ needed, today, histories: playing.histories, outage: (h) => outage(played, h) }),
    assumed,
  }
}

/** Months ahead in which power is wanted, until it is back nine times in ten, and one more; a year at most. */
function monthsOf(of: {
  readonly needed: readonly number[]
  readonly today: number
  readonly histories: number
  readonly outage: (h: number) => { readonly from: number; readonly until: number }
}): CalendarMonth[] {
  const outages = Array.from({ length: of.histories }, (_, h) => of.outage(h))
  const chanceOn = powerByDay(outages, of.today)
  const months: CalendarMonth[] = []
  let day = of.today
  while (months.length < 13) {
    const month = dateOfDay(day).slice(0, 7)
    const chances: number[] = []
    while (dateOfDay(day).startsWith(month)) chances.push(chanceOn(day++))
    months.push({
      month,
      needShare: of.needed[monthOf(day - 1)]!,
      chance: chances.reduce((sum, chance) => sum + chance, 0) / chances.length,
    })
  }
  const back = months.findLastIndex(({ chance }) => chance < 0.9)
  return months.slice(0, Math.min(12, back + 2)).filter(({ needShare }) => needShare > 0)
}

/** Share of the outages outside of which each day lies: counted where they begin and end, then added up along the days. */
function powerByDay(
  outages: readonly { readonly from: number; readonly until: number }[],
  today: number,
): (day: number) => number {
  const change = new Float64Array(daysAhead + 2)
  const at = (day: number) => Math.min(daysAhead + 1, Math.max(0, day - today))
  for (const { from, until } of outages) {
    if (!(until > from)) continue
    change[at(Math.floor(from))]! += 1
    change[at(Math.ceil(until))]! -= 1
  }
  let without = 0
  const share = change.map((each) => {
    without += each
    return 1 - without / outages.length
  })
  return (day) => share[at(day)]!
}

function meanOf(list: Float64Array): number {
  return list.reduce((sum, each) => sum + each, 0) / list.length
}
