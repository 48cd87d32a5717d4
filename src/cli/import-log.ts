/**
 * `gensettle log import FILE.csv`: an old paper log that was typed into a table. The whole of it, or nothing.
 *
 * @module
 */

import { readFileSync, statSync } from 'node:fs'
import Papa from 'papaparse'
import type { Problem } from '../catalogue/problem.js'
import { parseEntry } from '../logbook/entry.js'
import { type Kind, kinds } from '../logbook/kinds.js'
import { compose, type Draft } from '../store/compose.js'
import { fieldsOf } from './body-fields.js'
import { bodyFrom, draftOf, shortWays, withUsual } from './drafts.js'
import { boatToWrite, setToWrite, writeAndAsk } from './log.js'
import { type DataOption, withStore } from './opened.js'
import { type Result, refuse } from './result.js'

export interface ImportLogOptions extends DataOption {
  readonly boat?: string
  readonly set?: string
  /** The kind of rows that name none. */
  readonly kind?: string
  /** "heading in the file=our field". */
  readonly column?: readonly string[]
  /** Order of dates written with slashes or dots. */
  readonly dates?: 'day-first' | 'month-first'
  /** Read and judge, write nothing. */
  readonly check?: boolean
}

const largestFile = 20_000_000
const envelope = new Set(['kind', 'set', 'from', 'until'])
const otherNames: Readonly<Record<string, string>> = { date: 'from' }

export function importLog(path: string, options: ImportLogOptions): Promise<Result> {
  return withStore(options, (store) => {
    const read = readTable(path)
    if ('problem' in read) return refuse(read.problem)
    const boat = boatToWrite(store, options.boat)
    if (!boat.ok) return boat
    const problems: Problem[] = []
    const columns = columnsOf(read.headings, options.column ?? [])
    const drafts = read.rows.flatMap((cells, r) => {
      const line = r + 2
      const row = Object.fromEntries(columns.map((name, c) => [name, (cells[c] ?? '').trim()]))
      const kind = row.kind || options.kind || ''
      if (!kinds.includes(kind as Kind)) {
        const allowed = `one of: ${kinds.join(', ')}; or --kind for all rows`
        problems.push({ code: 'unknown-kind', path: `line ${line} kind`, found: kind || 'nothing', allowed })
        return []
      }
      const set = setToWrite(store, { kind: kind as Kind, boat: boat.name, asked: row.set || options.set })
      const { flags, unknown } = flagsOf(row, kind as Kind)
      const { body, problems: misread } = bodyFrom({ kind: kind as Kind, bare: [], flags })
      const at = (problem: Problem): Problem => ({
        ...problem,
        path: `line ${line} ${problem.path}`.trimEnd(),
      })
      problems.push(
        ...misread.map(at),
        ...unknown.map((name) =>
          at({
            code: 'unknown-field',
            path: name,
            found: row[name]!,
            allowed: `a field of ${kind}: see "log add ${kind} --help"`,
          }),
        ),
        ...(set.ok ? [] : set.problems.map(at)),
      )
      return [
        {
          line,
          draft: draftOf({
            boat: boat.name,
            set: set.ok ? set.set : 'set',
            kind: kind as Kind,
            from: dateFrom(row.from ?? '', options.dates),
            until: row.until ? dateFrom(row.until, options.dates) : undefined,
            body: withUsual(kind as Kind, body),
          }),
        },
      ]
    })
    const entries = compose(
      store,
      drafts.map(({ draft }) => draft),
      new Date(),
    )
    entries.forEach((entry, i) => {
      const parsed = parseEntry(entry)
      if (parsed.ok) return
      problems.push(
        ...parsed.problems.map((problem) => ({
          ...problem,
          path: `line ${drafts[i]!.line} ${problem.path}`,
        })),
      )
    })
    if (drafts.length === 0 && problems.length === 0) {
      return refuse({
        code: 'empty',
        path: 'FILE',
        found: 'no rows',
        allowed: 'a line of headings and one row for each entry',
      })
    }
    if (problems.length > 0) return refuse(...inOrder(problems))
    if (options.check) {
      const json = { type: 'gensettle/log-import', version: 1, boat: boat.name, entries, asked: [] } as const
      return { ok: true, json, text: `${entries.length} entries can be read. Nothing was written.` }
    }
    return writeAndAsk(
      store,
      drafts.map(({ draft }): Draft => draft),
      'gensettle/log-import',
    )
  })
}

type Table =
  | { readonly headings: readonly string[]; readonly rows: readonly (readonly string[])[] }
  | { readonly problem: Problem }

function readTable(path: string): Table {
  const problem = (code: string, found: string, allowed: string): Table => ({
    problem: { code, path: 'FILE', found, allowed },
  })
  try {
    const { size } = statSync(path)
    if (size > largestFile) return problem('too-large', `${size} bytes`, `at most ${largestFile} bytes`)
    const text = readFileSync(path, 'utf8').replace(/^\uFEFF/, '')
    const parsed = Papa.parse<string[]>(text, { skipEmptyLines: 'greedy' })
    const broken = parsed.errors.find(({ type }) => type === 'Quotes')
    if (broken)
      return problem(
        'not-a-table',
        `${broken.message} in row ${(broken.row ?? 0) + 1}`,
        'comma-separated values',
      )
    const [headings = [], ...rows] = parsed.data
    return { headings, rows }
  } catch (error) {
    return problem('no-such-file', error instanceof Error ? error.message : path, 'a file that can be read')
  }
}

/** What each column is called with us. */
function columnsOf(headings: readonly string[], renamed: readonly string[]): readonly string[] {
  const names = new Map(
    renamed.map((pair) => {
      const at = pair.lastIndexOf('=')
      return [pair.slice(0, at).trim().toLowerCase(), pair.slice(at + 1).trim()]
    }),
  )
  return headings.map((heading) => {
    const plain = heading.trim()
    const name = names.get(plain.toLowerCase()) ?? hyphened(plain)
    return otherNames[name] ?? name
  })
}

function hyphened(name: string): string {
  return name
    .replace(/([a-z])([A-Z])/g, '$1-$2')
    .toLowerCase()
    .replace(/[\s_]+/g, '-')
}

function flagsOf(row: Readonly<Record<string, string>>, kind: Kind) {
  const known = new Set([
    ...fieldsOf(kind).map(({ flag }) => flag),
    ...(shortWays[kind] ?? []).map(({ flag }) => flag),
  ])
  const given = Object.entries(row).filter(([name, cell]) => cell !== '' && !envelope.has(name))
  return {
    flags: Object.fromEntries(
      given.filter(([name]) => known.has(name)).map(([name, cell]) => [name, [cell]]),
    ),
    unknown: given.filter(([name]) => !known.has(name)).map(([name]) => name),
  }
}

/** A date with slashes or dots is only understood when it was said which way round it is. */
function dateFrom(text: string, order: ImportLogOptions['dates']): string {
  const parts = /^(\d{1,2})[./](\d{1,2})[./](\d{4})$/.exec(text)
  if (parts === null || order === undefined) return text
  const [, first = '', second = '', year = ''] = parts
  const [day, month] = order === 'day-first' ? [first, second] : [second, first]
  return `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`
}

function inOrder(problems: readonly Problem[]): readonly Problem[] {
  const lineOf = ({ path }: Problem) => Number(/^line (\d+)/.exec(path)?.[1] ?? 0)
  return [...problems].sort((a, b) => lineOf(a) - lineOf(b))
}
