/**
 * What in a life model does not hang together: names that nothing bears, and values that contradict one another.
 *
 * @module
 */

import { shown } from '../catalogue/problem.js'
import type { LifeModel, LifePart } from './life-model.js'

/** One thing that its schema cannot see. */
export interface Contradiction {
  readonly code: string
  /** Where it stands, by field names and places in lists. */
  readonly steps: readonly PropertyKey[]
  readonly found: string
  readonly allowed: string
  /** Another place that it rests on. */
  readonly against?: readonly PropertyKey[]
}

type Mode = LifePart['modes'][number]
type Tell = (
  code: string,
  steps: readonly PropertyKey[],
  found: unknown,
  allowed: string,
  against?: readonly PropertyKey[],
) => void

interface Names {
  readonly parts: ReadonlyMap<string, LifePart>
  readonly access: ReadonlySet<string>
  readonly checks: ReadonlySet<string>
  readonly candidates: ReadonlySet<string>
}

/** Everything in a model that contradicts itself, in the order of its fields. */
export function contradictionsIn(model: LifeModel): readonly Contradiction[] {
  const list: Contradiction[] = []
  const tell: Tell = (code, steps, found, allowed, against) => {
    const one = { code, steps, found: typeof found === 'string' ? found : shown(found), allowed }
    list.push(against === undefined ? one : { ...one, against })
  }
  const names: Names = {
    parts: new Map(model.parts.map((part) => [part.id, part])),
    access: new Set(model.access.map(({ id }) => id)),
    checks: new Set(model.checks.map(({ id }) => id)),
    candidates: new Set(model.candidates.map(({ id }) => id)),
  }
  judgeUse(model, tell)
  for (const field of ['checks', 'access', 'candidates', 'parts', 'alternatives'] as const) {
    judgeIds(model[field], [field], tell)
  }
  judgeAccess(model, names, tell)
  judgeSymptoms(model, names, tell)
  model.parts.forEach((part, p) => {
    judgePart(part, ['parts', p], { names, tell })
  })
  model.alternatives.forEach((_, a) => {
    judgeAlternative(model, a, { names, tell })
  })
  return list
}

function judgeUse(model: LifeModel, tell: Tell): void {
  const track = model.past?.track ?? []
  track.forEach((point, i) => {
    const before = track[i - 1]
    if (before === undefined) return
    const at = ['past', 'track', i]
    if (!(point.yearsAgo < before.yearsAgo)) {
      const allowed = `less than the ${before.yearsAgo} before it: the oldest comes first`
      tell('not-in-order', [...at, 'yearsAgo'], point.yearsAgo, allowed)
    }
    for (const total of ['hours', 'starts'] as const) {
      if (point[total] < before[total]) {
        const allowed = `at least the ${before[total]} before it: running totals never fall`
        tell('not-in-order', [...at, total], point[total], allowed)
      }
    }
  })
  const last = track.at(-1)
  if (last !== undefined && last.yearsAgo !== 0) {
    tell(
      'track-ends-early',
      ['past', 'track', track.length - 1, 'yearsAgo'],
      last.yearsAgo,
      '0: the track ends now',
    )
  }
  model.setFactor.letDowns.forEach((span, i) => {
    judgeSpan(span, ['setFactor', 'letDowns', i], tell)
  })
  judgeCurve(model.powerLoss.curve, tell)
}

function judgeSpan(
  span: { readonly fromYearsAgo: number; readonly toYearsAgo: number },
  at: readonly PropertyKey[],
  tell: Tell,
): void {
  if (span.fromYearsAgo > span.toYearsAgo) return
  const allowed = `more than toYearsAgo, which is ${span.toYearsAgo}: a span begins before it ends`
  tell('span-backwards', [...at, 'fromYearsAgo'], span.fromYearsAgo, allowed)
}

function judgeCurve(curve: LifeModel['powerLoss']['curve'], tell: Tell): void {
  curve.forEach((point, i) => {
    const before = curve[i - 1] ?? { days: -1, cost: 0 }
    const at = ['powerLoss', 'curve', i]
    if (point.days <= before.days) {
      tell('not-in-order', [...at, 'days'], point.days, `more than the ${before.days} before it`)
    }
    if (point.cost < before.cost) {
      const allowed = `at least the ${before.cost} before it: a longer outage costs no less`
      tell('not-in-order', [...at, 'cost'], point.cost, allowed)
    }
    if (point.days === 0 && point.cost > 0) {
      tell('no-outage-costs', [...at, 'cost'], point.cost, '0 at 0 days: no outage costs nothing')
    }
  })
}

function judgeIds(list: readonly { readonly id: string }[], at: readonly PropertyKey[], tell: Tell): void {
  const met = new Set<string>()
  list.forEach(({ id }, i) => {
    if (met.has(id)) tell('id-twice', [...at, i, 'id'], id, 'each id once in its list')
    met.add(id)
  })
}

