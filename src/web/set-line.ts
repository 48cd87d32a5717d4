/**
 * A set in one line, as the log has it.
 *
 * @module
 */

import type { Body, Entry } from '../logbook/kinds.js'

/** "7 kW, 230 V 50 Hz, built 2004, 5,240 h". What nobody said is left out. */
export function setInOneLine(entries: readonly Entry[], set: string): string {
  let facts: Partial<Body<'set'>> = {}
  const told = entries.filter((entry) => entry.set === set).sort((a, b) => (a.from < b.from ? -1 : 1))
  for (const { kind, body } of told) if (kind === 'set') facts = { ...facts, ...(body as Body<'set'>) }
  const meter = runningHours(told)
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

/** Running hours since the first day, whatever the meter shows: it may have been changed. */
function runningHours(entries: readonly Entry[]): number | undefined {
  let shown: number | undefined
  let before = 0
  for (const { kind, body } of entries) {
    if (kind === 'meter-changed') {
      const changed = body as Body<'meter-changed'>
      before += (changed.oldMeterHours ?? shown ?? 0) - changed.newMeterHours
      shown = changed.newMeterHours
    } else if ('meterHours' in body && body.meterHours !== undefined) {
      shown = Math.max(shown ?? 0, body.meterHours)
    }
  }
  return shown === undefined ? undefined : before + shown
}
