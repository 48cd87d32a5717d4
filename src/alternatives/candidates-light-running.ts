/**
 * How lightly each set that could be fitted would run: by the loads of the boat, where the log tells of them.
 *
 * @module
 */

import type { SetCatalogue } from '../catalogue/scale.js'
import { candidateRatings } from '../forecast/build-replacement.js'
import type { LifeModel } from '../forecast/life-model.js'
import type { Entry } from '../logbook/kinds.js'
import { loadFactsOf } from '../register/load-facts.js'
import type { SetRegister } from '../register/register-types.js'
import { type LightShare, lightShareKnowing, lightShareOf } from '../sizing/light-running.js'
import { recordingOf } from '../sizing/measured-summary.js'

/** A life model, and the log and the catalogue that it was made of. */
export interface ReadModel {
  readonly model: LifeModel
  readonly register: SetRegister
  readonly catalogue: SetCatalogue
  readonly entries: readonly Entry[]
}

export interface LightRunning {
  readonly candidates: LifeModel['candidates']
  /** What was taken for granted because nobody said otherwise. */
  readonly assumed: readonly string[]
}

/**
 * Candidates with the share of light hours that what is drawn aboard gives each size, in place of the usual one for its size.
 * The present set keeps what its log says of it, and a set of its size runs as it does.
 */
export function withLightRunning(read: ReadModel): LightRunning {
  const { model, register, catalogue } = read
  const { candidates, use } = model
  const { ratingKW } = catalogue.kind
  const byLoads = candidates.length === 0 ? undefined : lightShareAboard(read)
  const share = byLoads && lightShareKnowing(byLoads, { ratingKW, lowLoadShare: use.lowLoadShare })
  if (share === undefined) return { candidates, assumed: [] }
  const ratings = candidateRatings(ratingKW, register.offeredSets ?? [])
  const lit = candidates.map((candidate) => {
    const rating = ratings.get(candidate.id)
    return rating === undefined ? candidate : { ...candidate, lowLoadShare: share(rating) }
  })
  return { candidates: lit, assumed: [sayLight(share, [...ratings.values()], use.lowLoadShare)] }
}

function lightShareAboard({ entries, register, catalogue }: ReadModel): LightShare | undefined {
  const { setFacts, use, boat, set, asOf } = register
  const facts = loadFactsOf(entries, { boat, set, asOf })
  const recording = recordingOf(entries, { set, asOf })
  if (facts.loads.length === 0 && recording === undefined) return undefined
  return lightShareOf({
    book: catalogue,
    facts,
    setFacts,
    set,
    use: use?.months,
    ...(recording === undefined ? {} : { recording }),
  })
}

function sayLight(share: LightShare, ratings: readonly number[], present: number): string {
  const sizes = [...new Set(ratings.map((one) => Math.round(10 * one) / 10))].sort((a, b) => a - b)
  const percent = (value: number) => `${Math.round(100 * value)} %`
  const each = sizes.map((size) => `${percent(share(size))} on ${size} kW`)
  return `hours at low load follow what is drawn aboard, from the ${percent(present)} of the present set: ${each.join(', ')}`
}
