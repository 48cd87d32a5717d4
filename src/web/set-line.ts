/**
 * A set in one line, as the log has it.
 *
 * @module
 */

import type { Body, Entry } from '../logbook/kinds.js'

/** "7 kW, 230 V 50 Hz, built 2004, 5,240 h". What nobody said is left out. */
export function setInOneLine(entries: readonly Entry[], set: string): string {
  let facts: Partial<Body<'set'>> = {}
  let meter: number | undefined
  let read = ''
  const told = entries.filter((entry) => entry.kind === 'set' && entry.set === set)
  for (const entry of [...told].sort((a, b) => (a.from < b.from ? -1 : 1))) {
    facts = { ...facts, ...(entry.body as Body<'set'>) }
  }
  for (const { set: of, body, from } of entries) {
    if (of !== set || from < read || !('meterHours' in body) || body.meterHours === undefined) continue
    meter = body.meterHours
    read = from
  }
  const { ratingKw, volts, hertz, built } = facts
  const grid = [volts?.length ? `${volts.join('/')}\u00a0V` : '', hertz ? `${hertz}\u00a0Hz` : '']
  return [
    ratingKw === undefined ? '' : `${ratingKw}\u00a0kW`,
    grid.filter(Boolean).join(' '),
    built === undefined ? '' : `built ${built.slice(0, 4)}`,
    meter === undefined ? '' : `${Math.round(meter).toLocaleString('en-GB')}\u00a0h`,
  ]
    .filter(Boolean)
    .join(', ')
}
