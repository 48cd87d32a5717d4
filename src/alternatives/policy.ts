/**
 * The repair limit: above which estimate a later job is not mended any more.
 *
 * @module
 */

import type { Alternative, LifeModel } from '../forecast/life-model.js'
import type { Posterior } from '../forecast/posterior-type.js'
import { column, simulate } from './simulate.js'

type Limit = NonNullable<Alternative['limit']>

/** Histories for choosing; another stream than the one reported on. */
const choosingHistories = 600
const choosingSeedOffset = 0x5eed

/** Fractions of a new set's price tried as a level limit, before it is tilted. */
const levels = [1, 0.6, 0.4, 0.25, 0.15]
const tilts: readonly (readonly [number, number, number])[] = [
  [1.5, 1, 0.5],
  [1, 1, 0.5],
  [1, 0.7, 0.3],
  [1.5, 1.2, 0.8],
]

/**
 * The best of a coarse set of limits for a set that is left as it is, on histories of its own; `undefined` if mending
 * always is better. What is done above it is the cheaper of a new set of the same size and giving up.
 */
export function chooseLimit(
  model: LifeModel,
  posterior: Posterior,
  choice: { readonly seed: number; readonly replaceWith: string },
): Limit | undefined {
  const { seed, replaceWith } = choice
  const candidate = model.candidates.find(({ id }) => id === replaceWith)
  if (candidate === undefined) return undefined
  const price =
    typeof candidate.price === 'object' && 'median' in candidate.price ? candidate.price.median : 0
  const above = { replaceWith }
  const level = (fraction: number): Limit => ({
    knots: [price * fraction, price * fraction, price * fraction],
    above,
  })
  const best = cheapest(model, posterior, seed, [undefined, ...levels.map(level)])
  const start = best ?? level(1)
  const tilted = tilts.map(
    (tilt): Limit => ({
      knots: [start.knots[0] * tilt[0], start.knots[1] * tilt[1], start.knots[2] * tilt[2]],
      above,
    }),
  )
  return cheapest(model, posterior, seed, [best, ...tilted])
}

/** The limit with the least mean cost; the first of equals. */
function cheapest(
  model: LifeModel,
  posterior: Posterior,
  seed: number,
  limits: readonly (Limit | undefined)[],
): Limit | undefined {
  const alternatives = limits.map(
    (limit, i): Alternative => ({
      id: `limit-${i}`,
      now: 'leave',
      ...(limit === undefined ? {} : { limit }),
    }),
  )
  const samples = simulate({ ...model, alternatives }, posterior, {
    seed: seed + choosingSeedOffset,
    from: 0,
    count: choosingHistories,
  })
  const means = samples.map((sample) => column(sample, 'cost').reduce((sum, cost) => sum + cost, 0))
  return limits[means.indexOf(Math.min(...means))]
}
