/**
 * What the log says of loads, rules of the house, when the set runs, where it stands, and sets that are offered.
 *
 * Each field as the latest entry gives it; what was taken away is gone until it is named again.
 *
 * @module
 */

import { byDate } from '../logbook/current.js'
import { firstDay, type LogDate } from '../logbook/dates.js'
import { type Body, type Entry, isKind } from '../logbook/kinds.js'

type Told<B> = Omit<B, 'removed' | 'remark' | 'photographs'>

export type LoadFact = Told<Body<'load'>> & { readonly entry: string }
export type RuleFact = Told<Body<'house-rule'>> & { readonly entry: string }
export type CandidateFact = Told<Body<'candidate'>> & { readonly entry: string }
export type HabitFacts = Told<Body<'habits'>>
export type SpaceFacts = Told<Body<'space'>>

export interface LoadFacts {
  readonly loads: readonly LoadFact[]
  readonly rules: readonly RuleFact[]
  readonly habits: HabitFacts
  readonly space: SpaceFacts
  readonly candidates: readonly CandidateFact[]
}

/** Folds the entries of one boat, in their current form, as far as a day. */
export function loadFactsOf(
  all: readonly Entry[],
  of: { readonly boat: string; readonly set: string; readonly asOf: LogDate },
): LoadFacts {
  const entries = byDate(
    all.filter(
      (entry) =>
        entry.boat === of.boat &&
        (entry.set === null || entry.set === of.set) &&
        firstDay(entry.from) <= of.asOf,
    ),
  )
  return {
    loads: foldedById(entries.filter((entry) => isKind(entry, 'load'))),
    rules: foldedById(entries.filter((entry) => isKind(entry, 'house-rule'))),
    habits: entries.filter((entry) => isKind(entry, 'habits')).reduce(foldedOver, {}),
    space: entries.filter((entry) => isKind(entry, 'space')).reduce(foldedOver, {}),
    candidates: offeredSetsOf(entries),
  }
}

/** Sets that are offered, from entries in the order of their dates. */
export function offeredSetsOf(entries: readonly Entry[]): CandidateFact[] {
  return foldedById(entries.filter((entry) => isKind(entry, 'candidate')))
}

interface WithId {
  readonly id: string
  readonly body: { readonly id: string; readonly removed?: true | undefined }
}

function foldedById<E extends WithId>(
  entries: readonly E[],
): (Told<E['body']> & { readonly entry: string })[] {
  const latest = new Map<string, object>()
  for (const entry of entries) {
    const { id, removed } = entry.body
    if (removed) latest.delete(id)
    else latest.set(id, { ...foldedOver(latest.get(id) ?? {}, entry), entry: entry.id })
  }
  return [...latest.values()] as (Told<E['body']> & { readonly entry: string })[]
}

/** Records within it are folded field by field too; lists are not. */
function foldedOver(before: object, { body }: { readonly body: object }): object {
  const { remark: _, photographs: __, ...told } = body as Readonly<Record<string, unknown>>
  const known = before as Readonly<Record<string, unknown>>
  const given = Object.entries(told)
    .filter(([, value]) => value !== undefined)
    .map(([field, value]) => [
      field,
      isRecord(value) && isRecord(known[field]) ? { ...known[field], ...value } : value,
    ])
  return { ...known, ...Object.fromEntries(given) }
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
