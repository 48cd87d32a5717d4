/**
 * Alternatives that the owner entered, in the words of the life model.
 *
 * @module
 */

import type { Problem } from '../catalogue/problem.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import type { Alternative, LifeModel } from '../forecast/life-model.js'
import type { OpenQuote, OwnAlternative } from '../register/register-types.js'
import { windingParts } from './open-stops.js'
import { type Action, jobIntrusion, quoteTerms, reconditionedLess, rewoundQuality } from './quoted-job.js'

export interface OwnSetting {
  readonly model: LifeModel
  readonly catalogue: SetCatalogue
  readonly openQuotes: readonly OpenQuote[]
}

export type ReadAlternative =
  | { readonly ok: true; readonly alternative: Alternative }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** The owner's alternative for this set, or everything in it that the set, its quotes or what can be bought do not have. */
export function ownAlternative(setting: OwnSetting, own: OwnAlternative): ReadAlternative {
  const problems = problemsOf(setting, own)
  if (problems.length > 0) return { ok: false, problems }
  const { id, name, later } = own
  const alternative: Alternative = {
    id,
    ...(name === undefined ? {} : { name }),
    now: doingOf(setting, own),
    ...(later === undefined
      ? {}
      : { replaceLater: { year: later.year, with: later.with ?? usualCandidate(setting.model) } }),
  }
  return { ok: true, alternative }
}

function doingOf(setting: OwnSetting, own: OwnAlternative): Alternative['now'] {
  if (own.now === 'replace') return { replaceWith: own.replaceWith! }
  return own.now === 'mend' ? actionOf(setting, own) : own.now!
}

function actionOf(setting: OwnSetting, own: OwnAlternative): Action {
  const { price, job, besides = 0, days } = own
  const quote = setting.openQuotes.find((open) => open.job === job)
  const parts = own.parts!.map(({ part, mode, outcome = 'renewed', quality, agesLess }) => ({
    part,
    ...(mode === undefined ? {} : { mode }),
    outcome,
    quality: quality ?? (quote !== undefined && windingParts.has(part) ? rewoundQuality : 1),
    agesLess: agesLess ?? (outcome === 'reconditioned' ? reconditionedLess : 1),
  }))
  const wholeJob = quote !== undefined || price !== undefined
  return {
    parts,
    ...(quote === undefined ? {} : { quote: quoteTerms(setting, quote, besides) }),
    ...(price === undefined ? {} : { price }),
    ...(days === undefined ? {} : { days }),
    wait: 0,
    intrusionChance: wholeJob ? jobIntrusion : 0,
  }
}

function usualCandidate({ candidates }: LifeModel): string {
  return (candidates.find(({ id }) => id === 'new-same') ?? candidates[0])?.id ?? 'new-same'
}

function problemsOf({ model, openQuotes }: OwnSetting, own: OwnAlternative): Problem[] {
  const problems: Problem[] = []
  const say = (code: string, field: string, found: string, among: readonly string[], none: string) =>
    problems.push({
      code,
      path: `alternative ${own.id}: ${field}`,
      found,
      allowed: among.length === 0 ? none : `one of: ${among.join(', ')}`,
    })
  const candidates = model.candidates.map(({ id }) => id)
  const candidate = (field: string, id: string) => {
    if (!candidates.includes(id)) {
      say('unknown-candidate', field, id, candidates, 'nothing: no set to fit is known')
    }
  }
  for (const [i, { part, mode }] of (own.parts ?? []).entries()) {
    const known = model.parts.find(({ id }) => id === part)
    if (known === undefined) {
      problems.push({
        code: 'unknown-part',
        path: `alternative ${own.id}: parts.${i}.part`,
        found: part,
        allowed: 'a part that this set has',
      })
    } else if (mode !== undefined && !known.modes.some(({ id }) => id === mode)) {
      const modes = known.modes.map(({ id }) => id)
      say('unknown-mode', `parts.${i}.mode`, mode, modes, 'nothing')
    }
  }
  if (own.replaceWith !== undefined) candidate('replaceWith', own.replaceWith)
  if (own.later !== undefined) candidate('later.with', own.later.with ?? usualCandidate(model))
  if (own.job !== undefined && !openQuotes.some(({ job }) => job === own.job)) {
    const jobs = openQuotes.map(({ job }) => job)
    say('no-open-quote', 'job', own.job, jobs, 'the job of an open quote; none is open')
  }
  return problems
}
