/**
 * The repair limit: above which estimate a later job is not mended any more, and what is done instead.
 *
 * @module
 */

import type { Alternative, LifeModel } from '../forecast/life-model.js'
import type { Posterior } from '../forecast/posterior-type.js'
import { usual } from './renewal.js'
import { column, type Picked, type Sample, type Span } from './sample.js'
import { simulate } from './simulate.js'

export type Limit = NonNullable<Alternative['limit']>

/** Plays other alternatives of the same set than the model's own. */
export type Play = (alternatives: readonly Alternative[], which: Span | Picked) => Promise<readonly Sample[]>

/** Limits are chosen on other histories than those that are reported on. */
const choosingSeedOffset = 0x5eed
/** Histories of a round; later rounds are played on histories of their own. */
const histories = { first: 300, coarse: 120, fine: 200 }

/** Shapes of a limit as multiples of a new set's price, at now, half way and the horizon. */
const coarseShapes: readonly Knots[] = [
  [1, 1, 1],
  [0.5, 0.5, 0.5],
  [0.25, 0.25, 0.25],
  [0.12, 0.12, 0.12],
  [1, 0.6, 0.2],
  [0.4, 0.25, 0.1],
]
/** By how much a knot is moved in each of the finer rounds. */
const moves = [1.6, 1.25]
/** A limit is taken only if it saves more than so many standard errors. */
const sure = 2

type Knots = readonly [number, number, number]

/**
 * A first limit for what is left as it is, from a few histories: quick, for the first figures. `undefined`: always mend.
 */
export function firstLimit(
  model: LifeModel,
  posterior: Posterior,
  { seed, used }: { readonly seed: number; readonly used?: ReadonlyMap<number, Posterior> },
): Limit | undefined {
  const trial = firstTrial(model, seed)
  if (trial === undefined) return undefined
  const { alternatives, span, chosen } = trial
  return chosen(
    simulate({ ...model, alternatives: [...alternatives] }, posterior, {
      ...span,
      ...(used === undefined ? {} : { used }),
    }),
  )
}

/** What has to be played for a first limit, and which it then is. */
export interface FirstTrial {
  readonly alternatives: readonly Alternative[]
  readonly span: Span
  readonly chosen: (samples: readonly Sample[]) => Limit | undefined
}

/** The trial of {@link firstLimit}; `undefined` where there is no limit to try. */
export function firstTrial(model: LifeModel, seed: number): FirstTrial | undefined {
  const limits = coarseLimits(model)
  if (limits.length === 0) return undefined
  return {
    alternatives: withLimits({ id: 'leave', now: 'leave' }, [undefined, ...limits]),
    span: { seed: seed + choosingSeedOffset, from: 0, count: histories.first },
    chosen: (samples) => limits[cheapest(samples) - 1],
  }
}

export interface HowChosen {
  readonly seed: number
  readonly play: Play
  /** Ids of alternatives that keep the limit that they have. */
  readonly except?: ReadonlySet<string>
}

/**
 * The limit of each alternative after which a set runs on, by its id; `undefined`: always mend. A coarse round picks the
 * best shape, and finer ones move its knots, until a round saves no more than two standard errors. Whatever is picked has
 * to save that much against what it takes the place of on the same histories, and what the coarse round picked has to do
 * so against always mending once more, on histories that it was not picked on.
 */
