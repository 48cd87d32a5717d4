/**
 * When more running would change no word of the answer.
 *
 * @module
 */

import type { Report } from '../../alternatives/report.js'

/**
 * Settled: the verdict's word stands (a clear saving over four standard errors; else the chance of being best lies two
 * errors off the 0.7 and 0.9 between which the words change), and the simulation's own width of the walk-away price is under
 * a tenth of what finding out could make of it.
 */
export function isSettled({ histories, verdict, walkAway }: Report): boolean {
  const { clearness, saving, savingError, chanceBest } = verdict
  const chanceError = Math.sqrt((chanceBest * (1 - chanceBest)) / histories)
  const off = (bound: number) => Math.abs(chanceBest - bound) > 2 * chanceError
  const worded =
    clearness === 'clear' ? saving > 4 * savingError && (chanceBest === 1 || off(0.9)) : off(0.7) && off(0.9)
  if (!worded) return false
  if (walkAway === null) return true
  const width = ({ low, high }: { readonly low: number; readonly high: number }) => high - low
  return width(walkAway.simulation) <= width(walkAway.findingOut) / 10
}