function judgeAccess(model: LifeModel, names: Names, tell: Tell): void {
  const includes = new Map(model.access.map((group) => [group.id, group.includes]))
  model.access.forEach((group, i) => {
    group.includes.forEach((id, k) => {
      const at = ['access', i, 'includes', k]
      if (!names.access.has(id)) tell('unknown-access', at, id, oneOf('access', names.access))
    })
    if (reaches(includes, group.id, group.id)) {
      tell('access-in-a-circle', ['access', i, 'includes'], group.includes, 'no way in that includes itself')
    }
  })
  model.checks.forEach(({ effort }, i) => {
    effort?.access.forEach((id, k) => {
      const at = ['checks', i, 'effort', 'access', k]
      if (!names.access.has(id)) tell('unknown-access', at, id, oneOf('access', names.access))
    })
  })
}

function reaches(includes: ReadonlyMap<string, readonly string[]>, from: string, to: string): boolean {
  const met = new Set<string>()
  const open = [...(includes.get(from) ?? [])]
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    if (id === to) return true
    if (met.has(id)) continue
    met.add(id)
    open.push(...(includes.get(id) ?? []))
  }
  return false
}

function judgeSymptoms(model: LifeModel, names: Names, tell: Tell): void {
  model.symptoms.forEach((symptom, i) => {
    const met = new Set<string>()
    symptom.modes.forEach(({ part, mode }, k) => {
      const at = ['symptoms', i, 'modes', k]
      judgeTarget({ part, mode }, at, { names, tell })
      if (met.has(`${part} ${mode}`))
        tell('named-twice', at, `${part} ${mode}`, 'each mode once in a symptom')
      met.add(`${part} ${mode}`)
    })
  })
}

interface Judging {
  readonly names: Names
  readonly tell: Tell
}

function judgeTarget(
  target: { readonly part: string; readonly mode?: string | undefined },
  at: readonly PropertyKey[],
  { names, tell }: Judging,
): void {
  const part = names.parts.get(target.part)
  if (part === undefined) {
    tell('unknown-part', [...at, 'part'], target.part, 'the id of a part of this model')
  } else if (target.mode !== undefined && !hasMode(part, target.mode)) {
    tell('unknown-mode', [...at, 'mode'], target.mode, modesOf(part))
  }
}

function hasMode(part: LifePart, mode: string): boolean {
  return part.modes.some(({ id }) => id === mode)
}

function modesOf(part: LifePart): string {
  return `a mode of "${part.id}": ${part.modes.map(({ id }) => id).join(', ')}`
}

function oneOf(what: string, names: ReadonlySet<string>): string {
  return names.size === 0 ? `nothing: the model has no ${what}` : `one of ${what}: ${[...names].join(', ')}`
}

function judgePart(part: LifePart, at: readonly PropertyKey[], judging: Judging): void {
  const { names, tell } = judging
  judgeIds(part.modes, [...at, 'modes'], tell)
  part.access.forEach((id, i) => {
    const here = [...at, 'access', i]
    if (!names.access.has(id)) tell('unknown-access', here, id, oneOf('access', names.access))
    else if (part.access.indexOf(id) < i) tell('named-twice', here, id, 'each way in once')
  })
  part.pastLives.forEach(({ ended }, i) => {
    if (typeof ended === 'string') return
    const [how, mode] = Object.entries(ended)[0]!
    if (!hasMode(part, mode)) {
      tell('unknown-mode', [...at, 'pastLives', i, 'ended', how], mode, modesOf(part))
    }
  })
  judgeFirstRenewal(part, at, tell)
  part.complete.forEach((span, i) => {
    judgeSpan(span, [...at, 'complete', i], tell)
  })
  if (part.broken !== undefined && !hasMode(part, part.broken)) {
    tell('unknown-mode', [...at, 'broken'], part.broken, modesOf(part))
  }
  judgeRepair(part.repair, [...at, 'repair'], tell)
  judgeService(part, at, tell)
  part.modes.forEach((mode, m) => {
    judgeMode(mode, [...at, 'modes', m], { ...judging, part })
  })
}

function judgeFirstRenewal({ age, firstRenewal }: LifePart, at: readonly PropertyKey[], tell: Tell): void {
  if (firstRenewal === undefined) return
  const { yearsAgo, watchedFromYearsAgo: watched } = firstRenewal
  const here = [...at, 'firstRenewal']
  if (age === 'unknown') {
    tell('age-unknown', here, 'a part of unknown age', 'only where the age of the piece in place is known')
  } else if (age.years !== undefined && yearsAgo < age.years) {
    const allowed = `at least ${age.years}, when the piece in place was fitted`
    tell('not-in-order', [...here, 'yearsAgo'], yearsAgo, allowed)
  }
  if (watched !== undefined && watched < yearsAgo) {
    tell(
      'not-in-order',
      [...here, 'watchedFromYearsAgo'],
      watched,
      `at least ${yearsAgo}, the renewal itself`,
    )
  }
}

function judgeRepair(repair: LifePart['repair'], at: readonly PropertyKey[], tell: Tell): void {
  if (repair.supply.length === 0) return
  const sum = repair.supply.reduce((total, { chance }) => total + chance, 0)
  if (Math.abs(sum - 1) > 1e-6) {
    tell('chances-not-one', [...at, 'supply'], `chances that sum to ${Number(sum.toFixed(6))}`, 'a sum of 1')
  }
}

