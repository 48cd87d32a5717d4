/**
 * Jobs that are done: what was expected of each, and what it took.
 *
 * @module
 */

import { overrunOfQuote, quoteTerms } from '../alternatives/quoted-job.js'
import { usual } from '../alternatives/renewal.js'
import type { Catalogue } from '../catalogue/catalogue.js'
import { labourOf, overrunPrior } from '../forecast/build-money.js'
import { type LearnedOverrun, systemOf } from '../forecast/learned-overrun.js'
import { lifeModelSchema } from '../forecast/life-model.js'
import { firstDay } from '../logbook/dates.js'
import type { Entry, EntryOf } from '../logbook/kinds.js'
import { isKind } from '../logbook/kinds.js'
import { withTax } from '../register/money.js'
import { registerOf } from '../register/register.js'
import type { SetRegister } from '../register/register-types.js'
import { setCatalogueOf } from '../register/set-kind-of.js'
import { type EstimateKnown, estimateOf } from './estimate.js'
import { type Job, jobsOf } from './jobs.js'
import { type Excess, learnedFrom, type PooledOverrun, poolOverruns } from './overrun.js'

/** Money that was expected and what came. */
export interface MoneyTaken {
  readonly expected: number
  /** The quote, with what it left out; or usual prices and hours. */
  readonly from: 'quote' | 'catalogue'
  readonly quote?: string
  /** What such a job usually comes to: with the overrun that quotes of the kind, or usual prices, have. */
  readonly usual: number
  readonly came: number
}

export interface JobTaken {
  readonly job: string
  /** The system of its parts; `whole-set` where they are of several. */
  readonly kind: string
  readonly hours?: { readonly expected: number; readonly used: number }
  readonly money?: MoneyTaken
}

/** What each job that is done took. Hours and money that nobody wrote down are left out. */
export function jobsTaken(jobs: readonly Job[], known: EstimateKnown): JobTaken[] {
  return jobs.filter(({ state }) => state === 'done' || state === 'proved').map((job) => takenOf(job, known))
}

/** ln(came to / usual) of those of which both are known. */
export function excessesOf(taken: readonly JobTaken[]): Excess[] {
  return taken.flatMap(({ kind, money }) =>
    money === undefined || !(money.came > 0 && money.usual > 0)
      ? []
      : [{ kind, log: Math.log(money.came / money.usual) }],
  )
}

export function pooledOf(jobs: readonly Job[], known: EstimateKnown): PooledOverrun {
  return poolOverruns(excessesOf(jobsTaken(jobs, known)))
}

/** What the jobs of a log teach about what work comes to; undefined unless its owner asks for it to be heard. */
export function learnedOverrunOf(question: {
  readonly entries: readonly Entry[]
  readonly boat: string
  readonly set: string
  readonly asOf: string
  readonly catalogue: Catalogue
}): LearnedOverrun | undefined {
  const { set, asOf, catalogue } = question
  const entries = question.entries.filter(({ from }) => firstDay(from) <= asOf)
  if (!entries.some((entry) => isKind(entry, 'terms') && entry.body.learnFromJobs !== undefined))
    return undefined
  const register = registerOf(question)
  if (!register.terms.learnFromJobs) return undefined
  const forSet = setCatalogueOf(register, catalogue).catalogue
  return learnedFrom(pooledOf(jobsOf(entries, set), { register, catalogue: forSet }))
}

function takenOf(job: Job, known: EstimateKnown): JobTaken {
  const { catalogue } = known
  const worked = job.entries.filter((entry) => isKind(entry, 'work'))
  const systems = job.parts.map(({ part }) => catalogue.parts.find(({ id }) => id === part)?.system)
  const estimate = estimateOf(job.parts, known)
  const used = worked.reduce(
    (sum, { body: { workHours } }) => sum + (workHours?.owner ?? 0) + (workHours?.paid ?? 0),
    0,
  )
  const expected = estimate.hours.owner + estimate.hours.paid
  const money = moneyTaken(job, worked, known)
  return {
    job: job.name,
    kind: systemOf(systems),
    ...(used > 0 && expected > 0 ? { hours: { expected, used } } : {}),
    ...(money === undefined ? {} : { money }),
  }
}

function moneyTaken(
  job: Job,
  worked: readonly EntryOf<'work'>[],
  known: EstimateKnown,
): MoneyTaken | undefined {
  const { register, catalogue } = known
  const paid = paidFor(job, worked, register)
  if (paid === undefined) return undefined
  const labour = lifeModelSchema.shape.labour.parse(labourOf(register, catalogue, []))
  const quote = job.entries.findLast((entry) => isKind(entry, 'quote'))
  if (quote !== undefined) {
    const price = withTax(quote, register.terms)
    const besides = usual(
      quoteTerms({ model: { labour }, catalogue }, { ...quote.body, withTax: price }).besides,
    )
    return {
      expected: price + besides,
      from: 'quote',
      quote: quote.id,
      usual: price * overrunOfQuote(quote.body).both.median + besides,
      came: paid,
    }
  }
  const estimate = estimateOf(job.parts, known)
  if (estimate.unknown.length > 0 || estimate.parts.length === 0) return undefined
  const own = worked.reduce((sum, { body }) => sum + (body.workHours?.owner ?? 0), 0)
  return {
    expected: estimate.money,
    from: 'catalogue',
    usual: estimate.money * overrunPrior.median,
    came: paid + own * labour.ownPerHour,
  }
}

/** Bills with their tax; else what entries of work say that they cost. Undefined: nobody wrote down any money. */
function paidFor(
  job: Job,
  worked: readonly EntryOf<'work'>[],
  { terms }: Pick<SetRegister, 'terms'>,
): number | undefined {
  const bills = job.entries.filter((entry) => isKind(entry, 'bill'))
  if (bills.length > 0) return bills.reduce((sum, bill) => sum + withTax(bill, terms), 0)
  const costs = worked.flatMap(({ body }) => body.cost ?? [])
  return costs.length === 0 ? undefined : costs.reduce((sum, cost) => sum + cost, 0)
}
