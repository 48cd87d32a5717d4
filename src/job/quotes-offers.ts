/**
 * The offers for a job that the log holds, one for each who offers, and what in them cannot be used.
 *
 * @module
 */

import type { Problem } from '../catalogue/problem.js'
import { byDate } from '../logbook/current.js'
import { dayNumber, firstDay, type LogDate, lastDay } from '../logbook/dates.js'
import { type Body, type Entry, isKind } from '../logbook/kinds.js'
import { withTax } from '../register/money.js'
import type { Terms } from '../register/register-types.js'

type Quote = Body<'quote'>
export type StagePayment = NonNullable<Quote['stagePayments']>[number]

/** An offer as it can be reckoned with: dates that cannot be are left out. */
export interface Offer {
  readonly entry: string
  readonly offeredBy?: string
  readonly from: LogDate
  /** As offered, and with the tax on it. */
  readonly amount: number
  readonly withTax: number
  /** Rate of the tax that is on it, or that would be. [%] */
  readonly taxPercent: number
  readonly taxUnknown: boolean
  readonly firmness: Quote['firmness']
  readonly subjectToStripDown: boolean
  readonly excludes: Quote['excludes']
  readonly includes: Quote['excludes']
  readonly alsoExcludes?: string
  readonly guaranteeMonths?: number
  readonly validUntil?: LogDate
  /** Its time has run out. */
  readonly expired: boolean
  /** Days from the day asked for until the set runs again, and those without it, as promised. */
  readonly days?: number
  readonly daysOut?: number
  /** None: nothing was said of it. */
  readonly stages: readonly StagePayment[]
  readonly covers: Quote['covers']
  /** Earlier offers of the same name, in whose place this one stands. */
  readonly inPlaceOf: readonly string[]
}

export interface OffersOfJob {
  /** In the order of their dates. */
  readonly offers: readonly Offer[]
  /** What could not be used, and was left out. */
  readonly problems: readonly Problem[]
}

export interface OffersQuestion {
  readonly entries: readonly Entry[]
  readonly set: string
  readonly job: string
  /** 'YYYY-MM-DD' */
  readonly asOf: LogDate
  readonly terms: Terms
  /** The boat's money, in which all is reckoned. */
  readonly currency: string
}

type QuoteEntry = Extract<Entry, { kind: 'quote' }>

/** The latest offer of each who offers; those without a name stand each for itself. */
export function offersOf(question: OffersQuestion): OffersOfJob {
  const { entries, set, job, asOf } = question
  const problems: Problem[] = []
  const latest = new Map<string, { readonly entry: QuoteEntry; readonly inPlaceOf: readonly string[] }>()
  for (const entry of byDate(entries)) {
    if (!isKind(entry, 'quote') || entry.body.job !== job) continue
    if ((entry.set !== set && entry.set !== null) || firstDay(entry.from) > asOf) continue
    const { currency = question.currency, offeredBy } = entry.body
    if (currency !== question.currency) {
      const allowed = `its amount in ${question.currency}, the money of the boat; it is left out`
      problems.push({ code: 'other-money', path: `quote ${entry.id}: currency`, found: currency, allowed })
      continue
    }
    const name = offeredBy?.trim().toLowerCase() ?? entry.id
    const before = latest.get(name)
    latest.delete(name)
    const inPlaceOf = before === undefined ? [] : [...before.inPlaceOf, before.entry.id]
    latest.set(name, { entry, inPlaceOf })
  }
  const offers = [...latest.values()].map(({ entry, inPlaceOf }): Offer => {
    problems.push(...dateProblems(entry))
    return { ...offerOf(entry, question), inPlaceOf }
  })
  return { offers, problems }
}

function offerOf(entry: QuoteEntry, { asOf, terms }: OffersQuestion): Omit<Offer, 'inPlaceOf'> {
  const { body } = entry
  const { offeredBy, alsoExcludes, guaranteeMonths, daysOut } = body
  const isUsable = (date: LogDate | undefined) => date !== undefined && !isBefore(date, entry.from)
  const validUntil = isUsable(body.validUntil) ? body.validUntil : undefined
  const today = dayNumber(asOf)
  const days =
    body.readyBy !== undefined && isUsable(body.readyBy)
      ? Math.max(0, dayNumber(lastDay(body.readyBy)) - today)
      : body.days
  return {
    entry: entry.id,
    ...(offeredBy === undefined ? {} : { offeredBy }),
    from: entry.from,
    amount: body.amount,
    withTax: withTax(entry, terms),
    taxPercent: body.tax?.percent || terms.taxPercent || 0,
    taxUnknown: body.tax === undefined,
    firmness: body.firmness,
    subjectToStripDown: body.subjectToStripDown,
    excludes: body.excludes,
    includes: body.includes ?? [],
    ...(alsoExcludes === undefined ? {} : { alsoExcludes }),
    ...(guaranteeMonths === undefined ? {} : { guaranteeMonths }),
    ...(validUntil === undefined ? {} : { validUntil }),
    expired: validUntil !== undefined && lastDay(validUntil) < asOf,
    ...(days === undefined ? {} : { days }),
    ...(daysOut === undefined ? {} : { daysOut }),
    stages: (body.stagePayments ?? []).filter(({ at }) => at === undefined || isUsable(at)),
    covers: body.covers,
  }
}

/** Dates of a quote that lie before it was given. */
function dateProblems({ id, from, body }: QuoteEntry): Problem[] {
  const { validUntil, readyBy, stagePayments = [] } = body
  const dates: (readonly [string, LogDate | undefined])[] = [
    ['validUntil', validUntil],
    ['readyBy', readyBy],
    ...stagePayments.map(({ at }, i) => [`stagePayments.${i}.at`, at] as const),
  ]
  return dates.flatMap(([field, date]) =>
    date === undefined || !isBefore(date, from)
      ? []
      : [
          {
            code: 'before-the-quote',
            path: `quote ${id}: ${field}`,
            found: date,
            allowed: `not before ${from}, when it was given; it is left out`,
          },
        ],
  )
}

function isBefore(date: LogDate, from: LogDate): boolean {
  return lastDay(date) < firstDay(from)
}
