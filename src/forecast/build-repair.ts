/**
 * What a mend or a service of a part costs, waits for and risks, from the catalogue and the owner's terms.
 *
 * @module
 */

import type { Part, Remedy, Spread } from '../catalogue/part-schema.js'
import { valueAt } from '../catalogue/path.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import { openingHours } from '../catalogue/work-hours.js'
import type { Terms } from '../register/register-types.js'
import type { LifeModelInput } from './life-model.js'

type PartInput = LifeModelInput['parts'][number]
export type RepairInput = NonNullable<PartInput['repair']>
type ServiceInput = NonNullable<PartInput['service']>

export interface RepairKnown {
  readonly catalogue: SetCatalogue
  readonly terms: Terms
  /** Of the set. [a] */
  readonly ageYears: number
}

/** Standard normal quantile of 90 %: low and high of the catalogue are taken as 10 % and 90 % points. Practice. */
const ninetyPercent = 1.2816
/** Of parts that can still be had, the share that lies on a shelf near by. Practice. */
const stockedShare = 0.5
/** Log standard deviation of a time of delivery or in a workshop. Practice. */
const daysLogSd = 0.4
/** Depth of work that an owner does of whom nobody has said otherwise. Practice. */
export const usualOwnerDoes: readonly Part['work'][] = ['minor']
/** Share of the services due that an ordinary owner does. Practice. */
export const ordinaryDiligence = 0.7

/** A log-normal amount whose median is the typical value and whose 10 % and 90 % points are as far apart as low and high. */
export function amountOf(spread: Spread): number | { readonly median: number; readonly logSd: number } {
  if (!(spread.typical > 0) || !(spread.low > 0) || spread.high <= spread.low) return spread.typical
  const logSd = Math.log(spread.high / spread.low) / (2 * ninetyPercent)
  return { median: spread.typical, logSd: Math.min(3, logSd) }
}

/** Whether the owner does this work, by its depth and the parts excepted. */
export function ownerDoes(part: Pick<Part, 'id' | 'work'>, terms: Terms): boolean {
  if (terms.ownerNeverDoes?.includes(part.id)) return false
  if (terms.ownerAlsoDoes?.includes(part.id)) return true
  return (terms.ownerDoes ?? usualOwnerDoes).includes(part.work)
}

/** The repair that a remedy asks for. */
export function repairOf(part: Part, remedy: Remedy, known: RepairKnown): RepairInput {
  const { catalogue, terms } = known
  const who = ownerDoes(part, terms) ? 'owner' : 'paid'
  const opening = openingHours(catalogue.access, part.access.opens)
  const toShop = remedy.supply === 'made' && part.price.made !== undefined
  const atShop = toShop && ['rewound', 'rebuilt'].includes(part.madeMeans ?? '')
  const price = priceOf(part, remedy, catalogue)
  const bought = remedy.supply === 'bought' && remedy.outcome !== 'cleared'
  return {
    ...(price === undefined ? {} : { price: amountOf(price) }),
    hours: Math.max(0, part.hours[who] * remedy.hoursShare - opening[who]),
    by: who,
    trips: who === 'paid' ? 1 : 0,
    // what goes to a shop is away from the set all the time: that is work, not waiting
    ...(atShop ? { workshopDays: days(part.leadDays.made) } : {}),
    ...(bought ? boughtFrom(part, known) : {}),
    ...(toShop ? { supply: [madeOnly(part, catalogue, atShop)] } : {}),
    wrongPartChance: bought ? part.wrongPartChance : 0,
    intrusionChance: intrusionOf(part, known),
  }
}

