/**
 * What could be done about a boat's set, from its register: to be edited by its owner.
 *
 * @module
 */

import type { SetCatalogue } from '../catalogue/scale.js'
import type { Alternative, LifeModel, LifePart } from '../forecast/life-model.js'
import type { Posterior } from '../forecast/posterior-type.js'
import type { OpenQuote, SetRegister } from '../register/register-types.js'
import { dryingOf } from './drying.js'
import { openStops, windingParts } from './open-stops.js'

type Limit = Alternative['limit']
type Action = Extract<Alternative['now'], { parts: unknown }>
type Quote = NonNullable<Action['quote']>

/** What an excluded piece of work comes to, in paid hours; practice. */
const excludedHours: Readonly<Record<OpenQuote['excludes'][number], number>> = {
  removal: 6,
  refitting: 8,
  lifting: 4,
  testing: 2,
  carriage: 2,
  travel: 2,
  parts: 4,
  consumables: 1,
  'haul-out': 6,
  disposal: 0.5,
}

/** Bill over quote by what kind of quote it is; practice. */
const overrunOf = { firm: { median: 1.02, logSd: 0.06 }, estimate: { median: 1.12, logSd: 0.2 } } as const
const stripDown = { median: 1.06, logSd: 0.15 } as const
/** Rewound windings live shorter than the maker's: catalogue, repair quality; practice. */
const rewoundQuality = 0.85
/** A part that shares the access is worth renewing with the job if it is cheap beside it; practice. */
const cheapBeside = 0.25

export interface Setting {
  readonly model: LifeModel
  readonly register: SetRegister
  readonly catalogue: SetCatalogue
  readonly posterior: Posterior
  /** Repair limit for whatever comes later. */
  readonly limit?: Limit
}

/** At least: leave, mend, mend with what shares the access, rebuild an end, overhaul, replace, give up. */
export function alternativesOf(setting: Setting): Alternative[] {
  const { model, register, limit } = setting
  const quote = register.openQuotes.filter(({ covers }) => covers.newSet === undefined).at(-1)
  const found = foundParts(setting)
  const job = quote ? quotedAction(setting, quote) : found.length > 0 ? renewal(found) : undefined
  const list: Alternative[] = [{ id: 'leave', name: 'Leave it, and mend what fails', now: 'leave' }]
  if (job !== undefined) {
    list.push({
      id: 'mend',
      name: quote ? `Mend at the quote: ${quote.job}` : 'Mend what was found',
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
  list.push({ id: 'give-up', name: 'Do without a set', now: 'give-up' })
  return list.map((alternative) => barred(setting, limited(alternative, limit)))
}

function limited(alternative: Alternative, limit: Limit): Alternative {
  return limit === undefined || alternative.now === 'give-up' ? alternative : { ...alternative, limit }
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
      agesLess: did === 'reconditioned' ? 0.85 : 1,
    }))
  if (parts.length === 0) return undefined
  const hours = quote.excludes.reduce((sum, work) => sum + excludedHours[work], 0)
  const wider = quote.subjectToStripDown ? stripDown : { median: 1, logSd: 0 }
  const usual = overrunOf[quote.firmness]
  const overrun: Quote['overrun'] = {
    median: usual.median * wider.median,
    logSd: Math.hypot(usual.logSd, wider.logSd),
  }
  return {
    parts,
    quote: {
      price: quote.withTax,
      overrun,
      besides: { median: hours * model.labour.paidPerHour, logSd: 0.25 },
    },
    wait: 0,
    intrusionChance: 0.1,
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
  const { price } = model.parts.find((part) => part.id === id)!.repair
  return typeof price === 'number' ? price : 'median' in price ? price.median : price.exponentialMean
}

function together({ model }: Setting, job: Action, beside: readonly LifePart[]): Action {
  const parts = [...job.parts, ...renewal(beside).parts]
  if (job.quote === undefined) return { ...job, parts }
  const more = beside.reduce((sum, part) => {
    const rate = part.repair.by === 'owner' ? model.labour.ownPerHour : model.labour.paidPerHour
    return sum + priceOf(model, part.id) + part.repair.hours * rate
  }, 0)
  const { besides } = job.quote
  const already = typeof besides === 'object' && 'median' in besides ? besides.median : 0
  return { ...job, parts, quote: { ...job.quote, besides: { median: already + more, logSd: 0.2 } } }
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
        intrusionChance: 0.1,
      },
    })
  }
  if (engine.length > 0) {
    list.push({
      id: 'overhaul-engine',
      name: 'Overhaul the engine end',
      now: {
        parts: engine.map(({ id }) => ({ part: id, outcome: 'reconditioned', quality: 1, agesLess: 0.85 })),
        price: spread(overhaul.major.price),
        wait: 0,
        days: spread(overhaul.major.days),
        intrusionChance: 0.1,
      },
    })
  }
  return list
}

/** An alternative that runs on past a stop line, or with a danger found and not made safe, says so and is barred. */
function barred(setting: Setting, alternative: Alternative): Alternative {
  const { now } = alternative
  if (now === 'give-up' || (typeof now === 'object' && 'replaceWith' in now)) return alternative
  const mended = new Set(typeof now === 'object' ? now.parts.map(({ part }) => part) : [])
  const open = openStops(setting.register, setting.model).filter(
    ({ parts }) => !parts.some((part) => mended.has(part)),
  )
  return open.length === 0 ? alternative : { ...alternative, barred: open.map(({ why }) => why).join(' ') }
}
