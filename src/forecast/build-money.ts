/**
 * The owner's terms in the words of the life model: rates, what bills teach, and the price of being without power.
 *
 * @module
 */

import type { SetCatalogue } from '../catalogue/scale.js'
import type { SetRegister, Terms } from '../register/register-types.js'
import { moneyIn } from '../units/money.js'
import type { LifeModelInput } from './life-model.js'

type LabourInput = NonNullable<LifeModelInput['labour']>
type PowerLossInput = NonNullable<LifeModelInput['powerLoss']>

/** An hour of the owner's own work, as a share of a paid one. Practice. */
const ownShareOfPaid = 0.15
/** Hours of work in a working day aboard. Practice. */
export const hoursPerDay = 6
/** Bill over estimate: median of all jobs, spread between boats and workshops, spread between jobs of one boat. Practice. */
export const overrunPrior = { median: 1.15, betweenBoats: 0.15, betweenJobs: 0.2 }
/** A day without power: the first quarter is free, each further day costs this in the catalogue's money. Practice. */
const usualDayPrice = 50
/** Length at which the curves of two months are compared. [d] */
const comparedDays = 7

/** Multiple that brings an amount of the catalogue's money to the set's. */
function moneyFactor(catalogue: SetCatalogue): number {
  const { money } = catalogue.kind
  return money === undefined ? 1 : money.currencyPerUsd * money.localFactor
}

export function labourOf(register: SetRegister, catalogue: SetCatalogue, assumed: string[]): LabourInput {
  const { terms } = register
  const { ratePerHour, callOut } = catalogue.wholeSet.labour
  const paidPerHour = terms.paidPerHour ?? ratePerHour.typical
  const money = (amount: number) => moneyIn(catalogue.wholeSet.money.currency, amount)
  if (terms.paidPerHour === undefined) assumed.push(`a paid hour is taken at ${money(paidPerHour)}`)
  if (terms.ownPerHour === undefined) {
    assumed.push(`an hour of the owner's is taken at ${money(ownShareOfPaid * paidPerHour)}`)
  }
  if (terms.travelPerTrip === undefined) {
    assumed.push(`each visit of a workshop is taken to cost ${money(callOut.typical)} before work begins`)
  }
  return {
    paidPerHour,
    ownPerHour: terms.ownPerHour ?? ownShareOfPaid * paidPerHour,
    perTrip: terms.travelPerTrip ?? callOut.typical,
    hoursPerDay,
    overrun: overrunOf(register.overruns.map(({ ratio }) => ratio)),
  }
}

/**
 * Bill over quote of the next job, log-normal. With m ~ N(ln 1.15, 0.15²) the boat's own mean and each ln(bill/quote) ~
 * N(m, 0.2²), n bills give m the variance `v = 1/(1/0.15² + n/0.2²)` and the mean `v · (ln 1.15/0.15² + Σ ln r/0.2²)`; the
 * next one has the log standard deviation `√(v + 0.2²)`, 0.25 without bills. Source: conjugate normal updating; constants practice.
 */
export function overrunOf(ratios: readonly number[]): { readonly median: number; readonly logSd: number } {
  const { median, betweenBoats, betweenJobs } = overrunPrior
  const variance = 1 / (betweenBoats ** -2 + ratios.length * betweenJobs ** -2)
  const logs = ratios.reduce((total, ratio) => total + Math.log(ratio), 0)
  const mean = variance * (Math.log(median) * betweenBoats ** -2 + logs * betweenJobs ** -2)
  return { median: Math.exp(mean), logSd: Math.sqrt(variance + betweenJobs ** 2) }
}

/**
 * One curve and a factor for each month: the dearest month's curve, the others in proportion to what a week costs in them.
 */
export function powerLossOf(
  terms: Terms,
  known: {
    readonly catalogue: SetCatalogue
    readonly neededByMonth: readonly number[]
    readonly assumed: string[]
  },
): PowerLossInput {
  const { catalogue, neededByMonth, assumed } = known
  const said = terms.withoutPower
  if (said === undefined || said.length === 0) {
    const day = usualDayPrice * moneyFactor(catalogue)
    const price = moneyIn(catalogue.wholeSet.money.currency, day)
    assumed.push(`a day without power is taken to cost ${price} after the first few hours`)
    return {
      curve: [
        { days: 0, cost: 0 },
        { days: 0.25, cost: 0 },
        { days: 1.25, cost: day },
      ],
      byMonth: neededByMonth.map((needed) => (needed > 0 ? 1 : 0)),
    }
  }
  const curves = said.map(({ months, curve }) => ({ months, points: pointsOf(curve) }))
  const week = (points: readonly Point[]) => costAt(points, comparedDays)
  const dearest = curves.reduce((a, b) => (week(b.points) > week(a.points) ? b : a))
  const whole = week(dearest.points)
  if (curves.length > 1 && whole > 0) {
    assumed.push(
      'the price of being without power is taken to grow with the days in every season as it does in the dearest one',
    )
  }
  const byMonth = neededByMonth.map((_, month) => {
    const curve = curves.find(({ months }) => months.includes(month + 1))
    if (curve === undefined) return 0
    return whole > 0 ? week(curve.points) / whole : 1
  })
  return { curve: dearest.points, byMonth }
}

interface Point {
  readonly days: number
  readonly cost: number
}

function pointsOf(curve: readonly { readonly days: number; readonly price: number }[]): Point[] {
  const later = curve
    .filter(({ days }) => days > 0)
    .map(({ days, price }) => ({ days, cost: price }))
    .sort((a, b) => a.days - b.days)
  return [{ days: 0, cost: 0 }, ...later]
}

/** Price of so many days without power: straight between the points, the last slope going on. */
export function costAt(points: readonly Point[], days: number): number {
  const after = points.findIndex((point) => point.days >= days)
  const next = after < 0 ? points.length - 1 : after
  const to = points[next]!
  const from = points[next - 1]
  if (from === undefined || to.days === from.days) return to.cost
  return Math.max(0, from.cost + ((to.cost - from.cost) * (days - from.days)) / (to.days - from.days))
}
