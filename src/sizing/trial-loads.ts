/**
 * Invented loads for tests and measurements.
 *
 * @module
 */

import type { Load } from './load-type.js'

const always = (share: number) => ({ easy: share, hard: share })

/** A load that is on for a share of the day, whatever the season. */
export function trialLoad(
  id: string,
  of: Partial<Load> & { readonly watts: number; readonly share: number; readonly hardShare?: number },
): Load {
  const { share, hardShare = share, ...rest } = of
  const duty = { easy: share, hard: hardShare }
  return {
    id,
    name: id,
    basis: 'nameplate',
    volts: 230,
    leg: 'one',
    vars: 0,
    season: 'all',
    duty: { hot: duty, warm: duty, mild: duty, cold: always(share) },
    hours: { day: 10 },
    startsPerHour: { hot: 1, warm: 1, mild: 1, cold: 1 },
    canWait: 'not',
    ...rest,
  }
}
