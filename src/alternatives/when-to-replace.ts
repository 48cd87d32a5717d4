/**
 * When to replace, if not now: the price of a job to walk away at in each year to come, the year of a planned replacement,
 * and how long an old and a new set pay.
 *
 * @module
 */

import type { Alternative, LifeModel } from '../forecast/life-model.js'
import type { Played } from './bearing.js'
import { type EconomicLife, economicLife } from './economic-life.js'
import type { Limit } from './policy.js'
import { column, type Sample, yearsOf } from './sample.js'
import { followStopping, learnStopping, type Stopping } from './stopping-policy.js'
import { type Estimate, estimateOf } from './summary.js'

export interface WhenToReplace {
  /** The best alternative that keeps the present set, and the set that would take its place. */
  readonly keeping: string
  readonly candidate: string
  /** Estimate above which a later job is not mended, at the beginning of each year; none: always mended. */
  readonly limitByYear?: readonly number[]
  readonly above?: Limit['above']
  /** Running it so many more years and fitting the other in any case, against keeping it by its limit: what that adds. */
  readonly planned: readonly { readonly years: number; readonly adds: Estimate }[]
  /** A rule that looks each year at what was spent saves this against the limit, where it surely saves; on histories of its own. */
  readonly yearly?: { readonly saves: Estimate; readonly stopsIn: readonly number[] }
  readonly old: EconomicLife
  readonly fresh: EconomicLife
  /** What each further year with the old set costs. */
  readonly marginal: readonly number[]
  /** Years for which the old set costs less a year than a new one at its best; nought only where it surely never does. */
  readonly paysYears: number
}

/** Histories that a rule is learnt on, and others that it is judged by. */
const learning = 1_500
const judging = 2_500
/** Histories of each length of life. */
const ofEachLife = 300
const longestLife = 20
const sure = 2

/** None where no alternative keeps the set, or nothing could take its place. */
export async function whenToReplace(played: Played): Promise<WhenToReplace | undefined> {
  const { model, samples } = played
  const keeping = cheapestOf(
    played,
    ({ now }) => now === 'leave' || (typeof now === 'object' && 'parts' in now),
  )
  const replacing = cheapestOf(played, ({ now }) => typeof now === 'object' && 'replaceWith' in now)
  const { now } = replacing ?? {}
  if (keeping === undefined || typeof now !== 'object' || !('replaceWith' in now) || samples.length === 0) {
    return undefined
  }
  const candidate = now.replaceWith
  const { limit } = keeping
  const years = Array.from({ length: yearsOf(model) }, (_, year) => year)
  return {
    keeping: keeping.id,
    candidate,
    ...(limit === undefined
      ? {}
      : { limitByYear: years.map((year) => limitAt(limit, year / model.horizonYears)), above: limit.above }),
    ...(await plannedYears(played, keeping, candidate)),
    ...(await serviceLives(played, candidate)),
  }
}

/** The cheapest alternative of a kind; a barred one only where none of the kind is open. */
function cheapestOf(
  { model, samples }: Pick<Played, 'model' | 'samples'>,
  isOne: (alternative: Alternative) => boolean,
): Alternative | undefined {
  const found = model.alternatives
    .map((alternative, a) => ({ alternative, cost: estimateOf(column(samples[a]!, 'cost')).mean }))
    .filter(({ alternative }) => isOne(alternative) && alternative.replaceLater === undefined)
  const open = found.filter(({ alternative }) => alternative.barred === undefined)
  return (open.length > 0 ? open : found).sort((a, b) => a.cost - b.cost)[0]?.alternative
}

/** The limit at a share of the horizon: straight between its knots. */
function limitAt({ knots: [first, middle, last] }: Limit, share: number): number {
  return share < 0.5 ? first + (middle - first) * 2 * share : middle + (last - middle) * (2 * share - 1)
}

