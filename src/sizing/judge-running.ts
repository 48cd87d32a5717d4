/**
 * How a set runs over a year: light load, the mean of a day.
 *
 * @module
 */

import { stepW } from './demand-grid.js'
import type { Derated, Judged } from './judged-set.js'
import type { Weathers } from './load-type.js'
import type { OnOccasion } from './occasions.js'
import { measured, type SizeCheck } from './size-check.js'

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
