/**
 * Closed cases: what they teach of this set, and how the list had stood when the truth came out.
 *
 * @module
 */

import type { FaultCase } from './case.js'
import type { FaultPosterior, FaultTables } from './infer.js'

/** How often each fault proved to be the cause, of the cases closed by then; `except` is left out. */
export function closedCounts(cases: readonly FaultCase[], except?: string): Record<string, number> {
  const counts: Record<string, number> = {}
  for (const { body } of cases) {
    const fault = body.closed?.as === 'listed' ? body.closed.fault : undefined
    if (fault !== undefined && body.name !== except) counts[fault] = (counts[fault] ?? 0) + 1
  }
  return counts
}

/** Place, from 1, and chance of a fault in the list. */
export function placeOf(
  tables: FaultTables,
  { chances }: FaultPosterior,
  fault: string,
): { readonly place: number; readonly chance: number } | undefined {
  const own = chances[tables.faults.indexOf(fault)]
  if (own === undefined) return undefined
  return { place: 1 + chances.filter((chance) => chance > own).length, chance: own }
}

export interface CaseHindsight {
  readonly name: string
  readonly from: string
  readonly fault: string
  readonly place?: number
  readonly chance?: number
}

/** Of every case closed with a listed fault, the place and the chance that it had then. */
export function hindsightOfCases(cases: readonly FaultCase[]): CaseHindsight[] {
  return cases.flatMap(({ from, body: { name, closed } }) => {
    if (closed?.as !== 'listed' || closed.fault === undefined) return []
    const { fault, place, chance } = closed
    return [
      {
        name,
        from,
        fault,
        ...(place === undefined ? {} : { place }),
        ...(chance === undefined ? {} : { chance }),
      },
    ]
  })
}
