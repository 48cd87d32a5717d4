/**
 * What a guarantee is worth: the chance that the work has to be done again within it, times what that costs.
 *
 * @module
 */

import { windingParts } from '../alternatives/open-stops.js'
import { jobIntrusion, rewoundQuality } from '../alternatives/quoted-job.js'
import { meanOf } from '../alternatives/sum-of-amounts.js'
import type { CatalogueOffers } from '../catalogue/offer-schema.js'
import type { LifeModel, LifePart } from '../forecast/life-model.js'
import type { Offer } from './quotes-offers.js'
import { openingHours } from './quotes-wait.js'

export interface GuaranteeWorth {
  readonly money: number
  /** Chance that the work has to be done again within the months, by its parts and by faults that it put in. */
  readonly again: number
  /** What doing it again costs. */
  readonly costs: number
  /** From the lives of the parts, or from a plain chance where the model has none of them. */
  readonly by: 'lives' | 'plain'
}

/**
 * `h · (Σ Fₚ Cₚ + i F₀ C̄)`: Fₚ the chance that a part fitted anew fails within the months, Cₚ what its mend costs; i the chance
 * that the work put in a fault which its tests miss, F₀ that it shows within the months, C̄ the mean of the Cₚ; h the share of
 * what is covered that is really put right at no cost. Without a part of the model: `h · (1 − (1 − a)^(months/12)) · price`, a
 * the plain chance of a year.
 */
export function worthOfGuarantee(
  { months, covers, withTax }: { readonly months: number } & Pick<Offer, 'covers' | 'withTax'>,
  { model, offers }: { readonly model: LifeModel; readonly offers: CatalogueOffers },
): GuaranteeWorth {
  const { honouredShare, againChance } = offers.guarantee
  const years = months / 12
  const parts = model.parts.filter(({ id }) =>
    covers.parts.some(({ part, did }) => part === id && (did === 'renewed' || did === 'reconditioned')),
  )
  if (parts.length === 0) {
    const again = 1 - (1 - againChance) ** years
    return { money: honouredShare * again * withTax, again, costs: withTax, by: 'plain' }
  }
  const { onset, testsCatch } = model.intrusion
  const hours = years * yearly(model.use.hoursByMonth)
  const putIn = jobIntrusion * (1 - testsCatch) * -Math.expm1(-((hours / onset.scaleHours) ** onset.shape))
  const fails = parts.map((part) => chanceWithin(part, years, model))
  const costs = parts.map((part) => costOfMend(part, model))
  const mean = costs.reduce((sum, cost) => sum + cost, 0) / costs.length
  const expected = fails.reduce((sum, chance, p) => sum + chance * costs[p]!, 0) + putIn * mean
  const again = 1 - fails.reduce((none, chance) => none * (1 - chance), 1 - putIn)
  return { money: honouredShare * expected, again, costs: again > 0 ? expected / again : mean, by: 'lives' }
}

/** Chance that a part fitted now fails within so many years: `1 − exp(−Σ (x/(q·η))^β)` over its visible modes, x on their clocks. */
function chanceWithin({ id, modes }: LifePart, years: number, { use }: LifeModel): number {
  const quality = windingParts.has(id) ? rewoundQuality : 1
  const perYear = {
    hours: yearly(use.hoursByMonth),
    starts: yearly(use.startsByMonth),
    years: 1,
  }
  const hazard = modes
    .filter(({ hidden }) => !hidden)
    .reduce((sum, { clock, shape, scale, lifeFactor = 1 }) => {
      return sum + ((years * perYear[clock]) / (scale * lifeFactor * quality)) ** shape
    }, 0)
  return -Math.expm1(-hazard)
}

/** Piece, hands, opening and visits, with the mean overrun. */
function costOfMend(part: LifePart, model: LifeModel): number {
  const { paidPerHour, ownPerHour, perTrip, overrun } = model.labour
  const rate = part.repair.by === 'owner' ? ownPerHour : paidPerHour
  const hours = part.repair.hours + openingHours(model, [part])
  const bare = meanOf(part.repair.price) + hours * rate + part.repair.trips * perTrip
  return bare * overrun.median * Math.exp(overrun.logSd ** 2 / 2)
}

function yearly(byMonth: readonly number[]): number {
  return byMonth.reduce((sum, value) => sum + value, 0)
}
