/**
 * The histories of an answer with what they start from: all that a page needs to show it, without the tables it rests on.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { Problem } from '../catalogue/problem.js'
import type { LifeModel } from '../forecast/life-model.js'
import type { Pooled } from '../forecast/pooling-lessons.js'
import type { Posterior } from '../forecast/posterior-type.js'
import type { SetRegister } from '../register/register-types.js'
import type { AnswerView } from './answer-view.js'
import { weightedQuantile } from './month-by-month.js'
import type { OpenStop } from './open-stops.js'
import type { Sample } from './sample.js'
import { sayLessons } from './say-lessons.js'
import type { Prepared } from './settle.js'

/** What was played, and what of. */
export interface Figures {
  readonly basis: Basis
  readonly samples: readonly Sample[]
}

/** What is shown of figures at the prices of the log: small, so that it is sent before the histories are. */
export interface Begun {
  readonly basis: Basis
  readonly view: AnswerView
}

/** What an answer starts from. */
export interface Basis {
  readonly register: SetRegister
  readonly model: LifeModel
  /** Entries that each part's figures rest on; none: the catalogue only. */
  readonly restsOn: Readonly<Record<string, readonly string[]>>
  readonly assumed: readonly string[]
  /** Figures of the owner that could not be used. */
  readonly problems: readonly Problem[]
  /** What the owner's other boats taught, in words; none where they were not heard. */
  readonly heard?: string
  /** How often this set fails, as a multiple of the catalogue's average: expected, 10 and 90 in 100. */
  readonly failsTimes: { readonly mean: number; readonly low: number; readonly high: number }
  /** What blocks running on, and what of it was passed over. */
  readonly stops: readonly OpenStop[]
  /** Names of the catalogue's ways in, checks, dangers and parts. */
  readonly names: Names
}

export interface Names {
  readonly parts: Readonly<Record<string, string>>
  readonly access: Readonly<
    Record<string, { readonly name: string; readonly hours: number; readonly includes: readonly string[] }>
  >
  readonly checks: Readonly<Record<string, string>>
  readonly dangers: Readonly<Record<string, { readonly name: string; readonly caution: string }>>
  readonly modes: Readonly<Record<string, string>>
}

export type BasisSources = Pick<
  Prepared,
  'register' | 'model' | 'stops' | 'restsOn' | 'assumed' | 'problems' | 'posterior'
> & { readonly pooled?: Pooled | undefined }

export function basisOf(prepared: BasisSources, catalogue: Catalogue): Basis {
  const { register, model, stops, restsOn, assumed, problems, posterior, pooled } = prepared
  const heard = sayLessons(pooled)
  return {
    register,
    model,
    stops,
    restsOn,
    assumed,
    problems,
    ...(heard === undefined ? {} : { heard: `${heard}.` }),
    failsTimes: failsTimes(posterior),
    names: namesOf(catalogue),
  }
}

/** Lives are multiplied by κ, and so failures come 1/κ times as often. */
function failsTimes({ kappaLog, kappaWeight }: Posterior): Basis['failsTimes'] {
  const values = Array.from(kappaLog, (log) => Math.exp(-log))
  const of = { values, weights: kappaWeight }
  return {
    mean: values.reduce((sum, value, n) => sum + value * kappaWeight[n]!, 0),
    low: weightedQuantile({ ...of, share: 0.1 }),
    high: weightedQuantile({ ...of, share: 0.9 }),
  }
}

function namesOf({ parts, access, checks, dangers }: Catalogue): Names {
  return {
    parts: Object.fromEntries(parts.map(({ id, name }) => [id, name])),
    access: Object.fromEntries(
      access.map(({ id, name, setUpHours, includes }) => [id, { name, hours: setUpHours.owner, includes }]),
    ),
    checks: Object.fromEntries(checks.map(({ id, name }) => [id, name])),
    dangers: Object.fromEntries(dangers.map(({ id, name, caution }) => [id, { name, caution }])),
    modes: Object.fromEntries(
      parts.flatMap((part) => part.modes.map(({ id, name }) => [`${part.id}.${id}`, name] as const)),
    ),
  }
}
