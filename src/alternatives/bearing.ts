/**
 * What bears on the choice: what is worth finding out before it, and what would change it.
 *
 * @module
 */

import type { LifeModel } from '../forecast/life-model.js'
import { type LookWorth, type WorthOfLooks, worthOfLooks } from './finding-out.js'
import { curvedInputs, straightInputs } from './inputs.js'
import { type WorthOfQuantity, worthOfQuantities } from './perfect-information.js'
import type { Play } from './policy.js'
import { joinSamples, type Sample } from './sample.js'
import type { StartStates } from './start-states.js'
import { type PlayModel, type TurningPoints, turningPoints } from './turning-points.js'
import { type TwoWayMap, twoWayMap } from './two-way-map.js'
import { worthOfYears } from './worth-of-years.js'

/** Histories already played, all from the first on, and how more are played. */
export interface Played {
  readonly model: LifeModel
  readonly samples: readonly Sample[]
  readonly states: StartStates
  readonly seed: number
  readonly play: Play
  readonly playModel: PlayModel
}

/** Fewer histories leave the worth of a look in the dark. */
const enough = 5_000

/** Histories from the first on, filled up where they are too few to say what bears on them. */
export async function enoughHistories(
  model: LifeModel,
  samples: readonly Sample[],
  { seed, play }: Pick<Played, 'seed' | 'play'>,
): Promise<readonly Sample[]> {
  const from = samples[0]!.columns[0]!.length
  if (from >= enough) return samples
  return joinSamples([samples, await play(model.alternatives, { seed, from, count: enough - from })])
}

export interface WorthFindingOut extends WorthOfLooks {
  /** Prices, waits and scales, as if each could be known for certain; most worth first. */
  readonly quantities: readonly WorthOfQuantity[]
  /** The look that pays most; none: nothing is worth looking at, choose. */
  readonly first?: LookWorth
}

/** Looks at the set, and quantities that could be known better, by what they are worth. */
export async function worthFindingOut(played: Played): Promise<WorthFindingOut> {
  const looking = worthOfLooks(played)
  const trying = worthOfYears({ ...played, play: played.playModel })
  // worked out while others play for the looks
  const drawn = worthOfQuantities(played)
  const [looks, years] = await Promise.all([looking, trying])
  const first = looks.looks.find(({ pays }) => pays)
  const quantities = [...drawn, ...(years === undefined ? [] : [years])]
  return {
    ...looks,
    quantities: quantities.sort((a, b) => b.worth - a.worth),
    ...(first === undefined ? {} : { first }),
  }
}

export interface WhatChanges {
  readonly turning: TurningPoints
  /** Across is the quote, or a new set's price where none is in hand; down are the years kept and the price of a day. */
  readonly maps: readonly TwoWayMap[]
}

/** What would change the answer; none where there is no choice. */
export async function whatChanges(played: Played): Promise<WhatChanges | undefined> {
  const { model, samples, seed, playModel } = played
  const asked = { model, samples, seed, play: playModel, trials: new Map() }
  const turn = turningPoints(asked)
  const straight = straightInputs(model)
  const across = straight.find(({ id }) => id === 'quote') ?? straight.find(({ id }) => id === 'new-set')!
  const down = [
    curvedInputs(model).find(({ id }) => id === 'years-kept')!,
    straight.find(({ id }) => id === 'day-without-power')!,
  ]
  const [turning, ...maps] = await Promise.all([
    turn,
    ...down.map((one) => twoWayMap(asked, { across, down: one })),
  ])
  return turning === undefined ? undefined : { turning, maps: maps.filter((map) => map !== undefined) }
}
