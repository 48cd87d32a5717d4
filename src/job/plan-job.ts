/**
 * A job with what belongs with it: the further parts that are worth renewing while the set is open, and the choice as a whole.
 *
 * @module
 */

import type { Play } from '../alternatives/policy.js'
import { column, type Sample } from '../alternatives/sample.js'
import { lowerFirst } from '../alternatives/say.js'
import { paired } from '../alternatives/turning-points.js'
import type { Alternative, LifeModel } from '../forecast/life-model.js'
import { additionsTo, besides, type WorthAdding, type WorthOfAdditions } from './additions.js'
import type { Bundle, BundleLimits, Bundling } from './bundle.js'

/** Histories that a job and its additions are played over. */
export const planHistories = 800

/** A job as it was played: alone, and with each of the parts that may be worth renewing. */
export interface PlayedJob {
  readonly job: Alternative
  readonly sample: Sample
  readonly worth: WorthOfAdditions
}

interface Playing {
  readonly model: LifeModel
  readonly seed: number
  readonly play: Play
}

export async function playJob(job: Alternative, { model, seed, play }: Playing): Promise<PlayedJob> {
  const [sample] = await play([job], { seed, from: 0, count: planHistories })
  return { job, sample: sample!, worth: await additionsTo(job, { model, sample: sample!, seed, play }) }
}

/** What is chosen from. Each addition is taken to save one standard error less, so that luck in the histories renews nothing. */
export function bundlingOf({ additions, openings }: WorthOfAdditions, limits: BundleLimits): Bundling {
  return {
    additions: additions.map((one) => ({ ...one, saves: one.saves - one.error })),
    openings,
    limits,
  }
}

/** What a whole choice saves, played as one: parts that save one another are not counted twice. */
export interface Together {
  /** Money saved over the years kept, its own price taken off. */
  readonly saves: number
  readonly standardError: number
}

/** The choice played with the job, on the same draws as the job alone; none where nothing is added. */
export async function playTogether(
  { job, sample }: Pick<PlayedJob, 'job' | 'sample'>,
  { parts }: Pick<Bundle, 'parts'>,
  { model, seed, play }: Playing,
): Promise<Together | undefined> {
  if (parts.length === 0) return undefined
  const added = model.parts.filter(({ id }) => parts.includes(id))
  const count = column(sample, 'cost').length
  const [played] = await play([besides(model, job, added)], { seed, from: 0, count })
  const { value, error } = paired(column(sample, 'cost'), column(played!, 'cost'))
  return { saves: value, standardError: error }
}

/** How the sentences about a choice name things. */
export interface SayPlan {
  readonly named: (part: string) => string
  readonly money: (amount: number) => string
  readonly figure: (value: number) => string
}

/**
 * "110 now against 0.31 × 1,150 later": its price, against the failures that it spares and what one of them costs. Where that is
 * more than its price, and no longer so with one standard error less, that is said.
 */
export function sayWhy(
  { price, opens, saves, error, failures, mayPutIn }: WorthAdding,
  { money, figure }: SayPlan,
): string {
  const fewer = failures.left - failures.renewed
  const now = `${money(price)}${opens.length > 0 ? ' and its way in' : ''} now`
  const isUnsure = saves - mayPutIn > price && saves - error - mayPutIn <= price
  const put = [
    mayPutIn >= 1 ? `, less ${money(mayPutIn)} for what the work may put in` : '',
    isUnsure ? `; not surely: ± ${money(error)}` : '',
  ].join('')
  if (!(fewer > 0.005) || !(saves > 0)) return `${now}, and saves ${money(Math.max(0, saves))} later${put}`
  return `${now} against ${figure(fewer)} × ${money(saves / fewer)} later${put}`
}

/** The parts of a choice in a row. */
export function sayChoice({ parts }: Pick<Bundle, 'parts'>, { named }: SayPlan): string {
  return parts.length === 0 ? 'nothing more' : parts.map((id) => lowerFirst(named(id))).join(', ')
}
