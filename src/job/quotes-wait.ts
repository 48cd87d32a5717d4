/**
 * Days without the set that an offer means, and their price, through the terms of the life model.
 *
 * @module
 */

import { meanBeyond, meanOf, sumOfAmounts, varianceOf } from '../alternatives/sum-of-amounts.js'
import type { CatalogueOffers } from '../catalogue/offer-schema.js'
import { costAt } from '../forecast/build-money.js'
import type { Amount, LifeModel, LifePart } from '../forecast/life-model.js'
import type { Offer } from './quotes-offers.js'

/** A price that grows with days: straight between points, the last slope going on. */
export interface PriceOfDays {
  /** In rising order of days, the first at none. */
  readonly points: readonly { readonly days: number; readonly price: number }[]
  /** Beyond the last point. [money/d] */
  readonly lastSlope: number
}

export type WaitModel = Pick<LifeModel, 'powerLoss' | 'use' | 'startMonth'>

const daysInMonth = 365.25 / 12
/** An outage is followed month by month for so long, then at the slope reached. */
const monthsFollowed = 24

/**
 * Price of an outage of d days that begins in `beginsIn` days: `c(n(d))·m`, n the wanted days in it (d weighed by each month's
 * share of days that want power), c the curve of the price of being without, m the factor of the month in which it begins.
 * docs/life-model.md, 23.
 */
export function priceOfOutage({ powerLoss, use, startMonth }: WaitModel, beginsIn: number): PriceOfDays {
  const begins = startMonth + beginsIn / daysInMonth
  const factor = powerLoss.byMonth[Math.floor(begins) % 12]!
  // the curve begins at nothing
  const [first] = powerLoss.curve
  const curve = first!.days > 0 ? [{ days: 0, cost: 0 }, ...powerLoss.curve] : powerLoss.curve
  const points = [{ days: 0, price: 0 }]
  let [days, wanted, slope] = [0, 0, 0]
  for (let m = 0; m < monthsFollowed; m++) {
    const share = use.powerNeededByMonth[(Math.floor(begins) + m) % 12]!
    const length = daysInMonth * (m === 0 ? 1 - (begins % 1) : 1)
    const bends = curve.map(({ days: at }) => at).filter((at) => at > wanted && at < wanted + share * length)
    for (const at of [...bends, wanted + share * length]) {
      const from = points.at(-1)!
      const until = {
        days: days + (share > 0 ? (at - wanted) / share : length),
        price: costAt(curve, at) * factor,
      }
      slope = until.days > from.days ? (until.price - from.price) / (until.days - from.days) : slope
      points.push(until)
    }
    days += length
    wanted += share * length
  }
  return { points, lastSlope: slope }
}

/** The price of so many days. */
export function priceOf({ points, lastSlope }: PriceOfDays, days: number): number {
  const after = points.findIndex((point) => point.days >= days)
  if (after < 0) return points.at(-1)!.price + lastSlope * (days - points.at(-1)!.days)
  if (after === 0) return points[0]!.price
  const [from, to] = [points[after - 1]!, points[after]!]
  return from.price + ((to.price - from.price) * (days - from.days)) / (to.days - from.days)
}

/** Mean price over what the days may come to: `Σ (change of slope at k)·E[max(D − k, 0)]` over the points, exact. */
export function meanPriceOf({ points, lastSlope }: PriceOfDays, days: Amount): number {
  let slope = 0
  return points.reduce((sum, point, i) => {
    const next = points[i + 1]
    const ahead = next === undefined ? lastSlope : (next.price - point.price) / (next.days - point.days)
    const change = ahead - slope
    slope = ahead
    return sum + change * meanBeyond(days, point.days)
  }, points[0]!.price)
}

/** Days without the set under an offer. */
export interface Wait {
  readonly days: Amount
  /** Until it begins. [d] */
  readonly beginsIn: number
  /** As promised, or as such work usually takes. */
  readonly by: 'promised' | 'usual'
  /** The set stands already, so that all of the wait counts. */
  readonly stands: boolean
}

