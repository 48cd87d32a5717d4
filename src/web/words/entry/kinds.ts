/**
 * What each kind of entry is called.
 *
 * @module
 */

import type { Kind } from '../../../logbook/kinds.js'

export const kindNames: Readonly<Record<Kind, string>> = {
  boat: 'Boat',
  set: 'Set',
  fitted: 'Fitted',
  hours: 'Hours',
  'meter-changed': 'New meter',
  use: 'Use',
  terms: 'Terms',
  overrule: 'Figure',
  finding: 'Finding',
  reading: 'Reading',
  'passed-over': 'Passed over',
  stop: 'Stop',
  case: 'Case',
  letdowns: 'Letdowns',
  complete: 'Complete',
  'danger-safe': 'Made safe',
  work: 'Work',
  quote: 'Quote',
  bill: 'Bill',
  particulars: 'Particulars',
  order: 'Order',
  decision: 'Decision',
  activity: 'To be done',
  'free-days': 'Free days',
  alternative: 'Alternative',
  links: 'Joined leads',
  'apart-step': 'Taken off',
  'refit-step': 'Put back',
  load: 'Load',
  'house-rule': 'House rule',
  habits: 'When it runs',
  space: 'Engine space',
  candidate: 'Offered set',
  note: 'Note',
  measured: 'Measured',
  'photograph-removed': 'Picture gone',
}

/** In the form, where a picture alone is a note. */
export const quickNames: Readonly<Partial<Record<Kind, string>>> = { note: 'Note or picture' }