export async function chooseLimits(
  model: LifeModel,
  { seed, play, except = new Set() }: HowChosen,
): Promise<ReadonlyMap<string, Limit | undefined>> {
  const limits = coarseLimits(model)
  const chosen = new Map<string, Limit | undefined>()
  let open = model.alternatives
    .filter(({ id, now }) => now !== 'give-up' && !except.has(id))
    .map(({ limit: _, ...rest }): Alternative => rest)
  if (limits.length === 0) return new Map(open.map(({ id }) => [id, undefined]))
  let from = 0
  const round = async (choices: (of: Alternative) => readonly (Limit | undefined)[], count: number) => {
    const tried = open.map((of) => ({ of, limits: choices(of) }))
    const alternatives = tried.flatMap((one) => withLimits(one.of, one.limits))
    const samples = await play(alternatives, { seed: seed + choosingSeedOffset, from, count })
    from += count
    let at = 0
    return tried.map((one) => {
      const own = samples.slice(at, at + one.limits.length)
      at += one.limits.length
      return { ...one, samples: own, best: cheapest(own) }
    })
  }
  for (const { of, limits: tried, best } of await round(() => [undefined, ...limits], histories.coarse)) {
    chosen.set(of.id, tried[best])
  }
  for (const factor of moves) {
    open = open.filter(({ id }) => chosen.get(id) !== undefined)
    if (open.length === 0) break
    const further: Alternative[] = []
    for (const { of, limits: tried, samples, best } of await round(
      ({ id }) => [undefined, chosen.get(id), ...movedLimits(chosen.get(id)!, factor)],
      histories.fine,
    )) {
      const mending = samples[0]!
      const kept = samples[1]!
      // The limit of the round before has to hold on these new histories; one picked among these has to beat it surely.
      if (!saves(kept, mending)) chosen.set(of.id, undefined)
      else if (best > 1 && saves(samples[best]!, kept)) {
        chosen.set(of.id, tried[best])
        further.push(of)
      }
    }
    open = further
  }
  return chosen
}

/** Alternatives with the limits that were chosen for them. */
export function withChosenLimits(
  alternatives: readonly Alternative[],
  chosen: ReadonlyMap<string, Limit | undefined>,
): Alternative[] {
  return alternatives.map((alternative) => {
    if (!chosen.has(alternative.id)) return alternative
    const { limit: _, ...rest } = alternative
    const limit = chosen.get(alternative.id)
    return limit === undefined ? rest : { ...rest, limit }
  })
}

/** Every coarse shape, with what is done above it: a new set, or giving up, where these are among the alternatives. */
function coarseLimits({ candidates, alternatives }: LifeModel): Limit[] {
  const fitted = alternatives.flatMap(({ now, replaceLater }) => [
    ...(typeof now === 'object' && 'replaceWith' in now ? [now.replaceWith] : []),
    ...(replaceLater === undefined ? [] : [replaceLater.with]),
  ])
  const usualId = fitted.includes('new-same') ? 'new-same' : fitted[0]
  const yardstick = candidates.find(({ id }) => id === (usualId ?? 'new-same')) ?? candidates[0]
  if (yardstick === undefined) return []
  const price = usual(yardstick.price)
  const aboves: Limit['above'][] = [
    ...(usualId === undefined ? [] : [{ replaceWith: usualId }]),
    ...(alternatives.some(({ now }) => now === 'give-up') ? ['give-up' as const] : []),
  ]
  return aboves.flatMap((above) =>
    coarseShapes.map((shape): Limit => ({ knots: shape.map((share) => share * price) as KnotList, above })),
  )
}

type KnotList = [number, number, number]

/** Each knot for itself up and down, and all three. */
function movedLimits({ knots, above }: Limit, factor: number): Limit[] {
  const moved = [factor, 1 / factor].flatMap((by) => [
    knots.map((knot) => knot * by),
    ...knots.map((_, moving) => knots.map((knot, k) => (k === moving ? knot * by : knot))),
  ])
  return moved.map((list) => ({ knots: list as KnotList, above }))
}

function withLimits(of: Alternative, limits: readonly (Limit | undefined)[]): Alternative[] {
  return limits.map((limit, i) => ({
    ...of,
    id: `${of.id}-${i}`,
    ...(limit === undefined ? {} : { limit }),
  }))
}

/** The sample with the least mean cost, the first of equals; the first of all unless that saves surely against it. */
function cheapest(samples: readonly Sample[]): number {
  const means = samples.map((sample) => column(sample, 'cost').reduce((sum, cost) => sum + cost, 0))
  const least = means.indexOf(Math.min(...means))
  return least > 0 && saves(samples[least]!, samples[0]!) ? least : 0
}

/** Whether one costs less than the other by more than two standard errors of the difference of the same histories. */
function saves(one: Sample, other: Sample): boolean {
  const costs = column(one, 'cost')
  const others = column(other, 'cost')
  const n = costs.length
  let sum = 0
  for (let i = 0; i < n; i++) sum += others[i]! - costs[i]!
  const mean = sum / n
  let squares = 0
  for (let i = 0; i < n; i++) squares += (others[i]! - costs[i]! - mean) ** 2
  return mean > sure * Math.sqrt(squares / (n - 1) / n)
}
