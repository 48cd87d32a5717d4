/**
 * Money and days of a life: what is booked, and outages with their price. Numbers in round brackets are sentences of
 * `docs/life-model.md`.
 *
 * @module
 */

import type { World } from './state.js'

export const daysAYear = 365.25

const headings = ['planned', 'failures', 'intrusion', 'replacement', 'power', 'resale'] as const
type Heading = (typeof headings)[number]

/** What one life came to, from now to the horizon; money discounted to now. */
export interface Life {
  readonly costs: Record<Heading, number>
  daysWithout: number
  stops: number
  failures: number
  /** When the set was replaced. [years from now] */
  readonly replaced: number[]
}

export interface Outage {
  readonly begin: number
  end: number
  /** Without wanted power, so far, from now on. */
  days: number
  /** Access groups that are open. */
  readonly groups: Set<string>
}

export function emptyPurse(): Life {
  return {
    costs: { planned: 0, failures: 0, intrusion: 0, replacement: 0, power: 0, resale: 0 },
    daysWithout: 0,
    stops: 0,
    failures: 0,
    replaced: [],
  }
}

export function costOf({ costs }: Life): number {
  return headings.reduce((sum, heading) => sum + costs[heading], 0)
}

/** (32) What was paid before now is not counted. */
export function bookAt(world: World, heading: Heading, money: number, at = world.t): void {
  if (at < 0) return
  world.purse.costs[heading] += money * Math.exp(-world.nature.model.realInterestPerYear * at)
}

/** (22) Outages that overlap are one; a stop counts only if the set was up. */
export function takeOut(world: World, outage: { readonly years: number; readonly stop: boolean }): void {
  const end = world.t + outage.years
  if (world.outage !== null) {
    world.outage.end = Math.max(world.outage.end, end)
    return
  }
  if (outage.stop && world.t >= 0) world.purse.stops += 1
  if (outage.years > 0) world.outage = { begin: world.t, end, days: 0, groups: new Set() }
}

/** (23) The outage is over, or cut by the horizon: its price, at its middle. */
export function closeOutage(world: World): void {
  const { outage, nature } = world
  if (outage === null) return
  const { curve, byMonth } = nature.model.powerLoss
  const middle = (Math.max(0, outage.begin) + Math.min(outage.end, world.t)) / 2
  bookAt(world, 'power', priceOfDays(curve, outage.days) * byMonth[0]!, Math.max(0, middle))
  world.outage = null
}

type Curve = World['nature']['model']['powerLoss']['curve']

function priceOfDays(curve: Curve, days: number): number {
  if (days <= 0) return 0
  const points = [{ days: 0, cost: 0 }, ...curve]
  let slope = 0
  for (let k = 1; k < points.length; k++) {
    const low = points[k - 1]!
    const high = points[k]!
    if (high.days <= low.days) continue
    slope = (high.cost - low.cost) / (high.days - low.days)
    if (days <= high.days) return low.cost + slope * (days - low.days)
  }
  const last = points[points.length - 1]!
  return last.cost + slope * (days - last.days)
}
