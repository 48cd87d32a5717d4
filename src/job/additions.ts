/**
 * What renewing a further part along with a decided job costs and saves, part by part, from histories played on common draws.
 *
 * @module
 */

import type { Play } from '../alternatives/policy.js'
import type { Action } from '../alternatives/quoted-job.js'
import { usualPrice, withItems } from '../alternatives/renewal.js'
import { column, type Sample } from '../alternatives/sample.js'
import { stakes } from '../alternatives/stakes.js'
import { paired } from '../alternatives/turning-points.js'
import type { Alternative, LifeModel, LifePart } from '../forecast/life-model.js'
import type { Addition, Opening } from './bundle.js'

/** Of one part, with what its figures rest on. */
export interface WorthAdding extends Addition {
  /** Failures of the part over the years kept, where it is left, and where it is renewed now. */
  readonly failures: { readonly left: number; readonly renewed: number }
  /** Standard error of what it saves. */
  readonly error: number
}

export interface WorthOfAdditions {
  readonly additions: readonly WorthAdding[]
  readonly openings: readonly Opening[]
  /** Ways in that the job opens anyway. */
  readonly open: readonly string[]
  /** Parts that cannot be worth it: all that their failures cost is less than renewing them. */
  readonly tooSmall: number
  /** Parts that might be worth it and were not played, for want of time. */
  readonly unplayed: number
}

const histories = 800
/** As many parts are played at most, those first of which failures cost most beyond renewing them. */
const mostPlayed = 15

/**
 * Each part beside the job. What it saves is E[all costs but those of the job itself and of what it puts in], without it less
 * with it, on the same draws; what it may put in is what the latter are more. Its price, and that of ways in, is the usual
 * one with the mean overrun, so that ways in which several share can be paid once.
 */
export async function additionsTo(
  job: Alternative,
  of: { readonly model: LifeModel; readonly sample: Sample; readonly seed: number; readonly play: Play },
): Promise<WorthOfAdditions> {
  const { model, sample, seed, play } = of
  const count = Math.min(histories, column(sample, 'cost').length)
  const inJob = new Set(partsOf(job))
  const open = opened(
    model,
    model.parts.filter(({ id }) => inJob.has(id)).flatMap(({ access }) => access),
  )
  const failures = failuresByPart(model, sample)
  const atStake = stakesByPart(model, sample)
  const possible = model.parts
    .map((part, p) => ({ part, p, beyond: atStake[p]! - usualPrice(model, part.repair) }))
    .filter(({ part }) => !inJob.has(part.id) && part.broken === undefined)
    .sort((a, b) => b.beyond - a.beyond)
  const asked = possible.filter(({ beyond }) => beyond > 0).slice(0, mostPlayed)
  const played =
    asked.length === 0
      ? []
      : await play(
          asked.map(({ part }) => besides(model, job, [part])),
          { seed, from: 0, count },
        )
  const additions = asked.map(({ part, p }, i): WorthAdding => {
    const renewed = played[i]!
    const saved = paired(toCome(sample, count), toCome(renewed, count))
    const put = paired(column(renewed, 'intrusion'), column(sample, 'intrusion').subarray(0, count))
    return {
      part: part.id,
      price: usualPrice(model, part.repair) * meanOverrun(model),
      hours: part.repair.hours,
      opens: [...opened(model, part.access)].filter((id) => !open.has(id)),
      saves: saved.value,
      error: saved.error,
      mayPutIn: put.value,
      failures: { left: failures[p]!, renewed: failuresByPart(model, renewed)[p]! },
    }
  })
  return {
    additions,
    openings: openingsOf(model, job, additions),
    open: [...open],
    tooSmall: possible.filter(({ beyond }) => beyond <= 0).length,
    unplayed: possible.filter(({ beyond }) => beyond > 0).length - asked.length,
  }
}

