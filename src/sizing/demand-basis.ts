/**
 * What tells what is drawn aboard.
 *
 * @module
 */

/** The list of loads, a recording in its place, or the list corrected by it. */
export const demandBases = ['list', 'recording', 'corrected'] as const
export type DemandBasis = (typeof demandBases)[number]
