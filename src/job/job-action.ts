/**
 * A job in the words of the life model: what is put right now, and at what price.
 *
 * @module
 */

import { type OwnSetting, ownAlternative } from '../alternatives/own-alternatives.js'
import { usualPrice } from '../alternatives/renewal.js'
import type { Alternative } from '../forecast/life-model.js'
import type { Deed } from '../register/register-types.js'
import type { Job } from './jobs.js'

type Outcome = 'renewed' | 'reconditioned' | 'cleared' | 'patched'

/** What each deed makes of a part; one that is left out leaves it as it was. */
export const outcomes: Readonly<Partial<Record<Deed, Outcome>>> = {
  renewed: 'renewed',
  reconditioned: 'reconditioned',
  cleaned: 'cleared',
  freed: 'cleared',
  adjusted: 'cleared',
  'topped-up': 'cleared',
  patched: 'patched',
}

/** Whether an alternative keeps the set that is there, so that something can be renewed along with it. */
export function keepsTheSet({ now }: Pick<Alternative, 'now'>): boolean {
  return now === 'leave' || (typeof now === 'object' && 'parts' in now)
}

/**
 * What is left to do of a job as an alternative: at its quote where that is open, what the quote does not cover at the usual
 * price beside it. A job that names no part which the model has is the alternative that its decision took, where that keeps
 * the set, else leaving it. The repair limit from then on is that of the first alternative that keeps the set.
 */
export function alternativeOfJob(
  setting: OwnSetting,
  job: Pick<Job, 'name' | 'what' | 'parts' | 'alternative'>,
): Alternative {
  const { model, openQuotes } = setting
  const kept = model.alternatives.filter(keepsTheSet)
  const parts = job.parts.flatMap(({ part, did, isDone }) => {
    const outcome = outcomes[did]
    const known = model.parts.some(({ id }) => id === part)
    return isDone || outcome === undefined || !known ? [] : [{ part, outcome }]
  })
  const named = kept.find(({ id }) => id === job.alternative) ?? kept.find(({ now }) => now === 'leave')
  if (parts.length === 0) return named ?? { id: 'leave', now: 'leave' }
  const quote = openQuotes.find((open) => open.job === job.name)
  const covered = new Set(quote?.covers.parts.map(({ part }) => part))
  const beside = model.parts
    .filter(({ id }) => !covered.has(id) && parts.some(({ part }) => part === id))
    .reduce((sum, { repair }) => sum + usualPrice(model, repair), 0)
  const read = ownAlternative(setting, {
    id: job.name,
    entry: '',
    now: 'mend',
    parts,
    ...(quote === undefined ? {} : { job: quote.job, besides: beside }),
  })
  if (!read.ok) throw new RangeError(`job must be one of this set; found ${read.problems[0]?.found}`)
  const limit = kept.find((one) => one.limit !== undefined)?.limit
  return {
    ...read.alternative,
    name: job.what ?? job.name,
    ...(limit === undefined ? {} : { limit }),
  }
}
