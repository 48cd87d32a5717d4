/**
 * What could be done about a boat's set, from its register: to be edited by its owner.
 *
 * @module
 */

import type { Problem } from '../catalogue/problem.js'
import type { SetCatalogue } from '../catalogue/scale.js'
import type { Alternative, LifeModel, LifePart } from '../forecast/life-model.js'
import type { Posterior } from '../forecast/posterior-type.js'
import type { OpenQuote, SetRegister } from '../register/register-types.js'
import { dryingOf } from './drying.js'
import { type OpenStop, windingParts } from './open-stops.js'
import { ownAlternative } from './own-alternatives.js'
import { type Action, jobIntrusion, quoteTerms, reconditionedLess, rewoundQuality } from './quoted-job.js'
import { usual, usualPrice, withItems } from './renewal.js'

/** A part that shares the access is worth renewing with the job if it is cheap beside it; practice. */
const cheapBeside = 0.25

export interface Setting {
  readonly model: LifeModel
  readonly register: SetRegister
  readonly catalogue: SetCatalogue
  readonly posterior: Posterior
  /** What blocks running on, and what of it was passed over. */
  readonly stops: readonly OpenStop[]
}

export interface LaidOut {
  readonly alternatives: readonly Alternative[]
  /** Alternatives of the owner's that could not be laid out, and why. */
  readonly problems: readonly Problem[]
}

/** As many as a life model may have, less one for giving up. */
const mostAlternatives = 39

/**
 * At least: leave, mend, mend with what shares the access, rebuild an end, overhaul, replace, give up; then the owner's own.
 * One of the owner's under the id of another stands in its place, or takes it away. What bars a choice bars each alike.
 */
export function alternativesOf(setting: Setting): LaidOut {
  return withOwn(setting, builtAlternatives(setting))
}

/** Those that were built, changed and added to by what the owner entered. */
export function withOwn(setting: Omit<Setting, 'posterior'>, built: readonly Alternative[]): LaidOut {
  const { model, register, catalogue, stops } = setting
  const { openQuotes } = register
  const list = new Map(built.map((alternative) => [alternative.id, alternative]))
  const problems: Problem[] = []
  for (const own of register.ownAlternatives) {
    if (own.leftOut) {
      list.delete(own.id)
      continue
    }
    const read = ownAlternative({ model, catalogue, openQuotes }, own)
    if (!read.ok) problems.push(...read.problems)
    else if (list.size < mostAlternatives || list.has(own.id)) list.set(own.id, read.alternative)
    else {
      const allowed = `at most ${mostAlternatives} alternatives`
      problems.push({ code: 'too-many', path: `alternative ${own.id}`, found: 'one more', allowed })
    }
  }
  const laidOut = judged(stops, [...list.values()])
  return { alternatives: laidOut.alternatives, problems: [...problems, ...laidOut.problems] }
}

/**
 * Alternatives as they may be played: barred where a stop line says so. Where nothing else is open, doing without a set
 * always is.
 */
export function judged(stops: readonly OpenStop[], list: readonly Alternative[]): LaidOut {
  const open = stops.filter(({ passedOver }) => passedOver === undefined)
  const alternatives = list.map(({ barred: _, ...alternative }) => barred(open, alternative))
  if (alternatives.some((alternative) => alternative.barred === undefined)) {
    return { alternatives, problems: [] }
  }
  const allowed = 'at least one that is not barred; doing without a set was put among them'
  const others = alternatives.filter(({ id }) => id !== doingWithout.id)
  return {
    alternatives: [...others, doingWithout],
    problems: [{ code: 'none-open', path: 'alternatives', found: 'none that is open', allowed }],
  }
}

const leaving: Alternative = { id: 'leave', name: 'Leave it, and mend what fails', now: 'leave' }
const doingWithout: Alternative = { id: 'give-up', name: 'Do without a set', now: 'give-up' }

function builtAlternatives(setting: Setting): Alternative[] {
  const { model, register } = setting
  const quote = register.openQuotes.filter(({ covers }) => covers.newSet === undefined).at(-1)
  const found = foundParts(setting)
  const job = quote ? quotedAction(setting, quote) : found.length > 0 ? renewal(found) : undefined
  const list: Alternative[] = [leaving]
  if (job !== undefined) {
    list.push({
      id: 'mend',
      name: quote ? `Mend at the quote: ${quote.job.replaceAll('-', ' ')}` : 'Mend what was found',
      now: job,
    })
    const beside = besideParts(setting, job)
    if (beside.length > 0) {
      list.push({
        id: 'mend-and-renew',
        name: 'Mend, and renew what shares the access',
        now: together(setting, job, beside),
      })
    }
  }
  if (quote && found.some((part) => !quote.covers.parts.some((covered) => covered.part === part.id))) {
    list.push({ id: 'renew-found', name: 'Renew only what was found, planned', now: renewal(found) })
  }
  const drying = dryingOf(setting, job?.parts.map(({ part }) => part) ?? [])
  if (drying !== undefined) list.push(drying)
  list.push(...rebuilds(setting))
  for (const candidate of model.candidates) {
    list.push({
      id: `replace-${candidate.id}`,
      name: `Fit ${candidate.name ?? candidate.id}`,
      now: { replaceWith: candidate.id },
    })
  }
  const same = model.candidates.find(({ id }) => id === 'new-same') ?? model.candidates[0]
  if (same !== undefined && model.horizonYears > 1.5) {
    list.push({
      id: 'replace-later',
      name: 'Run it one more season, then fit a new one of the same size',
      now: 'leave',
      replaceLater: { year: 1, with: same.id },
    })
  }
  list.push(doingWithout)
  return list
}

