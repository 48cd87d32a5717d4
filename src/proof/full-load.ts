/**
 * A test that is told at full load only: the load's fields, and the question where less was on.
 *
 * @module
 */

import { kilowatts } from './fields.js'
import { again, percentOf, type Taken } from './judging.js'
import type { Limits } from './limits.js'
import type { Ask } from './test-type.js'

export const loadFields = [
  kilowatts({ id: 'load', name: 'Load put on', condition: true }),
  kilowatts({ id: 'rating', name: 'Rating of the set', condition: true, least: 0.5, of: 'ratingKw' }),
] as const

/** Asks where less was on than the share of the rating that a limit names. */
export function partLoad(taken: Taken, limits: Limits, share: string): Ask[] {
  const load = taken.number('load')
  const rating = taken.number('rating')
  const least = limits(share)
  if (load === undefined || rating === undefined || percentOf(load, rating) >= least.value) return []
  const question = `${load} kW is ${Math.round((100 * load) / rating)} % of ${rating} kW; it is told at ${least.value} % or more. Can more be put on?`
  return [again('part-load', 'load', question)]
}
