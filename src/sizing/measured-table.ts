/**
 * A meter's or logger's table, read in pieces of any length and folded as it comes.
 *
 * @module
 */

import Papa from 'papaparse'
import { type Problem, shown } from '../catalogue/problem.js'
import {
  guessColumns,
  isUnitRow,
  type MeasuredColumn,
  type MeasuredField,
  type MeasuredUnit,
  makesLog,
  measuredFields,
  namedColumns,
} from './measured-columns.js'
import { type Folded, openFold, type Sample } from './measured-fold.js'
import { type Settled, settleRows, type Told } from './measured-settle.js'

export interface MeasuredOptions extends Told {
  /** Columns that are not called what they hold: a heading, or a number from 1. */
  readonly columns?: Readonly<Partial<Record<MeasuredField, string>>>
  readonly units?: Readonly<Partial<Record<MeasuredField, MeasuredUnit>>>
}

/** A row that was left out, by its line in the file. */
export interface BadRow {
  readonly line: number
  readonly code: 'no-time' | 'no-number' | 'negative' | 'too-much' | 'broken'
  readonly found: string
}

/** How the table was understood. */
export interface HowMeasured {
  readonly columns: readonly {
    readonly field: MeasuredField
    readonly heading: string
    readonly unit: string
  }[]
  readonly otherColumns: readonly string[]
  readonly headingsOnLine: number
  readonly times: string
  readonly dateOrder: string
  readonly decimal: string
  /** Units that no heading told. */
  readonly guessedUnits: readonly string[]
  readonly assumed: readonly string[]
  readonly rows: number
  readonly badRows: number
  /** The first of them. */
  readonly bad: readonly BadRow[]
}

export type Measured =
  | { readonly ok: true; readonly folded: Folded; readonly read: HowMeasured }
  | { readonly ok: false; readonly problems: readonly Problem[]; readonly bad: readonly BadRow[] }

export interface MeasuredReader {
  /** Takes the next piece of the file, cut anywhere. */
  take(text: string): void
  end(): Measured
}

/** Lines in which the headings must come, rows by which what is open is settled, and bad rows that are told. */
const mostPreamble = 60
const settledFrom = 200
const mostTold = 100
const longestLine = 20_000
/** Above this a unit was mistaken. [kW] */
const largestKW = 200
/** What a meter may show below nothing. [kW] */
const mostBackwardsKW = 0.05
/** More bad rows than this, and the table was not understood. */
const mostBadShare = 0.5

