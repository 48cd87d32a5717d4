/**
 * What a job takes by the catalogue: pieces, hands and opening, each way in once.
 *
 * @module
 */

import { usual } from '../alternatives/renewal.js'
import type { Access } from '../catalogue/file-schema.js'
import type { Part, Remedy } from '../catalogue/part-schema.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import { openedWays } from '../catalogue/work-hours.js'
import { labourOf } from '../forecast/build-money.js'
import { type RepairInput, repairOf } from '../forecast/build-repair.js'
import type { Deed, SetRegister } from '../register/register-types.js'
import { outcomes } from './job-action.js'
import type { JobPart } from './jobs.js'

/** One part of a job. */
export interface EstimatedPart {
  readonly part: string
  readonly name: string
  readonly did: Deed
  readonly by: 'owner' | 'paid'
  /** Hands, once it is laid bare. [h] */
  readonly hours: number
  /** Pieces, at the usual price. */
  readonly pieces: number
}

export interface JobEstimate {
  readonly parts: readonly EstimatedPart[]
  /** Parts that the set's catalogue does not have. */
  readonly unknown: readonly string[]
  /** Everything that is opened, what lies outermost first. */
  readonly ways: readonly Access[]
  /** Hands and opening. [h] */
  readonly hours: { readonly owner: number; readonly paid: number }
  /** Days of work. [d] */
  readonly days: number
  /** Pieces, hands, opening and the way of a workshop, before any overrun. */
  readonly money: number
  /** What it comes to in the end: one in ten below, as often above as below, one in ten above. */
  readonly span: { readonly low: number; readonly middle: number; readonly high: number }
}

export interface EstimateKnown {
  readonly register: SetRegister
  /** Of the set. */
  readonly catalogue: SetCatalogue
}

/** Standard normal quantile of 90 in 100. */
const ninetyPercent = 1.2816
const daysPerYear = 365.25

/**
 * Σ pieces + hours · rate + opening · rate + trips. Opening is the owner's work where every part is the owner's. The span is the
 * log-normal one of the overrun.
 */
export function estimateOf(
  parts: readonly Pick<JobPart, 'part' | 'did'>[],
  { register, catalogue }: EstimateKnown,
): JobEstimate {
  const labour = labourOf(register, catalogue, [])
  const builtDay = register.builtDay ?? register.asOfDay
  const ageYears = Math.max(0, register.asOfDay - builtDay) / daysPerYear
  const known = parts.flatMap(({ part: id, did }) => {
    const part = catalogue.parts.find((one) => one.id === id)
    if (part === undefined) return []
    const repair = repairOf(part, remedyOf(part, did), { catalogue, terms: register.terms, ageYears })
    return [{ part, did, repair }]
  })
  const ways = outermostFirst(
    openedWays(
      catalogue.access,
      known.flatMap(({ part }) => part.access.opens),
    ),
  )
  const byOwner = known.every(({ repair }) => repair.by === 'owner')
  const opening = ways.reduce((sum, way) => sum + way.setUpHours[byOwner ? 'owner' : 'paid'], 0)
  const hands = (by: 'owner' | 'paid') =>
    known.reduce((sum, { repair }) => sum + (repair.by === by ? (repair.hours ?? 0) : 0), 0)
  const hours = {
    owner: hands('owner') + (byOwner ? opening : 0),
    paid: hands('paid') + (byOwner ? 0 : opening),
  }
  const pieces = known.reduce((sum, { repair }) => sum + piecesOf(repair), 0)
  const trips = Math.max(0, ...known.map(({ repair }) => repair.trips ?? 0))
  const money =
    pieces +
    hours.owner * (labour.ownPerHour ?? 0) +
    hours.paid * (labour.paidPerHour ?? 0) +
    trips * (labour.perTrip ?? 0)
  return {
    parts: known.map(({ part, did, repair }) => ({
      part: part.id,
      name: part.name,
      did,
      by: repair.by ?? 'paid',
      hours: repair.hours ?? 0,
      pieces: piecesOf(repair),
    })),
    unknown: parts.map(({ part }) => part).filter((id) => !known.some(({ part }) => part.id === id)),
    ways,
    hours,
    days: (hours.owner + hours.paid) / (labour.hoursPerDay ?? 6),
    money,
    span: spanOf(money, labour.overrun ?? { median: 1, logSd: 0 }),
  }
}

/** One in ten below, the middle, one in ten above, of an amount with a log-normal overrun. */
export function spanOf(
  money: number,
  { median, logSd }: { readonly median: number; readonly logSd: number },
): JobEstimate['span'] {
  const at = (z: number) => money * median * Math.exp(z * logSd)
  return { low: at(-ninetyPercent), middle: at(0), high: at(ninetyPercent) }
}

/** Ways in such that each comes after all that it includes. */
function outermostFirst(ways: readonly Access[]): Access[] {
  const depth = (way: Access): number =>
    1 + Math.max(-1, ...ways.filter(({ id }) => way.includes.includes(id)).map(depth))
  return ways.toSorted((a, b) => depth(a) - depth(b) || (a.id < b.id ? -1 : 1))
}

/** What a deed takes: that of the first way of failing which it is the remedy of; a look takes the opening alone. */
function remedyOf(part: Part, did: Deed): Remedy {
  const outcome = outcomes[did]
  const nothing = { action: '', supply: 'none', partShare: 0 } as const
  if (outcome === undefined) return { ...nothing, outcome: 'cleared', hoursShare: did === 'removed' ? 1 : 0 }
  const found = part.modes
    .flatMap(({ remedy, otherRemedies }) => [remedy, ...otherRemedies])
    .find((remedy) => remedy.outcome === outcome)
  if (outcome !== 'renewed') return found ?? { ...nothing, outcome, hoursShare: 1 }
  return { ...(found ?? { action: '', outcome, supply: 'bought' }), partShare: 1, hoursShare: 1 }
}

function piecesOf({ price = 0 }: RepairInput): number {
  return usual(price)
}
