/**
 * How lightly a set of another size would run, by what is drawn aboard.
 *
 * @module
 */

import type { SizingLimits } from '../catalogue/sizing-schema.js'
import { activeOfAll, shareBelow } from './demand-points.js'
import { needsOf, type SizeQuestion } from './size-boat.js'

/** Share of the running hours below the line of light load, on a set of a rating. [kW] */
export type LightShare = (ratingKW: number) => number

/** Light running by the loads of a boat, or by its recording. Undefined where neither tells of any hour with the set running. */
export function lightShareOf(question: SizeQuestion): LightShare | undefined {
  const { year } = needsOf(question)
  const active = activeOfAll(year)
  if (year.length === 0 || active.length < 2) return undefined
  return lightShareIn(active, question.book.sizing.load)
}

/** The same from the chances of each step of active power. */
export function lightShareIn(
  active: Float64Array,
  { lowBelow }: Pick<SizingLimits['load'], 'lowBelow'>,
): LightShare {
  return (ratingKW) => shareBelow(active, lowBelow * ratingKW)
}

/** Next to nothing. Practice. */
const leastShare = 0.01

/**
 * Light running of other sizes where that of the present one is known better than the loads tell it: `F(P)^g`,
 * g = ln s / ln F(P₀), F the share by the loads, P₀ the present rating and s the share that is known of it. It is s at P₀, no
 * less on a larger set, and nought where no hour is light. Undefined where either share of the present set is next to nothing or
 * next to all: then the loads contradict what is known of it, or tell nothing of other sizes.
 *
 * Source: practice; that the ranks of the hours stay as the loads have them.
 */
export function lightShareKnowing(
  byLoads: LightShare,
  present: { readonly ratingKW: number; readonly lowLoadShare: number },
): LightShare | undefined {
  const told = byLoads(present.ratingKW)
  const known = present.lowLoadShare
  if ([told, known].some((share) => share < leastShare || share > 1 - leastShare)) return undefined
  const exponent = Math.log(known) / Math.log(told)
  return (ratingKW) => byLoads(ratingKW) ** exponent
}
