/**
 * Whether a set gets rid of its heat: through its exchanger into the sea, and through its exhaust.
 *
 * @module
 */

import { fuelLitresPerHour } from '../catalogue/whole-set.js'
import type { SpaceFacts } from '../register/load-facts.js'
import { sweptLitresOf } from './engine-size.js'
import { effectiveness, fouledTransfer, type Passing, transferUnitsFor } from './exchanger.js'
import {
  airKg,
  combustionM3PerHour,
  dryMixC,
  flowLitresPerMinute,
  freshWater,
  saturatedMixC,
  seaWater,
  type WetExhaust,
  waterForMix,
} from './heat-and-air.js'
import type { PlaceBook } from './judged-set.js'
import { measured, type SizeCheck } from './size-check.js'
import type { SizedSet } from './sized-set.js'

/** Sea water where nobody tells it. [°C] Practice. */
export const usualSeaC = 25

interface Heated {
  readonly set: SizedSet
  readonly space: SpaceFacts
  /** Exceeded one hour in a hundred on the heaviest occasion. */
  readonly p99KW: number
}

/** Both checks. */
export function heatChecks(book: PlaceBook, of: Heated): SizeCheck[] {
  return [coolingCheck(book, of), exhaustCheck(book, of)]
}

/** Heat of the fuel that goes into the coolant. [kW] */
function jacketKW(
  { sizing, wholeSet }: PlaceBook,
  of: { readonly ratingKW: number; readonly loadKW: number },
): number {
  const litres = fuelLitresPerHour(wholeSet, { ...of, condition: 'healthy' })
  return sizing.heat.jacketShare * litres * sizing.heat.fuelKWhPerLitre
}

/** Sea water that the exchanger of a set needs at its rating. [l/min] */
export function exchangerLitresPerMinute(book: PlaceBook, ratingKW: number): number {
  const { heat, water } = book.sizing
  const heatKW = jacketKW(book, { ratingKW, loadKW: ratingKW })
  return flowLitresPerMinute(seaWater(water), { heatKW, riseK: heat.exchangerRiseK })
}

/** Coolant that goes round between the two at the rating. [l/min] */
export function coolantLitresPerMinute(book: PlaceBook, ratingKW: number): number {
  const { exchanger, water } = book.sizing
  const heatKW = jacketKW(book, { ratingKW, loadKW: ratingKW })
  return flowLitresPerMinute(freshWater(water), { heatKW, riseK: exchanger.coolantDropK })
}

/**
 * Heat at the load that is exceeded one hour in a hundred, against what an exchanger of usual make carries in the boat's sea:
 * made so that, fouled, it carries the heat of the rating in warm sea water with the coolant at its most.
 */
function coolingCheck(book: PlaceBook, { set, space, p99KW }: Heated): SizeCheck {
  const { ratingKW } = set
  const heatKW = jacketKW(book, { ratingKW, loadKW: Math.min(ratingKW, p99KW) })
  const { exchanger } = book.sizing
  const seaC = space.seaWaterC ?? usualSeaC
  const share = Math.max(0, exchanger.coolantMostC - seaC) / (exchanger.coolantMostC - exchanger.warmSeaC)
  const carriedKW = share * jacketKW(book, { ratingKW, loadKW: ratingKW })
  const clean = Math.min(cleanOverFouled(book, 'counterflow'), cleanOverFouled(book, 'crossflow'))
  return {
    ...measured('sea-cooling', heatKW, carriedKW, 'kW'),
    about: `${seaC} °C; clean it carries ${clean.toFixed(1)} times as much`,
    limitPath: 'sizing.exchanger.warmSeaC',
    usual: ['exchanger', ...(space.seaWaterC === undefined ? ['seaWaterC'] : [])],
  }
}

/** Heat that the exchanger carries clean over what it carries fouled. */
function cleanOverFouled({ sizing: { exchanger, heat } }: PlaceBook, passing: Passing): number {
  const { cleanKWPerM2K, seaFoulingM2KPerKW, jacketFoulingM2KPerKW } = exchanger
  // Rise of the one and drop of the other are as their capacities.
  const [lesser, greater] = [exchanger.coolantDropK, heat.exchangerRiseK].sort((a, b) => a - b)
  const ratio = lesser! / greater!
  const fouled = greater! / (exchanger.coolantMostC - exchanger.warmSeaC)
  const units = transferUnitsFor({ passing, ratio, effectiveness: fouled })
  if (units === undefined) return 1
  const foulingM2KPerKW = seaFoulingM2KPerKW + jacketFoulingM2KPerKW
  const cleaner = cleanKWPerM2K / fouledTransfer({ cleanKWPerM2K, foulingM2KPerKW })
  return effectiveness({ passing, ratio, transferUnits: units * cleaner }) / fouled
}

/** The hose behind the injection at full load, if no water turned to steam, and how little water still keeps it from its limit. */
function exhaustCheck(book: PlaceBook, { set, space }: Heated): SizeCheck {
  const { exhaust } = book.sizing
  const mix = wetExhaustOf(book, set, space)
  const hoseC = dryMixC(mix)
  const least = waterForMix(mix, exhaust.hoseMostC) / mix.waterKgPerS
  const { verdict, ...check } = measured('exhaust-heat', hoseC, exhaust.hoseMostC, '°C')
  return {
    ...check,
    verdict: verdict === 'passes' && hoseC > exhaust.hoseAimC ? 'tight' : verdict,
    about: `about ${Math.round(saturatedMixC(mix))} °C as its steam takes heat; at ${Math.round(100 * least)} % of its water it could reach ${exhaust.hoseMostC} °C`,
    limitPath: 'sizing.exhaust.hoseMostC',
    usual: ['gasC', ...(space.seaWaterC === undefined ? ['seaWaterC'] : [])],
  }
}

function wetExhaustOf(book: PlaceBook, set: SizedSet, space: SpaceFacts): WetExhaust {
  const { sizing, wholeSet } = book
  const { exhaust, heat, water, fuel, ventilation } = sizing
  const { ratingKW, rpm } = set
  const litres = fuelLitresPerHour(wholeSet, { ratingKW, loadKW: ratingKW, condition: 'healthy' })
  const burnt = combustionM3PerHour({
    sweptLitres: sweptLitresOf(sizing, set),
    rpm,
    volumetricEfficiency: ventilation.volumetricEfficiency,
  })
  return {
    waterKgPerS: (exchangerLitresPerMinute(book, ratingKW) * water.seaKgPerM3) / 60_000,
    waterC: (space.seaWaterC ?? usualSeaC) + heat.exchangerRiseK,
    waterKJPerKgK: water.seaKJPerKgK,
    gasKgPerS: (airKg(burnt) + fuel.kgPerLitre * litres) / 3600,
    gasC: exhaust.gasC,
    gasKJPerKgK: exhaust.gasKJPerKgK,
  }
}
