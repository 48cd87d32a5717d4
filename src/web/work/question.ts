/**
 * What an answer is worked out from: the log as the page has it, and the catalogue.
 *
 * @module
 */

import type { AskedOf } from '../../alternatives/answer-key.js'
import type { Catalogue } from '../../catalogue/catalogue.js'
import { catalogueFromJson } from '../../catalogue/catalogue-json.js'
import { currentEntries } from '../../logbook/current.js'
import { readKept } from '../../logbook/kept.js'
import type { Entry } from '../../logbook/kinds.js'
import type { CatalogueAnswer } from '../../server/http-types.js'
import type { Entries } from './messages.js'

export async function allOf(entries: Entries): Promise<readonly Entry[]> {
  const all: Entry[] = []
  for (;;) {
    const some = await entries(all.length)
    if (some.length === 0) return all
    all.push(...some)
  }
}

/** Tries another number of years: as if an entry said so today, without writing one. */
export function withYearsKept(
  entries: readonly Entry[],
  { boat, asOf, yearsKept }: AskedOf,
): readonly Entry[] {
  if (yearsKept === undefined) return entries
  const tried = {
    id: '7ZZZZZZZZZZZZZZZZZZZZZZZZZ',
    version: 1,
    boat,
    set: null,
    from: asOf,
    until: asOf,
    noted: `${asOf}T23:59:59Z`,
    device: 'tried',
    n: 1,
    corrects: [],
    kind: 'terms',
    body: { yearsKept },
  } as Entry
  return [...entries, tried]
}

/** A boat's log as the server has it, in its current form; empty where the server does not give it. */
export async function fetchLog(
  boat: string,
): Promise<{ readonly entries: readonly Entry[]; readonly demonstration: boolean }> {
  const answer = await fetch(`/api/boats/${encodeURIComponent(boat)}/entries`)
  if (!answer.ok) return { entries: [], demonstration: false }
  const lines = (await answer.text()).split('\n').filter((line) => line !== '')
  return {
    entries: currentEntries(lines.map(readKept)).entries,
    demonstration: answer.headers.get('Gensettle-Demonstration') === 'yes',
  }
}

export async function fetchCatalogue(): Promise<Catalogue> {
  const answer = await fetch('/api/catalogue')
  if (!answer.ok) throw new Error(`the catalogue must be served; found status ${answer.status}`)
  return catalogueFromJson((await answer.json()) as CatalogueAnswer)
}
