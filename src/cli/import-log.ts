/**
 * `gensettle log import FILE.csv`: an old paper log that was typed into a table. The whole of it, or nothing.
 *
 * @module
 */

import { readFileSync, statSync } from 'node:fs'
import { parseEntry } from '../logbook/entry.js'
import { type HowRead, type PaperLogOptions, readPaperLog } from '../logbook/paper-log.js'
import { type PaperField, paperFields } from '../logbook/paper-log-columns.js'
import { partNamesOf } from '../logbook/part-names.js'
import type { Problem } from '../logbook/problems.js'
import { compose } from '../store/compose.js'
import type { Store } from '../store/store.js'
import { boatToWrite, setToWrite, writeAndAsk } from './log.js'
import { plainError } from './new-file.js'
import { type DataOption, withStore } from './opened.js'
import { shippedCatalogue } from './places.js'
import { type Result, refuse } from './result.js'

export interface ImportLogOptions extends DataOption {
  readonly boat?: string
  readonly set?: string
  /** "field=heading in the file". */
  readonly column?: readonly string[]
  readonly dates?: NonNullable<PaperLogOptions['dateOrder']>
  readonly decimal?: NonNullable<PaperLogOptions['decimal']>
  /** Read and judge, write nothing. */
  readonly check?: boolean
}

const largestFile = 20_000_000

export function importLog(path: string, options: ImportLogOptions): Promise<Result> {
  return withStore(options, (store) => {
    const text = textOf(path)
    const place = placeOf(store, options)
    const columns = columnsOf(options.column ?? [])
    const problems = [
      ...('problem' in text ? [text.problem] : []),
      ...(place.ok ? [] : place.problems),
      ...columns.problems,
    ]
    if ('problem' in text || !place.ok || problems.length > 0) return refuse(...problems)
    const log = readPaperLog(text.text, {
      boat: place.boat,
      set: place.set,
      columns: columns.columns,
      ...(options.dates === undefined ? {} : { dateOrder: options.dates }),
      ...(options.decimal === undefined ? {} : { decimal: options.decimal }),
      parts: partNamesOf(shippedCatalogue().parts),
    })
    if (!log.ok) return log
    const type = 'gensettle/log-import'
    if (options.check) {
      const entries = compose(store, log.drafts, new Date())
      const wrong = entries.flatMap((entry) => {
        const parsed = parseEntry(entry)
        return parsed.ok ? [] : parsed.problems
      })
      if (wrong.length > 0) return refuse(...wrong)
      const read = howReadText(log.read)
      const json = { type, version: 1, boat: place.boat, entries, asked: [], read: log.read } as const
      return { ok: true, json, text: `${entries.length} entries can be read. Nothing was written.\n${read}` }
    }
    const written = writeAndAsk(store, log.drafts, type)
    if (!written.ok) return written
    return {
      ok: true,
      json: { ...written.json, read: log.read },
      text: `${written.text}\n${howReadText(log.read)}`,
    }
  })
}

type Place =
  | { readonly ok: true; readonly boat: string; readonly set: string }
  | { readonly ok: false; readonly problems: readonly Problem[] }

function placeOf(store: Store, { boat: asked, set: askedSet }: ImportLogOptions): Place {
  const boat = boatToWrite(store, asked)
  const set = setToWrite(store, { kind: 'hours', boat: boat.ok ? boat.name : undefined, asked: askedSet })
  if (boat.ok && set.ok && set.set !== null) return { ok: true, boat: boat.name, set: set.set }
  return { ok: false, problems: [...(boat.ok ? [] : boat.problems), ...(set.ok ? [] : set.problems)] }
}

function textOf(path: string): { readonly text: string } | { readonly problem: Problem } {
  const refused = (code: string, found: string, allowed: string) => ({
    problem: { code, path: 'FILE', found, allowed },
  })
  try {
    const { size } = statSync(path)
    if (size > largestFile) return refused('too-large', `${size} bytes`, `at most ${largestFile} bytes`)
    return { text: readFileSync(path, 'utf8') }
  } catch (error) {
    return refused('no-such-file', `${path}: ${plainError(error)}`, 'a file that can be read')
  }
}

function columnsOf(pairs: readonly string[]) {
  const problems: Problem[] = []
  const columns: Partial<Record<PaperField, string>> = {}
  for (const pair of pairs) {
    const at = pair.indexOf('=')
    const field = pair.slice(0, at) as PaperField
    if (paperFields.includes(field)) columns[field] = pair.slice(at + 1)
    else {
      const allowed = `field=heading, the field one of: ${paperFields.join(', ')}`
      problems.push({ code: 'unknown-field', path: '--column', found: pair, allowed })
    }
  }
  return { columns, problems }
}

/** What had to be guessed, for a person to look through. */
function howReadText({ columns, otherColumns, dateOrder, decimal, guessed, unknownParts }: HowRead): string {
  const named = Object.entries(columns).map(([field, heading]) => `${field} from "${heading}"`)
  return [
    '',
    `Read: ${named.join(', ')}.`,
    ...(otherColumns.length === 0 ? [] : [`Kept as remarks: ${otherColumns.join(', ')}.`]),
    ...(dateOrder === 'does-not-matter' ? [] : [`Dates were read ${dateOrder}.`]),
    ...(decimal === 'does-not-matter' ? [] : [`The decimal mark was read as a ${decimal}.`]),
    ...(guessed.length === 0 ? [] : ['Taken for work because the words say so; look these through:']),
    ...guessed.map(({ row, as }) => `  row ${row}: ${as}`),
    ...(unknownParts.length === 0 ? [] : ['Parts that are none of the catalogue’s, kept as notes:']),
    ...unknownParts.map(({ row, found }) => `  row ${row}: ${found}`),
  ].join('\n')
}
