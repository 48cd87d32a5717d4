/**
 * What the log says and the model holds impossible, told as things that could not be used.
 *
 * @module
 */

import type { Problem } from '../catalogue/problem.js'
import type { LifeModel } from './life-model.js'
import { type Posterior, type SetAside, setAsideIn } from './posterior-type.js'

const words: Readonly<Record<SetAside['what'], string>> = {
  looks: 'what was seen of it',
  broken: 'that it stands broken',
  'past-life': 'an earlier life of it',
  age: 'its age',
  everything: 'what is entered of it',
  symptom: 'a symptom that nothing can have given',
  'let-downs': 'that the set let its owner down in a time in which it could not',
}

/** Each entry that contradicts the model and was left out of the reckoning; none in most logs. */
export function contradictedEvidence(model: LifeModel, posterior: Pick<Posterior, 'setAside'>): Problem[] {
  return setAsideIn(model, posterior).map(({ part, mode, what }) => ({
    code: 'contradicts-model',
    path:
      part === undefined
        ? 'setFactor.letDowns'
        : ['parts', part, ...(mode === undefined ? [] : [mode])].join('.'),
    found: `${words[what]}, which contradicts the model and was left out`,
    allowed: part === undefined ? 'what can happen to such a set' : 'what can happen to such a part',
  }))
}
