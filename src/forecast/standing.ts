/**
 * How likely each part stands defective or failed now.
 *
 * @module
 */

import type { LifeModel } from './life-model.js'
import { POSTERIOR_STEPS, type Posterior } from './posterior-type.js'

/**
 * Chance that some mode of a part is defective or has failed unnoticed, by part: Σκ p(κ)·[1 − Π(1 − share of starting states
 * that are not sound)], its modes taken as independent given κ.
 */
export function standingDefective(
  model: LifeModel,
  { kappaWeight, state }: Posterior,
): Readonly<Record<string, number>> {
  const modes = model.parts.reduce((sum, part) => sum + part.modes.length, 0)
  const chances: Record<string, number> = {}
  let first = 0
  for (const { id, modes: own } of model.parts) {
    let chance = 0
    for (const [node, weight] of kappaWeight.entries()) {
      let sound = 1
      for (let m = first; m < first + own.length; m++) {
        const at = (node * modes + m) * POSTERIOR_STEPS
        let not = 0
        for (let i = at; i < at + POSTERIOR_STEPS; i++) if (state[i] !== 0) not++
        sound *= 1 - not / POSTERIOR_STEPS
      }
      chance += weight * (1 - sound)
    }
    chances[id] = chance
    first += own.length
  }
  return chances
}
