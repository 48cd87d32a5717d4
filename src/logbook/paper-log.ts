/**
 * An old paper log that someone typed into a table, read as entries.
 *
 * All rows are read or none. What had to be guessed is said: which column holds what, the order of day and month, the decimal
 * mark, and every row that was taken for work because its words say so.
 *
 * @module
 */

import Papa from 'papaparse'
import { shown } from '../catalogue/problem.js'
import type { Draft } from './draft.js'
import { findColumns, type PaperColumns } from './paper-log-columns.js'
import { type DateOrder, inOrder, readDate } from './paper-log-dates.js'
import { bareNumber, type DecimalMark, isOpen, markShownBy } from './paper-log-numbers.js'
import { draftsOfRow, type PaperRow, rowsOf } from './paper-log-rows.js'
import type { PartNames } from './paper-log-words.js'
import type { Problem } from './problems.js'

export interface PaperLogOptions {
  readonly boat: string
  readonly set: string
  /** Headings of columns that are not called what they hold. */
  readonly columns?: PaperColumns
  readonly dateOrder?: DateOrder
  readonly decimal?: DecimalMark
  /** Parts of the catalogue, so that work on them is known as such; without them every line of words becomes a note. */
  readonly parts?: readonly PartNames[]
}

/** How the table was understood. */
export interface HowRead {
  readonly columns: PaperColumns
  /** Columns that are none of ours; what they hold is in the remarks. */
  readonly otherColumns: readonly string[]
  readonly dateOrder: DateOrder | 'does-not-matter'
  readonly decimal: DecimalMark | 'does-not-matter'
  readonly rows: number
  /** Rows taken for work, and as what; to be looked through. */
  readonly guessed: readonly { readonly row: number; readonly as: string }[]
  /** Rows whose part is none of the catalogue's, kept as notes. */
  readonly unknownParts: readonly { readonly row: number; readonly found: string }[]
}

export type PaperLog =
  | { readonly ok: true; readonly drafts: readonly Draft[]; readonly read: HowRead }
  | { readonly ok: false; readonly problems: readonly Problem[] }

const longestFile = 5_000_000
const mostRows = 20_000

/** Reads a table of comma- or semicolon-separated values with a first row of headings. */
export function readPaperLog(csvText: string, options: PaperLogOptions): PaperLog {
  if (csvText.length > longestFile) {
    const found = `${csvText.length} characters`
    return {
      ok: false,
      problems: [{ code: 'too-long', path: 'file', found, allowed: `at most ${longestFile}` }],
    }
  }
  const table = Papa.parse<string[]>(csvText.replace(/^\ufeff/, ''), {
    delimitersToGuess: [',', ';', '\t', '|'],
    skipEmptyLines: false,
  })
  const problems: Problem[] = table.errors
    .filter(({ type }) => type === 'Quotes')
    .map(({ message, row = 0 }) => ({
      code: 'broken-quotes',
      path: `row ${row + 1}`,
      found: message,
      allowed: 'quotes in pairs',
    }))
  const [headings = [], ...body] = table.data
  const found = findColumns(headings, options.columns ?? {})
  problems.push(...found.problems)
  if (body.length > mostRows) {
    problems.push({
      code: 'too-many',
      path: 'file',
      found: `${body.length} rows`,
      allowed: `at most ${mostRows}`,
    })
  }
  if (problems.length > 0) return { ok: false, problems }

  const { rows, problems: shape } = rowsOf(body, { ...found, width: headings.length })
  const dateOrder = orderOf(rows, options.dateOrder)
  const decimal = markOf(rows, options.decimal)
  problems.push(...shape, ...dateOrder.problems, ...decimal.problems)
  const drafts: Draft[] = []
  const guessed: { row: number; as: string }[] = []
  const unknownParts: { row: number; found: string }[] = []
  for (const row of rows) {
    const read = draftsOfRow(row, { ...options, dateOrder: dateOrder.order, decimal: decimal.mark })
    problems.push(...read.problems)
    drafts.push(...read.drafts)
    if (read.guessed !== undefined) guessed.push({ row: row.number, as: read.guessed })
    if (read.unknownPart !== undefined) unknownParts.push({ row: row.number, found: read.unknownPart })
  }
  if (rows.length === 0) {
    problems.push({
      code: 'empty',
      path: 'file',
      found: 'no rows below the headings',
      allowed: 'at least one',
    })
  }
  if (problems.length > 0) return { ok: false, problems }
  const { columns, others } = found
  return {
    ok: true,
    drafts,
    read: {
      columns,
      otherColumns: others.map(({ heading }) => heading),
      dateOrder: dateOrder.matters ? dateOrder.order : 'does-not-matter',
      decimal: decimal.matters ? decimal.mark : 'does-not-matter',
      rows: rows.length,
      guessed,
      unknownParts,
    },
  }
}

