/**
 * What an answer starts from, as the page needs it.
 *
 * @module
 */

import { weightedQuantile } from '../../alternatives/month-by-month.js'
import { sayLessons } from '../../alternatives/say-lessons.js'
import type { Prepared } from '../../alternatives/settle.js'
import type { Catalogue } from '../../catalogue/catalogue.js'
import type { Pooled } from '../../forecast/pooling-lessons.js'
import type { Posterior } from '../../forecast/posterior-type.js'
import type { Basis, Names } from './messages.js'

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
