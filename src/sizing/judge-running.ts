/**
 * How a set runs over a year: light load, the mean of a day, fuel.
 *
 * @module
 */

import { fuelLitresPerHour } from '../catalogue/whole-set.js'
import { stepW } from './demand-grid.js'
import type { Derated, FuelOfYear, Judged } from './judged-set.js'
import type { Weathers } from './load-type.js'
import type { OnOccasion } from './occasions.js'
import { measured, type SizeCheck } from './size-check.js'
import type { SizedSet } from './sized-set.js'

/** Light running, and the mean over a day. */
export function lowLoadChecks(
  { book: { sizing }, year }: Judged,
  { lowShare, derated }: { readonly lowShare: number; readonly derated: Derated },
): SizeCheck[] {
  if (year.length === 0) return []
  const low = measured('low-load', lowShare, sizing.load.lowShareMost, 'share')
  const heaviest = heaviestDay(year)
  return [
    // Light running wears; it does not stop the set from carrying what is asked.
    {
      ...low,
      verdict: low.verdict === 'fails' ? 'tight' : low.verdict,
      limitPath: 'sizing.load.lowShareMost',
    },
    {
      ...measured('mean-load', heaviest.kW, sizing.load.meanShareMost * derated.engineKW, 'kW'),
      season: heaviest.season,
      limitPath: 'sizing.load.meanShareMost',
    },
  ]
}

/** What a set burns in a year for what is drawn, as its line of fuel has it: none of what is beyond its rating. */
export function fuelOfYear({ book, year }: Judged, set: SizedSet): FuelOfYear {
  const { ratingKW, condition } = set
  const given = year.map(({ hours, demand }) => ({ hours, loadKW: Math.min(ratingKW, demand.meanW / 1000) }))
  const litres = given.reduce(
    (sum, { hours, loadKW }) =>
      sum + hours * fuelLitresPerHour(book.wholeSet, { ratingKW, loadKW, condition }),
    0,
  )
  const kWh = given.reduce((sum, { hours, loadKW }) => sum + hours * loadKW, 0)
  return {
    litres,
    ...(kWh > 0 ? { litresPerKWh: litres / kWh } : {}),
    co2Kg: book.sizing.fuel.co2KgPerLitre * litres,
  }
}

/** The season in which most is drawn on the mean of a day's running. Time at rest is not counted. */
function heaviestDay(year: readonly OnOccasion[]): { readonly kW: number; readonly season: Weathers } {
  const named = [...new Set(year.map(({ season }) => season))]
  const meanKW = ({ active }: OnOccasion) =>
    active.reduce((sum, chance, i) => sum + (chance * i * stepW) / 1000, 0)
  return named
    .map((season) => {
      const day = year.filter((one) => one.season === season)
      const hours = day.reduce((sum, one) => sum + one.hours, 0)
      return { season, kW: day.reduce((sum, one) => sum + (one.hours / hours) * meanKW(one), 0) }
    })
    .reduce((most, next) => (next.kW > most.kW ? next : most))
}
