/**
 * Entries of one boat as lines of text: a header, then one entry a line.
 *
 * The form of the demonstration boats, and of the entries within a boat file.
 *
 * @module
 */

import * as z from 'zod'
import { nameSchema, text } from './atoms.js'
import { parseEntry } from './entry.js'
import type { Entry } from './kinds.js'
import { mergeCopies } from './merge.js'
import { type Problem, problemsOf } from './problems.js'

const headerSchema = z.strictObject({
  type: z.literal('gensettle-boat-lines', { error: 'gensettle-boat-lines' }),
  version: z.literal(1, { error: '1' }),
  boat: nameSchema,
  units: text(200),
  date: text(40),
  source: text(500),
})

export type BoatLinesHeader = Readonly<z.infer<typeof headerSchema>>

/** An entry that was read, with the text it is kept as. */
export interface ReadEntry {
  readonly id: string
  readonly text: string
  readonly entry: Entry
}

/** Every entry, or everything that is wrong. */
export type ReadEntries =
  | { readonly ok: true; readonly entries: readonly ReadEntry[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** The most problems that are told one by one; the last one then says how many more there are. */
const mostProblems = 200

/** Reads a file of lines: header first. All problems at once, each under the number of its line. */
export function readBoatLines(
  fileText: string,
): (ReadEntries & { readonly ok: false }) | (ReadEntries & { readonly ok: true; header: BoatLinesHeader }) {
  const [first = '', ...rest] = fileText.split('\n')
  const header = headerSchema.safeParse(jsonOrNothing(first))
  const headerProblems = header.success ? [] : problemsOf(header.error, jsonOrNothing(first))
  const read = readEntryLines(rest, { firstLine: 2, ...(header.success ? { boat: header.data.boat } : {}) })
  if (!header.success || !read.ok) {
    const problems = headerProblems.map((problem) => ({
      ...problem,
      path: `line 1 ${problem.path}`.trimEnd(),
    }))
    return { ok: false, problems: [...problems, ...(read.ok ? [] : read.problems)] }
  }
  return { ...read, header: header.data }
}

/** Reads lines that hold one entry each; empty ones are passed over. Entries of another boat than `boat` are refused. */
export function readEntryLines(
  lines: Iterable<string>,
  options: { readonly firstLine: number; readonly boat?: string },
): ReadEntries {
  const entries: ReadEntry[] = []
  const problems: Problem[] = []
  let line = options.firstLine - 1
  for (const lineText of lines) {
    line += 1
    if (lineText.trim() === '') continue
    const parsed = parseEntry(lineText)
    const found = parsed.ok ? ofBoat(parsed.entry, options.boat) : parsed.problems
    problems.push(...found.map((problem) => ({ ...problem, path: `line ${line} ${problem.path}`.trimEnd() })))
    if (parsed.ok) entries.push({ id: parsed.entry.id, text: parsed.text, entry: parsed.entry })
  }
  const merged = mergeCopies(() => undefined, entries)
  if (!merged.ok) problems.push(...merged.problems)
  if (problems.length > 0) return { ok: false, problems: shortened(problems) }
  return { ok: true, entries: merged.ok ? merged.added : [] }
}

function ofBoat(entry: Entry, boat: string | undefined): Problem[] {
  if (boat === undefined || entry.boat === boat) return []
  return [{ code: 'other-boat', path: 'boat', found: `"${entry.boat}"`, allowed: `"${boat}"` }]
}

function shortened(problems: readonly Problem[]): readonly Problem[] {
  const more = problems.length - mostProblems
  if (more <= 0) return problems
  const rest = { code: 'and-more', path: '', found: `${more} more problems`, allowed: 'none' }
  return [...problems.slice(0, mostProblems), rest]
}

function jsonOrNothing(line: string): unknown {
  try {
    return JSON.parse(line) as unknown
  } catch {
    return undefined
  }
}
