/**
 * From a boat's logbook to a life model with its alternatives, ready to be played.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { Problem } from '../catalogue/problem.js'
import { buildLifeModel } from '../forecast/build-life-model.js'
import { type LifeModel, lifeModelSchema } from '../forecast/life-model.js'
import { posteriorOf, startingStatesOfUsed } from '../forecast/posterior.js'
import type { Posterior } from '../forecast/posterior-type.js'
import type { Entry } from '../logbook/kinds.js'
import { registerOf } from '../register/register.js'
import type { SetRegister } from '../register/register-types.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { alternativesOf } from './alternatives-of.js'
import { chooseLimit } from './policy.js'

/** Everything an answer about one set starts from. */
export interface Prepared {
  readonly register: SetRegister
  readonly model: LifeModel
  readonly posterior: Posterior
  /** Starting states of used candidates, by candidate index. */
  readonly used: ReadonlyMap<number, Posterior>
  /** Entries that each part's figures rest on; none: the catalogue only. */
  readonly restsOn: Readonly<Record<string, readonly string[]>>
  /** What was taken for granted because nobody said otherwise. */
  readonly assumed: readonly string[]
  /** Figures of the owner that could not be used. */
  readonly problems: readonly Problem[]
  /** Alternatives of the owner that could not be laid out, and why. */
  readonly refusedAlternatives: readonly Problem[]
}

export interface Question {
  /** Current forms of the boat's entries. */
  readonly entries: readonly Entry[]
  readonly boat: string
  readonly set: string
  /** 'YYYY-MM-DD' */
  readonly asOf: string
  readonly catalogue: Catalogue
  readonly seed: number
}

/** Folds the logbook, builds the life model, learns from the record, and lays out the alternatives. */
export function prepareAnswer(question: Question): Prepared {
  const { seed, catalogue } = question
  const register = registerOf(question)
  const forSet = setCatalogueOf(register, catalogue)
  const built = buildLifeModel(register, forSet.catalogue, {})
  const bare = lifeModelSchema.parse(built.model)
  const posterior = posteriorOf(bare, { seed })
  const limit = chooseLimit(bare, posterior, { seed, replaceWith: 'new-same' })
  const laidOut = alternativesOf({
    model: bare,
    register,
    catalogue: forSet.catalogue,
    posterior,
    ...(limit === undefined ? {} : { limit }),
  })
  const model = lifeModelSchema.parse({ ...bare, alternatives: laidOut.alternatives })
  return {
    register,
    model,
    posterior,
    used: usedStates(model, posterior, seed),
    restsOn: built.restsOn,
    assumed: [...forSet.assumed, ...built.assumed],
    problems: forSet.problems,
    refusedAlternatives: laidOut.problems,
  }
}

/** Nodes of a set not yet known, even steps over what its ln κ may be; a history takes the nearest. */
const usedNodes = 13
const usedReach = 2.4

/**
 * ln κ of a set not yet bought: the boat's part b as the record leaves it, and a set's part g drawn anew. With B² and
 * G² their variances, b given b + g is normal about its share B²/(B² + G²) of the sum, with variance B²G²/(B² + G²).
 */
function nodesOfNewSet(model: LifeModel, posterior: Posterior): Float64Array {
  const boat = model.setFactor.boatLogSd ** 2
  const set = model.setFactor.setLogSd ** 2
  if (boat + set === 0) return new Float64Array(1)
  const { kappaLog, kappaWeight } = posterior
  const mean = kappaLog.reduce((sum, log, n) => sum + log * kappaWeight[n]!, 0)
  const variance = kappaLog.reduce((sum, log, n) => sum + (log - mean) ** 2 * kappaWeight[n]!, 0)
  const share = boat / (boat + set)
  const logSd = Math.sqrt(share ** 2 * variance + share * set + set)
  return Float64Array.from(
    { length: usedNodes },
    (_, n) => share * mean + usedReach * logSd * ((2 * n) / (usedNodes - 1) - 1),
  )
}

/** Starting states of every candidate that is bought used. */
export function usedStates(model: LifeModel, posterior: Posterior, seed: number): Map<number, Posterior> {
  const kappaLog = nodesOfNewSet(model, posterior)
  const states = new Map<number, Posterior>()
  model.candidates.forEach((candidate, c) => {
    const { used } = candidate
    if (used === undefined) return
    states.set(c, startingStatesOfUsed(model, { candidate: { ...candidate, used }, kappaLog, seed }))
  })
  return states
}