/** The service of a part; undefined where none falls due by rote. */
export function serviceOf(part: Part, known: RepairKnown, diligence: number): ServiceInput | undefined {
  const { service } = part
  const { everyHours, everyYears } = service
  if (everyHours === undefined && everyYears === undefined) return undefined
  // one that only looks is no service here: the checks of ordinary care stand for it
  if (!service.renews && service.clears.length === 0 && service.partShare === 0) return undefined
  const who = ownerDoes(part, known.terms) ? 'owner' : 'paid'
  const modes = new Set(part.modes.filter(({ clock }) => clock !== 'relinkings').map(({ id }) => id))
  return {
    ...(everyHours === undefined ? {} : { everyHours }),
    ...(everyYears === undefined ? {} : { everyYears }),
    diligence,
    renews: service.renews,
    clears: service.renews ? [] : service.clears.filter((mode) => modes.has(mode)),
    price: service.partShare * part.price.original.typical,
    hours: service.hours[who],
    by: who,
  }
}

/** Scale of what is fitted against the original's, by what the made or rebuilt piece is. */
function madeQuality(part: Pick<Part, 'madeMeans'>, catalogue: SetCatalogue): number {
  const { made, rewound, aftermarket } = catalogue.wholeSet.repairQuality
  if (part.madeMeans === 'rewound') return rewound
  return part.madeMeans === 'rebuilt' || part.madeMeans === 'exchanged' ? aftermarket : made
}

function priceOf(part: Part, remedy: Remedy, catalogue: SetCatalogue): Spread | undefined {
  const piece = remedy.supply === 'made' ? (part.price.made ?? part.price.original) : part.price.original
  const besides: Spread[] = []
  if (remedy.supply !== 'none') besides.push(times(piece, remedy.partShare))
  if (part.shopCharge !== undefined && remedy.outcome === 'renewed') besides.push(part.shopCharge)
  const whole =
    remedy.wholeSetPrice === undefined ? undefined : valueAt(catalogue.wholeSet, remedy.wholeSetPrice)
  if (whole !== undefined) besides.push(whole as Spread)
  if (besides.length === 0) return undefined
  return besides.reduce((sum, one) => ({
    low: sum.low + one.low,
    typical: sum.typical + one.typical,
    high: sum.high + one.high,
  }))
}

function boughtFrom(part: Part, { catalogue, ageYears }: RepairKnown): RepairInput {
  const { repairQuality, obsolescence } = catalogue.wholeSet
  const perYear = part.goneAt20YearsChance / 20
  const gone = Math.min(0.95, perYear * ageYears)
  const dearer = Math.sqrt(obsolescence.madePriceFactor.low * obsolescence.madePriceFactor.high)
  const made =
    part.price.made === undefined
      ? { priceFactor: dearer, quality: repairQuality.made }
      : {
          priceFactor: part.price.made.typical / part.price.original.typical,
          quality: madeQuality(part, catalogue),
        }
  return {
    supply: [
      { chance: stockedShare * (1 - gone), days: days(part.leadDays.stocked) },
      { chance: (1 - stockedShare) * (1 - gone), days: days(part.leadDays.ordered) },
      { chance: gone, days: days(part.leadDays.made), ...made },
    ],
    lastLikelierPerYear: perYear,
  }
}

function madeOnly(
  part: Part,
  catalogue: SetCatalogue,
  atShop: boolean,
): NonNullable<RepairInput['supply']>[number] {
  return {
    chance: 1,
    days: atShop ? 0 : days(part.leadDays.made),
    quality: madeQuality(part, catalogue),
  }
}

function intrusionOf(part: Part, { catalogue, terms }: RepairKnown): number {
  const { minorRepairChance, majorRepairChance, relinkingChance, ownerFactor } = catalogue.wholeSet.intrusion
  const depth = part.work === 'minor' ? minorRepairChance : majorRepairChance
  const linked = part.work === 'windings' ? relinkingChance : 0
  const chance = 1 - (1 - depth) * (1 - linked)
  return Math.min(1, chance * (ownerDoes(part, terms) ? ownerFactor : 1))
}

function days(median: number): number | { readonly median: number; readonly logSd: number } {
  return median > 0 ? { median, logSd: daysLogSd } : 0
}

function times(spread: Spread, factor: number): Spread {
  return { low: spread.low * factor, typical: spread.typical * factor, high: spread.high * factor }
}
