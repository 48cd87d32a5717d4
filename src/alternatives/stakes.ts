/**
 * About what a failure of each mode costs with all that it brings on: a quick bound on what finding it before could save.
 *
 * @module
 */

import type { LifeModel, LifePart, Repair } from '../forecast/life-model.js'
import { amountsOf, meanAmount } from './amounts.js'

/** Links are followed no further than this: what lies beyond is a chance of a chance. */
const depth = 4

/**
 * By mode, in model order. A failure costs its own job, with the longest wait and the dearest month of the year for power,
 * and what it brings on by its links, unguarded; a mode that fails unnoticed costs what it guards against, and a mode that
 * wears others what that wear brings on, each as often as `failuresPerHistory` says that the other mode fails.
 */
export function stakes(model: LifeModel, failuresPerHistory: ArrayLike<number>): Float64Array {
  const all = model.parts.flatMap((part) => part.modes.map((mode) => ({ part, mode })))
  const place = new Map(all.map(({ part, mode }, m) => [`${part.id} ${mode.id}`, m]))
  const partOf = new Map(model.parts.map((part) => [part.id, part]))
  const own = all.map(({ part, mode }) => jobCost(model, part, mode.remedy.repair ?? part.repair))
  const damaged = new Map(model.parts.map((part) => [part.id, jobCost(model, part, part.repair).money]))
  const event = (m: number, left: number): number => {
    const { mode } = all[m]!
    const follows = mode.links.reduce((sum, link) => {
      const target = link.mode === undefined ? undefined : place.get(`${link.part} ${link.mode}`)
      const cost =
        target === undefined || left === 0
          ? partOf.has(link.part)
            ? damaged.get(link.part)!
            : 0
          : event(target, left - 1)
      return sum + link.chance * cost
    }, 0)
    return own[m]!.money + mode.stops * powerCost(model, own[m]!.days) + follows
  }
  const events = all.map((_, m) => event(m, depth))
  const guards = new Map<string, number>()
  all.forEach(({ mode }, m) => {
    for (const { guard, chance, part, mode: into } of mode.links) {
      if (guard === undefined) continue
      const target = into === undefined ? undefined : place.get(`${part} ${into}`)
      const cost = target === undefined ? (damaged.get(part) ?? 0) : events[target]!
      const saved = failuresPerHistory[m]! * chance * guard.effectiveness * cost
      guards.set(guard.part, (guards.get(guard.part) ?? 0) + saved)
    }
  })
  return Float64Array.from(all, ({ part, mode }, m) => {
    const worn = mode.wear.reduce((sum, { part: into, mode: id, factor }) => {
      const target = place.get(`${into} ${id}`)
      return target === undefined ? sum : sum + failuresPerHistory[target]! * (factor - 1) * events[target]!
    }, 0)
    return events[m]! + worn + (mode.hidden ? (guards.get(part.id) ?? 0) : 0)
  })
}

function jobCost(
  model: LifeModel,
  part: LifePart,
  repair: Repair,
): { readonly money: number; readonly days: number } {
  const { labour, access } = model
  const dearest = Math.max(1, ...repair.supply.map(({ priceFactor }) => priceFactor))
  const opening = access.reduce((sum, { id, hours }) => sum + (part.access.includes(id) ? hours : 0), 0)
  const rate = repair.by === 'owner' ? labour.ownPerHour : labour.paidPerHour
  const hours = repair.hours + opening
  const { median, logSd } = labour.overrun
  const overrun = median * Math.exp(logSd ** 2 / 2)
  const longest = Math.max(0, ...repair.supply.map(({ days }) => meanOf(days)))
  return {
    money: overrun * (meanOf(repair.price) * dearest + hours * rate + repair.trips * labour.perTrip),
    days: longest * (1 + repair.wrongPartChance) + meanOf(repair.workshopDays) + hours / labour.hoursPerDay,
  }
}

function meanOf(amount: Parameters<typeof amountsOf>[0][number]): number {
  return meanAmount(amountsOf([amount]), 0)
}

/** Price of an outage of some days, power needed on every one of them, in the dearest month. */
function powerCost({ powerLoss: { curve, byMonth } }: LifeModel, days: number): number {
  const factor = Math.max(...byMonth)
  let from = { days: 0, cost: 0 }
  let slope = 0
  for (const point of curve) {
    if (point.days > from.days) slope = (point.cost - from.cost) / (point.days - from.days)
    if (point.days >= days && point.days > from.days) break
    from = point
  }
  return factor * (from.cost + slope * Math.max(0, days - from.days))
}
