/**
 * Invented entries for tests and measurements.
 *
 * @module
 */

import type { Body, EntryOf, Kind } from '../src/logbook/kinds.js'

/** The ULID that ends in a number: for tests, where ids need only differ. */
export function trialId(number: number): string {
  return `01HZZZZZZZ${String(number).padStart(16, '0')}`
}

type Overrides = Partial<
  Pick<
    EntryOf<Kind>,
    'id' | 'boat' | 'set' | 'from' | 'until' | 'noted' | 'device' | 'n' | 'corrects' | 'voids'
  >
>

/** An entry of the trial boat; the number makes its id and its count. */
export function trialEntry<K extends Kind>(
  number: number,
  kind: K,
  body: Body<K>,
  overrides: Overrides = {},
): EntryOf<K> {
  const from = overrides.from ?? '2020-06-01'
  return {
    version: 1,
    id: trialId(number),
    boat: 'trial',
    set: ['boat', 'terms', 'free-days', 'load', 'house-rule', 'photograph-removed'].includes(kind)
      ? null
      : 'main',
    from,
    until: from,
    noted: '2024-01-01T12:00:00Z',
    device: 'saloon',
    n: number,
    kind,
    body,
    corrects: [],
    ...overrides,
  } as EntryOf<K>
}

/** A log of many years: hours mostly, with findings, work, notes, bills, corrections and a few voids in between. */
export function longTrialLog(options: { readonly entries: number; readonly years: number }): EntryOf<Kind>[] {
  const { entries, years } = options
  return Array.from({ length: entries }, (_, index) => {
    const number = index + 1
    const day = Math.floor((index / entries) * years * 365)
    const from = new Date(Date.UTC(2004, 0, 1 + day)).toISOString().slice(0, 10)
    const noted = `${from}T18:${String(index % 60).padStart(2, '0')}:00Z`
    const at = { from, noted, boat: 'long-trial' }
    const corrects = index % 25 === 24 ? { corrects: [trialId(index)] } : {}
    if (index % 500 === 499) {
      return trialEntry(
        number,
        'note',
        { text: 'entered twice' },
        { ...at, corrects: [trialId(index)], voids: true },
      )
    }
    switch (index % 10) {
      case 1:
        return trialEntry(
          number,
          'finding',
          {
            about: [{ part: 'exhaust-elbow', mode: 'leak' }],
            verdict: 'nothing-seen',
            check: 'close-look',
            seen: 'dry all round, no salt at the joint',
          },
          at,
        )
      case 4:
        return trialEntry(
          number,
          'work',
          {
            parts: [{ part: 'impeller', did: 'renewed', quality: 'original', was: 'sound' }],
            by: 'owner',
            why: 'preventive',
            workHours: { owner: 0.75 },
            cost: 38.5,
          },
          at,
        )
      case 7:
        return trialEntry(
          number,
          'note',
          { text: 'ran the set at anchor for the water maker; a little smoke at first' },
          at,
        )
      case 8:
        return trialEntry(
          number,
          'bill',
          { amount: 120.4, what: 'filters and oil', split: { parts: 120.4 } },
          at,
        )
      default:
        return trialEntry(
          number,
          'hours',
          { meterHours: Math.round(day * 10.2) / 10 },
          { ...at, ...corrects },
        )
    }
  })
}