function judgeService(part: LifePart, at: readonly PropertyKey[], tell: Tell): void {
  const { service } = part
  if (service === undefined) return
  if (service.everyHours === undefined && service.everyYears === undefined) {
    tell('service-without-interval', [...at, 'service'], 'no interval', 'everyHours, everyYears or both')
  }
  service.clears.forEach((mode, i) => {
    if (!hasMode(part, mode)) tell('unknown-mode', [...at, 'service', 'clears', i], mode, modesOf(part))
  })
}

function judgeMode(
  mode: Mode,
  at: readonly PropertyKey[],
  judging: Judging & { readonly part: LifePart },
): void {
  const { names, tell } = judging
  const known = new Set(mode.checks.map(({ check }) => check))
  mode.checks.forEach(({ check }, i) => {
    const here = [...at, 'checks', i, 'check']
    if (!names.checks.has(check)) tell('unknown-check', here, check, oneOf('checks', names.checks))
    if (mode.checks.findIndex((other) => other.check === check) < i) {
      tell('named-twice', here, check, 'each check once in a mode')
    }
  })
  mode.links.forEach((link, i) => {
    judgeLink(link, [...at, 'links', i], judging)
  })
  mode.wear.forEach((wear, i) => {
    judgeTarget(wear, [...at, 'wear', i], judging)
  })
  if (mode.wear.length > 0 && !mode.hidden) {
    const allowed = 'none: only a hidden mode can stand failed unnoticed and wear others down'
    tell('wear-without-hidden', [...at, 'wear'], `${mode.wear.length} wear links`, allowed)
  }
  mode.observations.forEach((observation, i) => {
    const here = [...at, 'observations', i]
    if ('check' in observation && !known.has(observation.check)) {
      const allowed = oneOf('the checks of this mode', known)
      tell('unknown-check', [...here, 'check'], observation.check, allowed)
    }
    if ('likelihood' in observation) {
      const { sound, defective, failed = 0 } = observation.likelihood
      if (sound + defective + failed === 0) {
        const allowed = 'more than 0 for at least one state'
        tell('impossible-sight', [...here, 'likelihood'], observation.likelihood, allowed)
      }
    }
  })
  if (mode.remedy.repair !== undefined) judgeRepair(mode.remedy.repair, [...at, 'remedy', 'repair'], tell)
}

function judgeLink(link: Mode['links'][number], at: readonly PropertyKey[], judging: Judging): void {
  judgeTarget(link, at, judging)
  if (link.mode === undefined && link.effect === 'starts-defect') {
    const allowed = 'the mode whose defect begins; without one the effect can only be "ruins"'
    judging.tell('missing', [...at, 'mode'], 'nothing', allowed)
  }
  if (link.guard === undefined) return
  const guard = judging.names.parts.get(link.guard.part)
  if (guard === undefined) {
    judging.tell('unknown-part', [...at, 'guard', 'part'], link.guard.part, 'the id of a part of this model')
  } else if (!guard.modes.some(({ hidden }) => hidden)) {
    const allowed = 'a part with a hidden mode: only such a guard can be found asleep'
    judging.tell('guard-without-hidden', [...at, 'guard', 'part'], link.guard.part, allowed)
  }
}

function judgeAlternative(model: LifeModel, a: number, judging: Judging): void {
  const { names, tell } = judging
  const { now, replaceLater, limit } = model.alternatives[a]!
  const at = ['alternatives', a]
  const candidate = (id: string, steps: readonly PropertyKey[]) => {
    if (!names.candidates.has(id)) tell('unknown-candidate', steps, id, oneOf('candidates', names.candidates))
  }
  if (typeof now === 'object' && 'replaceWith' in now)
    candidate(now.replaceWith, [...at, 'now', 'replaceWith'])
  if (typeof now === 'object' && 'parts' in now) {
    const met = new Set<string>()
    now.parts.forEach((target, i) => {
      const here = [...at, 'now', 'parts', i]
      judgeTarget(target, here, judging)
      const key = `${target.part} ${target.mode ?? ''}`
      if (met.has(key)) tell('named-twice', here, key.trim(), 'each part or mode once in a job')
      met.add(key)
    })
  }
  if (replaceLater !== undefined) {
    candidate(replaceLater.with, [...at, 'replaceLater', 'with'])
    if (replaceLater.year > model.horizonYears) {
      const allowed = `at most the horizon of ${model.horizonYears} years`
      tell('past-the-horizon', [...at, 'replaceLater', 'year'], replaceLater.year, allowed, ['horizonYears'])
    }
    if (now === 'give-up') {
      const allowed = 'left out: nothing runs after giving up'
      tell('after-giving-up', [...at, 'replaceLater'], replaceLater, allowed)
    }
  }
  if (limit !== undefined && limit.above !== 'give-up') {
    candidate(limit.above.replaceWith, [...at, 'limit', 'above', 'replaceWith'])
  }
}