/** Parts seen defective or standing broken. Where one sight may come from several, all are possible and none is found. */
function foundParts({ model, register }: Setting): LifePart[] {
  const ids = new Set([
    ...register.openDefects.filter(({ about }) => about.length === 1).map(({ about }) => about[0]!.part),
    ...register.broken.map(({ part }) => part),
  ])
  return model.parts.filter(({ id }) => ids.has(id))
}

function renewal(parts: readonly LifePart[]): Action {
  return {
    parts: parts.map(({ id }) => ({ part: id, outcome: 'renewed', quality: 1, agesLess: 1 })),
    wait: 0,
    intrusionChance: 0,
  }
}

function quotedAction(setting: Setting, quote: OpenQuote): Action | undefined {
  const { model } = setting
  const known = new Set(model.parts.map(({ id }) => id))
  const parts = quote.covers.parts
    .filter(
      ({ part, did }) =>
        known.has(part) && (did === 'renewed' || did === 'reconditioned' || did === 'cleaned'),
    )
    .map(({ part, did }): Action['parts'][number] => ({
      part,
      outcome: did === 'reconditioned' ? 'reconditioned' : did === 'cleaned' ? 'cleared' : 'renewed',
      quality: windingParts.has(part) ? rewoundQuality : 1,
      agesLess: did === 'reconditioned' ? reconditionedLess : 1,
    }))
  if (parts.length === 0) return undefined
  return {
    parts,
    quote: quoteTerms(setting, quote),
    wait: 0,
    intrusionChance: jobIntrusion,
  }
}

/** Parts behind the same covers that cost little beside the job. */
function besideParts({ model }: Setting, job: Action): LifePart[] {
  const inJob = new Set(job.parts.map(({ part }) => part))
  const open = new Set(model.parts.filter(({ id }) => inJob.has(id)).flatMap(({ access }) => access))
  const jobPrice = job.quote?.price ?? [...inJob].reduce((sum, id) => sum + priceOf(model, id), 0)
  return model.parts.filter(
    ({ id, access, repair }) =>
      !inJob.has(id) &&
      access.some((group) => open.has(group)) &&
      priceOf(model, id) > 0 &&
      priceOf(model, id) + repair.hours * model.labour.paidPerHour < cheapBeside * jobPrice,
  )
}

function priceOf(model: LifeModel, id: string): number {
  return usual(model.parts.find((part) => part.id === id)!.repair.price)
}

function together({ model }: Setting, job: Action, beside: readonly LifePart[]): Action {
  const price = beside.reduce((sum, { repair }) => sum + usualPrice(model, repair), 0)
  return withItems(job, renewal(beside).parts, price)
}

/** The alternator end exchanged, and the engine end overhauled, at the catalogue's usual prices. */
function rebuilds({ model, catalogue }: Setting): Alternative[] {
  const { windings, overhaul } = catalogue.wholeSet
  const spread = ({ low, typical, high }: { low: number; typical: number; high: number }) => ({
    median: typical,
    logSd: Math.log(high / low) / (2 * 1.2816),
  })
  const of = (system: string) => model.parts.filter((part) => part.system === system)
  const end = of('alternator')
  const engine = ['engine', 'lubrication', 'fuel', 'coolant'].flatMap(of)
  const list: Alternative[] = []
  if (end.length > 0) {
    list.push({
      id: 'new-alternator-end',
      name: 'Exchange the alternator end',
      now: {
        ...renewal(end),
        price: spread(windings.price.newEnd),
        wait: spread(windings.days.newEnd),
        days: 3,
        intrusionChance: jobIntrusion,
      },
    })
  }
  if (engine.length > 0) {
    list.push({
      id: 'overhaul-engine',
      name: 'Overhaul the engine end',
      now: {
        parts: engine.map(({ id }) => ({
          part: id,
          outcome: 'reconditioned',
          quality: 1,
          agesLess: reconditionedLess,
        })),
        price: spread(overhaul.major.price),
        wait: 0,
        days: spread(overhaul.major.days),
        intrusionChance: jobIntrusion,
      },
    })
  }
  return list
}

/** As a life model may have it. */
const longestWhy = 500

/** An alternative that runs on past a stop line, or with a danger found and not made safe, says so and is barred. */
function barred(stops: readonly OpenStop[], alternative: Alternative): Alternative {
  const { now } = alternative
  if (now === 'give-up' || (typeof now === 'object' && 'replaceWith' in now)) return alternative
  const jobs = typeof now === 'object' ? now.parts : []
  const open = stops.filter((stop) => !jobs.some((job) => stop.byAnyWork || closes(job, stop)))
  if (open.length === 0) return alternative
  const why = [...new Set(open.map((stop) => stop.why))].join(' ')
  return { ...alternative, barred: why.length > longestWhy ? `${why.slice(0, longestWhy - 1)}…` : why }
}

/** A patch closes nothing, and a single mode only the stop that is its own; a part renewed is renewed whole. */
function closes({ part, mode, outcome }: Action['parts'][number], stop: OpenStop): boolean {
  if (!stop.parts.includes(part) || outcome === 'patched') return false
  return outcome === 'renewed' || mode === undefined || mode === stop.mode
}