/** Reads a table: some lines of preamble, headings, perhaps a row of units, rows; headings may come again. */
export function readMeasured(options: MeasuredOptions): MeasuredReader {
  const fold = openFold()
  const problems: Problem[] = []
  const bad: BadRow[] = []
  const preamble: string[] = []
  let rest = ''
  let line = 0
  let delimiter = ','
  let head: Head | undefined
  let settled: Settled | undefined
  let waiting: { readonly line: number; readonly cells: readonly string[] }[] = []
  let counted: { readonly time: number; readonly kWh: number } | undefined
  let power: Power | undefined
  let rows = 0
  let badRows = 0

  const refuse = (row: BadRow) => {
    badRows++
    if (bad.length < mostTold) bad.push(row)
  }
  const readRow = (at: number, cells: readonly string[]) => {
    rows++
    const time = settled!.time(cells)
    if (time === undefined)
      return refuse({ line: at, code: 'no-time', found: shown(cells.join(delimiter).slice(0, 60)) })
    if (power === undefined) return readCount(at, cells, time)
    const found = power(cells)
    if ('code' in found) refuse({ line: at, code: found.code, found: shown(found.found) })
    else fold.add({ time, ...found })
  }
  /** What was counted between two rows was drawn from the first of them on. */
  const readCount = (at: number, cells: readonly string[], time: number) => {
    const kWh = settled!.number('energy')?.(cells)
    if (kWh === undefined)
      return refuse({ line: at, code: 'no-number', found: shown(cells.join(delimiter).slice(0, 60)) })
    const passed = counted === undefined ? 0 : time - counted.time
    if (counted !== undefined && passed > 0 && kWh >= counted.kWh) {
      fold.add({ time: counted.time, kW: ((kWh - counted.kWh) * 3600) / passed })
    }
    counted = { time, kWh }
  }
  const settleNow = () => {
    if (head === undefined || settled !== undefined || waiting.length === 0) return
    const found = settleRows(
      head.columns,
      waiting.map(({ cells }) => cells),
      { ...options, delimiter },
    )
    problems.push(...found.problems)
    settled = found.settled
    if (settled === undefined) return
    power = hasPower(settled) ? powerReader(settled, options) : undefined
    for (const row of waiting) readRow(row.line, row.cells)
    waiting = []
  }
  const takeHead = (text: string): boolean => {
    const found = headIn(text, options)
    if (found === undefined) return false
    head = { ...found, line }
    delimiter = found.delimiter
    problems.push(...found.problems)
    // columns by number need no headings: the first line is a row already
    const first = found.columns.find(({ field }) => field === 'time' || field === 'date')
    if (/^\s*"?\d/.test(first?.heading ?? '')) waiting.push({ line, cells: found.cells })
    return true
  }
  const takeLine = (text: string) => {
    line++
    if (text === '' || problems.length > 0) return
    if (head === undefined) {
      if (!takeHead(text)) preamble.push(text)
      return
    }
    if (text === head.text) return
    const cells = cellsOf(text, delimiter)
    if (settled === undefined && cells.every((cell) => cell.trim() === '')) return
    if (line === head.line + 1 && isUnitRow(cells)) {
      const { columns } = guessColumns(head.cells, cells)
      const told = new Map(columns.map((column) => [column.field, column.unit]))
      head = {
        ...head,
        columns: head.columns.map((column) => {
          const unit = options.units?.[column.field] ?? told.get(column.field)
          return unit === undefined ? column : { ...column, unit }
        }),
      }
      return
    }
    if ((settled === undefined || settled.time(cells) === undefined) && looksLikeHeadings(cells)) {
      const before: Head = head
      head = undefined
      settleBefore(before)
      if (takeHead(text)) {
        settled = undefined
        return
      }
      head = before
    }
    if (settled !== undefined) return readRow(line, cells)
    waiting.push({ line, cells })
    if (waiting.length >= settledFrom) settleNow()
  }
  const settleBefore = (before: Head) => {
    const now = head
    head = before
    settleNow()
    head = now
  }
  return {
    take: (text) => {
      let from = 0
      const whole = rest + text
      for (;;) {
        const to = whole.indexOf('\n', from)
        if (to < 0) break
        const end = to > from && whole.charCodeAt(to - 1) === 13 ? to - 1 : to
        takeLine(line === 0 ? whole.slice(from, end).replace(/^\ufeff/, '') : whole.slice(from, end))
        from = to + 1
        if (head === undefined && preamble.length > mostPreamble) return
      }
      rest = whole.slice(from)
      if (rest.length > longestLine) {
        problems.push({
          code: 'too-long',
          path: `line ${line + 1}`,
          found: 'a line without end',
          allowed: `at most ${longestLine} characters`,
        })
        rest = ''
      }
    },
    end: () => {
      if (rest !== '') takeLine(rest.replace(/\r$/, ''))
      rest = ''
      settleNow()
      if (head === undefined && problems.length === 0) problems.push(noHeadings(preamble))
      if (problems.length > 0) return { ok: false, problems, bad }
      const folded = fold.end()
      if (folded === undefined || badRows > mostBadShare * rows) {
        const found =
          rows === 0 ? 'no rows below the headings' : `${badRows} of ${rows} rows that cannot be read`
        return { ok: false, problems: [{ code: 'not-understood', path: 'file', found, allowed: hint }], bad }
      }
      return { ok: true, folded, read: howRead(head!, settled!, { rows, badRows, bad }) }
    },
  }
}

const hint = 'rows under their headings; say which column holds what, its unit, or the order of day and month'

interface Head {
  readonly text: string
  readonly line: number
  readonly cells: readonly string[]
  readonly delimiter: string
  readonly columns: readonly MeasuredColumn[]
  readonly others: readonly string[]
  readonly problems: readonly Problem[]
}

/** The headings, where a line holds them. Columns that were named by number need none: the first line of as many cells. */
function headIn(text: string, options: MeasuredOptions): Omit<Head, 'line'> | undefined {
  const asked = options.columns ?? {}
  const delimiter = delimiterOf(text)
  const cells = cellsOf(text, delimiter)
  const found = namedColumns(cells, asked, options.units ?? {})
  if (!makesLog(found)) return undefined
  if (found.problems.length > 0 && !makesLog(guessColumns(cells))) return undefined
  return { text, cells, delimiter, ...found }
}

function looksLikeHeadings(cells: readonly string[]): boolean {
  return (
    cells.filter((cell) => /\d/.test(cell) && !/[a-z]/i.test(cell)).length === 0 &&
    makesLog(guessColumns(cells))
  )
}

function delimiterOf(text: string): string {
  const count = (mark: string) => text.split(mark).length
  return [',', ';', '\t', '|'].reduce((best, mark) => (count(mark) > count(best) ? mark : best), ',')
}

function cellsOf(text: string, delimiter: string): readonly string[] {
  if (!text.includes('"')) return text.split(delimiter)
  return Papa.parse<string[]>(text, { delimiter }).data[0] ?? []
}

function hasPower({ number }: Settled): boolean {
  return measuredFields.some(
    (field) => /^(power|apparent|current)/.test(field) && number(field) !== undefined,
  )
}

type Power = (cells: readonly string[]) => Omit<Sample, 'time'> | Pick<BadRow, 'code' | 'found'>

/** Power of a row, by what was measured of it: power itself; apparent power and factor; current, volts and factor. */
function powerReader(settled: Settled, told: MeasuredOptions): Power {
  const one = (leg: string) => {
    const read = (quantity: string, of: string) => settled.number(`${quantity}${of}` as MeasuredField)
    const [power, apparent, current] = [read('power', leg), read('apparent', leg), read('current', leg)]
    const volts = read('volts', leg) ?? read('volts', '')
    const factor = read('factor', leg) ?? read('factor', '')
    if (power === undefined && apparent === undefined && current === undefined) return undefined
    return (cells: readonly string[]) => {
      const amps = current?.(cells)
      const at = volts === undefined ? told.volts : volts(cells)
      const kVA =
        apparent === undefined
          ? amps === undefined || at === undefined
            ? undefined
            : (amps * at) / 1000
          : apparent(cells)
      const share = factor === undefined ? (told.powerFactor ?? 1) : factor(cells)
      const kW =
        power === undefined
          ? kVA === undefined || share === undefined
            ? undefined
            : kVA * Math.abs(share)
          : power(cells)
      return { kW, kVA }
    }
  }
  const whole = one('')
  const legs = ['1', '2', '3'].flatMap((leg) => one(leg) ?? [])
  return (cells) => {
    const parts = legs.map((leg) => leg(cells))
    const sum = whole?.(cells)
    const kW = sum === undefined ? total(parts.map((part) => part.kW)) : sum.kW
    const kVA = sum?.kVA ?? (parts.length > 0 ? total(parts.map((part) => part.kVA)) : undefined)
    if (kW === undefined) return { code: 'no-number', found: cells.join(' ').slice(0, 60) }
    if (kW < -mostBackwardsKW) return { code: 'negative', found: `${kW} kW` }
    if (kW > largestKW) return { code: 'too-much', found: `${kW} kW` }
    const legsKW = parts.flatMap((part) => part.kW ?? [])
    return {
      kW: Math.max(0, kW),
      ...(kVA === undefined ? {} : { kVA: Math.abs(kVA) }),
      ...(legs.length > 1 && legsKW.length === legs.length ? { legsKW } : {}),
    }
  }
}

function total(values: readonly (number | undefined)[]): number | undefined {
  if (values.length === 0 || values.some((value) => value === undefined)) return undefined
  return (values as readonly number[]).reduce((sum, value) => sum + value, 0)
}

function noHeadings(preamble: readonly string[]): Problem {
  const widest = preamble.reduce(
    (best, text) =>
      text.split(delimiterOf(text)).length > best.split(delimiterOf(best)).length ? text : best,
    '',
  )
  return {
    code: 'no-headings',
    path: 'file',
    found: shown(widest === '' ? 'nothing' : widest.slice(0, 200)),
    allowed:
      'a line of headings with a time and with power, current or energy; or the columns named, by heading or by number',
  }
}

function howRead(
  head: Head,
  settled: Settled,
  {
    rows,
    badRows,
    bad,
  }: { readonly rows: number; readonly badRows: number; readonly bad: readonly BadRow[] },
): HowMeasured {
  return {
    columns: [...head.columns]
      .sort((a, b) => a.place - b.place)
      .map(({ field, heading }) => ({ field, heading, unit: settled.units[field] ?? '' })),
    otherColumns: head.others,
    headingsOnLine: head.line,
    times: settled.form,
    dateOrder: settled.order,
    decimal: settled.decimal,
    guessedUnits: settled.guessedUnits,
    assumed: settled.assumed,
    rows,
    badRows,
    bad,
  }
}
