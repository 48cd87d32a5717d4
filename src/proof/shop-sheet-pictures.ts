/**
 * Photographs that go to a workshop: the leads as found, then what was seen and measured of the parts that it is asked about.
 *
 * @module
 */

import { type Entry, isKind } from '../logbook/kinds.js'
import { type Photograph, photographsKept, photographsOf } from '../logbook/photographs.js'
import type { LinksRecord } from './as-found.js'
import type { ShopJob } from './shop-sheet-wants.js'

/** What each job is about. */
const partsOf: Readonly<Record<ShopJob, readonly string[]>> = {
  'rewind-stator': ['stator-winding'],
  'rewind-rotor': ['rotor-winding'],
  exciter: ['exciter', 'rotor-diodes'],
  'dry-and-varnish': ['stator-winding', 'rotor-winding', 'exciter'],
  bearings: ['outboard-bearing', 'drive-end-bearing'],
  test: ['stator-winding', 'rotor-winding', 'exciter', 'rotor-diodes'],
}

/** Each once, numbered, with what it shows; those that were taken away are left out. */
export function picturesForShop({
  found,
  entries,
  jobs,
}: {
  readonly found: LinksRecord | undefined
  /** In their current form. */
  readonly entries: readonly Entry[]
  readonly jobs: readonly ShopJob[]
}): readonly Photograph[] {
  const kept = photographsKept(entries)
  const about = new Set(jobs.flatMap((job) => partsOf[job]))
  const ofParts = entries.flatMap((entry) => {
    const part = partsSeen(entry).find((one) => about.has(one))
    if (part === undefined) return []
    return photographsOf(entry).map((one) => ({
      ...one,
      shows: `${part.replaceAll('-', ' ')}, ${entry.from}${one.shows === undefined ? '' : `: ${one.shows}`}`,
    }))
  })
  const all = [
    ...(found?.photographs ?? []).map((one) => ({ ...one, shows: one.shows ?? 'leads as found' })),
    ...ofParts,
  ]
  return all
    .filter(({ sha256 }, at) => kept.has(sha256) && all.findIndex((one) => one.sha256 === sha256) === at)
    .map((one, at) => ({ ...one, shows: `${at + 1}: ${one.shows}` }))
}

/** The parts that a look or a reading is of. */
function partsSeen(entry: Entry): readonly string[] {
  if (isKind(entry, 'finding')) return entry.body.about.map(({ part }) => part)
  return isKind(entry, 'reading') && entry.body.part !== undefined ? [entry.body.part] : []
}
