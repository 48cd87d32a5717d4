/**
 * The log as a ledger: years, latest first, each with what it carries forward; uneventful readings folded into one line.
 *
 * @module
 */

import { type Entry, isKind } from '../../logbook/kinds.js'
import { meterHoursOf } from '../../logbook/oddities-hours.js'
import { photographsOf } from '../../logbook/photographs.js'
import type { Log } from '../data/log.js'
import { paidIn } from '../entry/say-entry.js'

/** A line of the ledger. */
export type Row =
  | {
      readonly is: 'entry'
      readonly entry: Entry
      /** What it stands in the place of. */
      readonly old: readonly Entry[]
    }
  /** An entry that was taken back, and the one that did so. */
  | { readonly is: 'taken-back'; readonly entry: Entry; readonly by: Entry }
  /** Readings of the meter with nothing to say of them, latest first. */
  | { readonly is: 'readings'; readonly entries: readonly Entry[] }

export interface Year {
  readonly year: string
  readonly rows: readonly Row[]
  readonly count: number
  readonly carried: Carried
  /** What was paid up to the end of the year. */
  readonly paidInAll: number
}

/** What a year comes to. */
export interface Carried {
  readonly hours: number
  readonly stops: number
  readonly daysWithoutPower: number
  readonly paid: number
}

/** So many readings in a row at least become one line. */
const leastFolded = 3

export interface LedgerQuestion {
  readonly log: Pick<Log, 'entries' | 'kept' | 'waiting'>
  /** Entries that are asked about: they stay in sight. */
  readonly asked: ReadonlySet<string>
  /** Which entries to show; left out: all. */
  readonly wanted?: (entry: Entry) => boolean
}

/** The years of a log, latest first. */
export function ledgerOf({ log, asked, wanted = () => true }: LedgerQuestion): readonly Year[] {
  const byId = new Map([...log.kept, ...log.waiting].map((entry) => [entry.id, entry]))
  const rows = [...shownEntries(log, byId)].filter(({ entry }) => wanted(entry))
  const carried = carriedByYear(log.entries)
  // What waits to be sent stays in sight as well.
  const inSight = new Set([...asked, ...log.waiting.map(({ id }) => id)])
  const byYear = new Map<string, EntryRow[]>()
  for (const row of rows) {
    const year = row.entry.until.slice(0, 4)
    const list = byYear.get(year)
    if (list === undefined) byYear.set(year, [row])
    else list.push(row)
  }
  let paidInAll = 0
  const sums = new Map<string, number>()
  for (const year of [...carried.keys()].sort()) {
    paidInAll += carried.get(year)!.paid
    sums.set(year, paidInAll)
  }
  return [...byYear.keys()]
    .sort()
    .reverse()
    .map((year) => {
      const list = byYear.get(year)!.toReversed()
      return {
        year,
        rows: folded(list, inSight),
        count: list.length,
        carried: carried.get(year) ?? nothing,
        paidInAll: sums.get(year) ?? 0,
      }
    })
}

type EntryRow = Extract<Row, { is: 'entry' | 'taken-back' }>

/** Entries in their current form and those taken back, in order of their last day. */
function shownEntries(log: LedgerQuestion['log'], byId: ReadonlyMap<string, Entry>): readonly EntryRow[] {
  const current: EntryRow[] = log.entries.map((entry) => ({
    is: 'entry',
    entry,
    old: entry.corrects.flatMap((id) => byId.get(id) ?? []),
  }))
  const overruled = new Set([...byId.values()].flatMap(({ corrects }) => corrects))
  const takenBack = [...byId.values()]
    .filter(({ id, voids }) => voids && !overruled.has(id))
    .flatMap((by) =>
      by.corrects.flatMap((id) => {
        const entry = byId.get(id)
        return entry === undefined ? [] : [{ is: 'taken-back' as const, entry, by }]
      }),
    )
  const rows = takenBack.length === 0 ? current : [...current, ...takenBack]
  return rows
    .map((row) => ({ row, key: `${row.entry.until} ${row.entry.from} ${row.entry.noted}` }))
    .sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0))
    .map(({ row }) => row)
}

function folded(rows: readonly EntryRow[], inSight: ReadonlySet<string>): readonly Row[] {
  const lines: Row[] = []
  let run: EntryRow[] = []
  const end = () => {
    if (run.length >= leastFolded) lines.push({ is: 'readings', entries: run.map(({ entry }) => entry) })
    else lines.push(...run)
    run = []
  }
  for (const row of rows) {
    if (isUneventful(row, inSight) && (run[0] === undefined || run[0].entry.set === row.entry.set))
      run.push(row)
    else {
      end()
      if (isUneventful(row, inSight)) run.push(row)
      else lines.push(row)
    }
  }
  end()
  return lines
}

function isUneventful(row: EntryRow, inSight: ReadonlySet<string>): boolean {
  const { entry } = row
  return (
    row.is === 'entry' &&
    row.old.length === 0 &&
    isKind(entry, 'hours') &&
    entry.body.remark === undefined &&
    photographsOf(entry).length === 0 &&
    !inSight.has(entry.id)
  )
}

const nothing: Carried = { hours: 0, stops: 0, daysWithoutPower: 0, paid: 0 }

/** What each year comes to. Hours are what the meters moved on since the reading before, in the year of the later one. */
function carriedByYear(entries: readonly Entry[]): ReadonlyMap<string, Carried> {
  const years = new Map<string, Carried>()
  const meters = new Map<string, number>()
  const billed = new Set(entries.flatMap((entry) => (isKind(entry, 'bill') ? (entry.body.work ?? []) : [])))
  for (const entry of entries) {
    const year = entry.until.slice(0, 4)
    const before = years.get(year) ?? nothing
    const stop = isKind(entry, 'stop') ? entry.body.daysWithoutPower : undefined
    const paid = billed.has(entry.id) ? 0 : (paidIn(entry) ?? 0)
    years.set(year, {
      hours: before.hours + hoursMoved(entry, meters),
      stops: before.stops + (stop === undefined ? 0 : 1),
      daysWithoutPower: before.daysWithoutPower + (stop ?? 0),
      paid: before.paid + paid,
    })
  }
  return years
}

function hoursMoved(entry: Entry, meters: Map<string, number>): number {
  if (entry.set === null) return 0
  if (isKind(entry, 'meter-changed')) {
    meters.set(entry.set, entry.body.newMeterHours)
    return 0
  }
  const shown = meterHoursOf(entry)
  const before = meters.get(entry.set)
  if (shown === undefined || (before !== undefined && shown <= before)) return 0
  meters.set(entry.set, shown)
  return before === undefined ? 0 : shown - before
}
