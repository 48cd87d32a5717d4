/**
 * The logbook folded into what a set is at a date.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import { byDate } from '../logbook/current.js'
import { dayNumber, daySpanOf, firstDay, type LogDate } from '../logbook/dates.js'
import { type Entry, isKind } from '../logbook/kinds.js'
import {
  brokenOf,
  looksOf,
  openDangersOf,
  openDefectsOf,
  protectionsOf,
  readingsOf,
  stopsOf,
} from './evidence.js'
import { dayOf, metersOf } from './hours.js'
import { offeredSetsOf } from './load-facts.js'
import { openQuotesOf, overrunsOf, spentOf } from './money.js'
import { particularsOf } from './particulars.js'
import { partsOf } from './parts.js'
import type { CompleteSpan, Letdowns, OwnAlternative, SetRegister } from './register-types.js'

export interface RegisterQuestion {
  /** In their current form. */
  readonly entries: readonly Entry[]
  readonly boat: string
  readonly set: string
  /** Exact to the day; what may have happened later is left out. */
  readonly asOf: LogDate
  readonly catalogue: Pick<Catalogue, 'parts'>
}

/** What one set of a boat is at a date. */
export function registerOf({ entries: all, boat, set, asOf, catalogue }: RegisterQuestion): SetRegister {
  const asOfDay = dayNumber(asOf)
  const entries = byDate(
    all.filter(
      (entry) =>
        entry.boat === boat && (entry.set === null || entry.set === set) && firstDay(entry.from) <= asOf,
    ),
  )
  const particulars = particularsOf(entries, set)
  const { setFacts, terms, use } = particulars
  const ofSet = entries.filter((entry) => entry.set === set)
  const meters = metersOf(ofSet, { setFacts, use: use?.months, asOfDay })
  const looks = looksOf(ofSet, asOfDay)
  const stops = stopsOf(ofSet, asOfDay)
  const openDefects = openDefectsOf(looks, ofSet, asOfDay)
  const broken = brokenOf(stops, ofSet, asOfDay)
  const offered = offeredSetsOf(ofSet)
  return {
    boat,
    set,
    asOf,
    asOfDay,
    ...particulars,
    ...(meters.builtDay === undefined ? {} : { builtDay: meters.builtDay }),
    hours: meters.track,
    parts: partsOf(ofSet, { meters, asOfDay }),
    looks,
    readings: readingsOf(ofSet, asOfDay),
    stops,
    letdowns: letdownsOf(entries, asOfDay),
    complete: completeOf(entries, asOfDay),
    openDefects,
    broken,
    openDangers: openDangersOf({ defects: openDefects, broken }, entries, catalogue),
    protections: protectionsOf(catalogue, { setFacts, entries: ofSet, asOfDay }),
    spent: spentOf(entries, { catalogue, terms, asOfDay }),
    openQuotes: openQuotesOf(entries, { terms, asOfDay, currency: particulars.boatFacts.currency }),
    overruns: overrunsOf(entries, terms),
    ownAlternatives: ownAlternativesOf(ofSet),
    ...(offered.length === 0 ? {} : { offeredSets: offered }),
  }
}

/** The sets of a boat that are not gone by a date, in the order in which the log first names them. */
export function setsOf(entries: readonly Entry[], asOf: LogDate): string[] {
  const seen = byDate(entries).filter((entry) => firstDay(entry.from) <= asOf)
  const standing = new Map<string, string>()
  for (const entry of seen) {
    if (entry.set === null) continue
    const said = isKind(entry, 'set') ? entry.body.standing : undefined
    standing.set(entry.set, said ?? standing.get(entry.set) ?? 'in-use')
  }
  return [...standing].filter(([, is]) => is !== 'gone').map(([set]) => set)
}

function ownAlternativesOf(entries: readonly Entry[]): OwnAlternative[] {
  const latest = new Map<string, OwnAlternative>()
  for (const entry of entries) {
    if (!isKind(entry, 'alternative')) continue
    const { remark: _, photographs: __, ...body } = entry.body
    latest.set(body.id, { ...body, entry: entry.id })
  }
  return [...latest.values()]
}

function letdownsOf(entries: readonly Entry[], asOfDay: number): Letdowns[] {
  return entries.flatMap((entry) => {
    if (!isKind(entry, 'letdowns')) return []
    const lastDay = dayOf(entry, asOfDay)
    const { times, years } = entry.body
    return [{ entry: entry.id, times, firstDay: lastDay - years * 365.25, lastDay }]
  })
}

function completeOf(entries: readonly Entry[], asOfDay: number): CompleteSpan[] {
  return entries.flatMap((entry) => {
    if (!isKind(entry, 'complete')) return []
    const { first, last } = daySpanOf(entry)
    return entry.body.of.map((of) => ({
      of,
      firstDay: first,
      lastDay: Math.min(last, asOfDay),
      entry: entry.id,
    }))
  })
}
