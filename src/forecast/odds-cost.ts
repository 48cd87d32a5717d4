/**
 * What a failure costs on average: its own job, and what it drags down.
 *
 * @module
 */

import type { Amount, LifeModel, LifePart, Repair } from './life-model.js'

/** Mean of an uncertain amount: itself, median · e^(σ²/2), or its mean. */
export function meanAmount(amount: Amount): number {
  if (typeof amount === 'number') return amount
  return 'median' in amount ? amount.median * Math.exp(amount.logSd ** 2 / 2) : amount.exponentialMean
}

/** What is mended: a mode of a part, or the part as plainly damaged (renewed). */
export interface Mended {
  readonly part: LifePart
  readonly mode: LifePart['modes'][number] | undefined
}

/**
 * Mean money of a job: (pieces + hands-on hours and opened access at their rates + trips) × mean overrun.
 *
 * @param besides what is mended in the same job already: its access is open and its trips are made
 */
export function meanJobCost(model: LifeModel, mended: Mended, besides?: Mended): number {
  const { labour } = model
  const repair = repairOf(mended)
  const cleared = mended.mode?.remedy.outcome === 'cleared'
  const rate = repair.by === 'owner' ? labour.ownPerHour : labour.paidPerHour
  const open = besides ? openedBy(model, besides.part) : new Set<string>()
  const trips = Math.max(0, repair.trips - (besides ? repairOf(besides).trips : 0))
  let money = (cleared ? 0 : meanPieces(repair)) + repair.hours * rate + trips * labour.perTrip
  const accessRate = rate * (repair.by === 'owner' ? labour.ownerAccessFactor : 1)
  for (const group of openedBy(model, mended.part)) {
    if (!open.has(group)) money += (model.access.find(({ id }) => id === group)?.hours ?? 0) * accessRate
  }
  return money * meanAmount(labour.overrun)
}

function repairOf({ part, mode }: Mended): Repair {
  return mode?.remedy.repair ?? part.repair
}

function meanPieces(repair: Repair): number {
  const { supply } = repair
  const factor =
    supply.length === 0 ? 1 : supply.reduce((sum, option) => sum + option.chance * option.priceFactor, 0)
  return meanAmount(repair.price) * factor
}

function openedBy(model: LifeModel, part: LifePart): Set<string> {
  const opened = new Set<string>()
  const open = (group: string): void => {
    if (opened.has(group)) return
    opened.add(group)
    for (const included of model.access.find(({ id }) => id === group)?.includes ?? []) open(included)
  }
  part.access.forEach(open)
  return opened
}
