/**
 * The stop line of leads that are joined wrongly, or were put back otherwise than they were found.
 *
 * @module
 */

import type { CatalogueLinks } from '../catalogue/links-schema.js'
import { type Entry, isKind } from '../logbook/kinds.js'
import type { SetRegister } from '../register/register-types.js'
import {
  compareLinks,
  type LinksRecord,
  linkFaults,
  type ReadLinks,
  ratedValues,
  recordOfEntry,
} from './as-found.js'
import type { Limits } from './limits.js'
import { lookAtLinks } from './links/look-at-links.js'
import type { ProofResult } from './results.js'

/** Leads that bar energising, and the line that this opens. */
export interface OpenByLinks {
  readonly line: string
  readonly entry: string
  /** Place among the entries as they follow one another. */
  readonly order: number
  readonly why: string
}

/**
 * Open until the links are proved after the leads were last entered; none where nothing is wrong with them, and no difference
 * matters from as they were proved, or from as they were found before they were undone.
 */
export function openByLinks(
  /** Of one set, the oldest first. */
  entries: readonly Entry[],
  of: {
    readonly register: Pick<SetRegister, 'setFacts'>
    readonly links: CatalogueLinks
    readonly limits: Limits
    readonly results: readonly ProofResult[]
  },
): OpenByLinks[] {
  const leads = entries.flatMap((entry, order) => (isKind(entry, 'links') ? [{ entry, order }] : []))
  const last = leads.at(-1)
  const provedAt = Math.max(-1, ...of.results.filter(proves).map(({ order }) => order))
  if (last === undefined || provedAt > last.order) return []
  const proved = leads.findLast(({ order }) => order < provedAt)
  const firstLeft = leads.findIndex(({ entry }) => entry.body.state === 'as-left')
  const found = leads
    .slice(0, Math.max(0, firstLeft))
    .findLast(({ entry }) => entry.body.state === 'as-found')
  const before = proved ?? found
  const state = last.entry.body.state === 'as-left' ? 'As left' : 'As found'
  const left = recordOfEntry(of.links, last.entry)
  const why =
    before === undefined
      ? whyOfOne(left, state)
      : whyOfBoth({ found: recordOfEntry(of.links, before.entry), left }, of, {
          state: `${state} against ${proved === undefined ? 'as found' : 'as proved'}`,
        })
  return why === undefined ? [] : [{ line: 'links-unproven', entry: last.entry.id, order: last.order, why }]
}

/** Who says that nothing differs where the log shows that something does has proved nothing. */
function proves({ test, readings, judgement }: ProofResult): boolean {
  return test === 'winding-links' && judgement.verdict === 'pass' && readings.differences === 'meant'
}

function whyOfOne(read: ReadLinks, state: string): string | undefined {
  if (!read.ok) return unreadable
  const { winding, joined } = read.record
  return said(state, linkFaults(lookAtLinks(winding, joined)))
}

function whyOfBoth(
  { found, left }: { readonly found: ReadLinks; readonly left: ReadLinks },
  { register, limits }: { readonly register: Pick<SetRegister, 'setFacts'>; readonly limits: Limits },
  { state }: { readonly state: string },
): string | undefined {
  if (!found.ok || !left.ok) return unreadable
  const values = ratedValues(found.record, register.setFacts)
  const of: { readonly found: LinksRecord; readonly left: LinksRecord } = {
    found: found.record,
    left: left.record,
  }
  return said(state, compareLinks(of, { values, limits }).stops)
}

const unreadable = 'What was written of the leads cannot be read, so that nothing can be told of them.'

function said(state: string, stops: readonly string[]): string | undefined {
  return stops.length === 0 ? undefined : `${state}: ${stops.join(' ')}`
}
