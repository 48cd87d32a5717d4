/**
 * What was spent, what is offered, and how far bills went past their quotes.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import { dateOfDay, daySpan } from '../logbook/dates.js'
import { type Entry, isKind } from '../logbook/kinds.js'
import { dayOf } from './hours.js'
import type { OpenQuote, Overrun, Spending, Terms } from './register-types.js'

type Quote = Extract<Entry, { kind: 'quote' }>
type Bill = Extract<Entry, { kind: 'bill' }>

/** Bills with their tax, and the cost of work that no bill is entered for. */
export function spentOf(
  entries: readonly Entry[],
  known: { readonly catalogue: Pick<Catalogue, 'parts'>; readonly terms: Terms; readonly asOfDay: number },
): Spending {
  const systems = new Map(known.catalogue.parts.map(({ id, system }) => [id, system as string]))
  const workById = new Map(entries.flatMap((entry) => (isKind(entry, 'work') ? [[entry.id, entry]] : [])))
  const billed = new Set(entries.flatMap((entry) => (isKind(entry, 'bill') ? (entry.body.work ?? []) : [])))
  const byYear: Record<string, number> = {}
  const bySystem: Record<string, number> = {}
  let total = 0
  for (const entry of entries) {
    const amount = amountOf(entry, billed, known.terms)
    if (amount === undefined) continue
    const year = dateOfDay(Math.floor(dayOf(entry, known.asOfDay))).slice(0, 4)
    const parts = partsPaidFor(entry, workById)
    const named = new Set(parts.map((part) => systems.get(part) ?? 'whole-set'))
    const system = named.size === 1 ? [...named][0]! : 'whole-set'
    total += amount
    byYear[year] = (byYear[year] ?? 0) + amount
    bySystem[system] = (bySystem[system] ?? 0) + amount
  }
  return { total, byYear, bySystem }
}

/**
 * Of each job the latest quote, where neither bill nor work of that job has come since; oldest first. A quote in another money
 * than the boat's cannot be reckoned with, and is none.
 */
export function openQuotesOf(
  entries: readonly Entry[],
  known: { readonly terms: Terms; readonly asOfDay: number; readonly currency?: string | undefined },
): OpenQuote[] {
  const { terms, asOfDay, currency } = known
  const open = new Map<string, { quote: Quote; decision?: string }>()
  for (const entry of entries) {
    if (isKind(entry, 'quote')) {
      if ((entry.body.currency ?? currency) !== currency && currency !== undefined) continue
      open.delete(entry.body.job)
      open.set(entry.body.job, { quote: entry })
    } else if (isKind(entry, 'bill') || isKind(entry, 'work')) {
      if (entry.body.job !== undefined) open.delete(entry.body.job)
    } else if (isKind(entry, 'decision') && entry.body.job !== undefined) {
      const one = open.get(entry.body.job)
      if (one !== undefined) one.decision = entry.id
    }
  }
  return [...open.values()].map(({ quote, decision }) => ({
    ...quoteOf(quote, terms, asOfDay),
    ...(decision === undefined ? {} : { decision }),
  }))
}

/** Bills against the quotes that they or their jobs name; several bills of one quote are added up. */
export function overrunsOf(entries: readonly Entry[], terms: Terms): Overrun[] {
  const quotes = new Map(entries.flatMap((entry) => (isKind(entry, 'quote') ? [[entry.id, entry]] : [])))
  const billed = new Map<string, number>()
  for (const entry of entries) {
    if (!isKind(entry, 'bill') || entry.body.quote === undefined || !quotes.has(entry.body.quote)) continue
    const before = billed.get(entry.body.quote) ?? 0
    billed.set(entry.body.quote, before + withTax(entry, terms))
  }
  return [...billed].flatMap(([id, sum]) => {
    const quote = quotes.get(id)!
    const quoted = withTax(quote, terms)
    if (!(quoted > 0 && sum > 0)) return []
    return [{ quote: id, job: quote.body.job, quoted, billed: sum, ratio: sum / quoted }]
  })
}

function quoteOf(quote: Quote, terms: Terms, asOfDay: number): OpenQuote {
  const { body } = quote
  return {
    entry: quote.id,
    job: body.job,
    day: dayOf(quote, asOfDay),
    ...(body.what === undefined ? {} : { what: body.what }),
    ...(body.offeredBy === undefined ? {} : { offeredBy: body.offeredBy }),
    amount: body.amount,
    withTax: withTax(quote, terms),
    taxUnknown: body.tax === undefined,
    firmness: body.firmness,
    subjectToStripDown: body.subjectToStripDown,
    excludes: body.excludes,
    ...(body.alsoExcludes === undefined ? {} : { alsoExcludes: body.alsoExcludes }),
    ...(body.guaranteeMonths === undefined ? {} : { guaranteeMonths: body.guaranteeMonths }),
    expired: body.validUntil !== undefined && daySpan(body.validUntil).last < asOfDay,
    covers: body.covers,
  }
}

/** With its tax; where nothing is said of tax it is taken as in. */
export function withTax(entry: Quote | Bill, terms: Terms): number {
  const { amount, tax } = entry.body
  if (tax === undefined || tax.included) return amount
  return amount * (1 + (tax.percent || terms.taxPercent || 0) / 100)
}

function amountOf(entry: Entry, billed: ReadonlySet<string>, terms: Terms): number | undefined {
  if (isKind(entry, 'bill')) return withTax(entry, terms)
  if (isKind(entry, 'work') && !billed.has(entry.id)) return entry.body.cost
  return undefined
}

function partsPaidFor(
  entry: Entry,
  workById: ReadonlyMap<string, Extract<Entry, { kind: 'work' }>>,
): readonly string[] {
  if (isKind(entry, 'work')) return entry.body.parts.map(({ part }) => part)
  if (!isKind(entry, 'bill')) return []
  if (entry.body.parts !== undefined) return entry.body.parts
  return workById.get(entry.body.work ?? '')?.body.parts.map(({ part }) => part) ?? []
}