/** Whether day or month comes first: as told, or as shown by a number above twelve somewhere. */
function orderOf(rows: readonly PaperRow[], told: DateOrder | undefined) {
  const numeric = rows.flatMap((row) => {
    const written = readDate(row.cells.date ?? '')
    return written !== undefined && 'first' in written ? [{ row, written }] : []
  })
  const matters = numeric.some(({ written }) => written.first !== written.second)
  if (told !== undefined) return { order: told, matters, problems: [] }
  const only = (order: DateOrder, other: DateOrder) =>
    numeric.find(
      ({ written }) => inOrder(written, order) !== undefined && inOrder(written, other) === undefined,
    )
  const dayFirst = only('day-first', 'month-first')
  const monthFirst = only('month-first', 'day-first')
  const problems: Problem[] = []
  if (dayFirst !== undefined && monthFirst !== undefined) {
    const found = `${shown(dayFirst.row.cells.date)} and in row ${monthFirst.row.number} ${shown(monthFirst.row.cells.date)}`
    const allowed = 'dates in one order'
    problems.push({ code: 'date-orders-differ', path: `row ${dayFirst.row.number} date`, found, allowed })
  } else if (matters && dayFirst === undefined && monthFirst === undefined) {
    const first = numeric.find(({ written }) => written.first !== written.second)
    const allowed = 'told: day-first or month-first'
    problems.push({
      code: 'date-order-open',
      path: `row ${first?.row.number} date`,
      found: shown(first?.row.cells.date),
      allowed,
    })
  }
  const order: DateOrder = monthFirst !== undefined ? 'month-first' : 'day-first'
  return { order, matters, problems }
}

/** Which mark is the decimal one: as told, or as shown by a number that can be read in one way only. */
function markOf(rows: readonly PaperRow[], told: DecimalMark | undefined) {
  const numbers = rows.flatMap((row) =>
    (['hours', 'cost'] as const).flatMap((field) => {
      const bare = bareNumber(row.cells[field] ?? '')
      return bare === undefined ? [] : [{ row, field, bare }]
    }),
  )
  const matters = numbers.some(({ bare }) => /[.,]/.test(bare))
  if (told !== undefined) return { mark: told, matters, problems: [] }
  const point = numbers.find(({ bare }) => markShownBy(bare) === 'point')
  const comma = numbers.find(({ bare }) => markShownBy(bare) === 'comma')
  const open = numbers.find(({ bare }) => isOpen(bare))
  const problems: Problem[] = []
  const say = (code: string, at: typeof point, found: string, allowed: string) =>
    problems.push({ code, path: `row ${at?.row.number} ${at?.field}`, found, allowed })
  if (point !== undefined && comma !== undefined) {
    const found = `${point.bare} and in row ${comma.row.number} ${comma.bare}`
    say('decimal-marks-differ', point, found, 'one decimal mark, or told: point or comma')
  } else if (open !== undefined && point === undefined && comma === undefined) {
    say('decimal-mark-open', open, open.bare, 'told: point or comma')
  }
  const mark: DecimalMark = comma !== undefined ? 'comma' : 'point'
  return { mark, matters, problems }
}