/** Days that come of so many promised. */
function promised(days: number, { promised: { daysFactor, logSd } }: CatalogueOffers): Amount {
  return { median: days * daysFactor, logSd }
}

/**
 * Days without the set: as promised, else as usual for the work. Of a set that stands, all days until it runs again; of one that
 * runs, those of the work.
 */
export function waitOf(
  offer: Pick<Offer, 'days' | 'daysOut' | 'covers'>,
  { model, offers }: { readonly model: LifeModel; readonly offers: CatalogueOffers },
): Wait {
  const { days, daysOut, covers } = offer
  const stands = standsStill(model)
  const usual = usualWait(covers, model)
  if (daysOut !== undefined) {
    const before = days === undefined ? 0 : Math.max(0, days - daysOut)
    const whole = stands && days !== undefined ? days : daysOut
    return { days: promised(whole, offers), beginsIn: stands ? 0 : before, by: 'promised', stands }
  }
  if (days !== undefined && stands)
    return { days: promised(days, offers), beginsIn: 0, by: 'promised', stands }
  if (stands) return { days: sumOfAmounts([usual.lead, usual.work]), beginsIn: 0, by: 'usual', stands }
  const beginsIn = days === undefined ? 0 : Math.max(0, days - meanOf(usual.work))
  return { days: usual.work, beginsIn, by: 'usual', stands }
}

/** Whether the set stands broken now, likelier than not. */
export function standsStill({ parts }: Pick<LifeModel, 'parts'>): boolean {
  return parts.some(({ broken, modes }) => modes.some(({ id, stops }) => id === broken && stops >= 0.5))
}

/** The longest wait for pieces, and the workshop with the work: docs/life-model.md, 21 and 22. */
export function usualWait(
  covers: Offer['covers'],
  model: LifeModel,
): { readonly lead: Amount; readonly work: Amount } {
  if (covers.newSet !== undefined) {
    const { used } = covers.newSet
    const candidate = model.candidates.find((one) => (one.used !== undefined) === used)
    return { lead: candidate?.leadDays ?? 0, work: candidate?.installDays ?? 0 }
  }
  const parts = model.parts.filter(({ id }) => covers.parts.some(({ part }) => part === id))
  const hours = parts.reduce((sum, { repair }) => sum + repair.hours, 0) + openingHours(model, parts)
  return {
    lead: longest(parts.map(({ repair }) => mixture(repair.supply))),
    work: sumOfAmounts([
      longest(parts.map(({ repair }) => repair.workshopDays)),
      hours / model.labour.hoursPerDay,
    ]),
  }
}

/** Hours to open all that these parts are behind, each way in once. */
export function openingHours({ access }: Pick<LifeModel, 'access'>, parts: readonly LifePart[]): number {
  const open = new Set<string>()
  const add = (id: string) => {
    if (open.has(id)) return
    open.add(id)
    for (const other of access.find((one) => one.id === id)?.includes ?? []) add(other)
  }
  for (const part of parts) for (const id of part.access) add(id)
  return access.reduce((sum, { id, hours }) => sum + (open.has(id) ? hours : 0), 0)
}

function longest(amounts: readonly Amount[]): Amount {
  return amounts.reduce<Amount>((a, b) => (meanOf(b) > meanOf(a) ? b : a), 0)
}

/** One of several with its chance, as a log-normal with the mean and variance of the whole. */
function mixture(options: readonly { readonly chance: number; readonly days: Amount }[]): Amount {
  const mean = options.reduce((sum, { chance, days }) => sum + chance * meanOf(days), 0)
  const square = options.reduce(
    (sum, { chance, days }) => sum + chance * (varianceOf(days) + meanOf(days) ** 2),
    0,
  )
  if (!(mean > 0)) return 0
  const logSquare = Math.log(square / mean ** 2)
  return { median: mean * Math.exp(-logSquare / 2), logSd: Math.sqrt(Math.max(0, logSquare)) }
}
