/**
 * Small life models for tests, and means over the tables of a posterior.
 *
 * @module
 */

import { type LifeModel, type LifeModelInput, lifeModelSchema } from '../src/forecast/life-model.js'
import { POSTERIOR_STEPS, type Posterior } from '../src/forecast/posterior-type.js'

export type TrialPart = LifeModelInput['parts'][number]

/** A life model of these parts; all else as a model has it that says nothing. */
export function trialModel(parts: TrialPart[], rest: Partial<LifeModelInput> = {}): LifeModel {
  return lifeModelSchema.parse({
    type: 'gensettle/life-model',
    version: 1,
    horizonYears: 10,
    parts,
    ...rest,
  })
}

/** Mean over the table of one mode and over the nodes; `read` is given the place of an entry. */
export function meanOver(posterior: Posterior, mode: number, read: (at: number) => number): number {
  const modes = posterior.theta.length / posterior.kappaLog.length / POSTERIOR_STEPS
  let sum = 0
  posterior.kappaWeight.forEach((weight, node) => {
    for (let i = 0; i < POSTERIOR_STEPS; i++) {
      sum += (weight * read((node * modes + mode) * POSTERIOR_STEPS + i)) / POSTERIOR_STEPS
    }
  })
  return sum
}

/** Chance that a mode is in a state: 0 sound, 1 defective, 2 failed unnoticed. */
export function chanceOfState(posterior: Posterior, mode: number, state: 0 | 1 | 2): number {
  return meanOver(posterior, mode, (at) => (posterior.state[at] === state ? 1 : 0))
}

/** Mean of ln θ of a mode. */
export function meanLnTheta(posterior: Posterior, mode: number): number {
  return meanOver(posterior, mode, (at) => Math.log(posterior.theta[at]!))
}

/** Mean of ln κ. */
export function meanLnKappa(posterior: Posterior): number {
  return posterior.kappaLog.reduce((sum, value, n) => sum + value * posterior.kappaWeight[n]!, 0)
}