async function plannedYears(
  { model, seed, play }: Played,
  keeping: Alternative,
  candidate: string,
): Promise<Pick<WhenToReplace, 'planned' | 'yearly'>> {
  const years = Array.from({ length: yearsOf(model) - 1 }, (_, i) => i + 1)
  const { barred: _, ...kept } = keeping
  const alternatives = [
    kept,
    ...years.map(
      (year): Alternative => ({
        ...kept,
        id: `${kept.id.slice(0, 40)}.year-${year}`,
        replaceLater: { year, with: candidate },
      }),
    ),
  ]
  if (years.length === 0) return { planned: [] }
  const [learnt, judged] = [
    await play(alternatives, { seed, from: 0, count: learning, withYears: true }),
    await play(alternatives, { seed, from: learning, count: judging, withYears: true }),
  ].map((played) => stoppingOf(model, played))
  const { cost, date } = followStopping(learnStopping(learnt!), judged!)
  const saves = estimateOf(judged!.never.map((without, i) => without - cost[i]!))
  const stopsIn = years.map(
    (__, d) => date.reduce((count, one) => count + (one === d ? 1 : 0), 0) / date.length,
  )
  return {
    planned: years.map((year, d) => ({
      years: year,
      adds: estimateOf(judged!.stopped[d]!.map((stop, i) => stop - judged!.never[i]!)),
    })),
    ...(saves.mean > sure * saves.standardError ? { yearly: { saves, stopsIn } } : {}),
  }
}

/** At each year's end is known what the year cost and what the years before it did, and whether the set is the old one still. */
function stoppingOf(model: LifeModel, [keep, ...replaced]: readonly Sample[]): Stopping {
  const perHistory = yearsOf(model)
  const never = column(keep!, 'cost')
  const spent = keep!.years!
  const byYear = (i: number, from: number, to: number) => {
    let sum = 0
    for (let year = from; year < to; year++) sum += spent[i * perHistory + year]!
    return sum
  }
  return {
    stopped: replaced.map((sample) => column(sample, 'cost')),
    never,
    known: replaced.map((_, d) => [
      never.map((__, i) => Math.sqrt(Math.max(0, byYear(i, d, d + 1)))),
      never.map((__, i) => Math.sqrt(Math.max(0, byYear(i, 0, d)) / Math.max(1, d))),
    ]),
  }
}

async function serviceLives(
  { model, seed, playModel }: Played,
  candidate: string,
): Promise<Pick<WhenToReplace, 'old' | 'fresh' | 'marginal' | 'paysYears'>> {
  const rate = model.realInterestPerYear
  const alternatives: Alternative[] = [
    { id: 'old', now: 'leave' },
    { id: 'fresh', now: { replaceWith: candidate } },
  ]
  const today = worthToday(model)
  const lives: { years: number; old: Estimate; fresh: Estimate }[] = []
  for (let years = 1; years <= Math.min(longestLife, Math.ceil(2 * model.horizonYears)); years++) {
    const span = { seed, from: 0, count: ofEachLife }
    const [old, fresh] = await playModel({ ...model, horizonYears: years, alternatives }, span)
    lives.push({
      years,
      // As a stranger would see it: the old set costs what it would fetch, and the new one gets nothing for the old.
      old: plus(estimateOf(column(old!, 'cost')), today),
      fresh: plus(estimateOf(column(fresh!, 'cost')), model.set.salvageAtReplacement),
    })
  }
  const of = (which: 'old' | 'fresh') =>
    economicLife(
      lives.map(({ years, ...values }) => ({ years, presentValue: values[which] })),
      rate,
    )
  const [old, fresh] = [of('old'), of('fresh')]
  const marginal = lives.map(({ years, old: { mean } }, k) => {
    // Sold at once it has cost nothing.
    const before = k === 0 ? 0 : lives[k - 1]!.old.mean
    return (mean - before) / discounted(rate, { from: years - 1, to: years })
  })
  const dearer = marginal.findIndex((cost) => cost >= fresh.best.costPerYear)
  const apart = Math.hypot(old.best.error, fresh.best.error)
  const behind = old.best.costPerYear - fresh.best.costPerYear
  const paysYears =
    behind > sure * apart ? 0 : Math.max(old.best.years, dearer < 0 ? marginal.length : dearer)
  return { old, fresh, marginal, paysYears }
}

function plus({ mean, standardError }: Estimate, fixed: number): Estimate {
  return { mean: mean + fixed, standardError }
}

/** ∫ e^(−rt) dt. */
function discounted(rate: number, { from, to }: { readonly from: number; readonly to: number }): number {
  return rate === 0 ? to - from : (Math.exp(-rate * from) - Math.exp(-rate * to)) / rate
}

/** What the set would fetch today. */
function worthToday({ set, parts }: LifeModel): number {
  const { resale, ageYears } = set
  if (resale === undefined) return 0
  const worth = resale.newPrice * resale.share * Math.exp(-resale.fallPerYear * ageYears)
  const running = Math.max(resale.least, worth)
  return parts.some(({ broken }) => broken !== undefined) ? running * resale.deadShare : running
}
