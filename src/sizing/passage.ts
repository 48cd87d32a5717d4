/**
 * Whether a set, or the largest piece that it comes apart into, passes every opening on its way.
 *
 * @module
 */

import type { Edges } from './sized-set.js'

export interface Opening {
  readonly name?: string | undefined
  readonly widthMm: number
  readonly heightMm: number
}

/**
 * By how much a piece is too large for an opening, at its best. [mm] It goes end on, its longest edge along the way, and may
 * be turned on its side; not through on a slant. Negative: so much is left.
 *
 * Source: derived.
 */
export function overBy(edges: Edges, { widthMm, heightMm }: Opening): number {
  const [small, middle] = [...edges].sort((a, b) => a - b) as [number, number, number]
  const [narrow, wide] = [Math.min(widthMm, heightMm), Math.max(widthMm, heightMm)]
  return Math.max(small - narrow, middle - wide)
}

/** The opening that is tightest for a piece, and by how much it is too large. Undefined where no opening is told. */
export function tightest(
  edges: Edges,
  openings: readonly Opening[],
): { readonly opening: Opening; readonly overMm: number } | undefined {
  return openings
    .map((opening) => ({ opening, overMm: overBy(edges, opening) }))
    .sort((a, b) => b.overMm - a.overMm)[0]
}