/** All costs but those of the job itself, and of what it may put in. */
function toCome(sample: Sample, count: number): Float64Array {
  const now = column(sample, 'now')
  const intrusion = column(sample, 'intrusion')
  return column(sample, 'cost')
    .subarray(0, count)
    .map((cost, i) => cost - now[i]! - intrusion[i]!)
}

function failuresByPart(model: LifeModel, sample: Sample): number[] {
  const n = column(sample, 'cost').length
  let m = 0
  return model.parts.map(({ modes }) => modes.reduce((sum) => sum + sample.failuresOfMode[m++]! / n, 0))
}

/** What the failures of each part come to over the years kept, with what they bring on: a quick bound. */
function stakesByPart(model: LifeModel, sample: Sample): number[] {
  const n = column(sample, 'cost').length
  const perFailure = stakes(
    model,
    sample.failuresOfMode.map((count) => count / n),
  )
  let m = 0
  return model.parts.map(({ modes }) =>
    modes.reduce((sum) => {
      const at = m++
      return sum + (sample.failuresOfMode[at]! / n) * perFailure[at]!
    }, 0),
  )
}

/** A way in is the owner's work only where all that is done behind it, and the job itself, are. */
function openingsOf(model: LifeModel, job: Alternative, additions: readonly Addition[]): Opening[] {
  const { ownPerHour, paidPerHour, ownerAccessFactor } = model.labour
  const isPaid = (ids: readonly string[]) =>
    model.parts.some(({ id, repair }) => ids.includes(id) && repair.by === 'paid')
  const jobIsPaid = isPaid(partsOf(job))
  return model.access.flatMap(({ id, hours }) => {
    const behind = additions.filter(({ opens }) => opens.includes(id)).map(({ part }) => part)
    if (behind.length === 0) return []
    const paid = jobIsPaid || isPaid(behind)
    const rate = paid ? paidPerHour : ownPerHour * ownerAccessFactor
    return [{ id, hours: paid ? hours : hours * ownerAccessFactor, price: hours * rate * meanOverrun(model) }]
  })
}

function meanOverrun({ labour }: LifeModel): number {
  const { median, logSd } = labour.overrun
  return median * Math.exp(logSd ** 2 / 2)
}

/**
 * The job with parts renewed beside it; of one that leaves the set as it is, a job of those parts. Where a fault is put in with
 * the chance of the job as a whole, that of each further part is added: 1 − Π (1 − p).
 */
export function besides(model: LifeModel, job: Alternative, parts: readonly LifePart[]): Alternative {
  const { now } = job
  const items = parts.map(({ id }) => ({ part: id, outcome: 'renewed' as const, quality: 1, agesLess: 1 }))
  const price = parts.reduce((sum, { repair }) => sum + usualPrice(model, repair), 0)
  const sound = parts.reduce((none, { repair }) => none * (1 - repair.intrusionChance), 1)
  const alone: Action = { parts: items, wait: 0, intrusionChance: 1 - sound }
  const isWhole = isAction(now) && (now.quote !== undefined || now.price !== undefined)
  return {
    ...job,
    id: `${job.id.slice(0, 30)}.and-${parts
      .map(({ id }) => id)
      .join('-')
      .slice(0, 25)}`,
    now: isAction(now)
      ? {
          ...withItems(now, items, price),
          ...(isWhole ? { intrusionChance: 1 - (1 - now.intrusionChance) * sound } : {}),
        }
      : alone,
  }
}

function isAction(now: Alternative['now']): now is Action {
  return typeof now === 'object' && 'parts' in now
}

function partsOf({ now }: Alternative): readonly string[] {
  return isAction(now) ? now.parts.map(({ part }) => part) : []
}

/** Ways in with all that they include. */
function opened(model: LifeModel, ids: readonly string[]): Set<string> {
  const open = new Set<string>()
  const add = (id: string) => {
    if (open.has(id)) return
    open.add(id)
    for (const other of model.access.find((one) => one.id === id)?.includes ?? []) add(other)
  }
  for (const id of ids) add(id)
  return open
}
