/**
 * Particulars, terms and use: each field as the latest entry gives it.
 *
 * @module
 */

import type { Overruling } from '../catalogue/overrule.js'
import { type Entry, type EntryOf, isKind } from '../logbook/kinds.js'
import type { BoatFacts, SetFacts, Terms, UseFacts } from './register-types.js'

export interface Particulars {
  readonly boatFacts: BoatFacts
  readonly setFacts: SetFacts
  readonly terms: Terms
  readonly given: Readonly<Record<string, string>>
  readonly overrulings: readonly Overruling[]
  readonly use?: UseFacts
}

/** Folds the entries of one boat that concern one set, in the order of their dates. */
export function particularsOf(entries: readonly Entry[], set: string): Particulars {
  const given: Record<string, string> = {}
  const boatFacts: Record<string, unknown> = {}
  const setFacts: Record<string, unknown> = {}
  const terms: Record<string, unknown> = {}
  const overrulings = new Map<string, Overruling>()
  let use: Particulars['use']
  for (const entry of entries) {
    if (isKind(entry, 'boat')) fold(boatFacts, 'boat', entry, given)
    else if (isKind(entry, 'terms')) fold(terms, 'terms', entry, given)
    else if (isKind(entry, 'set') && entry.set === set) fold(setFacts, 'set', entry, given)
    else if (isKind(entry, 'use') && entry.set === set && entry.from === entry.until) {
      use = useFrom(entry, use)
    } else if (isKind(entry, 'overrule') && (entry.set === null || entry.set === set)) {
      const { path, value, because } = entry.body
      overrulings.set(path, { path, value, reason: because ?? `entry of ${entry.from}` })
    }
  }
  return {
    boatFacts: boatFacts as BoatFacts,
    setFacts: { ...setFacts, ...presenceOf(entries, set) } as SetFacts,
    terms: terms as Terms,
    given,
    overrulings: [...overrulings.values()],
    ...(use === undefined ? {} : { use }),
  }
}

/** A change leaves the years before as they were said to be; after several, as before the first of them. */
function useFrom({ id, body }: EntryOf<'use'>, earlier: UseFacts | undefined): UseFacts {
  const now = { months: body.months, entry: id }
  return body.changesFromNow ? { ...now, before: earlier?.before ?? earlier?.months ?? [] } : now
}

function fold(
  facts: Record<string, unknown>,
  kind: string,
  entry: Entry,
  given: Record<string, string>,
): void {
  for (const [field, value] of Object.entries(entry.body)) {
    if (value === undefined || field === 'remark' || field === 'photographs') continue
    facts[field] = value
    given[`${kind}.${field}`] = entry.id
  }
}

/** What is there and what is not are lists that grow: the latest word on each part counts. */
function presenceOf(entries: readonly Entry[], set: string): Pick<SetFacts, 'has' | 'hasNot'> {
  const there = new Map<string, boolean>()
  for (const entry of entries) {
    if (!isKind(entry, 'set') || entry.set !== set) continue
    for (const part of entry.body.has ?? []) there.set(part, true)
    for (const part of entry.body.hasNot ?? []) there.set(part, false)
  }
  const named = (wanted: boolean) => [...there].filter(([, is]) => is === wanted).map(([part]) => part)
  return { has: named(true), hasNot: named(false) }
}
