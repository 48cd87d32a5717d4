/**
 * The names of the kinds of entry, and the version that entries have.
 *
 * @module
 */

/** The version in which entries are written now. */
export const presentVersion = 1

export const kinds = [
  'boat',
  'set',
  'fitted',
  'hours',
  'meter-changed',
  'use',
  'terms',
  'overrule',
  'finding',
  'reading',
  'passed-over',
  'stop',
  'case',
  'letdowns',
  'complete',
  'danger-safe',
  'work',
  'quote',
  'bill',
  'particulars',
  'order',
  'activity',
  'free-days',
  'alternative',
  'links',
  'apart-step',
  'refit-step',
  'load',
  'house-rule',
  'habits',
  'space',
  'candidate',
  'measured',
  'decision',
  'note',
  'photograph-removed',
] as const

export type Kind = (typeof kinds)[number]
