/**
 * What there is room for at once in a slot of the day.
 *
 * @module
 */

import type { RunDay, Store } from './plan-day.js'

/** Rounding of sums. [kW] */
const slack = 1e-9
/** With more sums than this it is left to the solver what fits beside what. */
const mostSums = 4096

/**
 * How many of several there is room for at once: from each on in rising order, where the k + 1 least go beyond the room, at most
 * k of all of them. Follows from the room, and says it where the solver's relaxation would fill it with parts of many.
 */
export function roomFor<T extends { readonly mostKW: number }>(
  drawings: readonly T[],
  room: number,
): { readonly among: readonly T[]; readonly atMost: number }[] {
  const rising = drawings.filter(({ mostKW }) => mostKW > 0).sort((a, b) => a.mostKW - b.mostKW)
  return rising.flatMap((_, from) => {
    const among = rising.slice(from)
    let [atMost, sum] = [0, 0]
    while (atMost < among.length && sum + among[atMost]!.mostKW <= room + slack) {
      sum += among[atMost]!.mostKW
      atMost++
    }
    return atMost < among.length ? [{ among, atMost }] : []
  })
}

/** Whether a store may be filled beside whatever of the others there is room for. [kW] */
export function fitsAnyway(day: Pick<RunDay, 'batches' | 'stores'>, store: Store, room: number): boolean {
  const others = [
    ...day.batches.map(({ kW, mostKW }) => mostKW ?? kW),
    ...day.stores.filter(({ id }) => id !== store.id).map(({ kW }) => kW),
  ]
  let sums = new Set([0])
  for (const kW of others) {
    sums = new Set([...sums].flatMap((sum) => (sum + kW > room + slack ? [sum] : [sum, sum + kW])))
    if (sums.size > mostSums) return false
  }
  return [...sums].every((sum) => sum + store.kW <= room + slack)
}

/** What is left for all that can wait, in a slot. [kW] */
export function roomAt({ set, baseKW, baseMostKW }: RunDay, at: number): number {
  return Math.max(0, set.mostKW - (baseMostKW?.[at] ?? baseKW[at]!))
}
