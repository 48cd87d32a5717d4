/**
 * Where the limits come from that sets are held against.
 *
 * @module
 */

import type { Catalogue } from '../catalogue/catalogue.js'
import type { Provenance } from '../catalogue/provenance.js'
import type { JudgedSet } from './judged-set.js'
import { type CheckId, checkIds } from './size-check.js'

export interface LimitOrigin {
  readonly check: CheckId
  /** In the catalogue. */
  readonly path: string
  readonly title: string
  readonly place: string
  readonly held: Provenance['held']
}

/** Each limit once, in the order of the checks; those that follow from the set or the boat alone have none. */
export function limitOrigins(
  { origins, sources }: Pick<Catalogue, 'origins' | 'sources'>,
  sets: readonly JudgedSet[],
): LimitOrigin[] {
  const checks = sets.flatMap((one) => [...one.checks, ...one.occasions.flatMap((on) => on.checks)])
  const paths = new Map(
    checks.flatMap(({ check, limitPath }) => (limitPath === undefined ? [] : [[check, limitPath] as const])),
  )
  return checkIds.flatMap((check) => {
    const path = paths.get(check)
    const origin = path === undefined ? undefined : originAt(origins, path)
    if (path === undefined || origin === undefined) return []
    const title = sources.find(({ id }) => id === origin.source)?.title ?? origin.source
    return [{ check, path, title, place: origin.place, held: origin.held }]
  })
}

/** Of a figure, or of the first of a list of them. */
function originAt(origins: ReadonlyMap<string, Provenance>, path: string): Provenance | undefined {
  return origins.get(path) ?? [...origins].find(([key]) => key.startsWith(`${path}.`))?.[1]
}
