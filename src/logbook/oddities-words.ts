/**
 * Words of the questions: how an entry and its dates are spoken of.
 *
 * @module
 */

import type { LogDate } from './dates.js'
import type { Entry, Kind } from './kinds.js'

const kindWords: Readonly<Record<Kind, string>> = {
  boat: 'description of the boat',
  set: 'description of the set',
  fitted: 'fitting',
  hours: 'meter reading',
  'meter-changed': 'change of meter',
  use: 'description of the use',
  terms: 'entry of terms',
  overrule: 'figure of your own',
  finding: 'finding',
  reading: 'reading',
  'passed-over': 'entry of what was passed over',
  stop: 'stop',
  case: 'case of something wrong',
  letdowns: 'count of letdowns',
  complete: 'declaration that all is in the log',
  'danger-safe': 'entry of what was made safe',
  work: 'work',
  quote: 'quote',
  bill: 'bill',
  particulars: 'particulars',
  order: 'order',
  decision: 'decision',
  activity: 'entry of what is to be done',
  'free-days': 'entry of free days',
  alternative: 'alternative',
  links: 'entry of joined leads',
  'apart-step': 'step of taking apart',
  'refit-step': 'step of putting back',
  load: 'entry of a load',
  'house-rule': 'rule of the house',
  habits: 'entry of when the set runs',
  space: 'description of the engine space',
  candidate: 'offered set',
  note: 'note',
  measured: 'recording of a meter',
  'photograph-removed': 'removal of a picture',
}

/** "meter reading of 2026-08-12", "stop from 2021-07-01 to 2021-07-03". */
export function sayEntryOf({ kind, from, until }: Pick<Entry, 'kind' | 'from' | 'until'>): string {
  return `${kindWords[kind]} ${from === until ? `of ${from}` : `from ${from} to ${until}`}`
}

/** "on 2026-08-12", "in 2026-08", "in 2026". */
export function sayOn(date: LogDate): string {
  return `${date.length === 10 ? 'on' : 'in'} ${date}`
}

/** "twice", "three times", "12 times". */
export function sayTimes(count: number): string {
  const words = ['never', 'once', 'twice', 'three times', 'four times', 'five times']
  return words[count] ?? `${count} times`
}

/** "1 day", "3 days". */
export function sayDays(count: number): string {
  return `${count} ${count === 1 ? 'day' : 'days'}`
}
